#pragma once

#include "core/room/room.h"

#include "ui/page/form_dialog.h"

namespace plumule::ui {

// Asks for a free place.
class PlaceDialog : public FormDialog
{
    Q_OBJECT

public:
    PlaceDialog(Ask& ask, const std::vector<Spot>& spots, QWidget* parent = nullptr);

Q_SIGNALS:
    void chosen(qint64 place); // 0: off the racks
};

} // namespace plumule::ui
