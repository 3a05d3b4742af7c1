#pragma once

#include <functional>

class QPagedPaintDevice;
class QWidget;

namespace plumule::ui {

// Asks for a printer and calls `print` with it, to the paper's edge. No nested event loop.
void askPrinter(QWidget* parent, std::function<void(QPagedPaintDevice&)> print);

} // namespace plumule::ui
