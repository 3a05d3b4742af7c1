#include "tests/support/query_counter.h"
#include "tests/ui/harvest/weigh_fixture.h"

namespace plumule::ui {
namespace {

// Counts what the journal is asked, on a connection opened while the counter stands.
class WeighReadsTest : public WeighTest
{
protected:
    QueryCounter counter;
};

TEST_F(WeighReadsTest, AnEnterAsksEachQuestionOnceATray)
{
    growDueTrays(6);
    open();
    weighThree();
    settleDown();
    counter.restart();
    enter("305");
    ASSERT_EQ(cutsOf("BR004").size(), 1U);
    settleDown();
    // Once for the tray that is stored, once for the next one that is taken.
    EXPECT_LE(counter.countOf("AND weighed.cut = ?2 AND"), 2);
    EXPECT_LE(counter.mostRepeated().second, 8) << counter.mostRepeated().first;
}

} // namespace
} // namespace plumule::ui
