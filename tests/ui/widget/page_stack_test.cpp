#include "ui/widget/page_stack.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

class Sized : public QWidget
{
public:
    explicit Sized(QSize least)
        : m_least(least)
    {}
    [[nodiscard]] QSize minimumSizeHint() const override { return m_least; }
    [[nodiscard]] QSize sizeHint() const override { return m_least; }

private:
    QSize m_least;
};

TEST(PageStack, IsAsLargeAsTheShownPageHasToBe)
{
    PageStack stack;
    stack.addPage(new Sized({100, 300}));
    stack.addPage(new Sized({700, 50}));

    EXPECT_EQ(stack.minimumSizeHint(), QSize(100, 300));
    stack.setCurrentIndex(1);
    EXPECT_EQ(stack.minimumSizeHint(), QSize(700, 50));
    stack.setCurrentIndex(0);
    EXPECT_EQ(stack.minimumSizeHint(), QSize(100, 300));
    EXPECT_EQ(stack.sizeHint(), QSize(100, 300));
}

} // namespace
} // namespace plumule::ui
