#include "ui/cost/costs_text.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

MediumCosts mediumWith(const char* name, double labour, double seed)
{
    TrayCost cost;
    cost.labour = labour;
    cost.seed = seed;
    cost.medium = cost.washing = cost.nutrient = cost.water = cost.light = cost.packaging = 0.0;
    CostSums sums;
    sums.addHarvested(cost, 1000, {PriceItem::Waste});
    MediumCosts costs;
    costs.medium.id = {1};
    costs.medium.name = name;
    costs.today = sums.breakdown();
    return costs;
}

CostsAnswer answerOf(std::vector<MediumCosts> media)
{
    CostsAnswer answer;
    answer.review.currency = "EUR";
    answer.harvested = static_cast<int>(media.size());
    answer.media = std::move(media);
    return answer;
}

TEST(CostsText, NamesTheCheapestItsCostAndItsLargestPart)
{
    const auto answer = answerOf({mediumWith("Steel mesh", 15, 5), mediumWith("Coir mix", 18, 6)});
    const QString headline = costsHeadline(answer);
    EXPECT_TRUE(
        headline.contains("those on Steel mesh cost least: 20.00 EUR/kg, 75 % of it labour"))
        << headline.toStdString();
    EXPECT_TRUE(costsHeadline(answerOf({})).contains("No tray"));
}

// 1.004 and 2.004 are 3.008: shown as 3.01, so one part is shown as 2.01 or 1.01.
TEST(CostsText, ShowsPartsThatAddUpAsTheyStand)
{
    const PartsTable table = partsTable(answerOf({mediumWith("Mat", 1.004, 2.004)}));
    double sum = 0;
    QString together;
    for (const TextRow& row : table.rows) {
        if (row.cells[0] == "labour" || row.cells[0] == "seed") {
            sum += row.cells[1].toDouble();
        }
        if (row.cells[0] == "together") {
            together = row.cells[1];
        }
    }
    EXPECT_EQ(together, "3.01");
    EXPECT_NEAR(sum, 3.01, 1e-9);
}

TEST(CostsText, ShowsAPartWithoutAPriceAsSuch)
{
    const PartsTable table = partsTable(answerOf({mediumWith("Mat", 1, 2)}));
    bool wasSeen = false;
    for (const TextRow& row : table.rows) {
        if (row.cells[0] == "waste") {
            wasSeen = true;
            EXPECT_TRUE(row.isWarned);
            EXPECT_EQ(row.cells[1], "no price");
        }
    }
    EXPECT_TRUE(wasSeen);
}

// A pound is 0.45359237 kg, a thousand US gallons are 3785.411784 L (NIST Handbook 44, appendix C).
TEST(CostsText, PricesOfAUsRoomAreSaidAsTheyAreUsuallyPaid)
{
    CostsAnswer answer = answerOf({mediumWith("Mat", 1, 2)});
    PriceHistory water;
    water.item = PriceItem::Water;
    EXPECT_EQ(unitOfPriced(water, answer).name, "EUR/L");
    EXPECT_EQ(unitOfPriced(water, answer).times, 1);
    answer.units = UnitSystem::UsCustomary;
    answer.review.currency = "USD";
    EXPECT_EQ(unitOfPriced(water, answer).name, "USD/1,000 gal");
    EXPECT_NEAR(unitOfPriced(water, answer).times, 3785.411784, 1e-6);
    EXPECT_EQ(unitOfPriced(PriceHistory(), answer).name, "USD/lb");
    EXPECT_NEAR(unitOfPriced(PriceHistory(), answer).times, 0.45359237, 1e-12);
    PriceHistory labour;
    labour.item = PriceItem::Labour;
    EXPECT_EQ(unitOfPriced(labour, answer).name, "USD/h");
}

TEST(CostsText, SaysWhichPriceIsMissingAndOfHowManyTrays)
{
    auto answer = answerOf({mediumWith("Mat", 1, 2)});
    EXPECT_EQ(lackText({PriceItem::Waste, std::nullopt, std::nullopt, 1}, answer),
              "Waste has no price and is left out of every bar.");
    EXPECT_TRUE(lackText({PriceItem::Waste, std::nullopt, date(2026, 6, 1), 1}, answer)
                    .contains("from 1 Jun 2026"));
    answer.lacks.seed = 1;
    EXPECT_FALSE(otherLacks(answer).isEmpty());
}

} // namespace
} // namespace plumule::ui
