#include "ui/harvest/weigh_text.h"

#include "core/base/text_reason.h"
#include "core/harvest/harvest_reason.h"
#include "core/starter/starter_yields.h"
#include "core/tray/tray_reason.h"
#include "tests/support/enumerators.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

constexpr MassUnit kGrams = MassUnit::Gram;
constexpr MassUnit kOunces = MassUnit::Ounce;

// PE057, pea tendril on steel mesh, expected between 266 and 310 g by three first cuts.
TrayAtScale peas()
{
    TrayAtScale tray;
    tray.record.tray.code = "PE057";
    tray.record.variety = "Pea tendril";
    tray.record.medium.name = "Steel mesh";
    ExpectedRange& expected = tray.facts.expected;
    expected.from = RangeSource::VarietyOnMedium;
    expected.low = grams(266);
    expected.high = grams(310);
    expected.past.resize(3);
    expected.past[0].on = date(2026, 3, 12);
    expected.past[1].on = date(2026, 2, 3);
    expected.past[2].on = date(2026, 2, 20);
    return tray;
}

TEST(WeighText, SaysWhatIsExpectedAndSinceWhen)
{
    EXPECT_EQ(expectedText(peas(), Weighing::Cut, kGrams),
              QString::fromUtf8("Expected 266–310 g net, 19 times in 20: from 3 first cuts of Pea "
                                "tendril on Steel mesh since 3 Feb 2026."));
    EXPECT_EQ(rangeText(peas().facts.expected, kOunces), QString::fromUtf8("9.4–10.9 oz"));
}

TEST(WeighText, NamesWhereTheRangeComesFrom)
{
    TrayAtScale tray = peas();
    const auto source = [&](RangeSource from) {
        tray.facts.expected.from = from;
        return rangeSourceText(tray, Weighing::Cut);
    };
    EXPECT_EQ(source(RangeSource::SameTrial),
              "from 3 first cuts of this trial, whatever they grew on");
    EXPECT_EQ(source(RangeSource::Variety),
              "from 3 first cuts of Pea tendril on any medium since 3 Feb 2026");
    tray.facts.expected.past[0].variety = {4};
    tray.facts.expected.past[1].variety = {5};
    tray.facts.expected.past[2].variety = {4};
    EXPECT_EQ(source(RangeSource::RoomBySeed),
              "from 3 first cuts of 2 other varieties, by their seed");
    tray.cut = 2;
    tray.facts.expected.past.resize(1);
    EXPECT_TRUE(source(RangeSource::SameTrial).startsWith("from 1 second cut of"));
    tray.cut = 3;
    EXPECT_TRUE(source(RangeSource::SameTrial).startsWith("from 1 cut of that number of"));
    EXPECT_TRUE(rangeSourceText(tray, Weighing::Residue).startsWith("from 1 residue of"));
}

TEST(WeighText, OfTheLibraryNamesWhatWasRead)
{
    TrayAtScale tray = peas();
    tray.facts.expected.from = RangeSource::Library;
    tray.facts.expected.past.clear();
    tray.facts.expected.source = "Someone 2023";
    EXPECT_EQ(expectedText(tray, Weighing::Cut, kGrams),
              QString::fromUtf8("Expected 266–310 g net, a wide bound around the yields of Someone "
                                "2023: too few trays are weighed yet."));
    tray.facts.expected.source = kFromMemory;
    EXPECT_TRUE(rangeSourceText(tray, Weighing::Cut).contains("yields from memory"));
    EXPECT_TRUE(rangeSourceText(tray, Weighing::Residue).contains("too few residues"));
}

TEST(WeighText, WithoutARangeNamesTheCutThatIsTooRare)
{
    TrayAtScale tray = peas();
    tray.facts.expected = {};
    tray.cut = 2;
    EXPECT_EQ(expectedText(tray, Weighing::Cut, kGrams),
              "There are too few second cuts yet to expect a weight by.");
    tray.cut = 3;
    EXPECT_EQ(expectedText(tray, Weighing::Cut, kGrams),
              "There are too few cuts of that number yet to expect a weight by.");
}

TEST(WeighText, AsksAboutASlipOfTheDecimalPoint)
{
    const std::vector<BowlDraft> bowls = {{grams(3250), grams(38.5)}};
    const QuestionText asked = slipText(peas(), bowls, {0, grams(325), grams(286.5)}, kGrams);
    EXPECT_EQ(asked.title, "3250.0 g is ten times what PE057 should weigh. Did you mean 325.0 g?");
    EXPECT_EQ(asked.words, QString::fromUtf8("325.0 − 38.5 = 286.5 g net, within the expected "
                                             "266–310 g."));
    const auto titleOf = [](double typed, double meant) {
        return slipText(peas(), {{grams(typed), {}}}, {0, grams(meant), grams(meant)}, kGrams)
            .title;
    };
    EXPECT_TRUE(titleOf(28'650, 286.5).contains("is a hundred times what"));
    EXPECT_TRUE(titleOf(28.65, 286.5).contains("is a tenth of what"));
    EXPECT_TRUE(titleOf(2.865, 286.5).contains("is a hundredth of what"));
}

// 10.1 oz are 286.3 g: typed into a scale of grams, 10.1.
TEST(WeighText, AWeightInTheOtherUnitIsAskedAboutAsThat)
{
    const Mass meant = grams(10.1 * 28.349523125);
    const std::vector<BowlDraft> bowls = {{grams(10.1), {}}};
    const QuestionText asked = slipText(peas(), bowls, {0, meant, meant}, kGrams);
    EXPECT_EQ(asked.title, "10.1 g is far from what PE057 should weigh. Did you mean 10.10 oz?");
    EXPECT_TRUE(asked.words.startsWith("286.3 g net")) << asked.words.toStdString();
    EXPECT_EQ(slipAnswerText(bowls, {0, grams(101), grams(101)}, kGrams), "101.0 g");
}

TEST(WeighText, OfSeveralBowlsShowsTheSum)
{
    const std::vector<BowlDraft> bowls = {{grams(200), grams(40)}, {grams(100), {}}};
    const QuestionText asked =
        doubtsText(peas(), bowls, {Doubt::AlreadyWeighed, Doubt::UnstableReading}, kGrams);
    EXPECT_EQ(asked.title, "This tray is weighed already. The scale had not come to rest.");
    EXPECT_EQ(asked.words, QString::fromUtf8("200.0 − 40.0 + 100.0 = 260.0 g net for PE057."));
    EXPECT_EQ(doubtsText(peas(), {{grams(260), {}}}, {Doubt::TareForgotten}, kGrams).words,
              "260.0 g net for PE057.");
    for (const auto& [doubt, name] : enumeratorsOf<Doubt>()) {
        const QString title = doubtsText(peas(), bowls, {doubt}, kGrams).title;
        EXPECT_TRUE(title.endsWith('.')) << name;
    }
}

TEST(WeighText, SaysWhyATrayCantBeWeighed)
{
    EXPECT_EQ(cannotWeighText("XX9", fail(ErrorKind::NotFound, TrayReason::CodeUnknown).value()),
              "No tray is called XX9. Check the label.");
    const Error discarded =
        fail(ErrorKind::Conflict, HarvestReason::TrayDiscarded, "PE057").value();
    EXPECT_EQ(cannotWeighText("PE057", discarded), sentence(discarded));
    const Error other = fail(ErrorKind::NotFound, HarvestReason::Unknown).value();
    EXPECT_EQ(cannotWeighText("PE057", other), "PE057 can't be weighed. " + sentence(other));
}

TEST(WeighText, SaysWhatACommaMayMean)
{
    EXPECT_EQ(
        noWeightText(fail(ErrorKind::Ambiguous, TextReason::ThousandsOrDecimals, "1,234").value()),
        QString::fromUtf8("“1,234” may be 1234 or 1.234. Type one of them."));
}

} // namespace
} // namespace plumule::ui
