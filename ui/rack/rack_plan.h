#pragma once

#include "core/rack/rack.h"

#include <QRectF>
#include <QString>

namespace plumule::ui {

// Where everything of the racks is drawn: places are alike and stand beside each other as they do
// on their shelf, so that shelves keep their lengths. Shelves longer than the page go on in a
// second line. Lengths are pixels.

// A place, or a tray that stands on none.
struct RackCell
{
    QRectF area;
    std::optional<Spot> spot;
    std::optional<TrayId> tray;
    int rack = 0; // of RackPlan::racks
};

struct RackBox
{
    QRectF area;
    QRectF head;
    QString name;
    QString count;
};

struct ShelfBox
{
    QRectF head;
    QString name;
    ShelfLight light;
    std::vector<QRectF> boards; // under the trays
};

struct RackPlan
{
    std::vector<RackBox> racks; // the last one holds the trays off the racks, where there are any
    std::vector<ShelfBox> shelves;
    std::vector<RackCell> cells; // in walking order, those off the racks last
    double high = 0;
};

[[nodiscard]] RackPlan rackPlan(const RoomRacks& room, double wide);
// What it needs at least: one tray beside no other.
[[nodiscard]] int leastRackWidth();

} // namespace plumule::ui
