#include "ui/text/price_units.h"

#include "tests/support/enumerators.h"

#include <QStringList>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

constexpr bool kLoose = true;
constexpr bool kPiece = false;

QString namesOf(const std::vector<PriceUnit>& units)
{
    QStringList names;
    for (const PriceUnit& unit : units) {
        names << unit.name;
    }
    return names.join(" | ");
}

QString usNames(PriceItem item, bool isLooseMix = kPiece,
                std::optional<PriceMeasure> given = std::nullopt)
{
    return namesOf(priceUnits(item, isLooseMix, UnitSystem::UsCustomary, given));
}

TEST(PriceUnits, OfAMetricRoomAreTheItemsOwn)
{
    const auto metric = [](PriceItem item, bool isLooseMix = kPiece) {
        return namesOf(priceUnits(item, isLooseMix, UnitSystem::Metric));
    };
    EXPECT_EQ(metric(PriceItem::Medium, kLoose), "a litre");
    EXPECT_EQ(metric(PriceItem::Medium, kPiece), "a piece");
    EXPECT_EQ(metric(PriceItem::Water), "a litre | a cubic metre");
    EXPECT_EQ(metric(PriceItem::Electricity), "a kilowatt-hour");
}

TEST(PriceUnits, OfAUsRoomAreThoseThatThingsAreSoldBy)
{
    EXPECT_EQ(usNames(PriceItem::Medium, kLoose), "a cubic foot | a quart");
    EXPECT_EQ(usNames(PriceItem::Medium, kPiece), "a piece");
    EXPECT_EQ(usNames(PriceItem::Concentrate), "a quart | a gallon | a fluid ounce");
    EXPECT_EQ(usNames(PriceItem::Water), "1,000 gallons | a gallon");
    EXPECT_EQ(usNames(PriceItem::Waste), "a pound of residue | an ounce of residue");
    EXPECT_EQ(usNames(PriceItem::Labour), "an hour");
}

TEST(PriceUnits, TheMeasureOfAStoredPriceIsAmongThemOnce)
{
    EXPECT_EQ(usNames(PriceItem::Water, kPiece, PriceMeasure::Unit),
              "1,000 gallons | a gallon | a litre");
    EXPECT_EQ(usNames(PriceItem::Water, kPiece, PriceMeasure::UsGallon),
              "1,000 gallons | a gallon");
    EXPECT_EQ(namesOf(priceUnits(PriceItem::Water, kPiece, UnitSystem::Metric,
                                 PriceMeasure::ThousandUsGallons)),
              "a litre | a cubic metre | 1,000 gallons");
}

TEST(PriceUnits, StandForTheMeasureThatTheyName)
{
    for (const auto& [measure, name] : enumeratorsOf<PriceMeasure>()) {
        const auto units = priceUnits(PriceItem::Packaging, kPiece, UnitSystem::Metric, measure);
        EXPECT_EQ(units.back().measure, measure) << name;
        EXPECT_FALSE(units.back().name.isEmpty()) << name;
        EXPECT_EQ(units.size(), measure == PriceMeasure::Unit ? 1U : 2U) << name;
    }
}

} // namespace
} // namespace plumule::ui
