#pragma once

#include "core/journal/journal.h"

#include <QString>

namespace plumule::ui {

// Makes a journal at `path` and fills it with the invented sample room that is built into the
// program, as of the clock. Errors as Journal::create and fillWithSample.
[[nodiscard]] Result<std::unique_ptr<Journal>> makeSampleJournal(const QString& path,
                                                                 const Clock& clock);

} // namespace plumule::ui
