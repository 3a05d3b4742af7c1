#include "core/stats/model/data_table.h"

#include <gtest/gtest.h>
#include <limits>

namespace plumule::stats {

namespace {

DataTable smallTable()
{
    DataTable table;
    EXPECT_TRUE(table.addFactor("medium", {"mat", "mix", "mat", "", "jute"}));
    EXPECT_TRUE(table.addFactor("shelf", {"2", "1", "1", "2", "2"}));
    EXPECT_TRUE(table.addNumbersFromText("yield", {"1.5", "-2e3", "", "NA", "+4"}));
    return table;
}

} // namespace

TEST(DataTable, KeepsLevelsInTheOrderOfFirstAppearance)
{
    const DataTable table = smallTable();
    EXPECT_EQ(table.factor("medium")->levels, (std::vector<std::string>{"mat", "mix", "jute"}));
    EXPECT_EQ(table.factor("shelf")->levels, (std::vector<std::string>{"2", "1"}));
    EXPECT_EQ(table.factor("medium")->codes[2], 0U);
    EXPECT_FALSE(table.factor("medium")->codes[3].has_value());
}

TEST(DataTable, ReadsNumbersAndMissingValues)
{
    const DataTable table = smallTable();
    const auto& values = table.numbers("yield")->values;
    EXPECT_EQ(values[0], 1.5);
    EXPECT_EQ(values[1], -2000);
    EXPECT_FALSE(values[2].has_value());
    EXPECT_FALSE(values[3].has_value());
    EXPECT_EQ(values[4], 4);
    EXPECT_EQ(table.numbers("medium"), nullptr);
    EXPECT_EQ(table.factor("yield"), nullptr);
}

TEST(DataTable, NamesTheRowWhereTextStandsForANumber)
{
    for (const std::string cell : {"12 g", "1,5", "nan", "inf", "1e999", "0x1"}) {
        DataTable table;
        const Done done = table.addNumbersFromText("yield", {"1", cell});
        ASSERT_FALSE(done) << cell;
        EXPECT_TRUE(done.error().is(ModelReason::NotANumber)) << cell;
        EXPECT_EQ(done.error().values, (std::vector<std::string>{"yield", cell}));
        EXPECT_EQ(done.error().row, (RowAt{"", 2}));
        EXPECT_EQ(table.rows(), 0U);
    }
}

TEST(DataTable, RefusesValuesThatAreNoNumbers)
{
    DataTable table;
    const Done done = table.addNumbers("x", {1.0, std::numeric_limits<double>::quiet_NaN()});
    ASSERT_FALSE(done);
    EXPECT_TRUE(done.error().is(ModelReason::NotFinite));
    EXPECT_EQ(done.error().row, (RowAt{"", 2}));
}

TEST(DataTable, RefusesTheSameNameTwiceAndAnotherLength)
{
    DataTable table = smallTable();
    EXPECT_EQ(table.addNumbers("medium", {1, 2, 3, 4, 5}).error().kind, ErrorKind::Duplicate);
    EXPECT_TRUE(table.addFactor("x", {"a"}).error().is(ModelReason::ColumnLength));
    EXPECT_EQ(table.addFactor("", {"a"}).error().kind, ErrorKind::Missing);
}

TEST(DataTable, DropsLevelsThatNoRowKeeps)
{
    const DataTable part = smallTable().withRows({4, 1});
    EXPECT_EQ(part.rows(), 2U);
    EXPECT_EQ(part.factor("medium")->levels, (std::vector<std::string>{"mix", "jute"}));
    EXPECT_EQ(part.factor("medium")->codes[0], 1U);
    EXPECT_EQ(part.numbers("yield")->values[1], -2000);
}

TEST(DataTable, CrossesFactorsIntoTheCombinationsMet)
{
    const auto crossed = smallTable().crossed({"medium", "shelf"});
    ASSERT_TRUE(crossed);
    EXPECT_EQ(crossed->name, "medium:shelf");
    EXPECT_EQ(crossed->levels, (std::vector<std::string>{"mat:2", "mix:1", "mat:1", "jute:2"}));
    EXPECT_FALSE(crossed->codes[3].has_value());
    EXPECT_EQ(smallTable().crossed({"medium", "yield"}).error().values.at(0), "yield");
}

} // namespace plumule::stats
