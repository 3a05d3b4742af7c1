#pragma once

#include "ui/widget/page_stack.h"

namespace plumule::ui {

// The window's pages. A page scrolls its parts by itself: it is given what it needs at least in the
// window's width, and in a small window with large type it is scrolled as a whole before anything
// in it is squeezed.
class SeatStack : public PageStack
{
public:
    explicit SeatStack(QWidget* parent = nullptr);

    // No: what stands around it would make it as tall as all that its page would like to show.
    [[nodiscard]] bool hasHeightForWidth() const override { return false; }

protected:
    bool event(QEvent* event) override;

private:
    void fitHeight();
};

} // namespace plumule::ui
