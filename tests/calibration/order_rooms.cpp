#include "grown_room.h"
#include "lines.h"

#include "core/order/order_plan.h"

#include <map>

namespace plumule::calibration {
namespace {

constexpr int kPromisedRooms = 2000;
constexpr int kQuickPromises = 150;
constexpr int kSownForIt = 40; // trays of which as many are taken as are proposed
constexpr int kKeptOfEach = 3; // of every sowing before
constexpr int kDaysToGrow = 20;
const VarietyId kPromised{1};
const MediumId kMedium{1};

// A room of which the last sowing is large enough for any promise, and the others are small.
GrownRoom roomFor(int sowings, double lost)
{
    GrownRoom room;
    room.varieties = 2;
    room.media = 2;
    room.sowings = sowings + 1;
    room.fewestTrays = room.mostTrays = kSownForIt;
    room.lost = lost;
    return room;
}

using SowingKey = std::tuple<Date, VarietyId, MediumId>;

SowingKey sowingOf(const TrayFact& tray)
{
    return {tray.sownAt.date, tray.variety, tray.medium};
}

void thinOut(ForecastFacts& facts)
{
    std::map<SowingKey, int> kept;
    std::erase_if(facts.trays,
                  [&](const TrayFact& tray) { return ++kept[sowingOf(tray)] > kKeptOfEach; });
}

// What a tray of it gives on the average of all sowings: the grower's notion of a promise.
Mass usualYield(const ForecastFacts& all)
{
    Mass sum;
    std::int64_t trays = 0;
    for (const TrayFact& tray : all.trays) {
        if (tray.variety == kPromised && tray.medium == kMedium && tray.cutAt) {
            sum += tray.cut;
            ++trays;
        }
    }
    return sum.scaledBy(1.0 / static_cast<double>(std::max<std::int64_t>(1, trays)));
}

OrderFacts factsOf(const ForecastFacts& known, Mass amount)
{
    OrderFacts facts;
    facts.now = known.now;
    facts.places = 1000;
    facts.forecast = known;
    facts.report = forecastReport(known);
    facts.media[kMedium].id = kMedium;
    facts.usualMedia[kPromised] = kMedium;
    Protocol& protocol = facts.protocols[kPromised];
    protocol.variety.id = kPromised;
    protocol.stages.resize(1);
    protocol.stages[0].lengthMinutes = kMinutesPerDay;
    plumule::Order order;
    order.id = {1};
    order.variety = kPromised;
    order.amount = amount;
    order.day = known.now.date + kDaysToGrow;
    facts.promises = {{order, order.day}};
    return facts;
}

// As many trays as the plan asks for are taken of the sowing that comes next, thrown away or not.
Outcome promiseKept(const GrownRoom& room, Draw& draw)
{
    const ForecastFacts all = grow(room, draw);
    Date last{};
    for (const TrayFact& tray : all.trays) {
        last = tray.variety == kPromised ? std::max(last, tray.sownAt.date) : last;
    }
    ForecastFacts known = knownAt(all, {last, 0});
    thinOut(known);
    const Mass amount = usualYield(all).scaledBy(1 + 14 * draw.uniform());
    const auto lines = planOrders(factsOf(known, amount));
    const auto& need = lines.front().sowing;
    if (!need || need->model.basis.from != ForecastSource::OwnPast || need->trays > kSownForIt) {
        return {};
    }
    Mass sum;
    int taken = 0;
    for (const TrayFact& tray : all.trays) {
        if (sowingOf(tray) == SowingKey{last, kPromised, kMedium} && taken < need->trays) {
            sum += tray.cut;
            ++taken;
        }
    }
    Outcome outcome;
    outcome.intervals = 1;
    outcome.covering = sum >= amount ? 1 : 0;
    return outcome;
}

} // namespace

Section orders()
{
    Section section{"Orders: promises met by the trays that are proposed, aimed at 9 in 10 or more",
                    {}};
    for (const int oneIn : {20, 5}) {
        const double lost = 1.0 / oneIn;
        for (const int sowings : {3, 6, 12}) {
            const std::string name = "after " + std::to_string(sowings) + " sowings of 3, 1 in " +
                                     std::to_string(oneIn) + " thrown away";
            Line line{"promise of 1 to 15 trays, " + name, kPromisedRooms,
                      [=](Draw& draw) { return promiseKept(roomFor(sowings, lost), draw); }};
            const bool isQuick = sowings == 6 && lost < 0.1;
            section.lines.push_back(line.covers(88).inShort(isQuick ? kQuickPromises : 0));
        }
    }
    return section;
}

} // namespace plumule::calibration
