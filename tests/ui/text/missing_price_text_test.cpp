#include "ui/text/missing_price_text.h"

#include "tests/support/enumerators.h"
#include "tests/ui/text/sentence_check.h"

#include <QStringList>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

TEST(MissingPriceText, NamesTheThingAndTheMediumByItsName)
{
    EXPECT_EQ(sentence({PriceItem::Medium, std::nullopt}, "Steel mesh"),
              "There is no price of Steel mesh.");
    EXPECT_EQ(sentence({PriceItem::Electricity, std::nullopt}, "Steel mesh"),
              "There is no price of electricity.");
}

TEST(MissingPriceText, SaysFromWhenThereIsOne)
{
    EXPECT_EQ(sentence({PriceItem::Water, date(2026, 3, 12)}, "Steel mesh"),
              "The first price of water is from 12 Mar 2026, after the sowing.");
}

TEST(MissingPriceText, LeavesANameWithMarksAsItStands)
{
    EXPECT_EQ(sentence({PriceItem::Medium, date(2026, 3, 12)}, "Mix %1 & %2"),
              "The first price of Mix %1 & %2 is from 12 Mar 2026, after the sowing.");
}

TEST(MissingPriceText, HasASentenceForEachLackOfASeed)
{
    QStringList said;
    for (const auto& [lack, name] : enumeratorsOf<SeedLack>()) {
        EXPECT_EQ(blemish(sentence(lack)), "") << name;
        EXPECT_FALSE(said.contains(sentence(lack))) << name;
        said << sentence(lack);
    }
    EXPECT_EQ(said.size(), 4);
}

} // namespace
} // namespace plumule::ui
