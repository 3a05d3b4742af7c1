#include "core/base/quantity.h"

#include "core/base/money.h"

#include <fstream>
#include <gtest/gtest.h>
#include <map>
#include <sstream>
#include <string>

namespace plumule {
namespace {

template <class A, class B>
concept Addable = requires(A a, B b)
{
    a + b;
};
template <class A, class B>
concept Comparable = requires(A a, B b)
{
    a < b;
};

static_assert(Addable<Mass, Mass>);
static_assert(!Addable<Mass, Volume>, "a weight and a volume do not add");
static_assert(!Addable<Volume, Length>, "a volume and a length do not add");
static_assert(!Addable<Mass, Money>, "a weight and a sum of money do not add");
static_assert(!Addable<Mass, double>, "a bare number is no weight");
static_assert(!Comparable<Mass, Length>, "a weight is not longer than a length");
static_assert(Comparable<Mass, Mass>);

// units.csv: definitions of NIST SP 811, Appendix B; its rows say where each was read.
std::map<std::string, double> publishedUnits()
{
    std::ifstream file(std::string(PLUMULE_REFERENCES) + "/handbook/units.csv");
    std::map<std::string, double> units;
    for (std::string line; std::getline(file, line);) {
        std::istringstream cells(line);
        std::string name;
        std::string symbol;
        std::string value;
        if (std::getline(cells, name, ',') && std::getline(cells, symbol, ',') &&
            std::getline(cells, value, ',') && !value.empty() && value != "value") {
            units.emplace(name, std::strtod(value.c_str(), nullptr));
        }
    }
    return units;
}

class UnitTest : public ::testing::Test
{
protected:
    void expectPublished(const std::string& name, double ours)
    {
        const auto found = units.find(name);
        ASSERT_NE(found, units.end()) << name << " is not in the table";
        EXPECT_DOUBLE_EQ(found->second, ours) << name;
    }

    std::map<std::string, double> units = publishedUnits();
};

TEST_F(UnitTest, DefinitionsAreThePublishedOnes)
{
    expectPublished("inch", kMillimetresPerInch);
    expectPublished("ounce (avoirdupois)", kGramsPerOunce);
    expectPublished("pound (avoirdupois)", kGramsPerPound);
    expectPublished("US gallon", kMillilitresPerUsGallon);
    expectPublished("US fluid ounce", kMillilitresPerUsFluidOunce);
    expectPublished("US cup (customary)", kMillilitresPerUsCup);
}

TEST_F(UnitTest, TheUnitsAgreeWithEachOther)
{
    EXPECT_NEAR(kGramsPerPound, 16 * kGramsPerOunce, 1e-9);
    EXPECT_NEAR(kMillilitresPerUsGallon, 128 * kMillilitresPerUsFluidOunce, 1e-9);
    EXPECT_NEAR(kMillilitresPerUsCup, 8 * kMillilitresPerUsFluidOunce, 1e-9);
    // A US gallon is 231 cubic inches.
    EXPECT_NEAR(kMillilitresPerUsGallon, 231 * 2.54 * 2.54 * 2.54, 1e-9);
}

TEST(Quantity, IsCountedInItsSmallUnit)
{
    EXPECT_EQ(grams(120).count(), 120'000);
    EXPECT_EQ(millilitres(118).count(), 118'000);
    EXPECT_EQ(litres(1.5).count(), 1'500'000);
    EXPECT_EQ(millimetres(25.4).count(), 25'400);
    EXPECT_EQ(ounces(1).count(), 28'350) << "28 349.523125 mg, rounded to the nearest";
    EXPECT_EQ(pounds(1).count(), 453'592);
    EXPECT_EQ(usGallons(1).count(), 3'785'412);
    EXPECT_EQ(usCups(0.5).count(), 118'294);
    EXPECT_EQ(usFluidOunces(1).count(), 29'574);
    EXPECT_EQ(inches(20).count(), 508'000);
}

TEST(Quantity, LeavesAsItEntered)
{
    EXPECT_DOUBLE_EQ(inGrams(grams(331.5)), 331.5);
    EXPECT_DOUBLE_EQ(inMillilitres(millilitres(118)), 118);
    EXPECT_DOUBLE_EQ(inLitres(litres(1.89)), 1.89);
    EXPECT_DOUBLE_EQ(inMillimetres(millimetres(25)), 25);
    EXPECT_NEAR(inOunces(ounces(11.69)), 11.69, 2e-5);
    EXPECT_NEAR(inUsGallons(usGallons(0.5)), 0.5, 1e-6);
    EXPECT_NEAR(inUsFluidOunces(usFluidOunces(4)), 4, 1e-4);
    EXPECT_NEAR(inInches(inches(2)), 2, 1e-9);
}

TEST(Quantity, AddsSubtractsAndScales)
{
    EXPECT_EQ(grams(100) + grams(20.5), grams(120.5));
    EXPECT_EQ(grams(100) - grams(120), -grams(20));
    EXPECT_EQ(millilitres(118) * 16, millilitres(1888));
    EXPECT_EQ(grams(10).scaledBy(1.0 / 3.0), milligrams(3333));
    EXPECT_DOUBLE_EQ(grams(30) / grams(12), 2.5);
    EXPECT_LT(micrometres(999), millimetres(1));
    EXPECT_EQ(microlitres(1000), millilitres(1));
}

TEST(Money, IsExactToATenThousandthOfItsUnit)
{
    EXPECT_EQ(money(0.1).count(), 1000);
    EXPECT_DOUBLE_EQ(inUnits(money(18.00)), 18.0);
    EXPECT_EQ(money(0.1) + money(0.2), money(0.3));
    EXPECT_EQ(money(1) - money(1.5), money(-0.5));
    EXPECT_EQ(money(10).scaledBy(1.0 / 3.0), Money::ofCount(33'333));
    EXPECT_GT(money(0.0001), Money{});
}

} // namespace
} // namespace plumule
