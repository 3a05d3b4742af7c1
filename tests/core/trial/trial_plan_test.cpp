#include "core/trial/trial_plan.h"

#include "tests/core/trial/draft_samples.h"

namespace plumule {
namespace {

TEST(Design, IsReadBackFromItsText)
{
    for (const Design design :
         {Design::CompletelyRandom, Design::RandomizedBlocks, Design::LatinSquare}) {
        Design read{};
        EXPECT_TRUE(fromText(toText(design), read));
        EXPECT_EQ(read, design);
    }
    for (const Feeding feeding : {Feeding::AsProtocol, Feeding::Nutrient, Feeding::NoNutrient}) {
        Feeding read{};
        EXPECT_TRUE(fromText(toText(feeding), read));
        EXPECT_EQ(read, feeding);
    }
    Design design{};
    Feeding feeding{};
    EXPECT_FALSE(fromText("", design) || fromText("Latin", design) || fromText("fed", feeding));
}

TEST(TrialDraft, CountsItsTraysAndKnowsWhetherTheyAreSown)
{
    TrialDraft draft = draftOf(Design::CompletelyRandom, 3, 4);
    EXPECT_EQ(draft.count(), 12);
    draft.trays.resize(2);
    EXPECT_FALSE(draft.isSown());
    draft.trays[1].tray = TrayId{5};
    EXPECT_TRUE(draft.isSown());
}

} // namespace
} // namespace plumule
