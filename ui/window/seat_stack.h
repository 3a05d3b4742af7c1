#pragma once

#include "ui/widget/page_stack.h"

namespace plumule::ui {

// The window's pages. A page scrolls its parts by itself: it is given what it needs at least in the
// window's width, and in a small window with large type it is scrolled as a whole before anything
// in it is squeezed.
class SeatStack : public PageStack
{
public:
    using PageStack::PageStack;

protected:
    [[nodiscard]] int leastHeight() const override;
};

} // namespace plumule::ui
