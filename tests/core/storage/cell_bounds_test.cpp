#include "core/storage/cell_bounds.h"

#include "tests/core/storage/scratch.h"

#include <gtest/gtest.h>
#include <limits>

namespace plumule {
namespace {

using namespace std::string_literals;

struct BoundsCase
{
    const char* column;
    Cell cell;
    std::optional<BoundsReason> fault;
};

const BoundsCase kCases[] = {
    {"sown_on", "1990-01-01"s, std::nullopt},
    {"sown_on", "2100-12-31"s, std::nullopt},
    {"on_date", "2024-02-29"s, std::nullopt},
    {"on_date", "2023-02-29"s, BoundsReason::Day},
    {"sown_on", "1989-12-31"s, BoundsReason::Day},
    {"from_date", "2101-01-01"s, BoundsReason::Day},
    {"ended_on", "soon"s, BoundsReason::Day},
    {"minute", std::int64_t{0}, std::nullopt},
    {"sown_minute", std::int64_t{1439}, std::nullopt},
    {"minute", std::int64_t{1440}, BoundsReason::TimeOfDay},
    {"to_minute", std::int64_t{-1}, BoundsReason::TimeOfDay},
    {"net_mg", std::int64_t{10'000'000'000}, std::nullopt},
    {"net_mg", std::int64_t{-1}, BoundsReason::Amount},
    {"net_mg", std::numeric_limits<std::int64_t>::max(), BoundsReason::Amount},
    {"change_mg", std::int64_t{-5'000}, std::nullopt},
    {"reading_um", std::int64_t{-9'000}, std::nullopt},
    {"price", std::int64_t{-1}, BoundsReason::Amount},
    {"light_minutes", std::int64_t{1440}, std::nullopt},
    {"light_minutes", std::int64_t{1441}, BoundsReason::Amount},
    {"is_last", std::int64_t{2}, BoundsReason::Amount},
    {"tray_id", std::int64_t{0}, BoundsReason::Amount},
    {"id", std::numeric_limits<std::int64_t>::min(), BoundsReason::Amount},
    {"draw_number", std::int64_t{-42}, std::nullopt},
    {"ph", 5.8, std::nullopt},
    {"ph_low", 14.5, BoundsReason::Amount},
    {"germination_percent", 100.5, BoundsReason::Amount},
    {"ec_us_cm", std::numeric_limits<double>::infinity(), BoundsReason::Amount},
    {"ec_us_cm", std::numeric_limits<double>::quiet_NaN(), BoundsReason::Amount},
    {"note", std::string(20'000, 'a'), std::nullopt},
    {"note", std::string(20'001, 'a'), BoundsReason::TextLength},
    {"name", std::string(1'001, 'a'), BoundsReason::TextLength},
    {"name", "Kresse – 辛味 🌱"s, std::nullopt},
    {"name", "\xC0\xAF"s, BoundsReason::TextCharacters},         // overlong
    {"name", "\xED\xA0\x80"s, BoundsReason::TextCharacters},     // half of a surrogate pair
    {"name", "\xF4\x90\x80\x80"s, BoundsReason::TextCharacters}, // beyond U+10FFFF
    {"name", "\xE2\x82"s, BoundsReason::TextCharacters},         // cut short
    {"name", "a\0b"s, BoundsReason::TextCharacters},
    {"price", Cell{}, std::nullopt},
};

TEST(CellBounds, AreThoseOfTheUnitThatTheColumnIsNamedBy)
{
    for (const BoundsCase& expected : kCases) {
        EXPECT_EQ(boundsFault(expected.column, expected.cell), expected.fault)
            << expected.column << " "
            << (std::holds_alternative<std::string>(expected.cell)
                    ? std::get<std::string>(expected.cell)
                    : std::to_string(expected.cell.index()));
    }
}

// A column of another name would be bounded as a plain number or a short text without anyone
// having thought of it.
TEST(CellBounds, KnowEveryColumnThatHoldsADay)
{
    ScratchFolder folder;
    const JournalFile journal = newJournal(folder / "room.plumule");
    Statement columns = journal.database->prepare(
        "SELECT m.name || '.' || c.name, c.name FROM sqlite_schema m, pragma_table_info(m.name) c "
        "WHERE m.type = 'table' AND c.type = 'TEXT' AND c.name LIKE '%date%'");
    while (columns.step()) {
        EXPECT_EQ(boundsFault(columns.get<std::string>(1), std::string("no day")),
                  BoundsReason::Day)
            << columns.get<std::string>(0);
    }
}

} // namespace
} // namespace plumule
