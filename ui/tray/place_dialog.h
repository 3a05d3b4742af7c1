#pragma once

#include "core/room/room.h"

#include <QDialog>

namespace plumule::ui {

// Asks for a free place.
class PlaceDialog : public QDialog
{
    Q_OBJECT

public:
    PlaceDialog(const std::vector<Spot>& spots, QWidget* parent = nullptr);

Q_SIGNALS:
    void chosen(qint64 place); // 0: off the racks
};

} // namespace plumule::ui
