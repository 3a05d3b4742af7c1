#include "core/journal/order/order_book.h"

#include "core/forecast/forecast_repository.h"
#include "core/medium/medium_repository.h"
#include "core/order/order_repository.h"
#include "core/order/order_rules.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_repository.h"
#include "core/variety/variety_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// What grows leaves its place on the day that it is likely to be cut. A tray that was cut before
// and grows on is not foretold: it stays.
std::vector<std::optional<Date>> leavingDays(Database& database, const ForecastReport& report)
{
    std::map<TrayId, Date> foretold;
    for (const TrayForecast& tray : report.growing) {
        if (tray.day) {
            foretold[tray.tray] = tray.day->middle;
        }
    }
    std::vector<std::optional<Date>> leaving;
    for (const auto& [place, tray] : TrayRepository(database).occupied()) {
        const auto found = foretold.find(tray);
        leaving.push_back(found == foretold.end() ? std::nullopt : std::optional(found->second));
    }
    return leaving;
}

void readStock(Database& database, OrderFacts& facts)
{
    for (const SeedLotStock& lot : VarietyRepository(database).stock({}, Listed::InUse)) {
        if (lot.left) {
            facts.seedLeft[lot.lot.variety] += *lot.left;
        }
    }
    MediumRepository media(database);
    facts.media = media.byId();
    for (const PieceRecord& piece : media.pieces({}, Listed::InUse)) {
        facts.freePieces[piece.piece.medium] += piece.isFree() ? 1 : 0;
    }
}

void readProtocols(VarietyRepository& varieties, OrderFacts& facts)
{
    for (const Promise& promise : facts.promises) {
        const VarietyId variety = promise.order.variety;
        if (facts.protocols.contains(variety)) {
            continue;
        }
        if (auto protocol = varieties.protocol(variety)) {
            facts.protocols.emplace(variety, std::move(*protocol));
        }
    }
}

OrderFacts factsOf(Database& database, Moment now)
{
    OrderFacts facts;
    facts.now = now;
    facts.forecast = ForecastRepository(database).read(now);
    facts.report = forecastReport(facts.forecast);
    const RoomLayout layout = RoomRepository(database).layout();
    facts.morningMinute = layout.room.morningMinute;
    facts.places = static_cast<int>(layout.places.size());
    facts.leaving = leavingDays(database, facts.report);
    readStock(database, facts);
    facts.usualMedia = OrderRepository(database).usualMedia();
    return facts;
}

std::vector<PastPromise> pastOf(const std::vector<Promise>& promises, const SharesByPromise& cuts,
                                std::map<VarietyId, Variety> varieties)
{
    std::vector<PastPromise> past;
    for (const Promise& promise : promises) {
        PastPromise one{promise, varieties[promise.order.variety].name, {}};
        if (const auto found = cuts.find(promise.key()); found != cuts.end()) {
            one.cuts = found->second;
        }
        past.push_back(std::move(one));
    }
    std::reverse(past.begin(), past.end());
    return past;
}

} // namespace

OrderBook orderBookOf(Database& database, Moment now)
{
    OrderRepository orders(database);
    VarietyRepository varieties(database);
    const std::vector<Order> all = orders.all();
    const Date today = now.date;
    OrderFacts facts = factsOf(database, now);
    facts.promises = promisesAhead(all, today);
    const std::vector<Promise> past = promises(all, today - kDaysBack, today - 1);
    std::vector<Promise> both = past;
    both.insert(both.end(), facts.promises.begin(), facts.promises.end());
    facts.cuts = shareCuts(both, orders.cuts(today - kDaysBack - kDaysKept, today));
    readProtocols(varieties, facts);
    return {today, planOrders(facts), pastOf(past, facts.cuts, varieties.byId())};
}

} // namespace plumule
