// Part of ui/rack/rack_view.h: the hand and the keys.
#include "ui/rack/rack_view.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

// How far a place lies from another, seen in the direction of an arrow; none where it lies another
// way. What lies beside the way counts thrice.
std::optional<double> distance(QPointF from, QPointF to, int key)
{
    const QPointF way = to - from;
    double along = 0;
    double beside = 0;
    switch (key) {
    case Qt::Key_Left:
        along = -way.x();
        beside = way.y();
        break;
    case Qt::Key_Right:
        along = way.x();
        beside = way.y();
        break;
    case Qt::Key_Up:
        along = -way.y();
        beside = way.x();
        break;
    default:
        along = way.y();
        beside = way.x();
        break;
    }
    return along > 1 ? std::optional(along + 3 * std::abs(beside)) : std::nullopt;
}

bool isArrow(int key)
{
    return key == Qt::Key_Left || key == Qt::Key_Right || key == Qt::Key_Up || key == Qt::Key_Down;
}

} // namespace

int RackView::next(int from, int key, Reach reach) const
{
    const RackCell* start = at(from);
    if (start == nullptr) {
        return from;
    }
    int best = from;
    std::optional<double> nearest;
    for (int i = 0; i < cellCount(); ++i) {
        const RackCell& cell = *at(i);
        if (i == from || (reach == Reach::Places && !cell.spot)) {
            continue;
        }
        const auto far = distance(start->area.center(), cell.area.center(), key);
        if (far && (!nearest || *far < *nearest)) {
            nearest = far;
            best = i;
        }
    }
    return best;
}

// The same place of the rack before or after, or as near to it as that rack has one.
int RackView::inOtherRack(int from, int step, Reach reach) const
{
    const RackCell* start = at(from);
    if (start == nullptr) {
        return from;
    }
    const auto offset = [this](const RackCell& cell) {
        return cell.area.topLeft() -
               m_plan.racks[static_cast<std::size_t>(cell.rack)].area.topLeft();
    };
    int best = from;
    double nearest = 0;
    for (int i = 0; i < cellCount(); ++i) {
        const RackCell& cell = *at(i);
        if (cell.rack != start->rack + step || (reach == Reach::Places && !cell.spot)) {
            continue;
        }
        const double far = (offset(cell) - offset(*start)).manhattanLength();
        if (best == from || far < nearest) {
            nearest = far;
            best = i;
        }
    }
    return best;
}

void RackView::mousePressEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton) {
        QWidget::mousePressEvent(event);
        return;
    }
    m_pressed = cellAt(event->position());
    m_pressedAt = event->position();
    m_isDragging = false;
    if (m_pressed >= 0) {
        setCursor(m_pressed);
    }
}

void RackView::mouseMoveEvent(QMouseEvent* event)
{
    const RackCell* pressed = at(m_pressed);
    if (!event->buttons().testFlag(Qt::LeftButton) || pressed == nullptr) {
        return;
    }
    const bool isFar =
        (event->position() - m_pressedAt).manhattanLength() >= QApplication::startDragDistance();
    if (!m_isDragging && isFar && pressed->tray && !isCarrying()) {
        m_isDragging = true;
        if (!m_chosen.contains(*pressed->tray)) {
            m_chosen = {*pressed->tray};
        }
        pickUp();
    }
    if (m_isDragging) {
        drag(event->position());
    }
}

// The tray that was taken hold of follows the pointer, the others follow it.
void RackView::drag(QPointF point)
{
    const RackCell* under = at(cellAt(point));
    const RackCell* held = at(m_pressed);
    if (under == nullptr || !under->spot || held == nullptr || !isCarrying()) {
        return;
    }
    const RackCell* first =
        m_carry.trays.front().from ? at(cellOf(*m_carry.trays.front().from)) : nullptr;
    const bool isBoth = held->spot && first != nullptr && first->spot;
    const int behind = isBoth ? held->spot->rank - first->spot->rank : 0;
    const RackCell* target = at(std::max(0, under->spot->rank - behind));
    if (target != nullptr && target->spot) {
        carryTo(target->spot->place);
    }
}

void RackView::mouseReleaseEvent(QMouseEvent* event)
{
    const int pressed = std::exchange(m_pressed, -1);
    if (event->button() != Qt::LeftButton) {
        return;
    }
    if (std::exchange(m_isDragging, false)) {
        drop(event->position());
    } else if (pressed >= 0 && pressed == cellAt(event->position())) {
        press(pressed, event->modifiers());
    }
}

// On a place that is free it is done; where something stands in the way it stays carried, and what
// shall become of it is asked beside.
void RackView::drop(QPointF point)
{
    const int cell = cellAt(point);
    const bool isOffRacks = !m_room.offRacks.empty() && !m_plan.racks.empty() &&
                            m_plan.racks.back().area.contains(point);
    if (isOffRacks) {
        takeOff();
        leave();
    } else if (cell < 0 || !m_carry.leadsSomewhere()) {
        leave();
    } else if (!m_carry.isAnyInTheWay()) {
        putDown();
    }
}

void RackView::press(int cell, Qt::KeyboardModifiers modifiers)
{
    const RackCell& pressed = *at(cell);
    if (isCarrying()) {
        if (pressed.spot) {
            carryTo(pressed.spot->place);
        }
        return;
    }
    if (!pressed.tray) {
        return;
    }
    if (modifiers.testFlag(Qt::ControlModifier) || modifiers.testFlag(Qt::ShiftModifier)) {
        toggle(*pressed.tray);
    } else {
        Q_EMIT trayAsked(*pressed.tray);
    }
}

void RackView::keyPressEvent(QKeyEvent* event)
{
    const int key = event->key();
    if (isArrow(key) || key == Qt::Key_PageUp || key == Qt::Key_PageDown) {
        step(*event);
    } else if (key == Qt::Key_Return || key == Qt::Key_Enter) {
        enter();
    } else if (key == Qt::Key_Space) {
        isCarrying() ? putDown() : pickUp();
    } else if (key == Qt::Key_Delete || key == Qt::Key_Backspace) {
        takeOff();
    } else if (key == Qt::Key_Escape && (isCarrying() || !m_chosen.empty())) {
        leave();
    } else {
        QWidget::keyPressEvent(event);
    }
}

// Arrows lead the cursor, or carry what is carried; with Shift they choose the tray they leave and
// the one they come to.
void RackView::step(const QKeyEvent& key)
{
    const Reach reach = isCarrying() ? Reach::Places : Reach::Everything;
    const int to = isArrow(key.key())
                       ? next(m_cursor, key.key(), reach)
                       : inOtherRack(m_cursor, key.key() == Qt::Key_PageDown ? 1 : -1, reach);
    if (isCarrying()) {
        const RackCell* target = at(to);
        if (target != nullptr && target->spot) {
            carryTo(target->spot->place);
        }
        setCursor(m_at ? cellOf(*m_at) : to);
        return;
    }
    if (key.modifiers().testFlag(Qt::ShiftModifier)) {
        for (const int cell : {m_cursor, to}) {
            const RackCell* each = at(cell);
            if (each != nullptr && each->tray) {
                m_chosen.insert(*each->tray);
            }
        }
        Q_EMIT carryChanged();
    }
    setCursor(to);
}

void RackView::enter()
{
    if (isCarrying()) {
        putDown();
        return;
    }
    const RackCell* cell = at(m_cursor);
    if (cell != nullptr && cell->tray) {
        Q_EMIT trayAsked(*cell->tray);
    }
}

void RackView::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    update();
}

void RackView::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    update();
}

} // namespace plumule::ui
