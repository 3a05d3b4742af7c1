#include "grown_room.h"
#include "lines.h"

#include "core/forecast/forecast_sums.h"
#include "core/forecast/forecast_total.h"

#include <cmath>
#include <map>

namespace plumule::calibration {
namespace {

constexpr int kRooms = 2000;

// A room as it stands while its last sowings grow, and what comes of them.
struct Look
{
    ForecastFacts known;
    ForecastReport report;
    std::map<TrayId, TrayFact> truth;
};

// Some days before the last sowing's harvest.
Look lookAt(const GrownRoom& room, Draw& draw)
{
    const ForecastFacts all = grow(room, draw);
    Date last = all.trays.front().sownAt.date;
    Look look;
    for (const TrayFact& tray : all.trays) {
        look.truth[tray.tray] = tray;
        last = std::max(last, tray.sownAt.date);
    }
    const Moment moment{last + static_cast<int>(draw.below(8)), 9 * 60};
    look.known = knownAt(all, moment);
    look.report = forecastReport(look.known);
    return look;
}

void count(Outcome& outcome, bool isInside)
{
    ++outcome.intervals;
    outcome.covering += isInside ? 1 : 0;
}

// One tray a variety: those of a sowing share its luck.
template <class Take>
void forOneOfEach(const Look& look, Draw& draw, Take take)
{
    std::map<VarietyId, std::vector<const TrayForecast*>> growing;
    for (const TrayForecast& forecast : look.report.growing) {
        growing[forecast.variety].push_back(&forecast);
    }
    for (const auto& [variety, forecasts] : growing) {
        const TrayForecast& one = *forecasts[draw.below(forecasts.size())];
        const TrayFact& truth = look.truth.at(one.tray);
        if (truth.cutAt) {
            take(one, truth);
        }
    }
}

Outcome yieldsOf(const GrownRoom& room, Draw& draw)
{
    Outcome outcome;
    const Look look = lookAt(room, draw);
    forOneOfEach(look, draw, [&](const TrayForecast& forecast, const TrayFact& truth) {
        if (forecast.yield.basis.from == ForecastSource::OwnPast) {
            count(outcome, forecast.yield.holds(truth.cut));
        }
    });
    return outcome;
}

// Whole days hold more than 8 in 10, and say how much. So that both can be held against 80, a day
// that is held counts as often as brings what was said down to that.
Outcome daysOf(const GrownRoom& room, Draw& draw)
{
    Outcome outcome;
    const Look look = lookAt(room, draw);
    forOneOfEach(look, draw, [&](const TrayForecast& forecast, const TrayFact& truth) {
        if (forecast.day && forecast.day->basis.from == ForecastSource::OwnPast) {
            const bool counts = draw.uniform() < kForecastLevel / forecast.day->chance;
            count(outcome, counts && forecast.day->holds(truth.cutAt->date));
        }
    });
    return outcome;
}

// How often a variety is said to have scored badly, and is widened.
Outcome widenedOf(const GrownRoom& room, Draw& draw)
{
    const Look look = lookAt(room, draw);
    Outcome outcome;
    for (const VarietyScore& score : look.report.scores) {
        count(outcome, score.yieldWidened > 1);
    }
    return outcome;
}

// What is asked of the sum of trays.
enum class Asked
{
    Interval, // 8 in 10 lie between its ends
    Promise   // 9 in 10 are that much or more
};

struct Order
{
    int trays = 4;   // of each sowing
    int sowings = 1; // of one variety
    int media = 1;
};

using Sowings = std::map<Date, std::map<MediumId, std::vector<const TrayFact*>>>;

Sowings sowingsOf(const ForecastFacts& all, VarietyId variety)
{
    Sowings sowings;
    for (const TrayFact& tray : all.trays) {
        if (tray.variety == variety) {
            sowings[tray.sownAt.date][tray.medium].push_back(&tray);
        }
    }
    return sowings;
}

// The latest sowings of a variety, summed, those thrown away as nothing, as it was to be foretold
// before them.
Outcome sumsOf(const GrownRoom& room, const Order& order, Asked asked, Draw& draw)
{
    GrownRoom longer = room;
    longer.sowings = room.sowings + order.sowings;
    longer.fewestTrays = std::max(room.fewestTrays, order.trays);
    longer.mostTrays = std::max(room.mostTrays, order.trays);
    const ForecastFacts all = grow(longer, draw);
    const VarietyId variety{1};
    Sowings sowings = sowingsOf(all, variety);
    auto first = sowings.end();
    std::advance(first, -order.sowings);
    const ForecastFacts known = knownAt(all, {first->first, 0});
    const ForecastReport report = forecastReport(known);
    YieldModels models(known, report);
    std::vector<SumPart> parts;
    Mass sum;
    for (auto sowing = first; sowing != sowings.end(); ++sowing) {
        for (int medium = 1; medium <= order.media; ++medium) {
            const YieldModel& model = models.of(variety, {medium});
            if (model.basis.from != ForecastSource::OwnPast) {
                return {};
            }
            parts.push_back({model, order.trays, sowing->first});
            const auto& trays = sowing->second[{medium}];
            for (int i = 0; i < order.trays; ++i) {
                sum += trays[static_cast<std::size_t>(i)]->cut;
            }
        }
    }
    const ForecastTotal total(parts);
    Outcome outcome;
    if (asked == Asked::Promise) {
        count(outcome, sum >= total.quantile(0.1));
    } else {
        count(outcome, total.quantile(0.1) <= sum && sum <= total.quantile(0.9));
    }
    return outcome;
}

struct Named
{
    std::string name;
    GrownRoom room;
    bool isQuick = false;
};

class Rooms
{
public:
    template <class Change>
    void add(const std::string& name, bool isQuick, Change change)
    {
        Named named{name, {}, isQuick};
        change(named.room);
        m_rooms.push_back(std::move(named));
    }
    [[nodiscard]] const std::vector<Named>& all() const { return m_rooms; }

private:
    std::vector<Named> m_rooms;
};

void addByTheirPast(Rooms& rooms)
{
    rooms.add("8 sowings of 2 to 4 trays", true, [](GrownRoom&) {});
    rooms.add("few trays: 3 sowings of 2 or 3", true, [](GrownRoom& room) {
        room.sowings = 4;
        room.mostTrays = 3;
    });
    rooms.add("few trays: 6 sowings of 1", false, [](GrownRoom& room) {
        room.sowings = 8;
        room.fewestTrays = room.mostTrays = 1;
    });
    rooms.add("2 sowings of 3 to 5", false, [](GrownRoom& room) {
        room.sowings = 4;
        room.fewestTrays = 3;
        room.mostTrays = 5;
    });
    rooms.add("one variety on one medium, 5 sowings of 2", false, [](GrownRoom& room) {
        room.varieties = room.media = 1;
        room.sowings = 6;
        room.fewestTrays = room.mostTrays = 2;
    });
    rooms.add("20 sowings", false, [](GrownRoom& room) { room.sowings = 20; });
}

void addByTheirLuck(Rooms& rooms)
{
    rooms.add("sowings alike", false,
              [](GrownRoom& room) { room.sowingCv = room.sowingDelay = 0.02; });
    rooms.add("sowings differ by 20 %, trays by 5 %", true, [](GrownRoom& room) {
        room.sowingCv = 0.2;
        room.trayCv = 0.05;
        room.sowingDelay = 1.2;
    });
    rooms.add("trays differ by 20 %, sowings by 5 %", false, [](GrownRoom& room) {
        room.sowingCv = 0.05;
        room.trayCv = 0.2;
        room.trayDelay = 1;
    });
    rooms.add("medium × sowing 10 %", false, [](GrownRoom& room) { room.mediumSowingCv = 0.1; });
    rooms.add("spreads of varieties up to 2 times unlike", false,
              [](GrownRoom& room) { room.unlike = 2; });
    rooms.add("a wave of 8 % over the year, 60 sowings", false, [](GrownRoom& room) {
        room.yearCv = 0.08;
        room.sowings = 60;
        room.varieties = 2;
        room.media = 1;
    });
    rooms.add("luck by t with 4 df", false, [](GrownRoom& room) { room.tailsDf = 4; });
    rooms.add("1 in 5 thrown away", false, [](GrownRoom& room) { room.lost = 0.2; });
}

std::vector<Named> roomsAsked()
{
    Rooms rooms;
    addByTheirPast(rooms);
    addByTheirLuck(rooms);
    return rooms.all();
}

Line lineOf(const std::string& name, bool isQuick, std::function<Outcome(Draw&)> make)
{
    Line line{name, kRooms, std::move(make)};
    return line.covers(76).coversAtMost(84).inShort(isQuick ? 200 : 0);
}

} // namespace

Section forecasts()
{
    Section section{"Forecasts: 80 % intervals of a growing tray, and of sums of trays", {}};
    for (const Named& named : roomsAsked()) {
        section.lines.push_back(
            lineOf("yield foretold, " + named.name, named.isQuick,
                   [room = named.room](Draw& draw) { return yieldsOf(room, draw); }));
    }
    for (const Named& named : roomsAsked()) {
        section.lines.push_back(
            lineOf("day foretold, " + named.name, named.isQuick,
                   [room = named.room](Draw& draw) { return daysOf(room, draw); }));
    }
    for (const Named& named : roomsAsked()) {
        section.lines.push_back(
            {"covered here: varieties widened, " + named.name, kRooms,
             [room = named.room](Draw& draw) { return widenedOf(room, draw); }});
    }
    for (const Order order : {Order{1, 1, 1}, Order{4, 1, 1}, Order{12, 1, 1}, Order{4, 3, 1},
                              Order{3, 1, 2}, Order{2, 2, 3}}) {
        const std::string name = std::to_string(order.trays) + " trays, sowings " +
                                 std::to_string(order.sowings) + ", media " +
                                 std::to_string(order.media);
        for (const int sowings : {3, 8}) {
            GrownRoom room;
            room.sowings = sowings;
            const std::string of = name + ", after " + std::to_string(sowings) + " sowings";
            const bool isQuick = order.trays == 4 && sowings == 8;
            section.lines.push_back(lineOf("sum of " + of, isQuick, [=](Draw& draw) {
                return sumsOf(room, order, Asked::Interval, draw);
            }));
            section.lines.push_back(Line{
                "promised 9 times in 10, " + of, kRooms, [=](Draw& draw) {
                    return sumsOf(room, order, Asked::Promise, draw);
                }}.covers(87));
        }
    }
    return section;
}

} // namespace plumule::calibration
