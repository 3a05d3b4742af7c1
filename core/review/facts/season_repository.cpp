#include "core/review/facts/season_repository.h"

#include "core/base/work_reason.h"
#include "core/cost/cost_repository.h"
#include "core/medium/medium_repository.h"
#include "core/review/facts/season_reader.h"
#include "core/storage/id_list.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"

#include <algorithm>
#include <functional>

namespace plumule {
namespace {

constexpr int kDaysOfPast = 730; // how long ago still tells of the room's spread

void readTrials(Database& database, SeasonFacts& facts)
{
    for (const auto& [id, trial] : TrialRepository(database).byId()) {
        facts.trials[id] = trial.code;
        if (trial.margin) {
            facts.margins[id] = *trial.margin;
        }
    }
    Statement plans = database.prepare("SELECT trial_id, design FROM trial_plan");
    while (plans.step()) {
        facts.designs[plans.get<TrialId>(0)] = plans.get<Design>(1);
    }
}

// Of the span's trials, else of all.
void readStandings(Database& database, const SeasonSpan& span, SeasonFacts& facts)
{
    Statement sown =
        database.prepare(std::string("SELECT trial_id, min(sown_on) FILTER (WHERE date(sown_on) = "
                                     "sown_on), count(*) FROM tray WHERE ") +
                         (span.trials.empty() ? "trial_id IS NOT NULL"
                                              : "trial_id IN (SELECT value FROM json_each(?1))") +
                         " GROUP BY trial_id");
    if (!span.trials.empty()) {
        sown.bind(idList(span.trials));
    }
    while (sown.step()) {
        TrialStanding& standing = facts.standings[sown.get<TrialId>(0)];
        standing.firstSownOn = sown.get<std::optional<Date>>(1);
        standing.sown = sown.get<int>(2);
    }
    Statement planned = database.prepare(
        "SELECT trial_id, count(*) FROM planned_tray WHERE tray_id IS NULL GROUP BY trial_id");
    while (planned.step()) {
        facts.standings[planned.get<TrialId>(0)].unsown = planned.get<int>(1);
    }
}

void readCatalogues(Database& database, SeasonFacts& facts)
{
    facts.cost = CostRepository(database).facts();
    facts.media = MediumRepository(database).byId();
    facts.mediumGroups = MediumRepository(database).groups();
    for (const auto& [id, variety] : VarietyRepository(database).byId()) {
        facts.varieties[id] = variety.name;
    }
    readTrials(database, facts);
}

} // namespace

SeasonSpan spanOver(const std::vector<SeasonFilter>& filters)
{
    SeasonSpan span{filters.front().from, filters.front().to, {}};
    bool isOfAllTrials = false;
    for (const SeasonFilter& filter : filters) {
        span.from = std::min(span.from, filter.from);
        span.to = std::max(span.to, filter.to);
        isOfAllTrials = isOfAllTrials || filter.trials.empty();
        span.trials.insert(span.trials.end(), filter.trials.begin(), filter.trials.end());
    }
    if (isOfAllTrials) {
        span.trials.clear();
    }
    return span;
}

Result<SeasonFacts> SeasonRepository::read(const SeasonSpan& span, const Progress& progress)
{
    SeasonFacts facts;
    SeasonReader reader(m_database, facts);
    const std::function<void()> steps[] = {
        [&] { readCatalogues(m_database, facts); },
        [&] { readStandings(m_database, span, facts); },
        [&] { reader.readTraysOf(span); },
        [&] { reader.readUnfinished(span); },
        [&] { reader.readStages(); },
        [&] { reader.readStays(); },
        [&] { reader.readWaterings(); },
        [&] { reader.readResidues(); },
        [&] { reader.readHeights(); },
        [&] { reader.readPieceUses(); },
        [&] { reader.readPlannedColumns(); },
        [&] {
            // Trays of the span that are of no trial asked for were not read. What was cut after
            // the trials' own last cut is no past of theirs.
            const Date until =
                span.trials.empty() ? span.from - 1 : reader.lastCut().value_or(span.to);
            reader.readPast(span.from - kDaysOfPast, until);
        },
        [&] { reader.setAsideDamaged(); },
    };
    double done = 0;
    for (const auto& step : steps) {
        if (progress.isStopped()) {
            return fail(ErrorKind::Cancelled, WorkReason::Stopped);
        }
        step();
        progress.report(++done / static_cast<double>(std::size(steps)));
    }
    return facts;
}

SeasonFacts SeasonRepository::readForPlan(VarietyId variety, Date day)
{
    SeasonFacts facts;
    readCatalogues(m_database, facts);
    facts.protocols[variety] = VarietyRepository(m_database).stages(variety);
    SeasonReader(m_database, facts).readPast(day - kDaysOfPast, day);
    return facts;
}

std::optional<std::pair<Date, Date>> SeasonRepository::sowingsOf(TrialId trial)
{
    Statement rows = m_database.prepare(
        "SELECT min(sown_on), max(sown_on) FROM tray WHERE trial_id = ?1 HAVING count(*) > 0 UNION "
        "ALL SELECT sow_on, sow_on FROM trial_plan WHERE trial_id = ?1");
    rows.bind(trial);
    return rows.step() ? std::optional(std::pair(rows.get<Date>(0), rows.get<Date>(1)))
                       : std::nullopt;
}

} // namespace plumule
