#include "ui/rack/rack_plan.h"

#include "ui/rack/rack_text.h"
#include "ui/widget/theme.h"

#include <QCoreApplication>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kTileLeast = 80;
constexpr int kTileMost = 150;
constexpr int kTileHigh = 98;
constexpr int kTileGap = 8;
constexpr int kRackPad = 10;
constexpr int kRackGap = 14;
constexpr int kRackHead = 26;
constexpr int kShelfHead = 24;
constexpr int kBoard = 5;

class PlanTr
{
    Q_DECLARE_TR_FUNCTIONS(Racks)
};

int longestShelf(const StandingRack& rack)
{
    std::size_t most = 1;
    for (const StandingShelf& shelf : rack.shelves) {
        most = std::max(most, shelf.places.size());
    }
    return static_cast<int>(most);
}

class Maker
{
public:
    Maker(const RoomRacks& room, double wide)
        : m_room(room)
        , m_wide(wide)
    {
        for (const StandingRack& rack : room.racks) {
            m_longest.push_back(longestShelf(rack));
        }
        chooseColumns();
        chooseTile();
    }

    RackPlan make()
    {
        double top = 0;
        for (std::size_t first = 0; first < m_room.racks.size(); first += m_columns) {
            double left = 0;
            double lowest = top;
            const std::size_t firstBox = m_plan.racks.size();
            for (std::size_t i = first; i < std::min(first + m_columns, m_room.racks.size()); ++i) {
                const double wide = m_columns == 1 ? m_wide : rackWide(m_longest[i], m_tile);
                lowest = std::max(lowest, addRack(m_room.racks[i], {left, top}, wide));
                left += wide + scaled(kRackGap);
            }
            for (std::size_t i = firstBox; i < m_plan.racks.size(); ++i) {
                m_plan.racks[i].area.setBottom(lowest);
            }
            top = lowest + scaled(kRackGap);
        }
        if (!m_room.offRacks.empty()) {
            top = addOffRacks(top) + scaled(kRackGap);
        }
        m_plan.high = std::max(0.0, top - scaled(kRackGap));
        return std::move(m_plan);
    }

private:
    static double rackWide(int places, double tile)
    {
        return places * tile + (places - 1) * scaled(kTileGap) + 2 * scaled(kRackPad);
    }

    // Of the racks from `first` on that stand beside each other.
    [[nodiscard]] double rowWide(std::size_t first, std::size_t columns, double tile) const
    {
        double sum = -scaled(kRackGap);
        for (std::size_t i = first; i < std::min(first + columns, m_longest.size()); ++i) {
            sum += rackWide(m_longest[i], tile) + scaled(kRackGap);
        }
        return sum;
    }

    [[nodiscard]] double widestRow(std::size_t columns, double tile) const
    {
        double widest = 0;
        for (std::size_t first = 0; first < m_longest.size(); first += columns) {
            widest = std::max(widest, rowWide(first, columns, tile));
        }
        return widest;
    }

    void chooseColumns()
    {
        m_columns = std::max<std::size_t>(1, m_longest.size());
        while (m_columns > 1 && widestRow(m_columns, scaled(kTileLeast)) > m_wide) {
            --m_columns;
        }
        const double inner = m_wide - 2 * scaled(kRackPad) + scaled(kTileGap);
        m_line = std::max(1, static_cast<int>(inner / (scaled(kTileLeast) + scaled(kTileGap))));
        if (m_columns > 1) {
            m_line = *std::max_element(m_longest.begin(), m_longest.end());
        }
        for (int& longest : m_longest) {
            longest = std::min(longest, m_line);
        }
    }

    // As wide as the fullest row of racks lets them be.
    void chooseTile()
    {
        m_tile = scaled(kTileLeast);
        const double least = widestRow(m_columns, m_tile);
        for (double step = scaled(8); step >= 1; step /= 2) {
            while (m_tile + step <= scaled(kTileMost) &&
                   widestRow(m_columns, m_tile + step) <= std::max(m_wide, least)) {
                m_tile += step;
            }
        }
    }

    double addRack(const StandingRack& rack, QPointF at, double wide)
    {
        RackBox box;
        box.area = QRectF(at, QSizeF(wide, 0));
        box.head = QRectF(at.x() + scaled(kRackPad), at.y() + scaled(8),
                          wide - 2 * scaled(kRackPad), scaled(kRackHead));
        box.name = PlanTr::tr("Rack %1").arg(QString::fromStdString(rack.rack.name));
        box.count = PlanTr::tr("%1 of %2 taken, %3 free")
                        .arg(rack.taken())
                        .arg(rack.places())
                        .arg(rack.places() - rack.taken());
        m_plan.racks.push_back(box);
        double top = box.head.bottom();
        for (const StandingShelf& shelf : rack.shelves) {
            top = addShelf(rack, shelf, {box.head.left(), top}, box.head.width());
        }
        return top + scaled(10);
    }

    double addShelf(const StandingRack& rack, const StandingShelf& shelf, QPointF at, double wide)
    {
        ShelfBox box;
        box.head = QRectF(at, QSizeF(wide, scaled(kShelfHead)));
        box.name = QString::fromStdString(rack.rack.name + shelf.shelf.name);
        box.light = shelf.light;
        double top = box.head.bottom();
        const auto count = static_cast<int>(shelf.places.size());
        for (int from = 0; from < std::max(1, count); from += m_line) {
            const int until = std::min(from + m_line, count);
            for (int i = from; i < until; ++i) {
                const StandingPlace& place = shelf.places[static_cast<std::size_t>(i)];
                addCell({at.x() + (i - from) * (m_tile + scaled(kTileGap)), top}, place.spot,
                        place.tray ? std::optional(place.tray->tray) : std::nullopt);
            }
            const int tiles = std::max(1, until - from);
            top += count == 0 ? 0 : scaled(kTileHigh + 4);
            box.boards.emplace_back(at.x(), top, rackWide(tiles, m_tile) - 2 * scaled(kRackPad),
                                    scaled(kBoard));
            top += scaled(kBoard + 6);
        }
        m_plan.shelves.push_back(std::move(box));
        return top;
    }

    void addCell(QPointF at, const std::optional<Spot>& spot, std::optional<TrayId> tray)
    {
        m_plan.cells.push_back({QRectF(at, QSizeF(m_tile, scaled(kTileHigh))), spot, tray,
                                static_cast<int>(m_plan.racks.size()) - 1});
    }

    double addOffRacks(double top)
    {
        RackBox box;
        box.head = QRectF(scaled(kRackPad), top + scaled(8), m_wide - 2 * scaled(kRackPad),
                          scaled(kRackHead));
        box.name = PlanTr::tr("Off the racks");
        box.count = PlanTr::tr("%n tray(s)", nullptr, static_cast<int>(m_room.offRacks.size()));
        m_plan.racks.push_back(box);
        const double step = m_tile + scaled(kTileGap);
        const int line =
            std::max(1, static_cast<int>((box.head.width() + scaled(kTileGap)) / step));
        int index = 0;
        double bottom = box.head.bottom();
        for (const StandingTray& tray : m_room.offRacks) {
            const int above = index / line;
            const double y = box.head.bottom() + scaled(4) + above * scaled(kTileHigh + kTileGap);
            addCell({box.head.left() + (index % line) * step, y}, std::nullopt, tray.tray);
            bottom = y + scaled(kTileHigh);
            ++index;
        }
        m_plan.racks.back().area = QRectF(0, top, m_wide, bottom + scaled(12) - top);
        return bottom + scaled(12);
    }

    const RoomRacks& m_room;
    double m_wide;
    std::vector<int> m_longest; // places side by side, a rack
    std::size_t m_columns = 1;  // racks side by side
    int m_line = 1;             // the most places side by side
    double m_tile = 0;
    RackPlan m_plan;
};

} // namespace

RackPlan rackPlan(const RoomRacks& room, double wide)
{
    return Maker(room, wide).make();
}

int leastRackWidth()
{
    return scaled(kTileLeast + 2 * kRackPad);
}

} // namespace plumule::ui
