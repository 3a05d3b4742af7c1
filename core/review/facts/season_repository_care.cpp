// Part of core/review/facts/season_repository.h: what was done for the trays.
#include "core/climate/climate_repository.h"
#include "core/climate/tray_days.h"
#include "core/review/facts/season_reader.h"

#include <algorithm>

namespace plumule {
namespace {

std::optional<Moment> momentAt(const Statement& row, int column)
{
    const auto day = row.get<std::optional<Date>>(column);
    if (!day) {
        return std::nullopt;
    }
    return Moment{*day, row.get<std::optional<int>>(column + 1).value_or(0)};
}

void addWatering(TrayUse& use, bool isNutrient, std::optional<Volume> amount)
{
    if (!use.waterings) {
        use.waterings = 0;
        use.water = Volume();
        use.nutrient = Volume();
    }
    ++*use.waterings;
    const auto add = [&](std::optional<Volume>& sum) {
        sum = sum && amount ? std::optional(*sum + *amount) : std::nullopt;
    };
    add(use.water);
    if (isNutrient) {
        add(use.nutrient);
    }
}

Moment endOfLight(const Tray& tray, const LightStage& light)
{
    const int minute = light.start ? light.start->minute : tray.sownMinute;
    return {tray.endedOn.value_or(tray.sownOn), tray.endedMinute.value_or(minute)};
}

Stay stayIn(const Statement& row)
{
    Stay stay;
    stay.place = row.get<PlaceId>(1);
    stay.fromOn = row.get<Date>(2);
    stay.fromMinute = row.get<int>(3);
    stay.toOn = row.get<std::optional<Date>>(4);
    stay.toMinute = row.get<std::optional<int>>(5);
    return stay;
}

} // namespace

void SeasonReader::readStages()
{
    m_lights.assign(m_facts.trays.size(), {});
    forEachRow("tray_id, started_on IS NOT NULL, water = 'nutrient', stage = 'light', "
               "started_on, started_minute FROM tray_stage",
               [&](std::size_t index, const Statement& row) {
                   LightStage& light = m_lights[index];
                   SeasonRecord& record = m_facts.trays[index];
                   light.hasStages = record.hasStages = true;
                   record.use.stageMoves += row.get<int>(1);
                   record.plansNutrient = record.plansNutrient || row.get<bool>(2);
                   if (row.get<bool>(3)) {
                       light.isPlanned = true;
                       light.start = momentAt(row, 4);
                   }
               });
    for (SeasonRecord& record : m_facts.trays) {
        // The first stage's start is no move.
        record.use.stageMoves = std::max(0, record.use.stageMoves - 1);
    }
}

void SeasonReader::readStays()
{
    std::vector<std::vector<Stay>> stays(m_facts.trays.size());
    forEachRow(
        "tray_id, place_id, from_on, from_minute, to_on, to_minute FROM stay",
        [&](std::size_t index, const Statement& row) { stays[index].push_back(stayIn(row)); });
    const RoomClimate climate = climateOfTrays();
    const RoomLayout& layout = m_facts.cost.layout;
    for (std::size_t i = 0; i < stays.size(); ++i) {
        SeasonRecord& record = m_facts.trays[i];
        if (!climate.isEmpty() && record.lastCut) {
            const auto days =
                trayDays(record.tray, *record.lastCut, stays[i], layout.places, m_lights[i].start);
            record.climate = growthClimate(climate, layout, days);
        }
        record.use.light = litTimes(record.tray.state, m_lights[i], stays[i],
                                    endOfLight(record.tray, m_lights[i]), layout.places);
        record.shelf = shelfOfTray(record.use.light, stays[i]);
    }
}

void SeasonReader::readWaterings()
{
    forEachRow("tray_id, water = 'nutrient', amount_ul FROM watering",
               [&](std::size_t index, const Statement& row) {
                   SeasonRecord& record = m_facts.trays[index];
                   const bool isNutrient = row.get<bool>(1);
                   record.nutrientWaterings += isNutrient ? 1 : 0;
                   addWatering(record.use, isNutrient, row.get<std::optional<Volume>>(2));
               });
}

void SeasonReader::readResidues()
{
    forEachRow("tray_id, net_mg FROM residue", [&](std::size_t index, const Statement& row) {
        auto& residue = m_facts.trays[index].use.residue;
        residue = residue.value_or(Mass()) + row.get<Mass>(1);
    });
}

void SeasonReader::readHeights()
{
    forEachRow("tray_id, on_date, reading_um, read_from FROM height",
               [&](std::size_t index, const Statement& row) {
                   Height height;
                   height.on = row.get<Date>(1);
                   height.reading = row.get<Length>(2);
                   height.from = row.get<ReadFrom>(3);
                   m_facts.trays[index].heights.push_back(height);
               });
}

RoomClimate SeasonReader::climateOfTrays()
{
    std::optional<Date> from;
    std::optional<Date> to;
    for (const SeasonRecord& record : m_facts.trays) {
        if (record.lastCut) {
            from = std::min(from.value_or(record.tray.sownOn), record.tray.sownOn);
            to = std::max(to.value_or(*record.lastCut), *record.lastCut);
        }
    }
    return from ? ClimateRepository(m_database).climate(*from, *to) : RoomClimate{};
}

std::optional<ShelfId> SeasonReader::shelfOfTray(const std::optional<std::vector<LitTime>>& lit,
                                                 const std::vector<Stay>& stays)
{
    if (lit && !lit->empty()) {
        return std::max_element(
                   lit->begin(), lit->end(),
                   [](const LitTime& a, const LitTime& b) { return a.minutes < b.minutes; })
            ->shelf;
    }
    const auto last =
        std::max_element(stays.begin(), stays.end(), [](const Stay& a, const Stay& b) {
            return std::pair(a.fromOn, a.fromMinute) < std::pair(b.fromOn, b.fromMinute);
        });
    return last == stays.end() ? std::nullopt : shelfAt(last->place);
}

std::optional<ShelfId> SeasonReader::shelfAt(PlaceId place)
{
    if (m_shelves.empty()) {
        for (const Place& one : m_facts.cost.layout.places) {
            m_shelves.emplace(one.id, one.shelf);
        }
    }
    const auto shelf = m_shelves.find(place);
    return shelf == m_shelves.end() ? std::nullopt : std::optional(shelf->second);
}

} // namespace plumule
