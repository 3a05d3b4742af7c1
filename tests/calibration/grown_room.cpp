#include "grown_room.h"

#include <cmath>
#include <numbers>

namespace plumule::calibration {
namespace {

constexpr Stage kStages[] = {Stage::UnderWeight, Stage::Blackout, Stage::Light};
constexpr int kLengths[] = {3, 2, 5}; // days
constexpr int kMorning = 7 * 60;
constexpr int kDaysApart = 7;

double luck(const GrownRoom& room, Draw& draw, double sd)
{
    if (room.tailsDf > 0) {
        return sd * draw.studentT(room.tailsDf) / std::sqrt(room.tailsDf / (room.tailsDf - 2));
    }
    return draw.normal(sd);
}

// What the trays of one sowing share.
struct Sowing
{
    Moment at;
    double yield = 0;
    double spread = 1;
    std::vector<double> onMedium;
    std::vector<double> delays; // days, of each stage
};

Moment later(Moment moment, double days)
{
    return moment + std::llround(days * kMinutesPerDay);
}

Moment nextMorning(Moment moment)
{
    return moment.minute <= kMorning ? Moment{moment.date, kMorning}
                                     : Moment{moment.date + 1, kMorning};
}

Sowing sow(const GrownRoom& room, Draw& draw, Moment at, double spread)
{
    constexpr double kYear = 365.25;
    Sowing sowing;
    sowing.at = at;
    sowing.spread = spread;
    sowing.yield =
        luck(room, draw, spread * room.sowingCv) +
        room.yearCv * std::numbers::sqrt2 * std::sin(2 * std::numbers::pi * at.date.days / kYear);
    for (int medium = 0; medium < room.media; ++medium) {
        sowing.onMedium.push_back(luck(room, draw, spread * room.mediumSowingCv));
    }
    for (std::size_t stage = 0; stage < std::size(kStages); ++stage) {
        sowing.delays.push_back(room.meanDelay + luck(room, draw, spread * room.sowingDelay));
    }
    return sowing;
}

void growTray(const GrownRoom& room, Draw& draw, const Sowing& sowing, double mean, TrayFact& tray)
{
    tray.sownAt = sowing.at;
    Moment start = sowing.at;
    for (std::size_t stage = 0; stage < std::size(kStages); ++stage) {
        tray.stages.push_back({kStages[stage], kLengths[stage] * kMinutesPerDay, 0, start});
        const double late = sowing.delays[stage] + luck(room, draw, sowing.spread * room.trayDelay);
        const double days = kLengths[stage] + (room.cutsByPlan ? 0 : late);
        start = nextMorning(later(start, std::max(0.5, days)));
    }
    const double grams = std::exp(mean + sowing.yield +
                                  sowing.onMedium[static_cast<std::size_t>(tray.medium.value - 1)] +
                                  luck(room, draw, sowing.spread * room.trayCv));
    if (draw.uniform() < room.lost) {
        tray.discardedAt = tray.stages.back().started;
    } else {
        tray.cutAt = start;
        tray.cut = plumule::grams(grams);
    }
}

} // namespace

ForecastFacts grow(const GrownRoom& room, Draw& draw)
{
    ForecastFacts facts;
    facts.trayArea = 0.129;
    std::int64_t id = 0;
    const Date first{20'000 + static_cast<int>(draw.below(365))};
    for (int variety = 1; variety <= room.varieties; ++variety) {
        facts.varieties[{variety}] = "Variety " + std::to_string(variety);
        const double spread = std::pow(room.unlike, 2 * draw.uniform() - 1);
        std::vector<double> means;
        const double base = std::log(120 + 300 * draw.uniform());
        for (int medium = 0; medium < room.media; ++medium) {
            means.push_back(base + draw.normal(0.1));
        }
        for (int n = 0; n < room.sowings; ++n) {
            const Sowing sowing =
                sow(room, draw, {first + (n * kDaysApart + variety), kMorning}, spread);
            for (int medium = 1; medium <= room.media; ++medium) {
                const int more = room.mostTrays - room.fewestTrays + 1;
                const int trays =
                    room.fewestTrays + static_cast<int>(draw.below(static_cast<std::size_t>(more)));
                for (int k = 0; k < trays; ++k) {
                    TrayFact tray;
                    tray.tray = {++id};
                    tray.variety = {variety};
                    tray.medium = {medium};
                    growTray(room, draw, sowing, means[static_cast<std::size_t>(medium - 1)], tray);
                    facts.trays.push_back(std::move(tray));
                }
            }
        }
    }
    facts.now = {first + (room.sowings + 20) * kDaysApart, 0};
    return facts;
}

} // namespace plumule::calibration
