#include "core/tasting/tasting_rules.h"

#include "core/tasting/tasting_reason.h"

#include <functional>
#include <gtest/gtest.h>

namespace plumule {
namespace {

PanelDraft soundDraft()
{
    PanelDraft draft;
    draft.panel.name = "Spring tasting";
    draft.media = {{1}, {2}, {3}};
    draft.attributes = {"crunch", "flavour"};
    draft.tasters = {"Ana", "Ben"};
    return draft;
}

TEST(TastingRules, MethodsAreReadBackFromTheirText)
{
    for (const TastingMethod method :
         {TastingMethod::Hedonic, TastingMethod::Ranking, TastingMethod::Triangle}) {
        TastingMethod read{};
        ASSERT_TRUE(fromText(toText(method), read));
        EXPECT_EQ(read, method);
    }
    TastingMethod untouched = TastingMethod::Ranking;
    EXPECT_FALSE(fromText("guess", untouched));
    EXPECT_EQ(untouched, TastingMethod::Ranking);
}

TEST(TastingRules, TidyingTrimsAndLeavesEmptyLinesOut)
{
    PanelDraft draft = soundDraft();
    draft.panel.name = "  Spring ";
    draft.tasters = {" Ana", "", "  ", "Ben "};
    const PanelDraft tidy = tidied(draft);
    EXPECT_EQ(tidy.panel.name, "Spring");
    EXPECT_EQ(tidy.tasters, (std::vector<std::string>{"Ana", "Ben"}));
    draft.panel.method = TastingMethod::Triangle;
    EXPECT_EQ(tidied(draft).attributes, std::vector<std::string>{kOddOne});
}

struct Fault
{
    std::function<void(PanelDraft&)> spoil;
    ErrorKind kind;
    Reason reason;
};

const Fault kFaults[] = {
    {[](PanelDraft& d) { d.panel.name = ""; }, ErrorKind::Missing, TastingReason::NameMissing},
    {[](PanelDraft& d) { d.media.resize(1); }, ErrorKind::TooFew, TastingReason::TooFewMedia},
    {[](PanelDraft& d) {
         d.media = {{1}, {1}};
     },
     ErrorKind::Duplicate, TastingReason::MediumTwice},
    {[](PanelDraft& d) {
         d.media.clear();
         for (int id = 1; id <= 10; ++id) {
             d.media.push_back({id});
         }
     },
     ErrorKind::Invalid, TastingReason::TooManyMedia},
    {[](PanelDraft& d) { d.panel.method = TastingMethod::Triangle; }, ErrorKind::Invalid,
     TastingReason::TriangleMedia},
    {[](PanelDraft& d) { d.tasters.clear(); }, ErrorKind::TooFew, TastingReason::NoTasters},
    {[](PanelDraft& d) {
         d.tasters = {"Ana", "ANA"};
     },
     ErrorKind::Duplicate, TastingReason::TasterTwice},
    {[](PanelDraft& d) { d.attributes.clear(); }, ErrorKind::TooFew, TastingReason::NoAttributes},
    {[](PanelDraft& d) {
         d.attributes = {"crunch", "Crunch"};
     },
     ErrorKind::Duplicate, TastingReason::AttributeTwice},
    {[](PanelDraft& d) { d.attributes.assign(9, "x"); }, ErrorKind::Invalid,
     TastingReason::TooManyAttributes},
    {[](PanelDraft& d) { d.tasters.assign(301, "x"); }, ErrorKind::Invalid,
     TastingReason::TooManyServings},
};

TEST(TastingRules, RefusesAPanelThatCantBeTasted)
{
    EXPECT_TRUE(checkPanel(soundDraft()));
    for (const Fault& each : kFaults) {
        PanelDraft draft = soundDraft();
        each.spoil(draft);
        const Done checked = checkPanel(draft);
        ASSERT_FALSE(checked) << each.reason.code();
        EXPECT_EQ(checked.error().kind, each.kind) << each.reason.code();
        EXPECT_EQ(checked.error().reason, each.reason);
    }
}

TEST(TastingRules, ANameThatTellsAMediumIsRefused)
{
    PanelDraft draft = soundDraft();
    const std::vector<std::string> media{"Coir mix", "Steel mesh"};
    EXPECT_TRUE(checkIsBlind(draft, media));
    draft.panel.name = "coir MIX against the rest";
    EXPECT_EQ(checkIsBlind(draft, media).error(),
              (fail(ErrorKind::Conflict, TastingReason::NamesAMedium, "Coir mix").value()));
    draft = soundDraft();
    draft.attributes.push_back("taste of steel mesh");
    EXPECT_EQ(checkIsBlind(draft, media).error().values, std::vector<std::string>{"Steel mesh"});
}

TEST(TastingRules, ScoresHaveTheRangeOfTheirMethod)
{
    const struct
    {
        TastingMethod method;
        int value;
        bool isTaken;
    } kCases[] = {{TastingMethod::Hedonic, 0, false}, {TastingMethod::Hedonic, 1, true},
                  {TastingMethod::Hedonic, 9, true},  {TastingMethod::Hedonic, 10, false},
                  {TastingMethod::Ranking, 1, true},  {TastingMethod::Ranking, 4, true},
                  {TastingMethod::Ranking, 5, false}, {TastingMethod::Ranking, -1, false},
                  {TastingMethod::Triangle, 1, true}, {TastingMethod::Triangle, 2, false}};
    for (const auto& each : kCases) {
        EXPECT_EQ(checkScore(each.method, 4, each.value).has_value(), each.isTaken)
            << toText(each.method) << " " << each.value;
    }
}

// Two tasters, two samples, one attribute.
PanelRecord smallRecord(TastingMethod method)
{
    PanelRecord record;
    record.panel.method = method;
    record.samples = {{{1}, {}, 0, {1}}, {{2}, {}, 1, {2}}};
    record.attributes = {{{1}, {}, 0, "crunch"}};
    record.tasters = {{{1}, {}, 0, "Ana"}, {{2}, {}, 1, "Ben"}};
    record.servings = {{{1}, {}, {1}, {1}, 2, "512"},
                       {{2}, {}, {1}, {2}, 1, "217"},
                       {{3}, {}, {2}, {1}, 1, "834"},
                       {{4}, {}, {2}, {2}, 2, "406"}};
    return record;
}

TEST(TastingRules, SaysWhichCodesLackAScoreByTurn)
{
    PanelRecord record = smallRecord(TastingMethod::Hedonic);
    record.scores = {{{1}, {3}, {1}, 7}};
    const auto missing = missingScores(record);
    ASSERT_EQ(missing.size(), 2u);
    EXPECT_EQ(missing[0].taster.name, "Ana");
    EXPECT_EQ(missing[0].codes, (std::vector<std::string>{"217", "512"}));
    EXPECT_EQ(missing[1].codes, std::vector<std::string>{"406"});
    EXPECT_EQ(scoresWanted(record), 4);
}

TEST(TastingRules, OneChoiceIsAllThatATriangleAsks)
{
    PanelRecord record = smallRecord(TastingMethod::Triangle);
    record.scores = {{{1}, {1}, {1}, 1}};
    const auto missing = missingScores(record);
    ASSERT_EQ(missing.size(), 1u);
    EXPECT_EQ(missing[0].taster.name, "Ben");
    EXPECT_EQ(scoresWanted(record), 2);
}

TEST(TastingRules, FindsARankGivenTwice)
{
    PanelRecord record = smallRecord(TastingMethod::Ranking);
    record.scores = {{{1}, {1}, {1}, 1}, {{2}, {2}, {1}, 1}, {{3}, {3}, {1}, 1}};
    const auto twice = ranksTwice(record);
    ASSERT_EQ(twice.size(), 1u);
    EXPECT_EQ(twice[0].taster.name, "Ana");
    EXPECT_EQ(twice[0].rank, 1);
    EXPECT_EQ(twice[0].codes, (std::vector<std::string>{"217", "512"}));
    record.panel.method = TastingMethod::Hedonic;
    EXPECT_TRUE(ranksTwice(record).empty()) << "two scores may be alike";
}

TEST(TastingRules, ServingsAreFoundByTheirCode)
{
    const PanelRecord record = smallRecord(TastingMethod::Hedonic);
    ASSERT_NE(servingWith(record, "834"), nullptr);
    EXPECT_EQ(tasterOf(record, *servingWith(record, "834"))->name, "Ben");
    EXPECT_EQ(servingWith(record, "835"), nullptr);
}

} // namespace
} // namespace plumule
