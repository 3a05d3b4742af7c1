#include "ui/paper/printing.h"

#include <QPrintDialog>
#include <QPrinter>

#include <memory>

namespace plumule::ui {

void askPrinter(QWidget* parent, std::function<void(QPagedPaintDevice&)> print)
{
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setFullPage(true);
    auto* dialog = new QPrintDialog(printer.get(), parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    // The printer lives as long as its dialog.
    QObject::connect(dialog, qOverload<QPrinter*>(&QPrintDialog::accepted), parent,
                     [printer, print = std::move(print)](QPrinter* chosen) { print(*chosen); });
    dialog->open();
}

} // namespace plumule::ui
