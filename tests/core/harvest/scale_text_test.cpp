#include "core/harvest/scale_text.h"

#include "core/base/text_reason.h"

#include "core/harvest/harvest_reason.h"

#include <gtest/gtest.h>
#include <random>

namespace plumule {
namespace {

struct ReadingCase
{
    const char* text;
    MassUnit unit;
    std::int64_t milligrams;
    bool isStable;
    bool isNet;
};

// Ounces and pounds by NIST SP 811: 1 oz = 28.349523125 g, 1 lb = 453.59237 g.
constexpr ReadingCase kReadings[] = {
    {"331.5", MassUnit::Gram, 331'500, true, false},
    {"331,5 g", MassUnit::Gram, 331'500, true, false},
    {"331,5", MassUnit::Gram, 331'500, true, false},
    {"12,5", MassUnit::Gram, 12'500, true, false},
    {" 331.5g\r\n", MassUnit::Gram, 331'500, true, false},
    {"+0331.5 g", MassUnit::Gram, 331'500, true, false},
    {"+0331.5 G", MassUnit::Gram, 331'500, true, false},
    {"ST,GS,  331.5g", MassUnit::Gram, 331'500, true, false},
    {"ST,GS,  331,5g", MassUnit::Gram, 331'500, true, false},
    {"st,nt,+00289.5 g", MassUnit::Gram, 289'500, true, true},
    {"US,NT,+ 12.3 g", MassUnit::Gram, 12'300, false, true},
    {"US,GS,  331.5g", MassUnit::Gram, 331'500, false, false},
    {"331.5 g ?", MassUnit::Gram, 331'500, false, false},
    {"? 331.5 g", MassUnit::Gram, 331'500, false, false},
    {"1.234", MassUnit::Gram, 1'234, true, false},
    {"0,234", MassUnit::Gram, 234, true, false},
    {"0.3 kg", MassUnit::Gram, 300'000, true, false},
    {"0,3315 kg", MassUnit::Ounce, 331'500, true, false},
    {"11.69 oz", MassUnit::Gram, 331'406, true, false},
    {"11.69", MassUnit::Ounce, 331'406, true, false},
    {"331.5 g", MassUnit::Ounce, 331'500, true, false},
    {"1 lb", MassUnit::Gram, 453'592, true, false},
    {"-2.5 g", MassUnit::Gram, -2'500, true, false},
    {"- 2.5 g", MassUnit::Gram, -2'500, true, false},
    {"0", MassUnit::Gram, 0, true, false},
    {"50 kg", MassUnit::Gram, 50'000'000, true, false},
    {"-50000", MassUnit::Gram, -50'000'000, true, false},
};

TEST(ScaleText, ReadsWhatIsTypedAndWhatScalesSend)
{
    for (const ReadingCase& expected : kReadings) {
        const auto reading = scaleReadingFrom(expected.text, expected.unit);
        ASSERT_TRUE(reading) << expected.text;
        EXPECT_EQ(reading->mass.count(), expected.milligrams) << expected.text;
        EXPECT_EQ(reading->isStable, expected.isStable) << expected.text;
        EXPECT_EQ(reading->isNet, expected.isNet) << expected.text;
    }
}

constexpr const char* kRefused[] = {
    "",           " ",     "g",         "?",         "+",          "331.5.2",     "1.234,5",
    "1,234.5",    "1 234", "331.5 gg",  "331.5 g g", "331.5 ml",   "331.5 t",     "331..5",
    "3e2",        "0x10",  "inf",       "nan",       "RD029",      "OL,GS, 99 g", "TR,GS,42 g",
    "ST;331.5g",  "--5",   "+-5 g",     "50.001 kg", "-50001",     "111 lb",      "ST,",
    "331.5 g 12", "3 3 1", "331,5,2 g", "ST,GS,",    "S,GS,331 g", "331.5 € g",
};

TEST(ScaleText, RefusesWhatIsNotOneWeight)
{
    for (const char* text : kRefused) {
        const auto reading = scaleReadingFrom(text, MassUnit::Gram);
        ASSERT_FALSE(reading) << text;
        EXPECT_EQ(reading.error().kind, ErrorKind::Invalid) << text;
        EXPECT_EQ(reading.error().reason, HarvestReason::ScaleText) << text;
        EXPECT_EQ(reading.error().values, std::vector<std::string>{text});
    }
}

TEST(ScaleText, AsksWhichIsMeantWhereACommaMayPartThousandsOrDecimals)
{
    for (const char* text :
         {"1,234", "1,234 g", "ST,GS,+ 1,234kg", "331,500", "12,345 g", "-1,234 oz"}) {
        const auto reading = scaleReadingFrom(text, MassUnit::Gram);
        ASSERT_FALSE(reading) << text;
        EXPECT_EQ(reading.error(),
                  fail(ErrorKind::Ambiguous, TextReason::ThousandsOrDecimals, text).value())
            << text;
    }
    EXPECT_EQ(scaleReadingFrom("1,234 apples", MassUnit::Gram).error().kind, ErrorKind::Invalid);
}

// Seed 9: any weight that a scale shows in grams is read to the milligram, in every frame that
// scales put around it, and never beyond what a scale can hold.
TEST(ScaleText, ReadsAnyWeightInAnyFrame)
{
    std::mt19937 draw(9);
    for (int round = 0; round < 1000; ++round) {
        const auto tenths = static_cast<std::int64_t>(draw() % 500'000);
        const std::string grams = std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
        for (const auto& [before, after] :
             {std::pair("", ""), std::pair("ST,GS,  ", "g"), std::pair("+", " g"),
              std::pair("US,NT,+ ", " g\r\n"), std::pair("  ", " G ")}) {
            const std::string text = before + grams + after;
            const auto reading = scaleReadingFrom(text, MassUnit::Gram);
            ASSERT_TRUE(reading) << text;
            EXPECT_EQ(reading->mass.count(), tenths * 100) << text;
        }
    }
}

TEST(ScaleText, ReadsOrRefusesAnyText)
{
    std::mt19937 draw(10);
    static const std::string kPieces[] = {"ST,", "US,", "NT,", "GS,", "g", "kg",
                                          "oz",  "lb",  "+",   "-",   "?", "1",
                                          "99",  ".",   "234", ",",   " ", "\r\n"};
    for (int round = 0; round < 8000; ++round) {
        std::string text;
        for (auto i = draw() % 8; i > 0; --i) {
            text += kPieces[draw() % std::size(kPieces)];
        }
        const auto reading = scaleReadingFrom(text, MassUnit::Ounce);
        if (reading) {
            EXPECT_LE(std::abs(reading->mass.count()), grams(50'000).count()) << text;
            EXPECT_NE(text.find_first_of("1923"), std::string::npos) << text;
        } else {
            EXPECT_TRUE(reading.error().kind == ErrorKind::Invalid ||
                        reading.error().kind == ErrorKind::Ambiguous)
                << text;
        }
    }
}

} // namespace
} // namespace plumule
