#pragma once

#include "ui/page/page.h"

#include <functional>

class QPagedPaintDevice;

namespace plumule::ui {

// Asks for a printer; where `print` says that it did not take the sheet, so does the message.
void sendToPrinter(QWidget* parent, const Services& services,
                   std::function<bool(QPagedPaintDevice& paper)> print);

// A menu below that button: to the printer, or into a PDF.
void offerSheet(QWidget& page, const QWidget& below, std::function<void()> print,
                std::function<void()> save);

} // namespace plumule::ui
