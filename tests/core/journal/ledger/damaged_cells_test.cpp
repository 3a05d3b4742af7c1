#include "core/journal/cost/cost_entries.h"
#include "core/journal/cost/work_time_entries.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/forecast/forecast_answers.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/rack/rack_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/review/season_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/ledger/full_journal.h"
#include "tests/support/season_asks.h"
#include "tests/support/told.h"

#include <cstdio>
#include <cstdlib>
#include <gmock/gmock.h>
#include <map>
#include <set>
#include <sqlite3.h>

namespace plumule {
namespace {

struct TableColumn
{
    std::string table;
    std::string name;
    std::string type; // INTEGER, TEXT or REAL
    bool mayBeMissing = false;

    [[nodiscard]] bool isId() const { return name.ends_with("_id"); }
};

// One cell that holds what it should not, and whether core can but call it damaged.
struct BrokenCell
{
    TableColumn column;
    std::string literal;
    bool isNoValue = false;

    [[nodiscard]] std::string name() const
    {
        return column.table + "." + column.name + " = " + literal;
    }
};

// Another program's connection: nothing of the journal's protection, and tables that take anything.
class Outside
{
public:
    explicit Outside(const std::filesystem::path& path)
    {
        EXPECT_EQ(sqlite3_open(path.c_str(), &m_handle), SQLITE_OK);
        run("PRAGMA synchronous=OFF");
        run("PRAGMA foreign_keys=OFF");
        run("PRAGMA ignore_check_constraints=ON");
        sqlite3_db_config(m_handle, SQLITE_DBCONFIG_DEFENSIVE, 0, nullptr);
        run("PRAGMA writable_schema=ON");
        std::string loose = "sql";
        for (const auto& [from, to] : std::initializer_list<std::pair<const char*, const char*>>{
                 {"INTEGER PRIMARY KEY", "@"},
                 {" INTEGER", ""},
                 {" TEXT", ""},
                 {" REAL", ""},
                 {" BLOB", ""},
                 {" NOT NULL", ""},
                 {" STRICT", ""},
                 {"@", "INTEGER PRIMARY KEY"}}) {
            loose = "replace(" + loose + ", '" + from + "', '" + to + "')";
        }
        run("UPDATE sqlite_schema SET sql = " + loose + " WHERE type = 'table'");
        run("PRAGMA writable_schema=RESET");
    }
    ~Outside() { sqlite3_close(m_handle); }
    Outside(const Outside&) = delete;
    Outside& operator=(const Outside&) = delete;

    void run(const std::string& sql)
    {
        char* message = nullptr;
        ASSERT_EQ(sqlite3_exec(m_handle, sql.c_str(), nullptr, nullptr, &message), SQLITE_OK)
            << sql << ": " << message;
    }
    // The first cell as an SQL literal.
    std::string quoted(const std::string& expression, const std::string& from)
    {
        std::string text;
        const auto take = [](void* into, int, char** cells, char**) {
            *static_cast<std::string*>(into) = cells[0] == nullptr ? "" : cells[0];
            return 0;
        };
        sqlite3_exec(m_handle, ("SELECT " + expression + " FROM " + from + " LIMIT 1").c_str(),
                     take, &text, nullptr);
        return text;
    }

private:
    sqlite3* m_handle = nullptr;
};

class DamagedCellsTest : public FullJournalTest
{
protected:
    using Answers = std::map<std::string, std::optional<Error>>; // what was asked; none: answered

    void SetUp() override
    {
        FullJournalTest::SetUp();
        columns = columnsOf();
        const TrialDraft planned = journal->trials().draft(plannedTrial).value();
        trial = journal->trays().sheet(trays[0])->record.tray.trial.value();
        Season season;
        season.name = "To come";
        season.startsOn = clock.today() + 1;
        season.plannedTrials = 5;
        ASSERT_TRUE(journal->seasons().save(season));
        ASSERT_TRUE(
            journal->media().setGroup(journal->media().all()->front().id, "what is washed"));
        journal.reset();
        // While it is open: tables that are not strict would be refused at the door.
        reader = Journal::open(path(), clock, Access::ReadOnly).value();
        outside = std::make_unique<Outside>(path());
        // No tray here is watered as needed, so that none is looked at in a round.
        outside->run("INSERT INTO watering_look VALUES (1, (SELECT max(id) FROM tray), "
                     "'2026-03-01', 'morning', 420)");
        // Nothing declares a season or groups media yet.
        outside->run("INSERT INTO season VALUES (1, 'Spring', '2026-01-01', 3, 'yield')");
        outside->run("INSERT INTO medium_group VALUES (1, (SELECT max(id) FROM medium), 'mats')");
        draft = planned;
    }

    std::vector<TableColumn> columnsOf()
    {
        Database database(path(), Access::ReadOnly);
        Statement statement = database.prepare(
            "SELECT t.name, c.name, c.type, c.\"notnull\" FROM sqlite_schema AS t, "
            "pragma_table_info(t.name) AS c WHERE t.type = 'table' AND c.name <> 'id' AND "
            "t.name NOT LIKE 'sqlite_%' AND t.name NOT IN ('copy', 'history') ORDER BY 1, c.cid");
        std::vector<TableColumn> found;
        while (statement.step()) {
            found.push_back({statement.get<std::string>(0), statement.get<std::string>(1),
                             statement.get<std::string>(2), !statement.get<bool>(3)});
        }
        return found;
    }

    static std::vector<BrokenCell> brokenCellsOf(const TableColumn& column)
    {
        std::vector<BrokenCell> cells;
        if (!column.mayBeMissing) {
            cells.push_back({column, "NULL", true});
        }
        if (column.type == "TEXT") {
            cells.push_back({column, "7", true});
            cells.push_back({column, "'no such word'"});
        } else {
            cells.push_back({column, "'seven'", true});
            // Sums of amounts near the end of their range would overflow, which nothing bounds yet:
            // they are not tried.
            cells.push_back({column, column.type == "REAL" ? "1e308" : "1000000000000000"});
            cells.push_back({column, "-1"});
        }
        if (column.isId()) {
            cells.push_back({column, "424242"});
        }
        return cells;
    }

    template <class Ask>
    void ask(Answers& answers, const std::string& what, Ask work)
    {
        try {
            const auto answer = work();
            answers[what] = answer ? std::nullopt : std::optional(answer.error());
        } catch (const std::exception& failure) {
            ADD_FAILURE() << what << " threw " << failure.what();
        }
    }

    void askOfTrays(Answers& answers)
    {
        for (const std::size_t i : {0U, 8U, 9U}) {
            ask(answers, "sheet", [&] { return reader->trays().sheet(trays[i]); });
        }
        ask(answers, "list", [&] { return reader->trays().list({}); });
        ask(answers, "next code", [&] { return reader->trays().nextCode(cress); });
        ask(answers, "at scale", [&] { return reader->harvests().atScale("CR009"); });
        ask(answers, "weigh in", [&] { return reader->harvests().weighIn(clock.today()); });
        ask(answers, "residues", [&] { return reader->harvests().residuesDue(clock.today()); });
        ask(answers, "round now", [&] { return reader->watering().roundNow(); });
        for (const int days : {-9, -5, 1}) {
            ask(answers, "round",
                [&] { return reader->watering().round(clock.today() + days, Slot::Morning); });
        }
    }

    void askOfSetUp(Answers& answers)
    {
        ask(answers, "layout", [&] { return reader->room().layout(); });
        ask(answers, "free spots", [&] { return reader->room().freeSpots(); });
        ask(answers, "varieties", [&] { return reader->varieties().all(Listed::All); });
        ask(answers, "protocol", [&] { return reader->varieties().protocol(cress); });
        for (const Variety& variety :
             reader->varieties().all(Listed::All).value_or(std::vector<Variety>())) {
            ask(answers, "protocol", [&] { return reader->varieties().protocol(variety.id); });
        }
        ask(answers, "stock", [&] { return reader->varieties().lots(std::nullopt, Listed::All); });
        ask(answers, "media", [&] { return reader->media().all(Listed::All); });
        ask(answers, "pieces", [&] { return reader->media().pieces(std::nullopt, Listed::All); });
        ask(answers, "recipes", [&] { return reader->watering().recipes(); });
        ask(answers, "prices", [&] { return reader->costs().prices(); });
        ask(answers, "labour", [&] { return reader->costs().labour(); });
        ask(answers, "timer", [&] { return reader->workTimes().running(); });
        ask(answers, "times", [&] { return reader->workTimes().latest(9); });
        ask(answers, "measured", [&] { return reader->workTimes().measured(); });
        ask(answers, "export", [&] { return reader->exchange().traysAsCsv(); });
        ask(answers, "preview", [&] { return reader->exchange().preview(table); });
        ask(answers, "copies", [&] { return reader->copies().copies(); });
        ask(answers, "lamp light", [&] { return reader->climate().lampLight(); });
        ask(answers, "climate",
            [&] { return reader->climate().days(clock.today() - 60, clock.today()); });
    }

    // Pages show what is sound and say how much is not; the check names each.
    void askTheCheck(Answers& answers)
    {
        const auto faults = reader->faults();
        ask(answers, "check", [&] { return faults; });
        for (const Error& fault : faults.value_or(std::vector<Error>())) {
            answers["fault " + std::to_string(answers.size())] = fault;
        }
    }

    void askOfTrials(Answers& answers)
    {
        ask(answers, "trials", [&] { return reader->trials().all(); });
        ask(answers, "trial list", [&] { return reader->trials().list(); });
        ask(answers, "new draft", [&] { return reader->trials().newDraft(); });
        for (const TrialId one : {trial, plannedTrial}) {
            ask(answers, "draft", [&] { return reader->trials().draft(one); });
            ask(answers, "progress", [&] { return reader->trials().progress(one); });
            const auto answer = trialAnswerIn(*reader, one);
            ask(answers, "trial answer", [&] { return answer; });
            if (answer) {
                ask(answers, "diary", [&] { return answer->diary; });
            }
        }
        ask(answers, "draw", [&] { return reader->trials().draw(draft); });
        ask(answers, "free places", [&] { return reader->trials().freePlaces(draft); });
        ask(answers, "preparation", [&] { return reader->trials().preparation(draft); });
        ask(answers, "panels", [&] { return reader->tastings().list(); });
        for (const PanelId panel : panels) {
            ask(answers, "panel draft", [&] { return reader->tastings().draft(panel); });
            ask(answers, "panel", [&] { return reader->tastings().record(panel); });
            ask(answers, "plating", [&] { return reader->tastings().plating(panel); });
        }
        ask(answers, "tasting result", [&] { return reader->tastings().result(panels[1]); });
    }

    void askOfSeason(Answers& answers)
    {
        ask(answers, "seasons", [&] { return reader->seasons().all(); });
        ask(answers, "groups", [&] { return reader->media().groups(); });
        const SeasonFilter season = reader->review().usualSeason();
        ask(answers, "costs", [&] { return reader->review().costs({season, {}}); });
        for (const Response response : {Response::YieldPerTray, Response::CostPerGram,
                                        Response::HeightOnDay, Response::Residue}) {
            ask(answers, "comparison", [&] { return comparisonIn(*reader, season, response); });
        }
        const auto answer = partsIn(*reader, season);
        ask(answers, "season", [&] { return answer; });
        if (answer) {
            ask(answers, "tastings", [&] { return answer->tastings; });
            ask(answers, "protocols", [&] { return answer->protocols; });
        }
        const auto plan = reader->review().plan(draft);
        ask(answers, "plan", [&] { return plan; });
        if (plan) {
            ask(answers, "outlook", [&] { return plan->outlook; });
        }
    }

    void askOfPlans(Answers& answers)
    {
        ask(answers, "racks", [&] { return reader->racks().racks(); });
        ask(answers, "week", [&] { return reader->week().week(); });
        ask(answers, "repeats", [&] { return reader->week().repeats(); });
        ask(answers, "orders", [&] { return reader->orders().all(); });
        ask(answers, "book", [&] { return reader->orders().book(); });
        ask(answers, "forecast", [&] { return reader->forecast().answer(); });
        ask(answers, "on the shelf", [&] { return reader->stock().now(); });
        ask(answers, "low", [&] { return reader->stock().low(); });
        ask(answers, "people", [&] { return reader->stock().people(); });
        ask(answers, "forward", [&] { return reader->stock().forward(lot); });
        ask(answers, "back", [&] { return reader->stock().back(trays[0]); });
    }

    Answers askAll()
    {
        Answers answers;
        askOfTrays(answers);
        askOfPlans(answers);
        askOfSetUp(answers);
        askOfTrials(answers);
        askOfSeason(answers);
        askTheCheck(answers);
        return answers;
    }

    // Asks everything with that cell broken in the first or last row of its table; the row's id.
    std::int64_t breakAndAsk(const BrokenCell& cell, bool last, Answers& answers)
    {
        const TableColumn& column = cell.column;
        const std::string row = outside->quoted(last ? "max(id)" : "min(id)", column.table);
        EXPECT_FALSE(row.empty()) << "no row in " << column.table;
        const std::string at = " WHERE id = " + row;
        const std::string kept = outside->quoted("quote(" + column.name + ")", column.table + at);
        const std::string set = "UPDATE " + column.table + " SET " + column.name + " = ";
        outside->run(set + cell.literal + at);
        answers = askAll();
        outside->run(set + kept + at);
        return row.empty() ? 0 : std::stoll(row);
    }

    std::set<std::string> tables()
    {
        std::set<std::string> names;
        for (const TableColumn& column : columns) {
            names.insert(column.table);
        }
        return names;
    }

    std::vector<TableColumn> columns;
    TrialId trial;
    TrialDraft draft;
    std::filesystem::path table = std::filesystem::path(PLUMULE_SAMPLE_DATA) / "trays.csv";
    std::unique_ptr<Outside> outside;
    std::unique_ptr<Journal> reader;
};

TEST_F(DamagedCellsTest, TheJournalHasARowInEveryTableAndAnswersEverything)
{
    for (const std::string& name : tables()) {
        EXPECT_NE(outside->quoted("count(*)", name), "0") << name;
    }
    for (const auto& [what, refused] : askAll()) {
        EXPECT_FALSE(refused) << what << ": " << told(*refused);
    }
}

bool isInPlace(const Error& error, const std::set<std::string>& tables)
{
    return error.kind == ErrorKind::Damaged && error.row && tables.contains(error.row->table);
}

// Whatever stands in a cell, no answer ends the program. Where a bad cell is found it is Damaged,
// as a rule with its table and row; the bounds are what is reached, and may only be drawn tighter.
// One cell in seven is broken: all of them, over a minute, with PLUMULE_EVERY_CELL set (324 of 383
// that are no value were found in their row).
TEST_F(DamagedCellsTest, NoBrokenCellEndsAnAnswerAndMostAreDamagedWithTableAndRow)
{
    const std::set<std::string> known = tables();
    const bool isEveryOne = std::getenv("PLUMULE_EVERY_CELL") != nullptr;
    int turn = 0;
    int broken = 0;
    int noValue = 0;
    int noticed = 0;
    int refused = 0;
    int otherwise = 0;
    for (const TableColumn& column : columns) {
        for (const BrokenCell& cell : brokenCellsOf(column)) {
            if (turn++ % 7 != 0 && !isEveryOne) {
                continue;
            }
            SCOPED_TRACE(cell.name());
            Answers answers;
            const std::int64_t row = breakAndAsk(cell, ++broken % 2 == 0, answers);
            bool isNoticed = false;
            for (const auto& [what, error] : answers) {
                if (!error) {
                    continue;
                }
                ++refused;
                otherwise += isInPlace(*error, known) ? 0 : 1;
                isNoticed = isNoticed || (error->row && error->row->table == column.table &&
                                          (error->row->number == 0 || error->row->number == row));
            }
            noValue += cell.isNoValue ? 1 : 0;
            noticed += cell.isNoValue && isNoticed ? 1 : 0;
        }
    }
    std::printf("%d cells broken, %d of them no value, %d found in their row; %d of %d refusals "
                "were of another kind or named no table\n",
                broken, noValue, noticed, otherwise, refused);
    EXPECT_GE(broken, turn / 7);
    EXPECT_GE(noticed * 100, noValue * 75);
    EXPECT_LE(otherwise * 100, refused * 10);
}

} // namespace
} // namespace plumule
