#include "ui/watering/round_list.h"

#include "core/journal/tray/tray_entries.h"
#include "ui/watering/decision_row.h"
#include "ui/watering/shelf_card.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QApplication>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

// More than are in sight at once, whatever the screen.
constexpr std::size_t kRowsAtOnce = 40;

int codeWidthIn(const Round& round)
{
    int widest = scaled(62);
    for (const RoundTray& tray : round.trays) {
        widest = qMax(widest, TrayRow::widthOfCode(tray.code));
    }
    return widest + 2;
}

} // namespace

RoundList::RoundList(QWidget* parent)
    : QWidget(parent)
{
    m_column = new QVBoxLayout(this);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(scaled(14));
    m_further = new QTimer(this);
    connect(m_further, &QTimer::timeout, this, [this] {
        makeRows(kRowsAtOnce);
        showKeys();
        if (m_rest.empty()) {
            m_further->stop();
        }
    });
}

void RoundList::showRound(const Round& round, const UnitText& units, const QString& nothing)
{
    m_frame = {{round.date, round.slot}, units, codeWidthIn(round)};
    const auto shelves = shownShelves(round);
    auto arrangement = arrangementOf(round, shelves);
    if (!m_walk.empty() && nothing == m_nothing && arrangement == m_arrangement) {
        makeRest();
        for (std::size_t i = 0; i < shelves.size(); ++i) {
            m_shelves[i]->setShelf(round, shelves[i], m_frame);
        }
        return;
    }
    m_arrangement = std::move(arrangement);
    rebuild(round, shelves, nothing);
}

std::vector<ShelfGroup> RoundList::shownShelves(const Round& round) const
{
    auto shelves = shelvesOf(round);
    for (ShelfGroup& shelf : shelves) {
        decltype(shelf.decisions) groups;
        for (const auto& group : shelf.decisions) {
            if (!m_apart.contains(round.decisions[group.front()].tray)) {
                groups.push_back(group);
                continue;
            }
            for (const std::size_t i : group) {
                groups.push_back({i});
            }
        }
        shelf.decisions = std::move(groups);
        if (m_isDecisionsAlone) {
            shelf.trays.clear();
        }
    }
    std::erase_if(shelves, [](const ShelfGroup& shelf) {
        return shelf.trays.empty() && shelf.decisions.empty();
    });
    return shelves;
}

std::vector<std::int64_t> RoundList::arrangementOf(const Round& round,
                                                   const std::vector<ShelfGroup>& shelves)
{
    constexpr std::int64_t kShelf = -1;
    constexpr std::int64_t kDecision = -2;
    constexpr std::int64_t kRow = -3;
    std::vector<std::int64_t> arrangement;
    for (const ShelfGroup& shelf : shelves) {
        arrangement.push_back(kShelf);
        arrangement.push_back(shelf.spot ? shelf.spot->shelfId.value : 0);
        for (const auto& group : shelf.decisions) {
            arrangement.push_back(kDecision);
            for (const std::size_t i : group) {
                arrangement.push_back(round.decisions[i].tray.value);
            }
        }
        arrangement.push_back(kRow);
        for (const std::size_t i : shelf.trays) {
            arrangement.push_back(round.trays[i].tray.value);
        }
    }
    return arrangement;
}

void RoundList::rebuild(const Round& round, const std::vector<ShelfGroup>& shelves,
                        const QString& nothing)
{
    const Before before = rememberCurrent();
    QWidget* typing = QApplication::focusWidget();
    if (m_panel == nullptr || !m_panel->isAncestorOf(typing)) {
        typing = nullptr;
    }
    setUpdatesEnabled(false);
    clearRows();
    m_nothing = nothing;
    fill(round, shelves);
    putPanelBack();
    setUpdatesEnabled(true);
    regainCurrent(before);
    if (typing != nullptr && m_panel->isVisible()) {
        typing->setFocus();
    }
}

void RoundList::clearRows()
{
    // Dying rows lose the focus one to the other; nobody is to hear of it.
    for (QWidget* each : m_walk) {
        each->disconnect(this);
    }
    if (m_panel != nullptr) {
        m_panel->setParent(this);
    }
    m_shelves.clear();
    m_rows.clear();
    m_decisions.clear();
    m_walk.clear();
    m_rest.clear();
    m_current = nullptr;
    clearLayout(m_column);
}

void RoundList::fill(const Round& round, const std::vector<ShelfGroup>& shelves)
{
    if (!m_nothing.isEmpty()) {
        auto* card = new Card;
        auto* words = label(m_nothing, "muted");
        words->setObjectName("nothingToWater");
        words->setWordWrap(true);
        card->body()->addWidget(words);
        m_column->addWidget(card);
        card->show();
    }
    m_column->addStretch(1);
    m_round = round;
    m_rest = shelves;
    makeRows(kRowsAtOnce);
}

void RoundList::makeRows(std::size_t count)
{
    const std::size_t enough = m_walk.size() + count;
    auto shelf = m_rest.begin();
    for (; shelf != m_rest.end() && m_walk.size() < enough; ++shelf) {
        addShelf(*shelf);
    }
    m_rest.erase(m_rest.begin(), shelf);
}

void RoundList::makeUntil(const std::function<bool()>& isEnough)
{
    while (!m_rest.empty() && !isEnough()) {
        makeRows(kRowsAtOnce);
    }
    showKeys();
}

void RoundList::makeRest()
{
    makeUntil([] { return false; });
}

void RoundList::paintEvent(QPaintEvent* event)
{
    QWidget::paintEvent(event);
    if (!m_rest.empty()) {
        m_further->start();
    }
}

void RoundList::addShelf(const ShelfGroup& shelf)
{
    auto* card = new ShelfCard(m_round, shelf, m_frame, this);
    connect(card, &ShelfCard::shelfAsked, this, [this, card] { Q_EMIT shelfAsked(card); });
    m_column->insertWidget(m_column->count() - 1, card); // the last is what stretches
    // A layout shows its new widgets later, but the focus goes only to what is shown.
    card->show();
    m_shelves.push_back(card);
    for (DecisionRow* row : card->decisions()) {
        wireDecision(row);
        m_decisions.push_back(row);
        m_walk.push_back(row);
    }
    for (TrayRow* row : card->rows()) {
        wireRow(row);
        m_rows.push_back(row);
        m_walk.push_back(row);
    }
}

void RoundList::wireRow(TrayRow* row)
{
    connect(row, &TrayRow::tickAsked, this,
            [this, row](TickedBy by) { Q_EMIT tickAsked(row->tray().tray, by); });
    connect(row, &TrayRow::notNeededAsked, this,
            [this, row] { Q_EMIT notNeededAsked(row->tray().tray); });
    connect(row, &TrayRow::detailsAsked, this,
            [this, row] { Q_EMIT detailsAsked(row->tray().tray); });
    connect(row, &TrayRow::stepAsked, this, [this, row](int by) { step(row, by); });
    connect(row, &TrayRow::focused, this, [this, row] { setCurrent(row); });
}

void RoundList::wireDecision(DecisionRow* row)
{
    connect(row, &DecisionRow::readyAsked, this, [this, row] {
        setCurrent(row);
        Q_EMIT readyAsked(row);
    });
    connect(row, &DecisionRow::notYetAsked, this, [this, row] {
        setCurrent(row);
        Q_EMIT notYetAsked(row);
    });
    connect(row, &DecisionRow::oneByOneAsked, this, [this, row] {
        setCurrent(row);
        takeApart(row->decision().tray);
        Q_EMIT takenApart();
    });
    connect(row, &DecisionRow::skipAsked, this, [this, row] { focusNextOpen(row); });
    connect(row, &DecisionRow::stepAsked, this, [this, row](int by) { step(row, by); });
    connect(row, &DecisionRow::focused, this, [this, row] { setCurrent(row); });
}

TrayRow* RoundList::currentRow() const
{
    return qobject_cast<TrayRow*>(m_current);
}

DecisionRow* RoundList::currentDecision() const
{
    return qobject_cast<DecisionRow*>(m_current);
}

TrayRow* RoundList::row(TrayId tray)
{
    makeUntil([this, tray] { return madeRow(tray) != nullptr; });
    return madeRow(tray);
}

TrayRow* RoundList::madeRow(TrayId tray) const
{
    const auto found = std::find_if(m_rows.begin(), m_rows.end(), [tray](const TrayRow* each) {
        return each->tray().tray == tray;
    });
    return found == m_rows.end() ? nullptr : *found;
}

// It stands on its tray's shelf.
DecisionRow* RoundList::decision(TrayId tray)
{
    makeUntil([this, tray] { return madeDecision(tray) != nullptr || madeRow(tray) != nullptr; });
    return madeDecision(tray);
}

DecisionRow* RoundList::madeDecision(TrayId tray) const
{
    const auto found =
        std::find_if(m_decisions.begin(), m_decisions.end(),
                     [tray](const DecisionRow* each) { return each->isAbout(tray); });
    return found == m_decisions.end() ? nullptr : *found;
}

void RoundList::takeApart(TrayId tray)
{
    if (const DecisionRow* asked = decision(tray)) {
        for (const TrayId each : asked->trays()) {
            m_apart.insert(each);
        }
    }
}

DecisionRow* RoundList::firstDecision()
{
    makeUntil([this] { return !m_decisions.empty(); });
    return m_decisions.empty() ? nullptr : m_decisions.front();
}

ShelfCard* RoundList::currentShelf() const
{
    const auto found =
        std::find_if(m_shelves.begin(), m_shelves.end(), [this](const ShelfCard* shelf) {
            return m_current != nullptr && shelf->isAncestorOf(m_current);
        });
    return found == m_shelves.end() ? nullptr : *found;
}

void RoundList::showTray(const RoundTray& tray)
{
    if (TrayRow* shown = row(tray.tray)) {
        shown->setTray(tray, m_frame);
        showOpen();
    }
}

void RoundList::showOpen()
{
    for (ShelfCard* shelf : m_shelves) {
        shelf->showOpen();
    }
}

void RoundList::openPanel(QWidget* panel, TrayId tray)
{
    m_panel = panel;
    m_panelTray = tray;
    putPanelBack();
}

void RoundList::closePanel()
{
    if (m_panel != nullptr) {
        m_panel->hide();
        m_panel->setParent(this);
        m_panel = nullptr;
    }
}

void RoundList::putPanelBack()
{
    if (m_panel == nullptr) {
        return;
    }
    TrayRow* above = row(m_panelTray);
    for (ShelfCard* shelf : m_shelves) {
        if (above != nullptr && shelf->isAncestorOf(above)) {
            shelf->insertUnder(above, m_panel);
            m_panel->show();
            return;
        }
    }
    // Its tray is no longer in this round.
    m_panel->hide();
}

} // namespace plumule::ui

#include "moc_round_list.cpp"
