#include "core/journal/cost/cost_entries.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/long_past.h"
#include "tests/support/query_counter.h"
#include "tests/support/told.h"

#include <iostream>
#include <regex>
#include <set>

namespace plumule {
namespace {

// What is done every day, on the sample room: its statements may not walk what grows with the
// years.
class DailyWorkTest : public JournalTest
{
protected:
    using Work = void (DailyWorkTest::*)();
    struct Flow
    {
        const char* name;
        Work work;
    };

    void SetUp() override
    {
        JournalTest::SetUp();
        const Done filled = journal->exchange().fillWithSample(PLUMULE_SAMPLE_DATA);
        ASSERT_TRUE(filled) << told(filled.error());
        reopen(); // so that its connection is counted
        ended = endedTrial();
    }

    static const std::vector<Flow>& flows()
    {
        static const std::vector<Flow> kFlows = {
            {"open", &DailyWorkTest::open},
            {"round", &DailyWorkTest::round},
            {"tick", &DailyWorkTest::tick},
            {"as needed", &DailyWorkTest::giveAsNeeded},
            {"remark", &DailyWorkTest::remark},
            {"stage decision", &DailyWorkTest::decide},
            {"sow", &DailyWorkTest::sow},
            {"weigh", &DailyWorkTest::weigh},
            {"undo", &DailyWorkTest::takeBack},
            {"trays page", &DailyWorkTest::list},
            {"filters of the trays page", &DailyWorkTest::filterList},
            {"code look-up", &DailyWorkTest::lookUp},
            {"tray sheet", &DailyWorkTest::sheet},
            {"trial progress", &DailyWorkTest::trial},
        };
        return kFlows;
    }

    void open()
    {
        reopen();
        EXPECT_TRUE(journal->trays().hasAny(TrayState::Growing));
        EXPECT_TRUE(journal->trays().hasAny(TrayState::Harvested));
        EXPECT_TRUE(journal->room().layout());
    }
    void round()
    {
        const auto now = journal->watering().roundNow();
        ASSERT_TRUE(now) << told(now.error());
        ASSERT_GT(now->trays.size(), 5U);
        EXPECT_TRUE(journal->room().freeSpots());
        EXPECT_TRUE(journal->costs().labour());
        EXPECT_TRUE(journal->latestEntries(20));
    }
    void tick()
    {
        const RoundTray asked = openTick();
        const auto given = journal->watering().tick(asked.tray, today(), slot());
        ASSERT_TRUE(given) << told(given.error());
        ASSERT_TRUE(journal->watering().untick(asked.tray, today(), slot()));
    }
    void giveAsNeeded()
    {
        const auto given = journal->watering().giveBetween({{growing().front()},
                                                            WateringMethod::Below,
                                                            WaterKind::Plain,
                                                            millilitres(40),
                                                            clock.now()});
        ASSERT_TRUE(given) << told(given.error());
    }
    void remark()
    {
        ASSERT_TRUE(journal->trays().writeNote(growing().front(), "pale", clock.now()));
        ASSERT_TRUE(journal->trays().noteHeight(growing().front(), millimetres(40),
                                                ReadFrom::Surface, clock.now()));
    }
    void decide()
    {
        for (const TrayId tray : growing()) {
            const TraySheet sheet = journal->trays().sheet(tray).value();
            if (!sheet.plan.current || *sheet.plan.current + 1 < sheet.plan.spans.size()) {
                ASSERT_TRUE(journal->trays().notYet(tray, 60));
                const auto moved = journal->trays().moveOn(tray, clock.now());
                ASSERT_TRUE(moved) << told(moved.error());
                return;
            }
        }
        FAIL() << "no tray has a stage ahead";
    }
    void sow()
    {
        SowingDraft draft;
        draft.variety = varietyNamed("Radish, rose");
        draft.medium = mediumNamed("Coir mix");
        draft.at = clock.now();
        draft.places = {journal->room().freeSpots().value().front().place};
        ASSERT_TRUE(journal->trays().nextCode(draft.variety));
        ASSERT_TRUE(journal->varieties().lots(draft.variety));
        ASSERT_TRUE(journal->varieties().lots(std::nullopt));
        const auto media = journal->media().all().value();
        for (const Medium& medium : media) {
            ASSERT_TRUE(journal->media().pieces(medium.id));
        }
        const auto sown = journal->trays().sow(draft);
        ASSERT_TRUE(sown) << told(sown.error());
    }
    void weigh()
    {
        ASSERT_TRUE(journal->harvests().weighIn(today()));
        ASSERT_TRUE(journal->harvests().residuesDue(today()));
        const TraySheet sheet = journal->trays().sheet(growing().back()).value();
        const std::string code = sheet.record.tray.code;
        ASSERT_TRUE(journal->harvests().atScale(code, Weighing::Residue));
        const auto atScale = journal->harvests().atScale(code);
        ASSERT_TRUE(atScale) << told(atScale.error());
        WeighingDraft draft;
        draft.tray = growing().back();
        draft.bowls = {{grams(290), grams(42)}};
        draft.at = clock.now();
        draft.accepted = {Doubt::DecimalSlip,     Doubt::OutsideExpected, Doubt::AlreadyWeighed,
                          Doubt::UnstableReading, Doubt::TareForgotten,   Doubt::NotDueYet};
        const auto weighed = journal->harvests().record(draft);
        ASSERT_TRUE(weighed) << told(weighed.error());
        ASSERT_TRUE(journal->harvests().cutAtScale(weighed->id));
    }
    // Of everything that was done before.
    void takeBack()
    {
        tick();
        sow();
        decide();
        weigh();
        for (int i = 0; i < 6; ++i) {
            const auto undone = journal->undo();
            ASSERT_TRUE(undone) << told(undone.error());
        }
        ASSERT_TRUE(journal->redo());
        ASSERT_TRUE(journal->undo());
    }
    void list()
    {
        TrayPage page{std::nullopt, 40};
        const auto first = journal->trays().listing({}, page);
        ASSERT_TRUE(first) << told(first.error());
        ASSERT_TRUE(first->hasMore);
        const Tray& last = first->rows.back().record.tray;
        page.after = TrayListKey{last.sownOn, last.code};
        ASSERT_TRUE(journal->trays().listing({}, page));
        ASSERT_TRUE(journal->trays().counts({}));
        ASSERT_TRUE(journal->trays().growingIn({}));
    }
    void filterList()
    {
        std::vector<TrayFilter> filters(7);
        filters[0].state = TrayState::Growing;
        filters[1].state = TrayState::Discarded;
        filters[2].variety = varietyNamed("Radish, rose");
        filters[3].medium = mediumNamed("Coir mix");
        filters[4].variety = filters[2].variety;
        filters[4].medium = filters[3].medium;
        filters[4].state = TrayState::Harvested;
        filters[5].trial = ended;
        filters[5].state = TrayState::Harvested;
        filters[6].text = "rd";
        for (const TrayFilter& filter : filters) {
            ASSERT_TRUE(journal->trays().listing(filter, {std::nullopt, 10}));
        }
    }
    void lookUp()
    {
        const std::string code =
            journal->trays().listing({}, {std::nullopt, 1})->rows.front().record.tray.code;
        std::string lower = code;
        std::transform(lower.begin(), lower.end(), lower.begin(),
                       [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
        ASSERT_TRUE(journal->trays().find(code));
        ASSERT_TRUE(journal->trays().find(lower));
        ASSERT_FALSE(journal->trays().find("nothing"));
    }
    void sheet() { ASSERT_TRUE(journal->trays().sheet(growing().front())); }
    void trial() { ASSERT_TRUE(journal->trials().progress(ended)); }

    // From the first half-year back to the last.
    void addPast(int first, int last)
    {
        journal.reset();
        {
            Database database(path(), Access::ReadWrite);
            LongPast(database).add(first, last);
            ASSERT_GT(database.scalar("SELECT count(*) FROM tray"), last * 200);
            ASSERT_GT(database.scalar("SELECT count(*) FROM watering"), last * 2000);
        }
        reopen();
    }
    // Of each flow, and its dearest statements.
    [[nodiscard]] std::vector<std::pair<std::int64_t, std::string>> steps()
    {
        std::vector<std::pair<std::int64_t, std::string>> counted;
        for (const Flow& flow : flows()) {
            queries.restart();
            (this->*flow.work)();
            counted.emplace_back(queries.steps(), queries.dearest(1500));
        }
        return counted;
    }

    [[nodiscard]] Date today() const { return clock.now().date; }
    [[nodiscard]] Slot slot() { return journal->watering().roundNow().value().slot; }
    [[nodiscard]] RoundTray openTick()
    {
        const auto round = journal->watering().roundNow().value();
        for (const RoundTray& tray : round.trays) {
            if (!tray.isDone() && !tray.isAside()) {
                return tray;
            }
        }
        ADD_FAILURE() << "everything is ticked";
        return {};
    }
    [[nodiscard]] std::vector<TrayId> growing() { return journal->trays().growingIn({}).value(); }
    [[nodiscard]] TrialId endedTrial()
    {
        const auto rows = journal->trials().list().value();
        for (const TrialRow& row : rows) {
            if (row.state == TrialState::Ended) {
                return row.trial.id;
            }
        }
        ADD_FAILURE() << "the sample has no trial that ended";
        return {};
    }

    TrialId ended;
    QueryCounter queries;
};

// A walk from end to end, and why it may be one.
struct AllowedWalk
{
    const char* plan;      // what the line of the plan holds
    const char* statement; // and what its statement does
    const char* why;
};

constexpr AllowedWalk kAllowed[] = {
    {"stay_present", "to_on IS NULL", "an index of those alone that stand now"},
    {"history_undone", "state = 'undone'", "an index of those alone that can be done again"},
    {"SCAN history", "ORDER BY id DESC LIMIT", "the newest entries: it ends at the first ones"},
    {"harvest USING INDEX harvest_by_day", "ORDER BY on_date DESC",
     "the latest cuts: it is cut off"},
    {"COVERING INDEX tray_by_sown", "ORDER BY t.sown_on DESC, t.code LIMIT",
     "a page of the list: it ends when that is full. A search that finds little walks on, in this "
     "index alone"},
    {"COVERING INDEX tray_by_code", "code LIKE ?1",
     "a text that is in no name is looked for in all codes, in the smallest index; it ends at a "
     "thousand"},
    {"SCAN tray_note", "text LIKE ?1", "notes are searched only where one types, and are few"},
    {"tray_with_reason", "set_aside_reason LIKE ?1", "an index of those alone that have a reason"},
    {"SCAN tray USING COVERING INDEX", "SELECT count(*) FROM tray t",
     "counted in the smallest index"},
    {"SCAN t USING COVERING INDEX", "SELECT count(*) FROM tray t", "counted in the smallest index"},
    {"SCAN sqlite_schema", "", "the schema is as long as it is shipped"},
    {"SCAN near", "", "the trays sown last, 100 at most"},
    {"SCAN latest", "", "the latest cuts, as many as were asked for"},
    {"SCAN weighed", "LIMIT ?3", "the latest cuts, as many as were asked for"},
};

// What the grower wrote down by hand when the room was set up, and since then a few rows a year.
const std::set<std::string> kFew = {
    "copy",           "room",           "rack",       "shelf",         "place",
    "variety",        "protocol_stage", "seed_lot",   "medium",        "medium_as_run",
    "medium_group",   "piece",          "trial",      "trial_plan",    "treatment",
    "season",         "water_recipe",   "price",      "price_measure", "labour_task",
    "climate_logger", "shelf_ppfd",     "taken_copy", "brought_copy",
};

// The table that a plan calls by another name.
std::string tableCalled(const std::string& name, const std::string& sql)
{
    std::smatch found;
    const std::regex called("(?:FROM|JOIN|,) (\\w+) (?:AS )?" + name + "\\b");
    return std::regex_search(sql, found, called) ? found[1].str() : name;
}

// Most trays end in one state, and one variety may be sown all the time: all of them are walked
// only by what ends at a limit, counts, or keeps to those that grow.
bool isWide(const std::string& plan, const std::string& sql)
{
    const bool isByFewKinds = std::regex_search(
        plan, std::regex("tray_by_(state|variety|medium|variety_and_medium) \\([a-z_]+=\\?( AND "
                         "[a-z_]+=\\?)?\\)"));
    return isByFewKinds && sql.find("LIMIT") == std::string::npos &&
           sql.find("SELECT count(*)") == std::string::npos &&
           sql.find("state = 'growing'") == std::string::npos;
}

bool isAllowed(const std::string& plan, const std::string& sql)
{
    if (isWide(plan, sql)) {
        return false;
    }
    std::smatch scanned;
    if (!std::regex_search(plan, scanned, std::regex("^SCAN (\\w+)")) ||
        plan.find("VIRTUAL TABLE") != std::string::npos ||
        plan.find("CONSTANT ROW") != std::string::npos ||
        kFew.contains(tableCalled(scanned[1].str(), sql))) {
        return true;
    }
    return std::any_of(std::begin(kAllowed), std::end(kAllowed), [&](const AllowedWalk& each) {
        return plan.find(each.plan) != std::string::npos &&
               sql.find(each.statement) != std::string::npos;
    });
}

TEST_F(DailyWorkTest, NoStatementWalksWhatGrowsWithTheYears)
{
    int plans = 0;
    for (const Flow& flow : flows()) {
        queries.restart();
        (this->*flow.work)();
        const std::vector<std::string> statements = queries.texts();
        Database reader(path(), Access::ReadOnly);
        for (const std::string& sql : statements) {
            if (!std::regex_search(sql, std::regex("^(SELECT|INSERT|UPDATE|DELETE) "))) {
                continue; // a setting, or an end of a transaction
            }
            Statement plan = reader.prepare("EXPLAIN QUERY PLAN " + sql);
            while (plan.step()) {
                const auto line = plan.get<std::string>(3);
                EXPECT_TRUE(isAllowed(line, sql)) << flow.name << ": " << line << "\n  " << sql;
                ++plans;
            }
        }
    }
    EXPECT_GT(plans, 200);
}

// After fifteen years each flow costs what it did after six: what a day more or less asks for, and
// what is written down a few times a year, make a quarter at most. Counted in steps of SQLite's
// machine.
TEST_F(DailyWorkTest, CostsTheSameAfterManyYears)
{
    addPast(1, 12);
    const auto young = steps();
    addPast(13, 30);
    const auto old = steps();
    for (std::size_t i = 0; i < young.size(); ++i) {
        const Flow& flow = flows()[i];
        std::cout << flow.name << ": " << young[i].first << " steps, then " << old[i].first << "\n";
        EXPECT_LE(old[i].first, young[i].first + young[i].first / 4 + 1000)
            << flow.name << young[i].second << "\n and then" << old[i].second;
    }
}

} // namespace
} // namespace plumule
