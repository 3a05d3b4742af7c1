#include "ui/window/seat_stack.h"

#include "ui/widget/theme.h"

#include <QEvent>
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

SeatStack::SeatStack(QWidget* parent)
    : PageStack(parent)
{
    connect(this, &QStackedWidget::currentChanged, this, &SeatStack::fitHeight);
}

void SeatStack::fitHeight()
{
    const int asked =
        currentWidget() == nullptr
            ? 0
            : leastHeightOf(*currentWidget(), std::max(1, width())) + scaled(kRoomForParts);
    setMinimumHeight(std::max(scaled(kLeastHeight), asked));
}

bool SeatStack::event(QEvent* event)
{
    const bool isDone = PageStack::event(event);
    if (event->type() == QEvent::LayoutRequest || event->type() == QEvent::Resize) {
        fitHeight();
    }
    return isDone;
}

} // namespace plumule::ui
