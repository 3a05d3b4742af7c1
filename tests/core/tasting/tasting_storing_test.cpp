#include "core/tasting/tasting_storing.h"

#include "tests/core/storage/store_fixture.h"

#include <algorithm>
#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

class TastingStoringTest : public StoreTest
{
protected:
    TastingStoringTest()
    {
        for (const char* id : {"5", "6", "7"}) {
            database.execute(std::string("INSERT INTO medium VALUES (") + id +
                             ", 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 0, '', '', 0)");
        }
        draft.panel.name = "Cress";
        draft.panel.on = date(2026, 3, 9);
        draft.panel.drawNumber = 11;
        draft.media = {{7}, {5}};
        draft.attributes = {"liking", "bite"};
        draft.tasters = {"Ada", "Ben", "Cleo"};
    }

    PanelRecord stored()
    {
        tastings.insert(draft.panel);
        storePanelContents(tastings, draft);
        return tastings.record(draft.panel);
    }

    TastingRepository tastings{database};
    PanelDraft draft;
};

TEST_F(TastingStoringTest, KeepsTheOrderInWhichThingsWereNamed)
{
    const PanelRecord record = stored();
    ASSERT_THAT(record.samples, SizeIs(2));
    EXPECT_EQ(record.samples[0].medium, MediumId{7});
    EXPECT_EQ(record.samples[1].medium, MediumId{5});
    EXPECT_EQ(record.samples[1].position, 1);
    ASSERT_THAT(record.attributes, SizeIs(2));
    EXPECT_EQ(record.attributes[0].name, "liking");
    EXPECT_EQ(record.attributes[1].position, 1);
    ASSERT_THAT(record.tasters, SizeIs(3));
    EXPECT_EQ(record.tasters[2].name, "Cleo");
    EXPECT_EQ(record.tasters[2].position, 2);
    EXPECT_THAT(record.scores, IsEmpty());
}

TEST_F(TastingStoringTest, ServesEveryTasterEverySampleOnceUnderACodeOfItsOwn)
{
    const PanelRecord record = stored();
    ASSERT_THAT(record.servings, SizeIs(6));
    std::set<std::string> codes;
    std::map<TasterId, std::set<PanelSampleId>> tasted;
    std::map<TasterId, std::set<int>> turns;
    for (const Serving& serving : record.servings) {
        EXPECT_EQ(serving.panel, draft.panel.id);
        codes.insert(serving.code);
        tasted[serving.taster].insert(serving.sample);
        turns[serving.taster].insert(serving.turn);
    }
    EXPECT_THAT(codes, SizeIs(6));
    EXPECT_THAT(tasted, SizeIs(3));
    for (const auto& [taster, samples] : tasted) {
        EXPECT_THAT(samples, SizeIs(2));
        EXPECT_THAT(turns[taster], ElementsAre(1, 2));
    }
}

// Of three servings two are alike; both media are the double one somewhere among six tasters.
TEST_F(TastingStoringTest, ATriangleServesTwoAlikeAndOneOdd)
{
    draft.panel.method = TastingMethod::Triangle;
    draft.attributes = {kOddOne};
    draft.tasters = {"A", "B", "C", "D", "E", "F"};
    const PanelRecord record = stored();
    ASSERT_THAT(record.servings, SizeIs(18));
    std::map<TasterId, std::map<PanelSampleId, int>> times;
    for (const Serving& serving : record.servings) {
        ++times[serving.taster][serving.sample];
    }
    std::map<PanelSampleId, int> odd;
    for (const auto& [taster, samples] : times) {
        ASSERT_THAT(samples, SizeIs(2));
        for (const auto& [sample, count] : samples) {
            odd[sample] += count == 1 ? 1 : 0;
        }
    }
    EXPECT_EQ(odd[record.samples[0].id], 3);
    EXPECT_EQ(odd[record.samples[1].id], 3);
}

// Ids differ; what is served when, and under which code, does not.
TEST_F(TastingStoringTest, TheSameNumberServesTheSame)
{
    const auto plating = [&](std::int64_t number) {
        draft.panel.id = {};
        draft.panel.drawNumber = number;
        const PanelRecord record = stored();
        std::vector<std::string> lines;
        for (const Serving& serving : record.servings) {
            const auto taster =
                std::find_if(record.tasters.begin(), record.tasters.end(),
                             [&](const auto& one) { return one.id == serving.taster; });
            const auto sample =
                std::find_if(record.samples.begin(), record.samples.end(),
                             [&](const auto& one) { return one.id == serving.sample; });
            lines.push_back(taster->name + std::to_string(serving.turn) + serving.code +
                            std::to_string(sample->position));
        }
        return lines;
    };
    const auto first = plating(11);
    EXPECT_EQ(plating(11), first);
    EXPECT_NE(plating(12), first);
}

} // namespace
} // namespace plumule
