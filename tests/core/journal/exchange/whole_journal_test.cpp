#include "core/exchange/exchange_reason.h"
#include "core/harvest/harvest_reason.h"
#include "core/journal/check/check_reason.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/storage/storage_reason.h"
#include "tests/core/journal/ledger/full_journal.h"

#include <fstream>
#include <gmock/gmock.h>
#include <sstream>

namespace plumule {
namespace {

// The history stays behind, and with it the copies that were taken after one of its entries.
std::string dumpWithoutCopies(const std::filesystem::path& journal)
{
    std::istringstream dump(dumpOf(journal));
    std::string kept;
    for (std::string line; std::getline(dump, line);) {
        kept += line.starts_with("taken_copy:") ? "" : line + "\n";
    }
    return kept;
}

// Written out, read into another journal, and compared table by table.
void expectSameAgain(Journal& journal, const std::filesystem::path& scratch, const Clock& clock)
{
    const auto written = journal.exchange().writeAll(scratch / "tables");
    ASSERT_TRUE(written) << told(written.error());
    const auto read = makeJournalOf(scratch / "tables", scratch / "again.plumule");
    ASSERT_TRUE(read) << told(read.error());
    EXPECT_EQ(read->rows, written->rows);
    EXPECT_EQ(read->files, written->files);
    EXPECT_EQ(dumpWithoutCopies(scratch / "again.plumule"), dumpWithoutCopies(journal.path()));
    const auto opened = Journal::open(scratch / "again.plumule", clock);
    ASSERT_TRUE(opened) << told(opened.error());
    EXPECT_THAT((*opened)->faults().value(), testing::IsEmpty());
    EXPECT_FALSE((*opened)->nextUndo());
    EXPECT_EQ((*opened)->exchange().traysAsCsv().value(), journal.exchange().traysAsCsv().value());
}

class FullJournalTablesTest : public FullJournalTest
{};

TEST_F(FullJournalTablesTest, ComeBackAsTheyWere)
{
    ASSERT_TRUE(journal->trays().discard(trays[10], "=mould\n/ \"grey\"", clock.now()));
    expectSameAgain(*journal, folder.path(), clock);
    const auto photo = journal->trays().sheet(trays[8])->photos.at(0).fileName;
    EXPECT_TRUE(std::filesystem::exists(folder.path() / "again photos" / photo));
}

class WholeJournalTest : public JournalTest
{
protected:
    std::filesystem::path fileOf(const std::string& text, const std::string& name = "table.csv")
    {
        std::ofstream(folder.path() / name, std::ios::binary) << text;
        return folder.path() / name;
    }
    ImportPreview previewOf(TableKind kind, const std::string& text)
    {
        TableAsk ask;
        ask.kind = kind;
        const auto preview = journal->exchange().preview(fileOf(text), ask);
        EXPECT_TRUE(preview) << (preview ? "" : told(preview.error()));
        return preview.value_or(ImportPreview{});
    }
    void sowTwo()
    {
        const ImportPreview trays =
            previewOf(TableKind::Trays, "code,variety,medium,sown,seed_g,harvested,net_g\n"
                                        "X1,Cress,Mix,2026-02-20,30,,\n"
                                        "X2,Cress,Mix,2026-02-20,30,,\n");
        ASSERT_EQ(journal->exchange().importTable(trays, "trays.csv"), 2);
    }
};

TEST_F(WholeJournalTest, TheSampleRoomComesBackAsItWas)
{
    ASSERT_TRUE(journal->exchange().fillWithSample(PLUMULE_SAMPLE_DATA));
    expectSameAgain(*journal, folder.path(), clock);
}

TEST_F(WholeJournalTest, AFolderThatIsRefusedLeavesNoJournal)
{
    sowTwo();
    ASSERT_TRUE(journal->exchange().writeAll(folder.path() / "tables"));
    std::filesystem::remove(folder.path() / "tables" / "tray_stage.csv");
    const auto refused = makeJournalOf(folder.path() / "tables", folder.path() / "again.plumule");
    ASSERT_FALSE(refused);
    EXPECT_TRUE(refused.error().is(ExchangeReason::FileMissing));
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "again.plumule"));
    EXPECT_TRUE(
        makeJournalOf(folder.path() / "tables", path()).error().is(StorageReason::FileExists));
}

// Each of its cells may be right.
TEST_F(WholeJournalTest, AFolderThatBreaksARuleLeavesNoJournal)
{
    sowTwo();
    const PlaceId place = journal->room().layout()->spots().front().place;
    const TrayId first = journal->trays().find("X1").value();
    ASSERT_TRUE(journal->trays().moveTo(first, place, clock.now()));
    ASSERT_TRUE(journal->exchange().writeAll(folder.path() / "tables"));
    const auto stays = folder.path() / "tables" / "stay.csv";
    std::ifstream in(stays);
    std::string head;
    std::string row; // "id,X1,place,…"
    std::getline(in, head);
    std::getline(in, row);
    const std::size_t comma = row.find(',');
    ASSERT_EQ(row.substr(comma, 4), ",X1,");
    std::ofstream(stays, std::ios::app)
        << std::stoll(row.substr(0, comma)) + 1 << ",X2," << row.substr(comma + 4) << '\n';
    const auto refused = makeJournalOf(folder.path() / "tables", folder.path() / "again.plumule");
    ASSERT_FALSE(refused);
    EXPECT_TRUE(refused.error().is(CheckReason::TwoTraysOnAPlace));
    EXPECT_FALSE(std::filesystem::exists(folder.path() / "again.plumule"));
}

TEST_F(WholeJournalTest, EveryImportIsOneActThatCanBeTakenBack)
{
    sowTwo();
    const std::pair<TableKind, std::string> tables[] = {
        {TableKind::Waterings, "tray,date,method\nX1,2026-02-21,mist\nX2,2026-02-21,mist\n"},
        {TableKind::Heights, "tray,date,height_mm\nX1,2026-02-25,30\n"},
        {TableKind::Stages, "tray,stage,date\nX1,light,2026-02-23\n"},
        {TableKind::Cuts, "tray,date,net_g,last\nX1,2026-03-01,120,no\nX1,2026-03-02,80,yes\n"},
        {TableKind::Residues, "tray,date,net_g\nX1,2026-03-02,700\n"},
        {TableKind::Prices, "item,from,amount,measure\nwater,2026-01-01,2,cubic_metre\n"},
        {TableKind::SeedLots, "variety,lot_number\nCress,L1\n"},
        {TableKind::Pieces, "medium,number\nMix,7\n"},
        {TableKind::WaterReadings, "date,ph\n2026-03-01,6\n"},
    };
    for (const auto& [kind, text] : tables) {
        const ImportPreview preview = previewOf(kind, text);
        ASSERT_TRUE(preview.isClean()) << toText(kind) << told(preview.faults.front());
        expectUndoable([&] { return journal->exchange().importTable(preview, "table.csv"); });
        EXPECT_EQ(journal->nextUndo()->subject, "table.csv");
        EXPECT_EQ(previewOf(kind, text).rows, 0) << toText(kind);
    }
}

TEST_F(WholeJournalTest, SeesThatTheJournalHasChangedSinceThePreview)
{
    sowTwo();
    const ImportPreview preview =
        previewOf(TableKind::Cuts, "tray,date,net_g\nX1,2026-03-02,80\nX2,2026-03-02,80\n");
    ASSERT_TRUE(
        journal->trays().discard(journal->trays().find("X2").value(), "mould", clock.now()));
    expectRefused(ErrorKind::Conflict, HarvestReason::TrayDiscarded,
                  [&] { return journal->exchange().importTable(preview, "cuts.csv"); });
}

TEST_F(WholeJournalTest, ReadsEveryEncoding)
{
    const std::string text = "code,variety,medium,sown,seed_g,harvested,net_g\n"
                             "X1,K\xC3\xBCmmel,Mix,2026-02-20,30,,\n";
    std::string wide = "\xFF\xFE";
    std::string latin;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool isUmlaut = text[i] == '\xC3';
        const char letter = isUmlaut ? '\xFC' : text[i];
        i += isUmlaut ? 1 : 0;
        wide += letter;
        wide += '\0';
        latin += letter;
    }
    for (const std::string& bytes : {text, "\xEF\xBB\xBF" + text, wide, latin}) {
        const auto preview = journal->exchange().preview(fileOf(bytes));
        ASSERT_TRUE(preview);
        EXPECT_THAT(preview->newVarieties, testing::ElementsAre("K\xC3\xBCmmel"));
    }
}

} // namespace
} // namespace plumule
