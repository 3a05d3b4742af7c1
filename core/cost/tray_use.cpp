#include "core/cost/tray_use.h"

#include <algorithm>
#include <cassert>

namespace plumule {
namespace {

std::optional<ShelfId> shelfOf(const std::vector<Place>& places, PlaceId id)
{
    const auto place = std::find_if(places.begin(), places.end(),
                                    [&](const Place& entry) { return entry.id == id; });
    return place == places.end() ? std::nullopt : std::optional(place->shelf);
}

// Sum of what was given; none where one of them was not measured.
std::optional<Volume> volumeOf(const std::vector<Watering>& waterings,
                               std::optional<WaterKind> kind = std::nullopt)
{
    Volume sum;
    for (const Watering& watering : waterings) {
        if (kind && watering.water != *kind) {
            continue;
        }
        if (!watering.amount) {
            return std::nullopt;
        }
        sum += *watering.amount;
    }
    return sum;
}

LightStage lightStageOf(const std::vector<TrayStage>& stages)
{
    LightStage light;
    light.hasStages = !stages.empty();
    for (const TrayStage& stage : stages) {
        if (stage.stage == Stage::Light) {
            light.isPlanned = true;
            light.start = stage.started();
        }
    }
    return light;
}

// When the tray ended; of a growing one, what was last written down.
Moment endOf(const TrayFacts& facts, const LightStage& light)
{
    const Tray& tray = facts.record->tray;
    if (tray.endedOn) {
        // A day without a time is taken for whole days of light.
        const int minute = light.start ? light.start->minute : tray.sownMinute;
        return {*tray.endedOn, tray.endedMinute.value_or(minute)};
    }
    Moment latest = light.start.value_or(tray.sownAt());
    for (const Watering& watering : facts.waterings) {
        latest = std::max(latest, Moment{watering.on, watering.minute});
    }
    for (const Harvest& harvest : facts.harvests) {
        latest = std::max(latest, Moment{harvest.on, harvest.minute});
    }
    return latest;
}

int movesOf(const std::vector<TrayStage>& stages)
{
    const auto begun = std::count_if(stages.begin(), stages.end(), [](const TrayStage& stage) {
        return stage.startedOn.has_value();
    });
    return std::max(0, static_cast<int>(begun) - 1);
}

std::optional<Mass> residueOf(const TrayFacts& facts)
{
    if (facts.residues.empty() && facts.record->tray.state != TrayState::Growing) {
        return std::nullopt;
    }
    Mass sum;
    for (const Residue& residue : facts.residues) {
        sum += residue.net;
    }
    return sum;
}

} // namespace

std::optional<std::vector<LitTime>> litTimes(TrayState state, const LightStage& light,
                                             const std::vector<Stay>& stays, Moment until,
                                             const std::vector<Place>& places)
{
    if (!light.start) {
        const bool neverLit =
            light.hasStages && (!light.isPlanned || state != TrayState::Harvested);
        return neverLit ? std::optional(std::vector<LitTime>()) : std::nullopt;
    }
    std::vector<LitTime> times;
    for (const Stay& stay : stays) {
        const Moment from = std::max(*light.start, Moment{stay.fromOn, stay.fromMinute});
        const Moment left = stay.toOn ? Moment{*stay.toOn, stay.toMinute.value_or(0)} : until;
        const auto minutes = std::min(left, until) - from;
        const auto shelf = shelfOf(places, stay.place);
        if (minutes > 0 && shelf) {
            times.push_back({*shelf, minutes});
        }
    }
    if (times.empty() && until > *light.start) {
        return std::nullopt;
    }
    return times;
}

TrayUse useOf(const TrayFacts& facts, const RoomLayout& layout)
{
    assert(facts.record != nullptr);
    const TrayRecord& record = *facts.record;
    const Tray& tray = record.tray;
    TrayUse use;
    use.sownOn = tray.sownOn;
    use.medium = &record.medium;
    use.seedLot = tray.seedLot;
    use.seed = tray.seed;
    use.isHarvested = tray.state == TrayState::Harvested;
    use.hasEnded = tray.state != TrayState::Growing;
    if (!facts.waterings.empty() || !use.hasEnded) {
        use.waterings = static_cast<int>(facts.waterings.size());
        use.water = volumeOf(facts.waterings);
        use.nutrient = volumeOf(facts.waterings, WaterKind::Nutrient);
    }
    const LightStage light = lightStageOf(record.stages);
    use.light = litTimes(tray.state, light, facts.stays, endOf(facts, light), layout.places);
    use.stageMoves = movesOf(record.stages);
    use.cuts = static_cast<int>(facts.harvests.size());
    use.residue = residueOf(facts);
    return use;
}

} // namespace plumule
