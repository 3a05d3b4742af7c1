#include "ui/trial/trials_page.h"

#include "core/journal/trial/trial_entries.h"
#include "ui/medium/marker.h"
#include "ui/trial/plan_text.h"
#include "ui/trial/plan_view.h"
#include "ui/trial/trial_view.h"
#include "ui/widget/page_stack.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QScrollArea>
#include <QTableView>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

enum Column
{
    Code,
    Question,
    Variety,
    Media,
    Trays,
    State,
    LastDay
};

QString traysWords(const TrialRow& row)
{
    if (row.state == TrialState::Growing && row.harvested > 0) {
        return TrialsPage::tr("%1, %2 harvested").arg(row.trays).arg(row.harvested);
    }
    return QString::number(row.trays);
}

QString mediaWords(const TrialRow& row)
{
    QStringList names;
    for (const Medium& medium : row.media) {
        names << QString::fromStdString(medium.name);
    }
    return names.join(", ");
}

} // namespace

TrialsPage::TrialsPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    m_stack = new PageStack;
    m_stack->addPage(buildList());
    m_plan = new PlanView(journal, services);
    m_trial = new TrialView(journal, services);
    m_stack->addPage(m_plan);
    m_stack->addPage(m_trial);
    column->addWidget(m_stack);
    wireSignals();
}

QString TrialsPage::name() const
{
    return tr("Trials");
}

bool TrialsPage::concerns(Concept) const
{
    return true;
}

QWidget* TrialsPage::buildList()
{
    auto* list = new QWidget;
    auto* column = new QVBoxLayout(list);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(12));
    m_head = new PageHead(tr("Trials"));
    auto* fresh = button(tr("New trial…"), "primary");
    fresh->setObjectName("newTrial");
    connect(fresh, &QPushButton::clicked, this, &TrialsPage::openNew);
    m_head->addControl(fresh);
    column->addWidget(m_head);
    auto* card = new Card;
    m_model = new TextTable(this);
    m_table = plainTable(m_model, "trials", tr("Trials"));
    m_empty = label(tr("No trial yet. One tray of each medium can't tell a medium from chance; a "
                       "trial says how many can, and draws their places by lot."),
                    "muted");
    m_empty->setWordWrap(true);
    m_empty->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    card->body()->addWidget(m_empty);
    card->body()->addWidget(m_table, 1);
    column->addWidget(card, 1);
    return list;
}

void TrialsPage::wireSignals()
{
    for (const auto signal : {&QTableView::clicked, &QTableView::activated}) {
        connect(m_table, signal, this, [this](const QModelIndex& index) { openRow(index.row()); });
    }
    connect(m_plan, &PlanView::left, this, &TrialsPage::openList);
    connect(m_plan, &PlanView::sown, this, [this](TrialId trial) {
        openTrial(trial);
        tellLast();
    });
    connect(m_trial, &TrialView::left, this, &TrialsPage::openList);
    connect(m_trial, &TrialView::trayAsked, this, &Page::trayAsked);
}

void TrialsPage::begin()
{
    if (m_stack->currentIndex() == 0) {
        m_table->setFocus();
        if (!m_table->currentIndex().isValid() && m_model->rowCount() > 0) {
            m_table->setCurrentIndex(m_model->index(0, 0));
        }
    }
}

bool TrialsPage::hasUnsaved() const
{
    return m_stack->currentWidget() == m_plan && m_plan->hasUnsaved();
}

bool TrialsPage::print()
{
    if (m_stack->currentWidget() == m_trial) {
        m_trial->printTheReport();
        return true;
    }
    return m_stack->currentWidget() == m_plan && m_plan->printThePrepSheet();
}

void TrialsPage::reload()
{
    reloadList();
    if (m_stack->currentWidget() == m_plan) {
        m_plan->reload();
    } else if (m_stack->currentWidget() == m_trial) {
        m_trial->reload();
    }
}

void TrialsPage::reloadList()
{
    const auto rows = journal().trials().list();
    if (!accept(rows)) {
        return;
    }
    m_rows = *rows;
    std::vector<TextRow> shown;
    int growing = 0;
    for (const TrialRow& row : m_rows) {
        growing += row.state == TrialState::Growing ? 1 : 0;
        const auto& day = row.lastHarvest ? row.lastHarvest : row.trial.startedOn;
        TextRow text;
        text.cells = {QString::fromStdString(row.trial.code),
                      QString::fromStdString(row.trial.question.empty() ? row.trial.name
                                                                        : row.trial.question),
                      QString::fromStdString(row.variety),
                      mediaWords(row),
                      traysWords(row),
                      nameOf(row.state),
                      day ? longDateText(*day) : QString()};
        shown.push_back(text);
    }
    const int chosen = m_table->currentIndex().row();
    m_model->show({tr("Trial"), tr("Question"), tr("Variety"), tr("Media"), tr("Trays"),
                   tr("State"), tr("Last day")},
                  std::move(shown), Trays, State);
    m_table->horizontalHeader()->setSectionResizeMode(Question, QHeaderView::Stretch);
    m_table->horizontalHeader()->setSectionResizeMode(Media, QHeaderView::Interactive);
    m_table->setColumnWidth(Media, scaled(210));
    layOutColumns();
    if (chosen >= 0 && chosen < m_model->rowCount()) {
        m_table->setCurrentIndex(m_model->index(chosen, 0));
    }
    m_head->setSubtitle(tr("%n trial(s)", nullptr, static_cast<int>(m_rows.size())) + "  ·  " +
                        tr("%1 growing").arg(growing));
    m_empty->setVisible(m_rows.empty());
    m_table->setVisible(!m_rows.empty());
}

void TrialsPage::openRow(int row)
{
    if (row >= 0 && row < static_cast<int>(m_rows.size())) {
        openTrial(m_rows[static_cast<std::size_t>(row)].trial.id);
    }
}

void TrialsPage::openList()
{
    m_stack->setCurrentIndex(0);
    reloadList();
    begin();
}

void TrialsPage::openNew()
{
    const auto draft = journal().trials().newDraft();
    if (accept(draft)) {
        m_plan->begin(*draft);
        m_stack->setCurrentWidget(m_plan);
    }
}

void TrialsPage::openTrial(TrialId trial)
{
    const auto draft = journal().trials().draft(trial);
    if (draft && !draft->isSown()) {
        m_plan->begin(*draft);
        m_stack->setCurrentWidget(m_plan);
        return;
    }
    m_trial->show(trial);
    m_stack->setCurrentWidget(m_trial);
}

// Where the window is narrow the question and the names stay, and what the trial's own page shows
// too makes way.
void TrialsPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    layOutColumns();
}

void TrialsPage::layOutColumns()
{
    const int room = width() - scaled(56 + 36 + 20);
    m_table->setColumnHidden(LastDay, room < scaled(950));
    m_table->setColumnHidden(Trays, room < scaled(840));
    m_table->setColumnHidden(Media, room < scaled(660));
    m_table->setColumnHidden(Variety, room < scaled(500));
    m_table->setColumnHidden(State, room < scaled(380));
}

void TrialsPage::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape && m_stack->currentIndex() != 0) {
        if (m_stack->currentWidget() == m_plan) {
            m_plan->leave();
        } else {
            openList();
        }
        return;
    }
    Page::keyPressEvent(event);
}

} // namespace plumule::ui

#include "moc_trials_page.cpp"
