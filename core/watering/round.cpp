#include "core/watering/round.h"

#include <algorithm>
#include <tuple>

namespace plumule {
namespace {

constexpr int kDaysWithoutWater = 2;
constexpr int kDaysWithoutNeed = 3;

// What a tray was given, and when it needed nothing, round by round.
struct TrayPast
{
    std::map<RoundKey, std::vector<const Watering*>> waterings;
    std::map<RoundKey, const WateringLook*> looks;
};

// What is looked up again and again while a round is worked out.
struct RoundView
{
    const RoundFacts& facts;
    RoundKey key;
    std::map<PlaceId, Spot> spots;
    std::map<TrayId, TrayPast> pasts;

    [[nodiscard]] const Room& room() const { return facts.layout.room; }
    [[nodiscard]] std::optional<Spot> spotOf(const TrayRecord& record) const
    {
        const auto found = record.place ? spots.find(*record.place) : spots.end();
        return found == spots.end() ? std::nullopt : std::optional(found->second);
    }
    [[nodiscard]] CutMoments cutsOf(TrayId tray) const
    {
        const auto found = facts.cuts.find(tray);
        return found == facts.cuts.end() ? CutMoments() : found->second;
    }
    [[nodiscard]] const TrayPast& pastOf(TrayId tray) const
    {
        static const TrayPast kNone;
        const auto found = pasts.find(tray);
        return found == pasts.end() ? kNone : found->second;
    }
    // The newest water before the round.
    [[nodiscard]] const Watering* lastOf(TrayId tray) const
    {
        const auto stored = facts.lastWaterings.find(tray);
        const Watering* last = stored == facts.lastWaterings.end() ? nullptr : &stored->second;
        const auto& rounds = pastOf(tray).waterings;
        if (const auto here = rounds.lower_bound(key); here != rounds.begin()) {
            const Watering* newest = std::prev(here)->second.back();
            const bool isLater = last == nullptr || RoundKey{last->on, last->slot} <
                                                        RoundKey{newest->on, newest->slot};
            last = isLater ? newest : last;
        }
        return last;
    }
};

RoundView viewOf(const RoundFacts& facts, RoundKey key)
{
    RoundView view{facts, key, {}, {}};
    for (const Spot& spot : facts.layout.spots()) {
        view.spots.emplace(spot.place, spot);
    }
    for (const Watering& watering : facts.waterings) {
        view.pasts[watering.tray].waterings[{watering.on, watering.slot}].push_back(&watering);
    }
    for (const WateringLook& look : facts.looks) {
        view.pasts[look.tray].looks[{look.on, look.slot}] = &look;
    }
    return view;
}

// The stage that an ended tray was in.
Stage lastStageOf(const TrayRecord& record)
{
    Stage last = Stage::UnderWeight;
    for (const TrayStage& stage : record.stages) {
        if (stage.started()) {
            last = stage.stage;
        }
    }
    return last;
}

Date harvestDayOf(const TrayRecord& record, const std::optional<TrayAtRound>& then, Date otherwise)
{
    if (then) {
        return then->plan.harvest.date;
    }
    return record.stages.empty() ? otherwise : planOf(record.stages).harvest.date;
}

void fillAsked(RoundTray& tray, const TrayAtRound& then)
{
    tray.isAsked = then.isAsked || then.isOffered;
    tray.isAsNeeded = then.isOffered;
    tray.method = then.present().method;
    tray.water = then.present().water;
    tray.amount = then.present().amount;
}

void fillGiven(RoundTray& tray, const Watering& given)
{
    tray.isAsked = false;
    tray.method = given.method;
    tray.water = given.water;
    tray.amount = given.amount;
}

void fillPast(const RoundView& view, RoundTray& tray)
{
    const TrayPast& past = view.pastOf(tray.tray);
    if (const auto here = past.waterings.find(view.key); here != past.waterings.end()) {
        for (const Watering* watering : here->second) {
            if (watering->isBetween) {
                tray.between.push_back(*watering);
            } else {
                tray.given = *watering;
            }
        }
    }
    if (const auto look = past.looks.find(view.key); look != past.looks.end()) {
        tray.looked = *look->second;
    }
    if (const Watering* last = view.lastOf(tray.tray)) {
        tray.last = *last;
    }
}

void fillDrought(const RoundView& view, const TrayRecord& record, RoundTray& tray)
{
    const auto last = tray.last ? std::optional(RoundKey{tray.last->on, tray.last->slot})
                                : std::optional<RoundKey>();
    tray.drought =
        droughtBefore(record, view.cutsOf(tray.tray), view.room(), view.key, view.facts.now, last);
    const auto& looks = view.pastOf(tray.tray).looks;
    const auto from = last ? looks.upper_bound(*last) : looks.begin();
    tray.looksSince = static_cast<int>(std::distance(from, looks.upper_bound(view.key)));
}

// What the round asks of the tray or gave it; none: it has nothing to do with the tray.
std::optional<RoundTray> trayToWater(const RoundView& view, const TrayRecord& record,
                                     const std::optional<TrayAtRound>& then)
{
    RoundTray tray;
    tray.tray = record.tray.id;
    fillPast(view, tray);
    if (then && (then->isAsked || then->isOffered)) {
        fillAsked(tray, *then);
    } else if (tray.given || !tray.between.empty()) {
        fillGiven(tray, tray.given ? *tray.given : tray.between.back());
    } else {
        return std::nullopt;
    }
    tray.code = record.tray.code;
    tray.spot = view.spotOf(record);
    tray.variety = record.variety;
    tray.medium = record.medium;
    tray.stage = then ? then->present().stage : lastStageOf(record);
    tray.day = dayCount(record.tray.sownOn, view.key.date);
    tray.harvestDay = dayCount(record.tray.sownOn, harvestDayOf(record, then, view.key.date));
    fillDrought(view, record, tray);
    return tray;
}

std::optional<StageDecision> decisionOn(const RoundView& view, const TrayRecord& record,
                                        const TrayAtRound& then)
{
    if (!then.isNextDue && !then.isHarvestDue) {
        return std::nullopt;
    }
    StageDecision decision;
    decision.tray = record.tray.id;
    decision.code = record.tray.code;
    decision.spot = view.spotOf(record);
    decision.variety = record.variety;
    decision.medium = record.medium;
    decision.from = then.present().stage;
    if (then.isNextDue) {
        decision.to = then.stages[then.current + 1].stage;
    }
    decision.cue = then.present().cue;
    decision.due = then.nextDue();
    decision.daysLate = view.key.date - roundShowing(view.room(), decision.due).date;
    decision.day = dayCount(record.tray.sownOn, view.key.date);
    return decision;
}

template <class Row>
void sortByWalk(std::vector<Row>& rows)
{
    std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
        const auto rank = [](const Row& row) {
            return std::tuple(!row.spot.has_value(), row.spot ? row.spot->rank : 0);
        };
        return std::tuple(rank(a), std::cref(a.code).get()) <
               std::tuple(rank(b), std::cref(b.code).get());
    });
}

// What is really mixed comes first.
int mixOrder(WaterKind water)
{
    switch (water) {
    case WaterKind::Nutrient:
        return 0;
    case WaterKind::PhSet:
        return 1;
    case WaterKind::Plain:
        return 2;
    }
    return 3;
}

void completeMixLine(const RoundView& view, MixLine& line)
{
    for (const WaterRecipe& recipe : view.facts.recipes) {
        if (recipe.water == line.water) {
            line.recipe = recipe;
        }
    }
    if (line.recipe && line.recipe->dosePerLitre) {
        line.concentrate = concentrateFor(line.total, *line.recipe->dosePerLitre);
    }
    for (const WaterReading& reading : view.facts.readings) {
        if (reading.water == line.water && !reading.tray &&
            RoundKey{reading.on, reading.slot} <= view.key) {
            line.lastReading = reading;
        }
    }
}

std::vector<MixLine> mixOf(const RoundView& view, const std::vector<RoundTray>& trays)
{
    std::map<std::pair<int, int>, MixLine> lines;
    for (const RoundTray& tray : trays) {
        if (tray.isAside() || (tray.looked && !tray.given)) {
            continue;
        }
        const WaterKind water = tray.given ? tray.given->water : tray.water;
        const WateringMethod method = tray.given ? tray.given->method : tray.method;
        const int methodOrder = method == WateringMethod::Below ? 0 : 1;
        MixLine& line = lines[{methodOrder, mixOrder(water)}];
        line.water = water;
        line.method = method;
        if (const auto amount = tray.given ? tray.given->amount : tray.amount) {
            line.total += *amount;
            line.asNeeded += tray.isAsNeeded && !tray.given ? *amount : Volume();
        } else {
            ++line.unmeasured;
        }
    }
    std::vector<MixLine> mix;
    for (auto& [order, line] : lines) {
        completeMixLine(view, line);
        mix.push_back(std::move(line));
    }
    return mix;
}

void countTomorrow(const RoundView& view, const TrayAtRound& then, Tomorrow& tomorrow)
{
    const auto isTomorrow = [&](Moment due) {
        return roundShowing(view.room(), due).date == view.key.date + 1;
    };
    for (std::size_t i = then.current + 1; i < then.plan.spans.size(); ++i) {
        const StageSpan& span = then.plan.spans[i];
        if (!isTomorrow(span.start)) {
            continue;
        }
        tomorrow.toSow += then.plan.spans[i - 1].stage == Stage::Soak ? 1 : 0;
        tomorrow.intoLight += span.stage == Stage::Light ? 1 : 0;
        tomorrow.intoBlackout += span.stage == Stage::Blackout ? 1 : 0;
    }
    tomorrow.harvests += isTomorrow(then.plan.harvest) ? 1 : 0;
}

// A tray brought in without stages stands somewhere too.
bool holdsPlace(const TrayRecord& record, const std::optional<TrayAtRound>& then)
{
    const bool isGrowing = then || (record.stages.empty() && !record.tray.endedOn);
    return isGrowing && record.place;
}

} // namespace

bool RoundTray::isForgotten() const
{
    if (!drought || isDone() || !isAsked) {
        return false;
    }
    if (isAsNeeded) {
        return drought->days >= kDaysWithoutNeed;
    }
    return drought->missed && drought->days >= (drought->isNever ? 1 : kDaysWithoutWater);
}

int Round::doneCount() const
{
    return static_cast<int>(std::count_if(trays.begin(), trays.end(), [](const RoundTray& tray) {
        return tray.isDone() && !tray.isAside();
    }));
}

int Round::toDoCount() const
{
    return static_cast<int>(std::count_if(trays.begin(), trays.end(),
                                          [](const RoundTray& tray) { return !tray.isAside(); }));
}

std::vector<const RoundTray*> Round::forgotten() const
{
    std::vector<const RoundTray*> found;
    for (const RoundTray& tray : trays) {
        if (tray.isForgotten()) {
            found.push_back(&tray);
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const RoundTray* a, const RoundTray* b) {
        return a->drought->days > b->drought->days;
    });
    return found;
}

Round roundFrom(const RoundFacts& facts, Date date, Slot slot)
{
    const RoundView view = viewOf(facts, {date, slot});
    Round round;
    round.date = date;
    round.slot = slot;
    int taken = 0;
    for (const TrayRecord& record : facts.growing) {
        const auto then =
            trayAtRound(record, view.cutsOf(record.tray.id), view.room(), view.key, facts.now);
        if (auto tray = trayToWater(view, record, then)) {
            round.trays.push_back(std::move(*tray));
        }
        taken += holdsPlace(record, then) ? 1 : 0;
        if (!then) {
            continue;
        }
        if (auto decision = decisionOn(view, record, *then)) {
            round.decisions.push_back(std::move(*decision));
        }
        countTomorrow(view, *then, round.tomorrow);
    }
    sortByWalk(round.trays);
    sortByWalk(round.decisions);
    round.mix = mixOf(view, round.trays);
    round.tomorrow.places = static_cast<int>(facts.layout.places.size());
    round.tomorrow.freePlaces = round.tomorrow.places - taken;
    return round;
}

} // namespace plumule
