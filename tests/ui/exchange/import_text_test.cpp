#include "ui/exchange/import_text.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

ImportDoubt doubt(ImportDoubtKind kind)
{
    ImportDoubt made;
    made.line = 12;
    made.code = "RD%2";
    made.kind = kind;
    made.net = grams(1.23);
    made.against = grams(251.04);
    made.days = 41;
    return made;
}

TEST(ImportText, SaysWhatLooksWrongAndInWhichLine)
{
    EXPECT_EQ(doubtText(doubt(ImportDoubtKind::WeightOfOthers)),
              "Line 12, RD%2: 1.2 g, where the table's other trays of that variety make about "
              "251.0 g likely.");
    EXPECT_EQ(doubtText(doubt(ImportDoubtKind::WeightOfSeed)),
              "Line 12, RD%2: 1.2 g cut from 251.0 g of seed.");
}

TEST(ImportText, CountsTheDaysOfALongGrowth)
{
    ImportDoubt grown = doubt(ImportDoubtKind::LongGrowth);
    EXPECT_EQ(doubtText(grown), "Line 12, RD%2: cut 41 days after sowing.");
    grown.days = 1;
    EXPECT_EQ(doubtText(grown), "Line 12, RD%2: cut 1 day after sowing.");
}

} // namespace
} // namespace plumule::ui
