#include "tests/fuzz/fuzz_entries.h"

#include "core/exchange/file_text.h"
#include "core/exchange/table_look.h"
#include "core/harvest/scale_text.h"
#include "core/journal/journal.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "core/storage/checksum.h"
#include "core/storage/history.h"
#include "core/storage/migrations.h"

#include <cstdlib>
#include <fstream>
#include <unistd.h>

namespace plumule::fuzz {
namespace {

namespace fs = std::filesystem;

// In memory where the system has such a folder: a fuzzer writes a file a thousand times a second.
fs::path passingFile()
{
    const fs::path shared = "/dev/shm";
    std::error_code ignored;
    const fs::path folder = fs::is_directory(shared, ignored) ? shared : fs::temp_directory_path();
    return folder / ("plumule-fuzz-" + std::to_string(::getpid()) + ".plumule");
}

void removeAll(const fs::path& file)
{
    std::error_code ignored;
    for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
        fs::remove(file.string() + ending, ignored);
    }
}

FixedClock today()
{
    return FixedClock{{date(2026, 3, 12), 7 * 60 + 30}};
}

std::string bytesOf(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

// A journal with a tray that was watered, as a file's bytes.
std::string soundJournal()
{
    const fs::path file = passingFile();
    removeAll(file);
    const FixedClock clock = today();
    {
        RoomPlan plan;
        plan.racks = 1;
        const auto journal = Journal::create(file, plan, clock);
        SowingDraft draft;
        draft.variety = (*journal)->varieties().all()->front().id;
        draft.medium = (*journal)->media().all()->front().id;
        draft.places = {(*journal)->room().freeSpots()->front().place};
        draft.at = clock.now() + -3 * kMinutesPerDay;
        const auto sown = (*journal)->trays().sow(draft);
        (void)(*journal)->watering().giveBetween(
            {*sown, WateringMethod::Below, WaterKind::Plain, millilitres(120), clock.now()});
    }
    std::string bytes = bytesOf(file);
    removeAll(file);
    return bytes;
}

std::string damaged(std::string journal, std::string_view damage)
{
    const auto at = [&](std::size_t i) { return static_cast<unsigned char>(damage[i]); };
    for (std::size_t i = 2; i + 4 <= damage.size(); i += 4) {
        const std::size_t place =
            std::size_t{at(i)} << 16 | std::size_t{at(i + 1)} << 8 | at(i + 2);
        journal[place % journal.size()] = damage[i + 3];
    }
    if (damage.size() >= 2) {
        const std::size_t cut = std::size_t{at(0)} << 8 | at(1);
        journal.resize(journal.size() - journal.size() * cut / 65'536);
    }
    return journal;
}

// One journal with a rack, for all changesets: what one of them does is rolled back.
Database& journalInMemory()
{
    static Database* const kept = [] {
        auto* database = new Database({}, Access::ReadWrite, OpenAs::New);
        for (const Migration& migration : migrations()) {
            database->execute(migration.sql);
        }
        database->execute("PRAGMA user_version=" + std::to_string(migrations().back().version));
        database->execute("INSERT INTO copy VALUES (1, 1, 100)");
        database->execute("INSERT INTO rack VALUES (1099511627777, 'A', 0)");
        return database;
    }();
    return *kept;
}

} // namespace

void tryTable(std::string_view bytes)
{
    const auto text = utf8From(std::string(bytes), encodingOf(bytes));
    const auto form = text ? proposedForm(*text, {}) : Result<TableForm>(passOn(text));
    if (form) {
        const KnownNames known{};
        const auto keeper = trayKeeper(known);
        (void)lookThrough(*text, *form, *keeper, {});
    }
}

void tryScale(std::string_view bytes)
{
    for (const MassUnit unit : {MassUnit::Gram, MassUnit::Ounce}) {
        (void)scaleReadingFrom(bytes, unit);
    }
}

void tryJournal(std::string_view bytes)
{
    static const std::string kSound = soundJournal();
    const fs::path file = passingFile();
    removeAll(file);
    std::ofstream(file, std::ios::binary) << damaged(kSound, bytes);
    const FixedClock clock = today();
    if (auto opened = Journal::open(file, clock, Access::ReadOnly)) {
        Journal& journal = **opened;
        (void)journal.faults();
        (void)journal.watering().roundNow();
        (void)journal.trays().listing({});
        (void)journal.latestEntries(20);
    }
    removeAll(file);
}

void tryChangeset(std::string_view bytes)
{
    Database& database = journalInMemory();
    database.prepare("DELETE FROM history").run();
    database
        .prepare("INSERT INTO history (id, at_utc_ms, intention, subject, row_count, "
                 "schema_version, state, changeset, changeset_bytes, changeset_crc, details) "
                 "VALUES (1, 0, 'rack.add', 'A', 1, ?1, 'done', CAST(?2 AS BLOB), ?3, ?4, '')")
        .bind(database.scalar("PRAGMA user_version"), std::string(bytes),
              static_cast<std::int64_t>(bytes.size()), checksumOf(bytes))
        .run();
    History history(database);
    (void)history.foresee({1}); // tried and rolled back
    if (rowsIfSound(database, bytes, WayThrough::Back)) {
        std::int64_t rows = 0;
        (void)walkChangeset(bytes, [&](const RowChange& change) { rows += change.id() > 0; });
    }
}

} // namespace plumule::fuzz
