#include "ui/rack/rack_view.h"

#include "ui/rack/rack_accessible.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/theme.h"

#include <QAccessible>
#include <QEvent>
#include <QHelpEvent>
#include <QToolTip>

#include <algorithm>

namespace plumule::ui {

RackView::RackView(QWidget* parent)
    : QWidget(parent)
{
    readRacksOut();
    setObjectName("racks");
    setAccessibleName(tr("Racks"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(false);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void RackView::show(const RoomRacks& room, Moment now)
{
    m_room = room;
    m_now = now;
    std::erase_if(m_chosen, [&](TrayId tray) { return m_room.find(tray) == nullptr; });
    if (isCarrying() && m_at) {
        std::vector<TrayId> carried;
        for (const CarriedTray& each : m_carry.trays) {
            carried.push_back(each.tray);
        }
        m_carry = plumule::carryTo(m_room, carried, *m_at);
        Q_EMIT carryChanged();
    }
    layOut();
    updateGeometry();
}

void RackView::showBy(ShownBy by)
{
    m_by = by;
    update();
}

void RackView::layOut()
{
    m_plan = rackPlan(m_room, width());
    m_cursor = std::clamp(m_cursor, 0, std::max(0, cellCount() - 1));
    setAccessibleDescription(wordsOf(m_cursor));
    update();
}

int RackView::heightForWidth(int width) const
{
    return static_cast<int>(rackPlan(m_room, width).high) + 1;
}

QSize RackView::sizeHint() const
{
    const int wide = scaled(860);
    return {wide, heightForWidth(wide)};
}

QSize RackView::minimumSizeHint() const
{
    return {leastRackWidth(), scaled(120)};
}

void RackView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    layOut();
}

void RackView::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        layOut();
        updateGeometry();
    }
}

bool RackView::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const int cell = cellAt(help->pos());
        if (cell >= 0) {
            QToolTip::showText(help->globalPos(), plainHint(wordsOf(cell)), this, areaOf(cell));
        } else {
            QToolTip::hideText();
        }
        return true;
    }
    return QWidget::event(event);
}

const RackCell* RackView::at(int cell) const
{
    return cell < 0 || cell >= cellCount() ? nullptr
                                           : &m_plan.cells[static_cast<std::size_t>(cell)];
}

int RackView::cellAt(QPointF point) const
{
    const auto found =
        std::find_if(m_plan.cells.begin(), m_plan.cells.end(),
                     [&](const RackCell& cell) { return cell.area.contains(point); });
    return found == m_plan.cells.end() ? -1 : static_cast<int>(found - m_plan.cells.begin());
}

int RackView::cellOf(PlaceId place) const
{
    const auto found =
        std::find_if(m_plan.cells.begin(), m_plan.cells.end(),
                     [&](const RackCell& cell) { return cell.spot && cell.spot->place == place; });
    return found == m_plan.cells.end() ? -1 : static_cast<int>(found - m_plan.cells.begin());
}

QString RackView::wordsOf(int cell) const
{
    const RackCell* found = at(cell);
    if (found == nullptr) {
        return tr("No places are set up.");
    }
    QStringList words;
    if (found->spot) {
        const auto places = m_room.walk();
        words << placeWords(*places[static_cast<std::size_t>(cell)], m_room.today);
    } else {
        words << tr("Off the racks: %1").arg(trayWords(*m_room.find(*found->tray), m_room.today));
    }
    if (found->tray && m_chosen.contains(*found->tray)) {
        words << tr("chosen");
    }
    for (const CarriedTray& each : m_carry.trays) {
        const QString code = QString::fromStdString(m_room.find(each.tray)->code);
        if (found->spot && each.to == found->spot->place) {
            words << (each.inTheWay ? tr("in the way of %1").arg(code)
                                    : tr("%1 would land here").arg(code));
        }
    }
    return words.join(QStringLiteral("; "));
}

QRect RackView::areaOf(int cell) const
{
    const RackCell* found = at(cell);
    return found == nullptr ? QRect() : found->area.toAlignedRect();
}

void RackView::setCursor(int cell)
{
    if (at(cell) == nullptr) {
        return;
    }
    m_cursor = cell;
    setAccessibleDescription(wordsOf(cell));
    update();
    Q_EMIT cursorMoved(areaOf(cell));
    tellCursor(*this);
}

// Chosen ones, or the one at the cursor.
std::vector<TrayId> RackView::trays() const
{
    if (!m_chosen.empty()) {
        return {m_chosen.begin(), m_chosen.end()};
    }
    const RackCell* cell = at(m_cursor);
    return cell != nullptr && cell->tray ? std::vector{*cell->tray} : std::vector<TrayId>();
}

void RackView::toggle(TrayId tray)
{
    if (!m_chosen.erase(tray)) {
        m_chosen.insert(tray);
    }
    setAccessibleDescription(wordsOf(m_cursor));
    update();
    Q_EMIT carryChanged();
}

void RackView::begin(const std::vector<TrayId>& trays, PlaceId at)
{
    m_carry = plumule::carryTo(m_room, trays, at);
    m_at = at;
    update();
    Q_EMIT carryChanged();
}

void RackView::carryTo(PlaceId at)
{
    std::vector<TrayId> carried;
    for (const CarriedTray& each : m_carry.trays) {
        carried.push_back(each.tray);
    }
    const Carry next = plumule::carryTo(m_room, carried, at);
    if (next == m_carry || next.trays.empty()) {
        return;
    }
    m_carry = next;
    m_at = m_carry.trays.front().to;
    update();
    Q_EMIT carryChanged();
}

void RackView::pickUp()
{
    const auto lifted = trays();
    if (lifted.empty()) {
        return;
    }
    // Where the first of them stands; from off the racks onto the first place that is free.
    const StandingPlace* from = nullptr;
    for (const StandingPlace* place : m_room.walk()) {
        const bool isLifted = place->tray && std::find(lifted.begin(), lifted.end(),
                                                       place->tray->tray) != lifted.end();
        if (isLifted) {
            from = place;
            break;
        }
        from = from == nullptr && !place->tray ? place : from;
    }
    if (from != nullptr) {
        begin(lifted, from->spot.place);
        setCursor(cellOf(from->spot.place));
    }
}

void RackView::putDown()
{
    if (isCarrying() && m_carry.leadsSomewhere()) {
        Q_EMIT movesAsked(plumule::putDown(m_carry));
    } else {
        leave();
    }
}

void RackView::leave()
{
    m_carry = {};
    m_at.reset();
    m_isDragging = false;
    m_pressed = -1;
    m_chosen.clear();
    setAccessibleDescription(wordsOf(m_cursor));
    update();
    Q_EMIT carryChanged();
}

void RackView::swap()
{
    if (isCarrying()) {
        if (m_carry.leadsSomewhere()) {
            Q_EMIT movesAsked(swapped(m_carry));
        }
        return;
    }
    const auto both = trays();
    const StandingPlace* other = both.size() == 2 ? m_room.placeOf(both[1]) : nullptr;
    if (other != nullptr) {
        Q_EMIT movesAsked(swapped(plumule::carryTo(m_room, {both[0]}, other->spot.place)));
    }
}

void RackView::takeOff()
{
    std::vector<TrayMove> moves;
    if (isCarrying()) {
        for (const CarriedTray& each : m_carry.trays) {
            moves.push_back({each.tray, std::nullopt});
        }
    } else {
        for (const TrayId tray : trays()) {
            moves.push_back({tray, std::nullopt});
        }
    }
    std::erase_if(moves,
                  [&](const TrayMove& move) { return m_room.placeOf(move.tray) == nullptr; });
    if (!moves.empty()) {
        Q_EMIT movesAsked(moves);
    }
}

} // namespace plumule::ui

#include "moc_rack_view.cpp"
