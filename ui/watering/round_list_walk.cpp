// Part of ui/watering/round_list.h: which row is in hand, and the way from one to the next.
#include "ui/watering/decision_row.h"
#include "ui/watering/round_list.h"
#include "ui/watering/shelf_card.h"

#include <QApplication>

#include <algorithm>

namespace plumule::ui {
namespace {

// A decision stays open until it is made.
bool isOpen(const QWidget* each)
{
    const auto* row = qobject_cast<const TrayRow*>(each);
    return row == nullptr || !(row->tray().isDone() || row->tray().isAside());
}

} // namespace

void RoundList::step(QWidget* from, int by)
{
    const auto at = std::find(m_walk.begin(), m_walk.end(), from);
    if (at == m_walk.end()) {
        return;
    }
    const int asked = static_cast<int>(at - m_walk.begin()) + by;
    if (asked >= static_cast<int>(m_walk.size())) {
        makeRest();
    }
    const int last = static_cast<int>(m_walk.size()) - 1;
    const int to = std::clamp(asked, 0, last);
    m_walk[static_cast<std::size_t>(to)]->setFocus();
}

void RoundList::setCurrent(QWidget* row)
{
    m_current = row;
    for (ShelfCard* shelf : m_shelves) {
        shelf->setCurrent(row != nullptr && shelf->isAncestorOf(row));
    }
    showKeys();
    Q_EMIT currentChanged(row);
}

void RoundList::showKeys()
{
    // With a tray in hand the letters mean its own decision, or else the first.
    DecisionRow* pressed = currentDecision();
    if (pressed == nullptr && currentRow() != nullptr) {
        pressed = madeDecision(currentRow()->tray().tray);
    }
    if (pressed == nullptr && !m_decisions.empty()) {
        pressed = m_decisions.front();
    }
    for (DecisionRow* each : m_decisions) {
        each->setKeysShown(each == pressed);
    }
}

void RoundList::regainFocus()
{
    if (m_current != nullptr) {
        m_current->setFocus();
    } else {
        focusFirstOpen();
    }
}

void RoundList::putDown()
{
    if (m_current != nullptr) {
        m_current->clearFocus();
        setCurrent(nullptr);
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
    makeUntil([this] { return std::any_of(m_walk.begin(), m_walk.end(), isOpen); });
    const auto open = std::find_if(m_walk.begin(), m_walk.end(), isOpen);
    (open == m_walk.end() ? m_walk.front() : *open)->setFocus();
}

void RoundList::focusNextOpen(QWidget* after)
{
    makeRest();
    const auto from = std::find(m_walk.begin(), m_walk.end(), after);
    if (from == m_walk.end()) {
        return focusFirstOpen();
    }
    auto next = std::find_if(from + 1, m_walk.end(), isOpen);
    if (next == m_walk.end()) {
        next = std::find_if(m_walk.begin(), from, isOpen);
    }
    (next == m_walk.end() ? *from : *next)->setFocus();
}

RoundList::Before RoundList::rememberCurrent() const
{
    Before before;
    before.index =
        static_cast<int>(std::find(m_walk.begin(), m_walk.end(), m_current) - m_walk.begin());
    if (const TrayRow* row = currentRow()) {
        before.row = row->tray().tray;
    }
    if (const DecisionRow* asked = currentDecision()) {
        before.decision = asked->decision().tray;
    }
    before.hadFocus =
        m_current != nullptr &&
        (m_current->hasFocus() || m_current->isAncestorOf(QApplication::focusWidget()));
    return before;
}

void RoundList::regainCurrent(const Before& before)
{
    QWidget* next = nullptr;
    if (before.decision.isStored()) {
        next = decision(before.decision);
    } else if (before.row.isStored()) {
        next = row(before.row);
    }
    if (next == nullptr && !m_walk.empty()) {
        // What comes after it stands in its place.
        const bool wasThere = before.decision.isStored() || before.row.isStored();
        const std::size_t index = wasThere ? static_cast<std::size_t>(before.index) : 0;
        next = m_walk[std::min(index, m_walk.size() - 1)];
    }
    if (next != nullptr && before.hadFocus) {
        next->setFocus();
    } else {
        setCurrent(next);
    }
}

} // namespace plumule::ui
