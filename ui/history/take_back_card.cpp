#include "ui/history/take_back_card.h"

#include "ui/history/history_text.h"
#include "ui/page/another_hand.h"
#include "ui/page/undoing.h"
#include "ui/widget/theme.h"

#include <QDateTime>
#include <QGridLayout>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr std::size_t kShownValues = 6;

QString clockOf(const HistoryEntry& act)
{
    return QDateTime::fromMSecsSinceEpoch(act.atUtcMs).toString(QStringLiteral("HH:mm"));
}

} // namespace

TakeBackCard::TakeBackCard(Journal& journal, const Services& services, QWidget* parent)
    : Card(QString(), "card", parent)
    , m_journal(journal)
    , m_services(services)
{
    setObjectName("takeBack");
    wrapHeading();
    m_deed = label(QString());
    m_deed->setObjectName("takeBackDeed");
    m_values = new QWidget;
    m_values->setObjectName("takeBackValues");
    m_grid = new QGridLayout(m_values);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setColumnStretch(0, 1);
    m_grid->setHorizontalSpacing(scaled(16));
    m_words = label(QString(), "muted");
    m_words->setObjectName("takeBackWords");
    for (QLabel* words : {m_deed, m_words}) {
        words->setWordWrap(true);
        words->setTextFormat(Qt::PlainText);
    }
    m_act = button(QString(), "primary");
    m_act->setObjectName("takeBackAct");
    connect(m_act, &QPushButton::clicked, this, &TakeBackCard::act);
    body()->addWidget(m_deed);
    body()->addWidget(m_values);
    body()->addWidget(m_words);
    body()->addWidget(m_act, 0, Qt::AlignLeft);
    body()->addStretch(1);
    showNothing();
}

void TakeBackCard::showNothing()
{
    m_deed->clear();
    m_deed->hide();
    explain(
        tr("Taking back"),
        tr("Choose an act in the list: what taking it back comes to stands here before anything "
           "is done. The last one goes by Ctrl+Z on every page."));
}

void TakeBackCard::explain(const QString& title, const QString& words)
{
    m_shown.reset();
    setHeading(title);
    m_words->setText(words);
    m_words->show();
    m_values->hide();
    m_act->hide();
}

void TakeBackCard::show(const HistoryEntry& act, const UnitText& units)
{
    if (act.intention.empty()) {
        m_deed->hide();
        explain(tr("Entry %1 can't be read").arg(act.id.value),
                tr("What it did stays as it is. “Check for damage” in Set-up says what is wrong; "
                   "the latest backup holds it whole."));
        return;
    }
    m_deed->setText(sentence(act, units.units()));
    m_deed->show();
    switch (act.state) {
    case HistoryState::Standing:
        offer(act, units);
        return;
    case HistoryState::Dropped:
        explain(tr("%1 was taken back").arg(clockOf(act)),
                tr("Other work was done after it was taken back, so it can't be done again by "
                   "itself. Write it down anew where it is wanted."));
        return;
    case HistoryState::Undone:
        break;
    }
    const auto next = m_journal.nextRedo();
    if (!next || next->id != act.id) {
        explain(tr("%1 was taken back").arg(clockOf(act)),
                tr("What was taken back last is done again first."));
        return;
    }
    explain(tr("%1 was taken back").arg(clockOf(act)), tr("It can be done again as it was."));
    m_shown = act;
    m_isRedo = true;
    m_act->setText(tr("Do it again"));
    m_act->show();
}

void TakeBackCard::offer(const HistoryEntry& act, const UnitText& units)
{
    if (!isLarge(act)) {
        showEffects(act, units, m_journal.foreseeUndo(act.id));
        return;
    }
    // It is tried, and nothing else may be written meanwhile.
    waitForAnotherHand(
        m_journal, m_services.tasks, tr("Looking at what it comes to …"),
        [id = act.id](Journal& hand, const Progress&) { return hand.foreseeUndo(id); },
        [this, act, units](const Result<std::vector<RowEffect>>& effects) {
            showEffects(act, units, effects);
        });
}

void TakeBackCard::showEffects(const HistoryEntry& act, const UnitText& units,
                               const Result<std::vector<RowEffect>>& effects)
{
    if (!effects) {
        explain(tr("%1 stays").arg(clockOf(act)), sentence(effects.error()));
        return;
    }
    explain(tr("Take back %1?").arg(clockOf(act)), effectWords(*effects).join('\n'));
    addValues(*effects, units);
    m_shown = act;
    m_isRedo = false;
    m_act->setText(tr("Take it back"));
    m_act->show();
}

void TakeBackCard::addValues(const std::vector<RowEffect>& effects, const UnitText& units)
{
    clearLayout(m_grid);
    const auto changes = valueChanges(effects, units, kShownValues);
    if (changes.empty()) {
        return;
    }
    int row = 0;
    const auto add = [&](int column, const QString& text, const char* role) {
        auto* cell = label(text, role);
        cell->setTextFormat(Qt::PlainText);
        cell->setWordWrap(true);
        cell->setAlignment(column == 0 ? Qt::AlignLeft : Qt::AlignRight);
        m_grid->addWidget(cell, row, column);
    };
    add(1, tr("now"), "muted");
    add(2, tr("after"), "muted");
    for (const ValueChange& change : changes) {
        ++row;
        add(0, change.what, "");
        add(1, change.now, "");
        add(2, change.after, "strong");
    }
    m_values->show();
}

void TakeBackCard::begin()
{
    if (m_shown) {
        m_act->setFocus();
    }
}

void TakeBackCard::act()
{
    if (m_isRedo) {
        doAgain(m_journal, m_services);
    } else {
        takeBack(m_journal, m_services, m_shown);
    }
}

} // namespace plumule::ui

#include "moc_take_back_card.cpp"
