#pragma once

#include "ui/rack/rack_text.h"

#include <QColor>
#include <QRectF>

class QPainter;

namespace plumule::ui {

// How one place of the racks is drawn.

// What is asked of a tray, told by shape, letter and colour.
enum class TraySign
{
    Thirsty,
    Ready,
    Due
};
[[nodiscard]] std::vector<TraySign> signsOf(const StandingTray& tray);
void paintSign(QPainter& painter, QPointF centre, double side, TraySign sign);

// The ground of trays that are to be cut then, in its strength.
[[nodiscard]] QColor bandColour(CutBand band);

// What the hand does with it just now.
enum class InHand
{
    No,
    Chosen,
    Leaves, // it is carried away from here
    Lands   // it would be put here
};

struct TileLook
{
    ShownBy by = ShownBy::Stage;
    InHand hand = InHand::No;
    bool hasCursor = false;
    bool isInTheWay = false;
    QString from; // where it lands from, for one that would be put here
};

void paintTile(QPainter& painter, const QRectF& area, const StandingTray& tray, Moment now,
               const TileLook& look);
void paintFreePlace(QPainter& painter, const QRectF& area, const StandingPlace& place,
                    const TileLook& look);
// Its stages from left to right with a stroke where it is now; what is to come is paler.
void paintStrip(QPainter& painter, const QRectF& area, const StandingTray& tray, Moment now);

} // namespace plumule::ui
