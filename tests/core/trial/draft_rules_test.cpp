#include "core/trial/draft_rules.h"

#include "core/tray/tray_reason.h"
#include "core/trial/trial_reason.h"
#include "tests/core/trial/draft_samples.h"

namespace plumule {
namespace {

struct Fault
{
    const char* what;
    void (*spoil)(TrialDraft&);
    ErrorKind kind;
    Reason reason;
};

const Fault kFaults[] = {
    {"no variety", [](TrialDraft& d) { d.plan.variety = {}; }, ErrorKind::Missing,
     TrialReason::VarietyMissing},
    {"one treatment", [](TrialDraft& d) { d.treatments.resize(1); }, ErrorKind::TooFew,
     TrialReason::TooFewMedia},
    {"no treatment", [](TrialDraft& d) { d.treatments.clear(); }, ErrorKind::TooFew,
     TrialReason::TooFewMedia},
    {"one twice", [](TrialDraft& d) { d.treatments[1].medium = {1}; }, ErrorKind::Invalid,
     TrialReason::MediumTwice},
    {"no medium", [](TrialDraft& d) { d.treatments[1].medium = {}; }, ErrorKind::Missing,
     TrialReason::MediumMissing},
    {"no trays", [](TrialDraft& d) { d.plan.traysEach = 0; }, ErrorKind::TooFew,
     TrialReason::TraysEach},
    {"too many", [](TrialDraft& d) { d.plan.traysEach = 168; }, ErrorKind::Invalid,
     TrialReason::TooManyTrays},
    {"no multiple", [](TrialDraft& d) { d.plan.traysEach = 5; }, ErrorKind::Invalid,
     TrialReason::BlocksDontDivide},
    {"no block", [](TrialDraft& d) { d.plan.blocks = 0; }, ErrorKind::Invalid,
     TrialReason::BlocksDontDivide},
    {"no square", [](TrialDraft& d) { d.plan.design = Design::LatinSquare; }, ErrorKind::Invalid,
     TrialReason::SquareCount},
    {"other control", [](TrialDraft& d) { d.trial.control = MediumId{9}; }, ErrorKind::Invalid,
     TrialReason::ControlNotCompared},
    {"no margin", [](TrialDraft& d) { d.trial.margin = grams(0); }, ErrorKind::Invalid,
     TrialReason::Margin},
    {"no seed", [](TrialDraft& d) { d.plan.seedPerTray = grams(0); }, ErrorKind::Invalid,
     TrayReason::Seed},
    {"no spread", [](TrialDraft& d) { d.plan.spread = grams(-1); }, ErrorKind::Invalid,
     TrialReason::Spread},
};

TEST(Draft, IsRefusedWithTheFieldThatIsWrong)
{
    const TrialDraft sound = draftOf(Design::RandomizedBlocks, 3, 4, 2);
    EXPECT_TRUE(checkDraft(sound));
    for (const Fault& fault : kFaults) {
        TrialDraft draft = sound;
        fault.spoil(draft);
        const Done checked = checkDraft(draft);
        ASSERT_FALSE(checked) << fault.what;
        EXPECT_EQ(checked.error().kind, fault.kind) << fault.what;
        EXPECT_EQ(checked.error().reason, fault.reason) << fault.what;
    }
}

TEST(Draft, MayCompareOneMediumUnderTwoFeedings)
{
    TrialDraft draft = draftOf(Design::RandomizedBlocks, 2, 2, 2);
    draft.treatments[1].medium = draft.treatments[0].medium;
    draft.treatments[1].feeding = Feeding::NoNutrient;
    EXPECT_TRUE(checkDraft(draft));
}

TEST(Layout, IsRefusedWhereItIsAnotherPlans)
{
    TrialDraft draft = draftOf(Design::CompletelyRandom, 2, 2);
    EXPECT_EQ(checkLayout(draft).error(),
              (fail(ErrorKind::Missing, TrialReason::LayoutMissing).value()));
    draft.trays = drawn(draft, 1, shelvesOf({4}));
    EXPECT_TRUE(checkLayout(draft));
    TrialDraft other = draft;
    other.plan.traysEach = 3;
    EXPECT_EQ(checkLayout(other).error(),
              (fail(ErrorKind::Invalid, TrialReason::LayoutUneven).value()));
    other = draft;
    other.trays[0].treatment = 2;
    EXPECT_EQ(checkLayout(other).error(),
              (fail(ErrorKind::Invalid, TrialReason::LayoutUneven).value()));
    other = draft;
    other.trays[0].place = other.trays[1].place;
    EXPECT_EQ(checkLayout(other).error(),
              (fail(ErrorKind::Conflict, TrayReason::PlaceTwice).value()));
}

// What stands in the way before a name is given is the plan alone.
TEST(Draft, IsLookedAtWithoutItsName)
{
    TrialDraft draft = draftOf(Design::LatinSquare, 3, 3);
    draft.trial.name.clear();
    EXPECT_TRUE(checkDesign(draft));
    draft.plan.traysEach = 4;
    EXPECT_EQ(checkDesign(draft).error(),
              (fail(ErrorKind::Invalid, TrialReason::SquareCount, 3).value()));
}

// Every count from nothing to beyond the most, of every design: what is taken can be counted, and
// is what the design asks for.
TEST(Draft, TakesWhatItsDesignCanHoldAndNoMore)
{
    int taken = 0;
    for (const Design design :
         {Design::CompletelyRandom, Design::RandomizedBlocks, Design::LatinSquare}) {
        for (int treatments = 0; treatments <= 6; ++treatments) {
            for (int traysEach = -1; traysEach <= 12; ++traysEach) {
                for (int blocks = -1; blocks <= 6; ++blocks) {
                    const TrialDraft draft = draftOf(design, treatments, traysEach, blocks);
                    const bool isSound = treatments >= 2 && traysEach >= 1 &&
                                         (design != Design::RandomizedBlocks ||
                                          (blocks >= 1 && traysEach % blocks == 0)) &&
                                         (design != Design::LatinSquare || traysEach == treatments);
                    ASSERT_EQ(checkDesign(draft).has_value(), isSound)
                        << toText(design) << ' ' << treatments << ' ' << traysEach << ' ' << blocks;
                    taken += isSound ? 1 : 0;
                }
            }
        }
    }
    EXPECT_GT(taken, 100);
    EXPECT_TRUE(checkDesign(draftOf(Design::CompletelyRandom, 2, 250)));
    EXPECT_FALSE(checkDesign(draftOf(Design::CompletelyRandom, 2, 251)));
    EXPECT_EQ(checkDesign(draftOf(Design::CompletelyRandom, 2, 2'000'000'000)).error().reason,
              TrialReason::TooManyTrays)
        << "more than an int holds";
}

} // namespace
} // namespace plumule
