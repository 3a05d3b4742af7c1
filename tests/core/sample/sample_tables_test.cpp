#include "core/sample/sample_tables.h"

#include "core/exchange/row_fault.h"
#include "core/variety/variety.h"
#include "tests/core/journal/journal_fixture.h"

#include <fstream>

namespace plumule {
namespace {

const Moment kNow{date(2026, 3, 12), 12 * 60};

class SampleTablesTest : public ::testing::Test
{
protected:
    // Reads the one row below the header with `take`; what came of the tables.
    template <class Take>
    Done readRow(const std::string& header, const std::string& row, Take take)
    {
        std::ofstream(folder.path() / "things.csv") << header << "\n" << row << "\n";
        SampleTables tables(folder.path(), kNow);
        int rows = 0;
        tables.forEach("things", [&](const SampleRow& one) {
            ++rows;
            take(one);
        });
        EXPECT_EQ(rows, 1);
        return tables.outcome();
    }

    TemporaryFolder folder;
};

TEST_F(SampleTablesTest, ReadsEachKindOfCell)
{
    const Done read =
        readRow("name,seed_g,amount_ml,count,yes,stage,day,time",
                "Radish,30.5,120,4,yes,light,-9,08:05", [](const SampleRow& row) {
                    EXPECT_EQ(row.text("name"), "Radish");
                    EXPECT_EQ(row.maybeGrams("seed_g"), grams(30.5));
                    EXPECT_EQ(row.maybeMillilitres("amount_ml"), millilitres(120));
                    EXPECT_EQ(row.whole("count"), 4);
                    EXPECT_TRUE(row.isYes("yes"));
                    EXPECT_EQ(row.named<Stage>("stage"), Stage::Light);
                    EXPECT_EQ(row.day("day"), date(2026, 3, 3));
                    EXPECT_EQ(row.moment("day", "time"), (Moment{date(2026, 3, 3), 485}));
                });
    EXPECT_TRUE(read);
}

TEST_F(SampleTablesTest, TakesEmptyCellsForMissing)
{
    const Done read = readRow("name,seed_g,day,count", ",,,", [](const SampleRow& row) {
        EXPECT_FALSE(row.has("name"));
        EXPECT_FALSE(row.maybeText("name"));
        EXPECT_FALSE(row.maybeGrams("seed_g"));
        EXPECT_FALSE(row.maybeDay("day"));
        EXPECT_FALSE(row.maybeWhole("count"));
        EXPECT_FALSE(row.maybeNumber("count"));
    });
    EXPECT_TRUE(read);
}

TEST_F(SampleTablesTest, LetsNothingHappenLaterThanNow)
{
    const Done read = readRow("day,time", "0,18:30", [](const SampleRow& row) {
        EXPECT_EQ(row.moment("day", "time"), kNow);
        EXPECT_EQ(row.planned("day", "time"), (Moment{kNow.date, 18 * 60 + 30}));
    });
    EXPECT_TRUE(read);
}

TEST_F(SampleTablesTest, NamesTheCellThatIsWrong)
{
    using Take = std::function<void(const SampleRow&)>;
    const std::map<std::string, int> known = {{"Radish", 1}};
    const std::vector<std::pair<std::string, Take>> readers = {
        {"number", [](const SampleRow& row) { (void)row.number("number"); }},
        {"whole", [](const SampleRow& row) { (void)row.whole("whole"); }},
        {"time", [](const SampleRow& row) { (void)row.minute("time"); }},
        {"stage", [](const SampleRow& row) { (void)row.named<Stage>("stage"); }},
        {"name", [&](const SampleRow& row) { EXPECT_EQ(row.found(known, "name"), 0); }},
    };
    for (const auto& [column, take] : readers) {
        const Done read = readRow("number,whole,time,stage,name", "1.2.3,1.5,25:00,lit,Pea", take);
        ASSERT_FALSE(read) << column;
        EXPECT_EQ(read.error().kind, ErrorKind::Invalid) << column;
        EXPECT_EQ(read.error().values.front(), column);
        EXPECT_EQ(read.error().row, (RowAt{"things.csv", 2}));
    }
}

TEST_F(SampleTablesTest, NamesAColumnThatIsNotThere)
{
    const Done read =
        readRow("name", "Radish", [](const SampleRow& row) { (void)row.text("seed_g"); });
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error(),
              faultAt("things.csv", 1, ErrorKind::Missing, ExchangeReason::ColumnMissing, "seed_g")
                  .value());
}

TEST_F(SampleTablesTest, StopsAtTheFirstFaultAndKeepsIt)
{
    std::ofstream(folder.path() / "things.csv") << "count\n1\nx\n3\ny\n";
    SampleTables tables(folder.path(), kNow);
    int rows = 0;
    tables.forEach("things", [&](const SampleRow& row) {
        ++rows;
        (void)row.whole("count");
    });
    EXPECT_EQ(rows, 2);
    tables.forEach("none", [&](const SampleRow&) { ++rows; });
    EXPECT_EQ(rows, 2);
    EXPECT_EQ(tables.outcome().error(),
              faultAt("things.csv", 3, ErrorKind::Invalid, ExchangeReason::CellForm, "count", "x")
                  .value());
}

TEST_F(SampleTablesTest, SaysWhichTableCannotBeRead)
{
    SampleTables missing(folder.path(), kNow);
    missing.forEach("none", [](const SampleRow&) { FAIL(); });
    EXPECT_EQ(missing.outcome().error().kind, ErrorKind::Unreadable);
    EXPECT_EQ(missing.outcome().error().values.front(), (folder.path() / "none.csv").string());

    std::ofstream(folder.path() / "things.csv") << "a,b\n1\n";
    SampleTables broken(folder.path(), kNow);
    broken.forEach("things", [](const SampleRow&) { FAIL(); });
    EXPECT_EQ(broken.outcome().error().row, (RowAt{"things.csv", 2}));
}

} // namespace
} // namespace plumule
