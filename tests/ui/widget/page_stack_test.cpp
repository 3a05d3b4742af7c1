#include "ui/widget/page_stack.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QTest>
#include <QVBoxLayout>

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

QWidget* pageOfWords(int count)
{
    auto* page = new QWidget;
    auto* words = new QLabel(QString("seed ").repeated(count));
    words->setWordWrap(true);
    (new QVBoxLayout(page))->addWidget(words);
    return page;
}

TEST(PageStack, IsNoTallerForLinesOfAPageThatIsNotShown)
{
    QWidget window;
    window.resize(200, 100);
    auto* column = new QVBoxLayout(&window);
    auto* stack = new PageStack;
    column->addWidget(stack);
    stack->addPage(pageOfWords(300));
    stack->addPage(pageOfWords(3));
    window.show();
    const auto isAsTallAsItsWords = [stack] {
        const auto* lines = stack->currentWidget()->layout();
        return stack->height() >= lines->totalHeightForWidth(stack->width()) &&
               stack->minimumHeight() <= lines->totalHeightForWidth(stack->width());
    };

    EXPECT_TRUE(QTest::qWaitFor(isAsTallAsItsWords, 2'000));
    EXPECT_GT(stack->minimumHeight(), 400);
    stack->setCurrentIndex(1);
    EXPECT_TRUE(QTest::qWaitFor(isAsTallAsItsWords, 2'000));
    EXPECT_LT(stack->minimumHeight(), 100);
}

} // namespace
} // namespace plumule::ui
