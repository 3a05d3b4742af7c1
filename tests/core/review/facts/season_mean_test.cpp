#include "core/review/facts/season.h"

#include <cmath>
#include <fstream>
#include <gtest/gtest.h>
#include <map>

namespace plumule {
namespace {

std::map<std::string, std::vector<double>> plantWeights()
{
    std::ifstream file(std::string(PLUMULE_REFERENCES) + "/plantgrowth.csv");
    std::map<std::string, std::vector<double>> groups;
    std::string line;
    std::getline(file, line);
    while (std::getline(file, line)) {
        const auto comma = line.find(',');
        groups[line.substr(0, comma)].push_back(std::stod(line.substr(comma + 1)));
    }
    return groups;
}

TEST(MeanInterval, AgreesWithThePublishedPlantWeights)
{
    // Means and standard deviations: R 4.2.2 on datasets::PlantGrowth (Dobson 1983), in
    // tests/references/expected.json. 2.262157 is t at 97.5 % and 9 df in printed tables, from
    // memory.
    const auto groups = plantWeights();
    ASSERT_EQ(groups.size(), 3u);
    const struct
    {
        const char* group;
        double mean;
        double sd;
    } expected[] = {
        {"ctrl", 5.032, 0.583091378392},
        {"trt1", 4.661, 0.793675696435},
        {"trt2", 5.526, 0.442573283323},
    };
    for (const auto& row : expected) {
        const MeanInterval mean = meanInterval(groups.at(row.group));
        const double reach = 2.262157 * row.sd / std::sqrt(10.0);
        EXPECT_EQ(mean.n, 10);
        EXPECT_NEAR(mean.mean, row.mean, 1e-12);
        EXPECT_NEAR(mean.sd.value(), row.sd, 1e-11);
        EXPECT_NEAR(mean.lower.value(), row.mean - reach, 1e-6);
        EXPECT_NEAR(mean.upper.value(), row.mean + reach, 1e-6);
    }
}

TEST(MeanInterval, OfTwoValuesReachesFar)
{
    // t at 97.5 % and 1 df is 12.706 in printed tables, from memory.
    const MeanInterval mean = meanInterval({10, 12});
    EXPECT_DOUBLE_EQ(mean.mean, 11);
    EXPECT_NEAR(mean.upper.value() - 11, 12.706, 1e-3);
    EXPECT_NEAR(meanInterval({10, 12}, 0.90).upper.value() - 11, 6.314, 1e-3);
}

TEST(MeanInterval, OfOneValueOrNoneHasNoSpread)
{
    const MeanInterval one = meanInterval({7});
    EXPECT_EQ(one.n, 1);
    EXPECT_EQ(one.mean, 7);
    EXPECT_FALSE(one.sd || one.lower || one.upper);
    EXPECT_EQ(meanInterval({}).n, 0);
}

} // namespace
} // namespace plumule
