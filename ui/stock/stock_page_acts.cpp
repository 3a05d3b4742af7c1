// Part of ui/stock/stock_page.h: keys, dialogs and sheets.
#include "ui/stock/stock_page.h"

#include "core/journal/journal.h"
#include "ui/page/sheets.h"
#include "ui/page/table_card.h"
#include "ui/stock/count_dialog.h"
#include "ui/stock/marks_dialog.h"
#include "ui/stock/sanitise_dialog.h"
#include "ui/stock/stock_sheet.h"
#include "ui/stock/trace_card.h"
#include "ui/widget/key_button.h"
#include "ui/widget/lone_key.h"

#include <QKeyEvent>
#include <QTableView>

namespace plumule::ui {

bool StockPage::print()
{
    sendToPrinter(this, services(), [this](QPagedPaintDevice& printer) {
        return printStockSheet(m_stock, units(), printer);
    });
    return true;
}

void StockPage::openCount()
{
    auto* dialog = new CountDialog(journal(), services(), StockEvent::Counted, m_stock, this);
    const int row = m_supplyCard->table()->currentIndex().row();
    if (m_supplyCard->table()->hasFocus() && row >= 0) {
        dialog->chooseItem(m_supplies->row(row).item);
    }
    const int lot = m_seedCard->table()->currentIndex().row();
    if (m_seedCard->table()->hasFocus() && lot >= 0) {
        dialog->chooseLot(m_seed->row(lot).stock.lot.id);
    }
    dialog->open();
}

void StockPage::openBought()
{
    (new CountDialog(journal(), services(), StockEvent::Bought, m_stock, this))->open();
}

void StockPage::openMarks()
{
    (new MarksDialog(journal(), services(), m_stock, this))->open();
}

void StockPage::openSanitising()
{
    (new SanitiseDialog(journal(), services(), m_stock, this))->open();
}

// Space is the table's.
bool StockPage::takesKey(QKeyEvent& event)
{
    const QString typed = event.text();
    return !typed.isEmpty() && typed.front().isLetterOrNumber() && m_letter->hear(event);
}

bool StockPage::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress && takesKey(*static_cast<QKeyEvent*>(event))) {
        return true;
    }
    return Page::eventFilter(watched, event);
}

void StockPage::keyPressEvent(QKeyEvent* event)
{
    if (!takesKey(*event)) {
        Page::keyPressEvent(event);
    }
}

void StockPage::pressLetter(int key)
{
    const bool mayWrite = !journal().isReadOnly();
    if (key == Qt::Key_P) {
        print();
    } else if (key == Qt::Key_T) {
        m_trace->askWhat();
    } else if (key == Qt::Key_C && mayWrite) {
        openCount();
    } else if (key == Qt::Key_B && mayWrite) {
        openBought();
    } else if (key == Qt::Key_L && mayWrite) {
        openMarks();
    } else if (key == Qt::Key_Z && m_sanitised->isEnabled()) {
        openSanitising();
    }
}

} // namespace plumule::ui
