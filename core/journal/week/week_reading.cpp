#include "core/journal/week/week_reading.h"

#include "core/harvest/harvest_repository.h"
#include "core/journal/week/week_forecast.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_plan_repository.h"
#include "core/variety/variety_repository.h"
#include "core/week/repeat_repository.h"
#include "core/week/repeat_rules.h"

namespace plumule {
namespace {

std::map<TrayId, std::vector<Moment>> cutsOf(Database& database,
                                             const std::vector<TrayRecord>& trays)
{
    std::map<TrayId, std::vector<Moment>> moments;
    for (const auto& [tray, cuts] : HarvestRepository(database).ofTrays(idsOf(trays))) {
        for (const Harvest& cut : cuts) {
            moments[tray].push_back({cut.on, cut.minute});
        }
    }
    return moments;
}

std::map<VarietyId, Protocol> protocolsOf(Database& database, const WeekFacts& facts)
{
    VarietyRepository varieties(database);
    std::set<VarietyId> wanted;
    for (const Repeat& repeat : facts.repeats) {
        wanted.insert(repeat.variety);
    }
    for (const TrialDraft& draft : facts.plans) {
        wanted.insert(draft.plan.variety);
    }
    std::map<VarietyId, Protocol> protocols;
    for (const VarietyId variety : wanted) {
        if (auto protocol = varieties.protocol(variety)) {
            protocols.emplace(variety, std::move(*protocol));
        }
    }
    return protocols;
}

Week weekWithout(Database& database, Moment now, const std::set<TrayId>& without)
{
    WeekFacts facts;
    facts.now = now;
    facts.layout = RoomRepository(database).layout();
    facts.growing = TrayRepository(database, without).growing();
    facts.cuts = cutsOf(database, facts.growing);
    for (TrialDraft& draft : TrialPlanRepository(database).all()) {
        if (!draft.isSown()) {
            facts.plans.push_back(std::move(draft));
        }
    }
    RepeatRepository repeats(database);
    facts.repeats = repeats.all();
    facts.answered = repeats.answeredSince(now.date - kDaysLate);
    facts.protocols = protocolsOf(database, facts);
    facts.media = MediumRepository(database).byId();
    facts.pieces = MediumRepository(database).pieces(std::nullopt, Listed::InUse);
    facts.seed = VarietyRepository(database).stock(std::nullopt, Listed::InUse);
    facts.forecaster = forecasterOf(database, now);
    return weekFrom(facts);
}

} // namespace

Week wholeWeek(Database& database, Moment now)
{
    std::vector<DamagedTray> aside;
    Week week = askWithoutDamaged(database, aside, [&](const std::set<TrayId>& without) {
        return weekWithout(database, now, without);
    });
    week.damaged = std::move(aside);
    return week;
}

} // namespace plumule
