#include "ui/widget/row_direction.h"

#include "ui/widget/theme.h"

namespace plumule::ui {

QBoxLayout::Direction rowDirection()
{
    return isTypeLarge() ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight;
}

} // namespace plumule::ui
