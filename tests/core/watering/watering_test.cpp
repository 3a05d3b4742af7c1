#include "core/watering/watering.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

TEST(Concentrate, IsLitresTimesTheDose)
{
    EXPECT_EQ(concentrateFor(litres(2), millilitres(10)), millilitres(20));
    EXPECT_EQ(concentrateFor(millilitres(250), millilitres(4)), millilitres(1));
    EXPECT_EQ(concentrateFor(Volume{}, millilitres(10)), Volume{});
    EXPECT_EQ(concentrateFor(litres(2), Volume{}), Volume{});
}

// 1.888 L at 11.71875 mL/L (1.5 fl oz a gallon) is 22.125 mL.
TEST(Concentrate, KeepsFractionsOfAMillilitre)
{
    EXPECT_EQ(concentrateFor(millilitres(1888), millilitres(11.71875)), millilitres(22.125));
}

// NIST SP 811: a US gallon is 3.785 411 784 L and a 128th of it a fluid ounce, so that an ounce to
// the gallon is 1000/128 mL/L exactly.
TEST(Concentrate, ReadsOuncesAGallon)
{
    EXPECT_DOUBLE_EQ(millilitresPerLitreFrom(1), 1000.0 / 128);
    EXPECT_DOUBLE_EQ(millilitresPerLitreFrom(0.5), 500.0 / 128);
    EXPECT_EQ(millilitresPerLitreFrom(0), 0);
}

TEST(TrayRemark, IsEmptyUntilSomethingIsSaid)
{
    const TrayRemark nothing;
    EXPECT_TRUE(nothing.isEmpty());
    TrayRemark remark;
    remark.note = "mould at the rim";
    EXPECT_FALSE(remark.isEmpty());
    remark = nothing;
    remark.height = millimetres(0);
    EXPECT_FALSE(remark.isEmpty()) << "a height of 0 was read";
    remark = nothing;
    remark.given = Volume{};
    EXPECT_FALSE(remark.isEmpty());
    remark = nothing;
    remark.ph = 6.1;
    EXPECT_FALSE(remark.isEmpty());
    remark = nothing;
    remark.ec = 0;
    EXPECT_FALSE(remark.isEmpty());
    remark = nothing;
    remark.water = WaterKind::Nutrient;
    EXPECT_TRUE(remark.isEmpty()) << "what a reading would be of is none";
}

} // namespace
} // namespace plumule
