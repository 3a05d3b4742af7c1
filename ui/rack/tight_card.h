#pragma once

#include "core/rack/free_places.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {

// The evenings on which the fewest places are free.
class TightCard : public Card
{
    Q_OBJECT

public:
    explicit TightCard(QWidget* parent = nullptr);

    // Hides itself where no evening is fuller than another.
    void show(const std::vector<FreeEvening>& evenings);
};

} // namespace plumule::ui
