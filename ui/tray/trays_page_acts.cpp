// Part of ui/tray/trays_page.h: the way to a tray's sheet and back, labels, sowing.
#include "ui/tray/trays_page.h"

#include "core/journal/tray/tray_entries.h"
#include "ui/label/label_dialog.h"
#include "ui/tray/sow_dialog.h"
#include "ui/tray/tray_list_model.h"
#include "ui/tray/tray_sheet_view.h"
#include "ui/widget/page_stack.h"

#include <QTableView>

#include <algorithm>

namespace plumule::ui {

void TraysPage::openSheet(TrayId tray)
{
    m_sheet->show(tray);
    m_stack->setCurrentWidget(m_sheet);
    m_sheet->setFocus();
}

void TraysPage::openList()
{
    m_stack->setCurrentIndex(0);
    if (m_isListStale) {
        reload();
    }
    begin();
}

QModelIndexList TraysPage::selected() const
{
    QModelIndexList rows = m_table->selectionModel()->selectedRows();
    std::sort(rows.begin(), rows.end());
    return rows;
}

// Several that are selected, else all that grow of those that the list is narrowed to.
std::vector<TrayId> TraysPage::traysToLabel() const
{
    const QModelIndexList rows = selected();
    if (rows.size() < 2) {
        return journal().trays().growingIn(m_shown).value_or(std::vector<TrayId>());
    }
    std::vector<TrayId> trays;
    for (const QModelIndex& index : rows) {
        trays.push_back(m_model->row(index.row()).record.tray.id);
    }
    return trays;
}

void TraysPage::showLabels()
{
    m_labels->setEnabled(m_counts.growing > 0 || selected().size() > 1);
}

void TraysPage::openLabels()
{
    auto* dialog = new LabelDialog(journal(), services(), traysToLabel(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

void TraysPage::openSowing()
{
    auto* dialog = new SowDialog(journal(), services(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &SowDialog::sown, this, [this] { tellLast(); });
    dialog->open();
}

} // namespace plumule::ui
