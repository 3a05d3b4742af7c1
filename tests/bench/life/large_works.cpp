#include "tests/bench/life/large_works.h"

#include "core/exchange/csv.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/forecast/forecast_answers.h"
#include "core/journal/journal.h"
#include "core/journal/order/order_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/stock/stock_entries.h"
#include "core/journal/week/week_entries.h"
#include "core/storage/journal_file.h"
#include "tests/bench/life/present_moment.h"

#include <fstream>
#include <memory>
#include <stdexcept>

namespace plumule::bench {
namespace {

namespace fs = std::filesystem;

constexpr int kRows = 10'000;

template <class T>
T given(Result<T> answer)
{
    if (!answer) {
        throw std::runtime_error("a measured work was refused");
    }
    return std::move(*answer);
}

void writeTable(const fs::path& file)
{
    std::ofstream out(file);
    out << "code,variety,medium,sown,seed_g,harvested,net_g,trial\n";
    const Date first = dateFromIso("2025-11-28").value();
    for (int i = 0; i < kRows; ++i) {
        const Date sown = first + i / 30;
        out << csvLine({"X" + std::to_string(i), "Variety " + std::to_string(i % 4),
                        "Medium " + std::to_string(i % 5), toIso(sown), "30", toIso(sown + 10),
                        std::to_string(200 + i * 37 % 60), "Trial " + std::to_string(i / 500)});
    }
}

// A new journal of ten thousand trays that came by a table, and the table.
struct Imported
{
    explicit Imported(const fs::path& within)
        : folder(within)
        , clock(presentMoment())
    {
        writeTable(folder / "trays.csv");
    }
    ~Imported()
    {
        journal.reset();
        for (const char* name : {"trays.csv", "imported.plumule", "bare.plumule"}) {
            remove(name);
        }
    }
    Imported(const Imported&) = delete;
    Imported& operator=(const Imported&) = delete;

    void remove(const std::string& name) const
    {
        std::error_code ignored;
        for (const char* part : {"", "-wal", "-shm"}) {
            fs::remove((folder / name).string() + part, ignored);
        }
    }
    void bringIn()
    {
        journal.reset();
        remove("imported.plumule");
        RoomPlan plan;
        plan.room.name = "Invented";
        journal = given(Journal::create(folder / "imported.plumule", plan, clock));
        const auto preview = given(journal->exchange().preview(folder / "trays.csv"));
        (void)given(journal->exchange().importTrays(preview, "trays.csv"));
    }
    // The same rows by prepared statements, into a new journal's own tables.
    void bareInserts()
    {
        if (rows.empty()) {
            readRows();
        }
        remove("bare.plumule");
        RoomPlan plan;
        plan.room.name = "Invented";
        given(Journal::create(folder / "bare.plumule", plan, clock)).reset();
        const JournalFile bare = given(openJournalFile(folder / "bare.plumule"));
        Transaction transaction(*bare.database);
        for (const auto& [table, cells] : rows) {
            std::string places = "?1";
            for (std::size_t i = 2; i <= cells.front().size(); ++i) {
                places += ", ?" + std::to_string(i);
            }
            for (const std::vector<Cell>& row : cells) {
                Statement insert = bare.database->prepare(std::string("INSERT OR IGNORE INTO ") +
                                                          table + " VALUES (" + places + ")");
                for (std::size_t i = 0; i < row.size(); ++i) {
                    insert.bindCell(static_cast<int>(i) + 1, row[i]);
                }
                insert.run();
            }
        }
        transaction.commit();
    }
    void readRows()
    {
        Database imported(folder / "imported.plumule", Access::ReadOnly);
        for (const char* table :
             {"variety", "medium", "season", "trial", "tray", "tray_stage", "harvest"}) {
            std::vector<std::vector<Cell>> cells;
            Statement statement = imported.prepare(std::string("SELECT * FROM ") + table);
            while (statement.step()) {
                std::vector<Cell>& row = cells.emplace_back();
                for (int column = 0; column < statement.columns(); ++column) {
                    row.push_back(statement.cellAt(column));
                }
            }
            if (!cells.empty()) {
                rows.emplace_back(table, std::move(cells));
            }
        }
    }

    fs::path folder;
    FixedClock clock;
    std::unique_ptr<Journal> journal;
    std::vector<std::pair<const char*, std::vector<std::vector<Cell>>>> rows;
};

// Of the trays cut in a year: ten thousand on the farm.
SeasonQuestion lastYear(const Journal& journal)
{
    SeasonQuestion question;
    question.filter.to = journal.clock().today();
    question.filter.from = question.filter.to - 365;
    return question;
}

void askSeason(Journal& journal, Response response)
{
    SeasonQuestion question = lastYear(journal);
    question.asks.emplace_back().response = response;
    (void)given(journal.review().season(question));
}

void reviewSeason(Journal& journal)
{
    (void)given(journal.review().season(lastYear(journal)));
}

// A backup that is stopped before its check.
void copyAlone(Journal& journal, const fs::path& copy)
{
    std::stop_source stop;
    const Progress progress(
        [&](double fraction) {
            if (fraction >= kCopyOfBackup) {
                stop.request_stop();
            }
        },
        stop.get_token());
    if (journal.backUpTo(copy, progress)) {
        throw std::runtime_error("a backup was not stopped");
    }
}

} // namespace

std::vector<Work> largeWorks(const fs::path& path, const RoomOfYears&)
{
    const auto clock = std::make_shared<FixedClock>(presentMoment());
    const std::shared_ptr<Journal> journal = given(Journal::open(path, *clock, Access::ReadOnly));
    const auto in = std::make_shared<Imported>(path.parent_path());
    const fs::path copy = path.string() + ".copy";
    return {
        {"a year's review", [clock, journal] { reviewSeason(*journal); }, nullptr, 0, 150, 5},
        {"a year's comparison by cost",
         [clock, journal] { askSeason(*journal, Response::CostPerGram); }, nullptr, 0, 200, 3},
        {"forecasts and their scores",
         [clock, journal] { (void)given(journal->forecast().answer()); }, nullptr, 0, 0, 3},
        {"the next fortnight", [clock, journal] { (void)given(journal->week().week()); }, nullptr,
         0, 0, 3},
        {"what is promised", [clock, journal] { (void)given(journal->orders().book()); }, nullptr,
         0, 0, 3},
        {"what is in stock", [clock, journal] { (void)given(journal->stock().now()); }, nullptr, 0,
         50, 3},
        {"a backup's check", [clock, journal] { (void)given(journal->faults()); }, nullptr, 0, 0,
         1},
        {"a backup, its check with it",
         [clock, journal, copy] {
             (void)given(journal->backUpTo(copy, {}).map([] { return true; }));
             fs::remove(copy);
             fs::remove(copy.string() + ".crc");
         },
         nullptr, 0, 0, 1},
        {"a backup's copy alone", [clock, journal, copy] { copyAlone(*journal, copy); },
         [path, copy] {
             fs::copy_file(path, copy, fs::copy_options::overwrite_existing);
             fs::remove(copy);
         },
         5, 0, 3},
        {"10,000 rows in", [in] { in->bringIn(); }, [in] { in->bareInserts(); }, 1.7, 0, 1},
        {"10,000 rows taken back, beside doing them again",
         [in] { (void)given(in->journal->undo()); }, [in] { (void)given(in->journal->redo()); },
         1.5, 0, 3},
    };
}

} // namespace plumule::bench
