#pragma once

#include "core/base/result.h"

#include <QString>

#include <functional>

class QIODevice;

namespace plumule::ui {

// What `write` puts on the device becomes the whole content of the file, as core's writeWhole()
// does it: an older file stays until then. NotWritable too where `write` gives false.
[[nodiscard]] Done saveFile(const QString& path, const std::function<bool(QIODevice&)>& write);

} // namespace plumule::ui
