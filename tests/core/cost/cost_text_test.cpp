#include "core/cost/cost.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// Words that journals and tables of prices hold already; that each is read back is tested with all
// that are stored.
TEST(CostText, PricesAreStoredByTheseWords)
{
    const std::pair<PriceItem, const char*> items[] = {
        {PriceItem::Medium, "medium"},   {PriceItem::Concentrate, "concentrate"},
        {PriceItem::Water, "water"},     {PriceItem::Electricity, "electricity"},
        {PriceItem::Labour, "labour"},   {PriceItem::Packaging, "packaging"},
        {PriceItem::Washing, "washing"}, {PriceItem::Waste, "waste"},
    };
    for (const auto& [item, word] : items) {
        EXPECT_STREQ(toText(item), word);
    }
    PriceItem item = PriceItem::Water;
    EXPECT_FALSE(fromText("Waste", item)) << "as they are written alone";
    EXPECT_FALSE(fromText("", item));
    EXPECT_EQ(item, PriceItem::Water);
}

TEST(CostText, MeasuresAreStoredByTheseWords)
{
    const std::pair<PriceMeasure, const char*> measures[] = {
        {PriceMeasure::Unit, "unit"},
        {PriceMeasure::CubicMetre, "cubic_metre"},
        {PriceMeasure::CubicFoot, "cubic_foot"},
        {PriceMeasure::UsQuart, "us_quart"},
        {PriceMeasure::UsGallon, "us_gallon"},
        {PriceMeasure::ThousandUsGallons, "thousand_us_gallons"},
        {PriceMeasure::UsFluidOunce, "us_fluid_ounce"},
        {PriceMeasure::Pound, "pound"},
        {PriceMeasure::Ounce, "ounce"},
    };
    for (const auto& [measure, word] : measures) {
        EXPECT_STREQ(toText(measure), word);
    }
}

TEST(CostText, TasksAreStoredByTheseWords)
{
    const std::pair<LabourKind, const char*> tasks[] = {
        {LabourKind::Sowing, "sowing"},
        {LabourKind::Watering, "watering"},
        {LabourKind::StageMove, "stage_move"},
        {LabourKind::Harvesting, "harvesting"},
        {LabourKind::Packing, "packing"},
        {LabourKind::ClearingOut, "clearing_out"},
        {LabourKind::PieceWashing, "piece_washing"},
    };
    for (const auto& [task, word] : tasks) {
        EXPECT_STREQ(toText(task), word);
    }
}

} // namespace
} // namespace plumule
