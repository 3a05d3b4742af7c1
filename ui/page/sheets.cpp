#include "ui/page/sheets.h"

#include "ui/paper/printing.h"

#include <QCoreApplication>
#include <QMenu>

namespace plumule::ui {
namespace {

class Sheets
{
    Q_DECLARE_TR_FUNCTIONS(Sheets)
};

} // namespace

void sendToPrinter(QWidget* parent, const Services& services,
                   std::function<bool(QPagedPaintDevice&)> print)
{
    askPrinter(parent, [&messages = services.messages,
                        print = std::move(print)](QPagedPaintDevice& printer) {
        if (!print(printer)) {
            messages.refuse(Sheets::tr("The printer did not take the sheet."));
        }
    });
}

void offerSheet(QWidget& page, const QWidget& below, std::function<void()> print,
                std::function<void()> save)
{
    auto* menu = new QMenu(&page);
    menu->setObjectName("sheetMenu");
    menu->setAttribute(Qt::WA_DeleteOnClose);
    QAction* toPrinter = menu->addAction(Sheets::tr("Print…"), &page, std::move(print));
    toPrinter->setObjectName("sheetToPrinter");
    QAction* toPdf = menu->addAction(Sheets::tr("Save as PDF…"), &page, std::move(save));
    toPdf->setObjectName("sheetToPdf");
    menu->setActiveAction(toPrinter);
    menu->popup(below.mapToGlobal(QPoint(0, below.height())));
}

} // namespace plumule::ui
