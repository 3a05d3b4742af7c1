#include "ui/watering/round_list.h"

#include "ui/watering/decision_row.h"
#include "ui/watering/shelf_card.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QApplication>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

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
}

void RoundList::showRound(const Round& round, const UnitText& units, const QString& nothing)
{
    const RowFrame frame{{round.date, round.slot}, units, codeWidthIn(round)};
    const auto shelves = shelvesOf(round);
    if (hasSameRows(round, shelves, nothing)) {
        refresh(round, shelves, frame);
    } else {
        rebuild(round, shelves, frame, nothing);
    }
}

bool RoundList::hasSameRows(const Round& round, const std::vector<ShelfGroup>& shelves,
                            const QString& nothing) const
{
    if (m_walk.empty() || nothing != m_nothing || shelves.size() != m_shelves.size() ||
        round.trays.size() != m_rows.size() || round.decisions.size() != m_decisions.size()) {
        return false;
    }
    for (std::size_t i = 0; i < shelves.size(); ++i) {
        if (shelves[i].trays.size() != m_shelves[i]->rows().size() ||
            shelves[i].spot.has_value() != m_shelves[i]->rows().front()->tray().spot.has_value()) {
            return false;
        }
    }
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const RoundTray& shown = m_rows[i]->tray();
        const auto shelfOf = [](const RoundTray& tray) {
            return tray.spot ? std::optional(tray.spot->shelfId) : std::nullopt;
        };
        if (shown.tray != round.trays[i].tray || shelfOf(shown) != shelfOf(round.trays[i])) {
            return false;
        }
    }
    for (std::size_t i = 0; i < m_decisions.size(); ++i) {
        if (m_decisions[i]->decision().tray != round.decisions[i].tray) {
            return false;
        }
    }
    return true;
}

void RoundList::refresh(const Round& round, const std::vector<ShelfGroup>& shelves,
                        const RowFrame& frame)
{
    for (std::size_t i = 0; i < shelves.size(); ++i) {
        m_shelves[i]->setShelf(round, shelves[i], frame);
    }
    for (std::size_t i = 0; i < m_decisions.size(); ++i) {
        m_decisions[i]->setDecision(round.decisions[i]);
    }
}

void RoundList::rebuild(const Round& round, const std::vector<ShelfGroup>& shelves,
                        const RowFrame& frame, const QString& nothing)
{
    const Before before = rememberCurrent();
    QWidget* typing = QApplication::focusWidget();
    if (m_panel == nullptr || !m_panel->isAncestorOf(typing)) {
        typing = nullptr;
    }
    setUpdatesEnabled(false);
    clearRows();
    m_nothing = nothing;
    fill(round, shelves, frame);
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
    m_current = nullptr;
    clearLayout(m_column);
}

void RoundList::fill(const Round& round, const std::vector<ShelfGroup>& shelves,
                     const RowFrame& frame)
{
    if (!m_nothing.isEmpty()) {
        auto* card = new Card;
        auto* words = label(m_nothing, "muted");
        words->setObjectName("nothingToWater");
        words->setWordWrap(true);
        card->body()->addWidget(words);
        m_column->addWidget(card);
    }
    for (const ShelfGroup& shelf : shelves) {
        addShelf(round, shelf, frame);
    }
    addDecisions(round);
    // A layout shows its new widgets later, but the focus goes only to what is shown.
    for (int i = 0; i < m_column->count(); ++i) {
        m_column->itemAt(i)->widget()->show();
    }
    m_column->addStretch(1);
}

RoundList::Before RoundList::rememberCurrent() const
{
    Before before;
    const auto indexIn = [this](const auto& widgets) {
        const auto at = std::find(widgets.begin(), widgets.end(), m_current);
        return static_cast<int>(at - widgets.begin());
    };
    if (const TrayRow* row = currentRow()) {
        before.row = row->tray().tray;
        before.index = indexIn(m_rows);
    }
    if (const DecisionRow* asked = currentDecision()) {
        before.decision = asked->decision().tray;
        before.index = indexIn(m_decisions);
    }
    before.hadFocus =
        m_current != nullptr &&
        (m_current->hasFocus() || m_current->isAncestorOf(QApplication::focusWidget()));
    return before;
}

void RoundList::regainCurrent(const Before& before)
{
    QWidget* next = nullptr;
    const auto nearest = [&before](const auto& widgets) -> QWidget* {
        if (widgets.empty()) {
            return nullptr;
        }
        const auto at = std::min(static_cast<std::size_t>(before.index), widgets.size() - 1);
        return widgets[at];
    };
    if (before.decision.isStored()) {
        next = decision(before.decision);
        next = next != nullptr ? next : nearest(m_decisions);
    } else if (before.row.isStored()) {
        next = row(before.row);
        next = next != nullptr ? next : nearest(m_rows);
    }
    if (next == nullptr && !m_walk.empty()) {
        next = m_walk.front();
    }
    if (next != nullptr && before.hadFocus) {
        next->setFocus();
    } else {
        setCurrent(next);
    }
}

void RoundList::addShelf(const Round& round, const ShelfGroup& shelf, const RowFrame& frame)
{
    auto* card = new ShelfCard(round, shelf, frame);
    connect(card, &ShelfCard::shelfAsked, this,
            [this, card] { Q_EMIT shelfAsked(card->openTrays()); });
    m_column->addWidget(card);
    m_shelves.push_back(card);
    for (TrayRow* row : card->rows()) {
        wireRow(row);
        m_rows.push_back(row);
        m_walk.push_back(row);
    }
}

void RoundList::addDecisions(const Round& round)
{
    if (round.decisions.empty()) {
        return;
    }
    auto* card = new Card(tr("Look, then decide"));
    card->setObjectName("decisions");
    card->body()->setSpacing(0);
    for (const StageDecision& decision : round.decisions) {
        if (!m_decisions.empty()) {
            card->body()->addWidget(rule());
        }
        auto* row = new DecisionRow(decision);
        wireDecision(row);
        card->body()->addWidget(row);
        m_decisions.push_back(row);
        m_walk.push_back(row);
    }
    m_column->addWidget(card);
}

void RoundList::wireRow(TrayRow* row)
{
    connect(row, &TrayRow::tickAsked, this,
            [this, row](bool isByKey) { Q_EMIT tickAsked(row->tray().tray, isByKey); });
    connect(row, &TrayRow::detailsAsked, this,
            [this, row] { Q_EMIT detailsAsked(row->tray().tray); });
    connect(row, &TrayRow::stepAsked, this, [this, row](int by) { step(row, by); });
    connect(row, &TrayRow::focused, this, [this, row] { setCurrent(row); });
}

void RoundList::wireDecision(DecisionRow* row)
{
    connect(row, &DecisionRow::readyAsked, this, [this, row] {
        setCurrent(row);
        Q_EMIT readyAsked(row->decision().tray);
    });
    connect(row, &DecisionRow::notYetAsked, this, [this, row] {
        setCurrent(row);
        Q_EMIT notYetAsked(row->decision().tray);
    });
    connect(row, &DecisionRow::stepAsked, this, [this, row](int by) { step(row, by); });
    connect(row, &DecisionRow::focused, this, [this, row] { setCurrent(row); });
}

void RoundList::step(QWidget* from, int by)
{
    const auto at = std::find(m_walk.begin(), m_walk.end(), from);
    if (at == m_walk.end()) {
        return;
    }
    const int last = static_cast<int>(m_walk.size()) - 1;
    const int to = std::clamp(static_cast<int>(at - m_walk.begin()) + by, 0, last);
    m_walk[static_cast<std::size_t>(to)]->setFocus();
}

void RoundList::setCurrent(QWidget* row)
{
    m_current = row;
    for (ShelfCard* shelf : m_shelves) {
        shelf->setCurrent(row != nullptr && shelf->isAncestorOf(row));
    }
    // With a tray in hand the letters mean its own decision, or else the first.
    DecisionRow* pressed = currentDecision();
    if (pressed == nullptr && currentRow() != nullptr) {
        pressed = decision(currentRow()->tray().tray);
    }
    if (pressed == nullptr) {
        pressed = firstDecision();
    }
    for (DecisionRow* each : m_decisions) {
        each->setKeysShown(each == pressed);
    }
    Q_EMIT currentChanged(row);
}

TrayRow* RoundList::currentRow() const
{
    return qobject_cast<TrayRow*>(m_current);
}

DecisionRow* RoundList::currentDecision() const
{
    return qobject_cast<DecisionRow*>(m_current);
}

TrayRow* RoundList::row(TrayId tray) const
{
    const auto found = std::find_if(m_rows.begin(), m_rows.end(), [tray](const TrayRow* each) {
        return each->tray().tray == tray;
    });
    return found == m_rows.end() ? nullptr : *found;
}

DecisionRow* RoundList::decision(TrayId tray) const
{
    const auto found =
        std::find_if(m_decisions.begin(), m_decisions.end(),
                     [tray](const DecisionRow* each) { return each->decision().tray == tray; });
    return found == m_decisions.end() ? nullptr : *found;
}

DecisionRow* RoundList::firstDecision() const
{
    return m_decisions.empty() ? nullptr : m_decisions.front();
}

std::vector<TrayId> RoundList::openOnCurrentShelf() const
{
    for (const ShelfCard* shelf : m_shelves) {
        if (m_current != nullptr && shelf->isAncestorOf(m_current)) {
            return shelf->openTrays();
        }
    }
    return {};
}

void RoundList::regainFocus()
{
    if (m_current != nullptr) {
        m_current->setFocus();
    }
}

void RoundList::setFirstCurrent()
{
    if (m_walk.empty()) {
        return;
    }
    if (isAncestorOf(QApplication::focusWidget())) {
        m_walk.front()->setFocus();
    } else {
        setCurrent(m_walk.front());
    }
}

void RoundList::focusFirstOpen()
{
    if (m_walk.empty()) {
        return;
    }
    for (TrayRow* each : m_rows) {
        if (!each->tray().isDone()) {
            each->setFocus();
            return;
        }
    }
    QWidget* next = firstDecision() != nullptr ? firstDecision() : m_walk.front();
    next->setFocus();
}

void RoundList::focusNextOpen(TrayId after)
{
    const auto isOpen = [](const TrayRow* each) { return !each->tray().isDone(); };
    const auto from = std::find(m_rows.begin(), m_rows.end(), row(after));
    auto next = std::find_if(from, m_rows.end(), isOpen);
    if (next == m_rows.end()) {
        next = std::find_if(m_rows.begin(), from, isOpen);
        if (next == from) {
            next = m_rows.end();
        }
    }
    if (next != m_rows.end()) {
        (*next)->setFocus();
    } else if (firstDecision() != nullptr) {
        firstDecision()->setFocus();
    } else if (row(after) != nullptr) {
        row(after)->setFocus();
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
