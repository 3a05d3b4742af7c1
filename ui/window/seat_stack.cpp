#include "ui/window/seat_stack.h"

#include "ui/widget/theme.h"

#include <QLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kLeastHeight = 400;
constexpr int kRoomForParts = 120; // beyond the least that parts which scroll ask for

// In that width, with its lines broken as they have to be and what scrolls in it as low as can be.
int leastHeightOf(const QWidget& page, int width)
{
    const QLayout* layout = page.layout();
    if (layout == nullptr || !layout->hasHeightForWidth()) {
        return page.minimumSizeHint().height();
    }
    const QWidget* only = layout->count() == 1 ? layout->itemAt(0)->widget() : nullptr;
    return only != nullptr ? leastHeightOf(*only, width)
                           : layout->totalMinimumHeightForWidth(width);
}

} // namespace

int SeatStack::leastHeight() const
{
    const int asked =
        currentWidget() == nullptr
            ? 0
            : leastHeightOf(*currentWidget(), std::max(1, width())) + scaled(kRoomForParts);
    return std::max(scaled(kLeastHeight), asked);
}

} // namespace plumule::ui
