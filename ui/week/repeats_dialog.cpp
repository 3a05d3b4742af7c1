#include "ui/week/repeats_dialog.h"

#include "ui/medium/marker.h"
#include "ui/week/repeat_dialog.h"
#include "ui/week/week_text.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHeaderView>
#include <QTableView>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kAllColumns = 740;

enum Column
{
    Trays = 2,
    Rhythm,
    From,
    Until
};

QStringList cellsOf(const RepeatRow& row)
{
    return {QString::fromStdString(row.medium.name),
            QString::fromStdString(row.variety),
            QString::number(row.repeat.trays),
            rhythmText(row.repeat),
            longDateText(row.repeat.from),
            row.repeat.until ? longDateText(*row.repeat.until) : QString(),
            row.next ? weekdayText(*row.next) : RepeatsDialog::tr("ended")};
}

} // namespace

RepeatsDialog::RepeatsDialog(Journal& journal, Services services, QWidget* parent)
    : FormDialog(services.ask, "repeatsDialog", tr("Repeating sowings"), parent)
    , m_journal(journal)
    , m_services(services)
{
    wish({scaled(820), scaled(460)});
    leaveFreely();
    m_model = new TextTable(this);
    m_table = plainTable(m_model, "repeats", tr("Repeating sowings"));
    m_none = label(tr("There is none yet. Add one: say what is sown, on which medium, how many "
                      "trays and on which days."),
                   "muted");
    m_none->setWordWrap(true);
    body()->addWidget(m_none);
    body()->addWidget(m_table, 1);
    m_change = addLeftButton(tr("Change…"), "repeatChange");
    auto* add = addLeftButton(tr("Add…"), "repeatAdd");
    add->setEnabled(!journal.isReadOnly());
    connect(addButton(tr("Close"), "repeatsClose", "primary"), &QPushButton::clicked, this,
            &QDialog::accept);
    connect(add, &QPushButton::clicked, this, [this] {
        Repeat fresh;
        fresh.from = m_journal.clock().today();
        openOne(fresh);
    });
    connect(m_change, &QPushButton::clicked, this, &RepeatsDialog::openChosen);
    connect(m_table, &QTableView::activated, this, &RepeatsDialog::openChosen);
    fill();
}

void RepeatsDialog::fill()
{
    const auto rows = m_journal.week().repeats();
    if (!rows) {
        refuse(sentence(rows.error()));
        return;
    }
    m_rows = *rows;
    std::vector<TextRow> shown;
    for (const RepeatRow& row : m_rows) {
        shown.push_back({cellsOf(row), markerIcon(row.medium.marker), false});
    }
    m_model->show(
        {tr("Medium"), tr("Variety"), tr("Trays"), tr("Sown"), tr("From"), tr("Until"), tr("Next")},
        std::move(shown), Trays, Rhythm);
    m_table->horizontalHeader()->setSectionResizeMode(Rhythm, QHeaderView::Stretch);
    hideWhatDoesNotFit();
    m_none->setVisible(m_rows.empty());
    m_table->setVisible(!m_rows.empty());
    m_change->setEnabled(!m_rows.empty() && !m_journal.isReadOnly());
    if (!m_rows.empty()) {
        m_table->setCurrentIndex(m_model->index(0, 0));
    }
}

void RepeatsDialog::hideWhatDoesNotFit()
{
    for (const int column : {From, Until}) {
        m_table->setColumnHidden(column, width() < scaled(kAllColumns));
    }
}

void RepeatsDialog::resizeEvent(QResizeEvent* event)
{
    FormDialog::resizeEvent(event);
    hideWhatDoesNotFit();
}

void RepeatsDialog::openOne(const Repeat& repeat)
{
    auto* dialog = new RepeatDialog(m_journal, m_services, repeat, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, &RepeatsDialog::fill);
    dialog->open();
}

void RepeatsDialog::openChosen()
{
    const int row = m_table->currentIndex().row();
    if (row >= 0 && row < static_cast<int>(m_rows.size()) && !m_journal.isReadOnly()) {
        openOne(m_rows[static_cast<std::size_t>(row)].repeat);
    }
}

} // namespace plumule::ui

#include "moc_repeats_dialog.cpp"
