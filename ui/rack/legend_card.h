#pragma once

#include "ui/rack/tray_tile.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {

// What the signs, colours and markers on the trays mean.
class LegendCard : public Card
{
    Q_OBJECT

public:
    explicit LegendCard(QWidget* parent = nullptr);

    void show(const RoomRacks& room, ShownBy by);

private:
    void addSigns();
    void addColours(const RoomRacks& room, ShownBy by);
    void addMedia(const RoomRacks& room);
};

} // namespace plumule::ui
