#pragma once

#include "core/forecast/forecast_facts.h"

namespace plumule::forecast_test {

inline const Date kDay = date(2026, 3, 2);
inline constexpr int kMorning = 7 * 60;
inline const VarietyId kRadish{1};
inline const VarietyId kPea{2};
inline const MediumId kCoir{1};

// A room that has no tray yet.
inline ForecastFacts emptyRoom()
{
    ForecastFacts facts;
    facts.now = {kDay + 200, kMorning};
    facts.trayArea = 0.129032;
    facts.varieties = {{kRadish, "Radish"}, {kPea, "Pea shoots"}};
    Medium coir;
    coir.id = kCoir;
    coir.name = "Coir mix";
    facts.media[kCoir] = coir;
    return facts;
}

// A tray of three stages (3, 2 and 5 days) that each begin as planned; no cut yet.
inline TrayFact sownTray(std::int64_t id, VarietyId variety, Date on)
{
    TrayFact tray;
    tray.tray = {id};
    tray.code = "T" + std::to_string(id);
    tray.variety = variety;
    tray.medium = kCoir;
    tray.sownAt = {on, kMorning};
    tray.stages = {{Stage::UnderWeight, 3 * kMinutesPerDay, 0, Moment{on, kMorning}},
                   {Stage::Blackout, 2 * kMinutesPerDay, 0, Moment{on + 3, kMorning}},
                   {Stage::Light, 5 * kMinutesPerDay, 0, Moment{on + 5, kMorning}}};
    return tray;
}

// The same, cut that many days after the protocol's ten.
inline TrayFact cutTray(std::int64_t id, VarietyId variety, Date on, double netGrams, int late = 0)
{
    TrayFact tray = sownTray(id, variety, on);
    tray.cutAt = Moment{on + 10 + late, kMorning};
    tray.cut = grams(netGrams);
    return tray;
}

// Sowings a week apart, of two trays each, from kDay on; every other is heavier.
inline ForecastFacts roomOf(int sowings)
{
    ForecastFacts facts = emptyRoom();
    for (int n = 0; n < sowings; ++n) {
        const double heavy = n % 2 == 0 ? 1 : 1.2;
        const Date on = kDay + 7 * n;
        facts.trays.push_back(cutTray(2 * n + 1, kRadish, on, 200 * heavy, n % 2));
        facts.trays.push_back(cutTray(2 * n + 2, kRadish, on, 220 * heavy, n % 2));
    }
    return facts;
}

} // namespace plumule::forecast_test
