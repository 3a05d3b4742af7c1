#include "ui/review/pair_model.h"

#include "tests/ui/review/verdict_catalogue.h"

#include <QAbstractItemModelTester>

namespace plumule::ui {
namespace {

class PairModelTest : public testing::Test
{
protected:
    PairModelTest()
    {
        judge(five, stats::Verdict::More, 4.04, 12.16, 21);
        five.means[0].medium.marker = 3;
    }
    QString at(int row, PairModel::Column column)
    {
        return model.data(model.index(row, column), Qt::DisplayRole).toString();
    }

    PairModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    SeasonComparison five = comparisonOf(5);
};

TEST_F(PairModelTest, ShowsThePairInPercentAndInTheUnit)
{
    model.show(five);
    ASSERT_EQ(model.rowCount(), 1);
    EXPECT_EQ(at(0, PairModel::Pair), pairName(five.pairs.front(), five));
    EXPECT_EQ(at(0, PairModel::Trials), "5");
    EXPECT_EQ(at(0, PairModel::Percent), "12.2");
    EXPECT_EQ(at(0, PairModel::Interval), "4.0 to 21.0");
    EXPECT_EQ(at(0, PairModel::PlainWords), "more");
    EXPECT_EQ(model.row(0).marker, 3);
    EXPECT_FALSE(model.data(model.index(0, PairModel::Pair), Qt::DecorationRole).isNull());
}

TEST_F(PairModelTest, WhatIsNotKnownIsADash)
{
    MediaPair& pair = five.pairs.front();
    pair = {};
    pair.b = 1;
    pair.why = stats::NoVerdictReason::NeverMet;
    pair.verdict = stats::Verdict::NotComparable;
    model.show(five);
    const QString dash(QChar(0x2013));
    for (const auto column : {PairModel::Fed, PairModel::Trials, PairModel::Percent,
                              PairModel::Interval, PairModel::Difference}) {
        EXPECT_EQ(at(0, column), dash) << column;
    }
    EXPECT_EQ(at(0, PairModel::PlainWords), "not comparable");
}

TEST_F(PairModelTest, SaysHowTheTwoWereFed)
{
    Finding feeding;
    feeding.aspect = Aspect::Feeding;
    feeding.media = {{0, {{"nutrient", 9}}, {}, 0}, {1, {{"no_nutrient", 9}}, {}, 0}};
    const auto fed = [&] {
        five.fairness = {feeding};
        model.show(five);
        return at(0, PairModel::Fed);
    };
    EXPECT_EQ(fed(), "with, without");
    feeding.media[1].levels = {{"nutrient", 4}, {"no_nutrient", 5}};
    EXPECT_EQ(fed(), "with, both");
    feeding.media[1].levels = {{"nutrient", 4}};
    EXPECT_EQ(fed(), "alike");
    feeding.media.pop_back(); // of media that the finding does not know
    EXPECT_EQ(fed(), QString(QChar(0x2013)));
}

TEST_F(PairModelTest, GroupsComeFirstAndHaveNoMarker)
{
    five.groups = {{"reusable", {0}, 310.7, {}, false}, {"single_use", {1}, 276.1, {}, false}};
    five.groupPairs = five.pairs;
    model.show(five);
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_EQ(at(0, PairModel::Pair), groupPairName(five.groupPairs.front(), five));
    EXPECT_TRUE(model.data(model.index(0, PairModel::Pair), Qt::DecorationRole).isNull());
    EXPECT_EQ(model.row(1).marker, 3);
}

TEST_F(PairModelTest, VarietiesHaveRowsOfTheirOwnWhereTheyDiffer)
{
    VarietyPart peas;
    peas.variety = "Pea";
    peas.pairs = five.pairs;
    five.byVariety = {peas};
    five.gate = stats::VarietyGate();
    model.show(five);
    EXPECT_EQ(model.rowCount(), 1) << "media do alike on all of them";
    five.gate->isOpen = true;
    model.show(five);
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_EQ(at(1, PairModel::Pair), "Pea: " + pairName(five.pairs.front(), five));
    five.variety = VarietyId{2}; // one was asked for
    model.show(five);
    EXPECT_EQ(model.rowCount(), 1);
}

TEST_F(PairModelTest, OfNothingIsEmpty)
{
    model.show(five);
    five.pairs.clear();
    model.show(five);
    EXPECT_EQ(model.rowCount(), 0);
    EXPECT_EQ(model.columnCount(), PairModel::Columns);
}

} // namespace
} // namespace plumule::ui
