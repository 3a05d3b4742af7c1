#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include "core/tasting/tasting_reason.h"
#include "tests/support/told.h"

namespace plumule {
namespace {

class SampleTastingsTest : public JournalTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        ASSERT_TRUE(journal->exchange().fillWithSample(PLUMULE_SAMPLE_DATA));
        panels = journal->tastings().list().value();
    }
    std::vector<PanelRow> panels;
};

TEST_F(SampleTastingsTest, TheClosedOneTellsCrunchApartAndNothingElse)
{
    ASSERT_EQ(panels.size(), 2u);
    const PanelRow& closed = panels[1];
    EXPECT_EQ(closed.scores, closed.scoresWanted);
    const auto result = journal->tastings().result(closed.panel.id);
    ASSERT_TRUE(result) << told(result.error());
    std::vector<std::string> shown;
    for (const AttributeResult& attribute : result->attributes) {
        EXPECT_EQ(attribute.tasters, 8);
        if (attribute.isShown()) {
            shown.push_back(attribute.attribute.name);
        }
    }
    EXPECT_EQ(shown, std::vector<std::string>{"crunch"});
}

TEST_F(SampleTastingsTest, TheOpenOneIsHalfDone)
{
    const PanelRow& open = panels[0];
    EXPECT_TRUE(open.panel.isOpen());
    EXPECT_EQ(open.panel.on, clock.today());
    EXPECT_EQ(open.scoresWanted, 48);
    EXPECT_EQ(open.scores, 30);
    EXPECT_TRUE(journal->tastings().result(open.panel.id).error().is(TastingReason::Open));
}

} // namespace
} // namespace plumule
