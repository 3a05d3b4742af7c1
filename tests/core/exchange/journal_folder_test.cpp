#include "core/exchange/journal_folder.h"

#include "core/base/bounds_reason.h"
#include "core/base/work_reason.h"
#include "core/exchange/csv.h"
#include "core/exchange/exchange_reason.h"
#include "core/exchange/sheet_notes.h"
#include "core/exchange/sheet_repository.h"
#include "core/harvest/harvest_repository.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/storage/cell_bounds.h"
#include "core/storage/journal_file.h"
#include "core/tray/tray_repository.h"
#include "core/variety/variety_repository.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/core/storage/store_fixture.h"

#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

// A journal in memory, as core/storage makes it.
struct PassingJournal
{
    PassingJournal()
        : folder(std::make_unique<TemporaryFolder>())
        , file(createJournalFile(folder->path() / "room.plumule").value())
    {}
    [[nodiscard]] Database& database() const { return *file.database; }

    std::unique_ptr<TemporaryFolder> folder;
    JournalFile file;
};

// Rows of every table, drawn from what a journal may hold; texts are of the kind that tables of
// text get wrong.
class RandomRows
{
public:
    RandomRows(Database& database, unsigned seed)
        : m_database(database)
        , m_random(seed)
    {}

    void fill(int rowsEach)
    {
        Transaction transaction(m_database);
        SheetRepository tables(m_database);
        for (const JournalSheet& sheet : tables.sheets()) {
            for (int row = 0; row < (sheet.table == "room" ? 1 : rowsEach); ++row) {
                std::vector<Cell> cells;
                for (const SheetColumn& column : sheet.columns) {
                    cells.push_back(cellFor(sheet, column));
                }
                tables.insert(sheet, cells);
            }
        }
        transaction.commit();
    }

private:
    std::int64_t upTo(std::int64_t most)
    {
        return std::uniform_int_distribution<std::int64_t>(0, most)(m_random);
    }
    std::string text()
    {
        static const std::vector<std::string> kPieces = {
            "a",   "Radish", "/", "#", "#1", "\"", "\n", "\r\n", ",", ";",
            "\t",  "=1+1",   "+", "-", "@",  "'",  "''", " ",    "ä", "\xF0\x9F\x8C\xB1",
            "1.5", "<b>",    "\r"};
        std::string made;
        for (std::int64_t count = upTo(4); count > 0; --count) {
            made += kPieces[static_cast<std::size_t>(upTo(std::int64_t(kPieces.size()) - 1))];
        }
        return made;
    }
    Cell cellFor(const JournalSheet& sheet, const SheetColumn& column)
    {
        if (column.kind == SheetKind::Number) {
            m_ids[sheet.table].push_back(m_database.nextId());
            return m_ids[sheet.table].back();
        }
        if (column.mayBeEmpty && upTo(2) == 0) {
            return Cell{};
        }
        switch (column.kind) {
        case SheetKind::Reference: {
            const auto& ids = m_ids.at(column.refersTo);
            return ids[static_cast<std::size_t>(upTo(std::int64_t(ids.size()) - 1))];
        }
        case SheetKind::Text: {
            const auto& words = wordsOf(sheet.table, column.stored);
            if (!words.empty()) {
                return std::string(
                    words[static_cast<std::size_t>(upTo(std::int64_t(words.size()) - 1))]);
            }
            return column.stored == "code" ? text() + std::to_string(upTo(1'000'000'000)) : text();
        }
        case SheetKind::Day:
            return toIso(date(1990, 1, 1) + static_cast<int>(upTo(40'000)));
        case SheetKind::Real:
            return column.stored.starts_with("ph") ? double(upTo(1'400'000)) / 1e5 / 1.0000001
                                                   : double(upTo(1'000'000)) / 10001.0;
        default:
            break;
        }
        for (const std::int64_t most : {std::int64_t{1'000'000'000'000}, std::int64_t{1'000'000},
                                        std::int64_t{1'000}, std::int64_t{1}}) {
            const std::int64_t value = upTo(most);
            if (!boundsFault(column.stored, Cell(value))) {
                return value;
            }
        }
        return std::int64_t{0};
    }

    Database& m_database;
    std::mt19937 m_random;
    std::map<std::string, std::vector<std::int64_t>> m_ids;
};

class JournalFolderTest : public ::testing::Test
{
protected:
    [[nodiscard]] fs::path out() const { return scratch.path() / "tables"; }
    Result<FolderOutcome> write(const PassingJournal& journal, const Progress& progress = {})
    {
        return writeJournalFolder(journal.database(), journal.folder->path() / "room photos", out(),
                                  progress);
    }
    Result<FolderOutcome> read(const PassingJournal& journal, const Progress& progress = {})
    {
        Transaction transaction(journal.database());
        auto outcome = readJournalFolder(journal.database(), out(), progress);
        if (outcome) {
            transaction.commit();
        }
        return outcome;
    }
    [[nodiscard]] std::string fileText(const std::string& name) const
    {
        return textOfFile((out() / name).string()).value();
    }
    void put(const std::string& name, const std::string& text) const
    {
        std::ofstream(out() / name, std::ios::binary) << text;
    }
    // Replaces `was` in the file, once.
    void mend(const std::string& name, const std::string& was, const std::string& is) const
    {
        std::string text = fileText(name);
        const std::size_t at = text.find(was);
        ASSERT_NE(at, std::string::npos) << text;
        put(name, text.replace(at, was.size(), is));
    }

    // Two trays, one of them discarded, in a small room.
    static void fillSmall(Database& database)
    {
        Transaction transaction(database);
        Room room;
        room.name = "Room";
        RoomRepository(database).insert(room);
        RoomRepository(database).addRack("A/1", 1, 2);
        Variety radish;
        radish.name = "Radish, \"rose\"/pink";
        radish.codePrefix = "RD";
        VarietyRepository(database).insert(radish);
        Medium coir;
        coir.name = "=coir\nmix";
        MediumRepository(database).insert(coir);
        for (const char* code : {"RD001", "RD002"}) {
            Tray tray;
            tray.code = code;
            tray.variety = radish.id;
            tray.medium = coir.id;
            tray.seed = grams(30.5);
            tray.sownOn = date(2026, 3, 1);
            TrayRepository(database).insert(tray);
            if (tray.code == "RD002") {
                tray.state = TrayState::Discarded;
                tray.endedOn = date(2026, 3, 4);
                tray.discardReason = "mould";
                TrayRepository(database).update(tray);
            }
            Harvest cut{{}, tray.id, 1, date(2026, 3, 9), 400, milligrams(1), false, ""};
            HarvestRepository(database).insert(cut);
        }
        transaction.commit();
    }

    TemporaryFolder scratch;
};

TEST_F(JournalFolderTest, BringsBackRandomJournalsRowByRow)
{
    for (const unsigned seed : {1U, 2U, 3U, 4U, 5U, 6U}) {
        const PassingJournal journal;
        RandomRows(journal.database(), seed).fill(seed == 1 ? 60 : 8);
        ASSERT_TRUE(write(journal));
        const PassingJournal again;
        const auto outcome = read(again);
        ASSERT_TRUE(outcome) << seed << " " << (outcome ? "" : outcome.error().row->table) << " "
                             << (outcome ? 0 : outcome.error().row->number);
        EXPECT_EQ(dumpOf(again.database()), dumpOf(journal.database())) << seed;
        fs::remove_all(out());
    }
}

TEST_F(JournalFolderTest, WritesInGramsAndNamesWhatRowsReferTo)
{
    const PassingJournal journal;
    fillSmall(journal.database());
    const auto outcome = write(journal);
    ASSERT_TRUE(outcome);
    EXPECT_EQ(outcome->rows, 11);
    const CsvTable trays = csvFrom(fileText("tray.csv")).value();
    const auto cell = [&](std::size_t row, const std::string& column) {
        const auto at = std::find(trays.header.begin(), trays.header.end(), column);
        return trays.rows.at(row).at(static_cast<std::size_t>(at - trays.header.begin()));
    };
    EXPECT_EQ(cell(0, "code"), "RD001");
    EXPECT_EQ(cell(0, "variety"), "Radish, \"rose\"/pink");
    EXPECT_EQ(cell(0, "medium"), "=coir\nmix");
    EXPECT_EQ(cell(0, "seed_g"), "30.5");
    EXPECT_EQ(cell(0, "sown_time"), "00:00");
    EXPECT_EQ(cell(1, "state"), "discarded");
    EXPECT_EQ(cell(1, "discard_reason"), "mould");
    EXPECT_THAT(fileText("harvest.csv"), testing::HasSubstr(",RD001,1,2026-03-09,06:40,0.001,no,"));
    EXPECT_THAT(fileText("tray.csv"), testing::HasSubstr("\"'=coir\nmix\""))
        << "what a spreadsheet would run is not";
}

TEST_F(JournalFolderTest, SaysWhatEveryColumnMeans)
{
    const PassingJournal journal;
    for (const JournalSheet& sheet : SheetRepository(journal.database()).sheets()) {
        EXPECT_NE(meaningOf(sheet.table), "") << sheet.table;
        for (const SheetColumn& column : sheet.columns) {
            EXPECT_NE(meaningOf(sheet.table, column.stored), "")
                << sheet.table << "." << column.stored;
        }
    }
    fillSmall(journal.database());
    ASSERT_TRUE(write(journal));
    const CsvTable dictionary = csvFrom(fileText("dictionary.csv")).value();
    EXPECT_THAT(dictionary.rows, testing::Contains(testing::ElementsAre("harvest.csv", "net_g", "g",
                                                                        "without the bowl", "")));
    EXPECT_THAT(dictionary.rows,
                testing::Contains(testing::ElementsAre("tray.csv", "state", "", testing::_,
                                                       "growing, harvested, discarded")));
}

// A word that core has and the dictionary has not would keep a journal out.
TEST_F(JournalFolderTest, KnowsTheWordsThatCoreReads)
{
    const auto expectAll = [](std::string_view table, std::string_view column, auto sample,
                              std::size_t count) {
        const auto& words = wordsOf(table, column);
        EXPECT_EQ(words.size(), count) << table << "." << column;
        for (const std::string_view word : words) {
            EXPECT_TRUE(fromText(word, sample)) << word;
        }
    };
    expectAll("tray", "state", TrayState{}, 3);
    expectAll("tray_stage", "stage", Stage{}, 4);
    expectAll("tray_stage", "method", WateringMethod{}, 3);
    expectAll("tray_stage", "water", WaterKind{}, 3);
    expectAll("height", "read_from", ReadFrom{}, 2);
    expectAll("watering", "slot", Slot{}, 2);
    expectAll("room", "units", UnitSystem{}, 2);
    expectAll("medium", "form", MediumForm{}, 3);
}

TEST_F(JournalFolderTest, BringsPhotographsAlong)
{
    const PassingJournal journal;
    fillSmall(journal.database());
    const fs::path photos = journal.folder->path() / "room photos";
    fs::create_directories(photos);
    std::ofstream(photos / "RD001.jpg") << "a picture";
    std::ofstream(journal.folder->path() / "secret.txt") << "not for others";
    {
        Transaction transaction(journal.database());
        const TrayId tray = TrayRepository(journal.database()).findByCode("RD001")->id;
        for (const char* name : {"RD001.jpg", "gone.jpg", "../secret.txt"}) {
            Photo photo{{}, tray, date(2026, 3, 2), 0, name, ""};
            TrayRepository(journal.database()).insert(photo);
        }
        transaction.commit();
    }
    const auto written = write(journal);
    ASSERT_TRUE(written);
    EXPECT_EQ(written->photos, 1);
    EXPECT_THAT(written->missingPhotos, testing::ElementsAre("gone.jpg", "../secret.txt"));
    EXPECT_FALSE(fs::exists(out() / "secret.txt"));
    const PassingJournal again;
    const auto outcome = read(again);
    ASSERT_TRUE(outcome);
    FolderOutcome brought = *outcome;
    ASSERT_TRUE(bringPhotos(out(), scratch.path() / "again photos", brought));
    EXPECT_EQ(brought.photos, 1);
    EXPECT_THAT(brought.missingPhotos, testing::ElementsAre("gone.jpg", "../secret.txt"));
    EXPECT_EQ(textOfFile((scratch.path() / "again photos" / "RD001.jpg").string()).value(),
              "a picture");
    EXPECT_EQ(dumpOf(again.database()), dumpOf(journal.database()));
}

TEST_F(JournalFolderTest, GivesNewNumbersAfterwards)
{
    const PassingJournal journal;
    fillSmall(journal.database());
    ASSERT_TRUE(write(journal));
    const PassingJournal again;
    ASSERT_TRUE(read(again));
    Transaction transaction(again.database());
    const std::int64_t next = again.database().nextId();
    EXPECT_GT(next, again.database().scalar("SELECT max(id) FROM harvest"));
    EXPECT_EQ(next >> 40, 2);
}

TEST_F(JournalFolderTest, WritesOverNothing)
{
    const PassingJournal journal;
    fillSmall(journal.database());
    fs::create_directories(out());
    put("mine.txt", "mine");
    const auto outcome = write(journal);
    ASSERT_FALSE(outcome);
    EXPECT_TRUE(outcome.error().is(ExchangeReason::FolderTaken));
    EXPECT_EQ(fileText("mine.txt"), "mine");
}

TEST_F(JournalFolderTest, LeavesNothingBehindWhenStopped)
{
    const PassingJournal journal;
    RandomRows(journal.database(), 1).fill(600);
    std::stop_source stop;
    stop.request_stop();
    const auto outcome = write(journal, Progress({}, stop.get_token()));
    ASSERT_FALSE(outcome);
    EXPECT_TRUE(outcome.error().is(WorkReason::Stopped));
    EXPECT_FALSE(fs::exists(out()));
    ASSERT_TRUE(write(journal));
    const PassingJournal again;
    const std::string before = dumpOf(again.database());
    EXPECT_TRUE(read(again, Progress({}, stop.get_token())).error().is(WorkReason::Stopped));
    EXPECT_EQ(dumpOf(again.database()), before);
}

struct Spoiled
{
    std::string file;
    std::string was;
    std::string is;
    Reason reason;
    int line;
};

class SpoiledFolderTest : public JournalFolderTest, public ::testing::WithParamInterface<int>
{};

const std::vector<Spoiled>& spoiled()
{
    static const std::vector<Spoiled> kSpoiled = {
        {"harvest.csv", "0.001", "0.0001", ExchangeReason::CellTooFine, 2},
        {"harvest.csv", "0.001", "much", ExchangeReason::CellForm, 2},
        {"harvest.csv", "0.001", "20000000", BoundsReason::Amount, 2},
        {"harvest.csv", "RD002", "RD003", ExchangeReason::NameUnknown, 3},
        {"harvest.csv", "RD002", "#3", ExchangeReason::NameUnknown, 3},
        {"harvest.csv", "2026-03-09", "2026-02-30", ExchangeReason::CellForm, 2},
        {"harvest.csv", "2026-03-09", "1066-03-09", BoundsReason::Day, 2},
        {"harvest.csv", "2026-03-09", "", ExchangeReason::CellMissing, 2},
        {"harvest.csv", "06:40", "25:40", ExchangeReason::CellForm, 2},
        {"harvest.csv", ",no,", ",0,", ExchangeReason::CellForm, 2},
        {"harvest.csv", ",no,", ",no", ExchangeReason::CellCount, 2},
        {"harvest.csv", "net_g", "net_kg", ExchangeReason::ColumnUnknown, 1},
        {"harvest.csv", ",net_g", ",\"net_g", ExchangeReason::OpenQuote, 1},
        {"tray.csv", "discarded", "lost", ExchangeReason::WordUnknown, 4},
        {"tray.csv", "RD002", "RD001", ExchangeReason::NumberTwice, 4},
        {"tray.csv", "mould", std::string("mo\0ld", 5), ExchangeReason::NotUtf8, 5},
        {"tray.csv", "mould", std::string(30'000, 'x'), BoundsReason::TextLength, 4},
        {"dictionary.csv", "file,", "table,", ExchangeReason::ColumnMissing, 1},
    };
    return kSpoiled;
}

TEST_P(SpoiledFolderTest, IsRefusedWithFileAndLine)
{
    const Spoiled& each = spoiled()[static_cast<std::size_t>(GetParam())];
    const PassingJournal journal;
    fillSmall(journal.database());
    ASSERT_TRUE(write(journal));
    mend(each.file, each.was, each.is);
    const PassingJournal again;
    const std::string before = dumpOf(again.database());
    const auto outcome = read(again);
    ASSERT_FALSE(outcome);
    EXPECT_TRUE(outcome.error().reason == each.reason);
    ASSERT_TRUE(outcome.error().row);
    EXPECT_EQ(outcome.error().row->table, each.file);
    EXPECT_EQ(outcome.error().row->number, each.line);
    EXPECT_EQ(dumpOf(again.database()), before);
}

INSTANTIATE_TEST_SUITE_P(Each, SpoiledFolderTest,
                         ::testing::Range(0, static_cast<int>(spoiled().size())));

TEST_F(JournalFolderTest, RefusesAFolderThatIsNotWhole)
{
    const PassingJournal journal;
    fillSmall(journal.database());
    const PassingJournal again;
    EXPECT_TRUE(read(again).error().is(ExchangeReason::FolderForeign));
    ASSERT_TRUE(write(journal));
    put("moon.csv", "id,phase\n");
    EXPECT_TRUE(read(again).error().is(ExchangeReason::FileUnknown));
    fs::remove(out() / "moon.csv");
    const std::string room = fileText("room.csv");
    put("room.csv", room.substr(0, room.find('\n') + 1));
    EXPECT_TRUE(read(again).error().is(ExchangeReason::RoomRows));
    fs::remove(out() / "room.csv");
    EXPECT_TRUE(read(again).error().is(ExchangeReason::FileMissing));
}

TEST_F(JournalFolderTest, TakesTablesThatASpreadsheetSavedAgain)
{
    const PassingJournal journal;
    fillSmall(journal.database());
    ASSERT_TRUE(write(journal));
    std::string text = "\xEF\xBB\xBF" + fileText("place.csv");
    for (std::size_t at = 0; (at = text.find('\n', at)) != std::string::npos; at += 2) {
        text.insert(at, "\r");
    }
    std::replace(text.begin(), text.end(), ',', ';');
    put("place.csv", text);
    const PassingJournal again;
    ASSERT_TRUE(read(again));
    EXPECT_EQ(dumpOf(again.database()), dumpOf(journal.database()));
}

} // namespace
} // namespace plumule
