#include "tests/bench/life/daily_works.h"

#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/journal.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "core/storage/database.h"
#include "tests/bench/life/present_moment.h"

#include <memory>
#include <stdexcept>

namespace plumule::bench {
namespace {

namespace fs = std::filesystem;

template <class T>
T given(Result<T> answer)
{
    if (!answer) {
        throw std::runtime_error("a measured work was refused");
    }
    return std::move(*answer);
}

// Steps through all rows and looks at every cell.
void readAll(Database& database, const std::string& sql)
{
    Statement rows = database.prepare(sql);
    while (rows.step()) {
        for (int column = 0; column < rows.columns(); ++column) {
            (void)rows.cellAt(column);
        }
    }
}

// The journal as the program has it open, and beside it SQLite alone.
struct Bench
{
    explicit Bench(const fs::path& opened)
        : path(opened)
        , clock(presentMoment())
        , journal(given(Journal::open(path, clock)))
        , round(given(journal->watering().roundNow()))
        , bare(path, Access::ReadOnly)
        , own(path.string() + ".limit", Access::ReadWrite, OpenAs::New)
    {
        own.execute("CREATE TABLE watering (id INTEGER PRIMARY KEY, tray_id INTEGER, on_date TEXT, "
                    "slot TEXT, minute INTEGER, method TEXT, water TEXT, amount_ul INTEGER) STRICT;"
                    "CREATE INDEX by_tray ON watering (tray_id, on_date, slot);"
                    "CREATE INDEX by_day ON watering (on_date, slot);"
                    "CREATE TABLE history (id INTEGER PRIMARY KEY, entry TEXT) STRICT");
    }
    Bench(const Bench&) = delete;
    Bench& operator=(const Bench&) = delete;
    ~Bench()
    {
        std::error_code ignored;
        for (const char* part : {".limit", ".limit-wal", ".limit-shm"}) {
            fs::remove(path.string() + part, ignored);
        }
    }

    void tick()
    {
        while (round.trays.at(next).isDone()) {
            ++next;
        }
        given(journal->watering().tick(round.trays.at(next++).tray, round.date, round.slot));
    }
    void bareTick()
    {
        Transaction transaction(own);
        own.prepare("INSERT INTO watering VALUES (NULL, ?1, '2026-11-28', 'morning', 430, 'below', "
                    "'plain', 300000)")
            .bind(++ticked)
            .run();
        own.prepare("INSERT INTO history VALUES (NULL, ?1)").bind(std::string(154, 'x')).run();
        transaction.commit();
    }
    void openAndRead()
    {
        auto opened = given(Journal::open(path, clock, Access::ReadOnly));
        (void)given(opened->watering().roundNow());
    }
    // The same rows, and the schema, which SQLite reads at the first statement.
    void bareOpenAndRead() const
    {
        Database database(path, Access::ReadOnly);
        const std::string growing = "(SELECT id FROM tray WHERE state = 'growing')";
        readAll(database, "SELECT * FROM tray WHERE state = 'growing'");
        for (const char* table : {"tray_stage", "stay", "harvest"}) {
            readAll(database,
                    std::string("SELECT * FROM ") + table + " WHERE tray_id IN " + growing);
        }
        readAll(database, "SELECT * FROM watering WHERE tray_id IN " + growing +
                              " AND on_date >= '2026-11-28'");
    }
    void list(const TrayFilter& filter) const
    {
        const auto page = given(journal->trays().listing(filter, {std::nullopt, 200}));
        if (page.hasMore) {
            (void)given(journal->trays().counts(filter));
        }
    }
    void bareList()
    {
        const std::string page = "(SELECT id FROM tray ORDER BY sown_on DESC, code LIMIT 200)";
        readAll(bare, "SELECT * FROM tray WHERE id IN " + page);
        for (const char* table : {"tray_stage", "stay", "harvest"}) {
            readAll(bare, std::string("SELECT * FROM ") + table + " WHERE tray_id IN " + page);
        }
    }

    fs::path path;
    FixedClock clock;
    std::unique_ptr<Journal> journal;
    Round round;
    Database bare;
    Database own;
    std::size_t next = 0;
    std::int64_t ticked = 0;
};

TrayFilter searched(const std::string& text)
{
    TrayFilter filter;
    filter.text = text;
    return filter;
}

std::vector<Work> listWorks(const std::shared_ptr<Bench>& bench, const RoomOfYears& room)
{
    const auto list = [bench](const std::string& name, const TrayFilter& filter) {
        Work work{"Trays page: " + name, [bench, filter] { bench->list(filter); }, nullptr};
        work.aimMs = 16;
        return work;
    };
    TrayFilter lost;
    lost.state = TrayState::Discarded;
    TrayFilter kind;
    kind.variety = room.someVariety;
    kind.state = TrayState::Harvested;
    Work opened = list("first page", {});
    opened.limit = [bench] { bench->bareList(); };
    return {opened, list("of one variety, harvested", kind), list("discarded", lost),
            list("a code typed", searched(room.someCode)),
            list("a text that is nowhere", searched("nowhere"))};
}

void askTrial(Bench& bench, TrialId trial)
{
    (void)given(bench.journal->trials().progress(trial));
    TrialQuestion question;
    question.trial = trial;
    question.asks.emplace_back();
    (void)given(bench.journal->review().trial(question));
}

} // namespace

std::vector<Work> dailyWorks(const fs::path& path, const RoomOfYears& room)
{
    const auto bench = std::make_shared<Bench>(path);
    std::vector<Work> works = {
        {"tick", [bench] { bench->tick(); }, [bench] { bench->bareTick(); }, 1.5},
        {"take a tick back", [bench] { (void)given(bench->journal->undo()); },
         [bench] { bench->bareTick(); }, 3},
        {"open, and today's round", [bench] { bench->openAndRead(); },
         [bench] { bench->bareOpenAndRead(); }, 1.5},
        {"the next code",
         [bench, room] { (void)given(bench->journal->trays().nextCode(room.someVariety)); },
         nullptr, 0, 1},
        {"a tray at the scale",
         [bench, room] { (void)given(bench->journal->harvests().atScale(room.someCode)); }, nullptr,
         0, 16},
        {"a trial of 12 trays", [bench, room] { askTrial(*bench, room.trial); }, nullptr, 0, 50},
    };
    for (Work& work : listWorks(bench, room)) {
        works.push_back(std::move(work));
    }
    return works;
}

} // namespace plumule::bench
