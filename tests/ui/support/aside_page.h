#pragma once

#include "tests/ui/support/growing.h"

namespace plumule::ui {

// Pages that are read off the window's thread: after each key and click they are read to the end.
class AsidePageTest : public GrowingTest
{
protected:
    void settleDown()
    {
        GrowingTest::settleDown();
        EXPECT_TRUE(soon([this] { return !tasks.isBusy(); }));
        GrowingTest::settleDown();
    }
    template <class... Keys>
    void press(Keys... keys)
    {
        GrowingTest::press(keys...);
        settleDown();
    }
    void click(QWidget* widget)
    {
        GrowingTest::click(widget);
        settleDown();
    }
};

} // namespace plumule::ui
