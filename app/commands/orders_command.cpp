#include "app/commands/command.h"

#include "core/forecast/forecast_sums.h"
#include "core/journal/order/order_entries.h"
#include "core/journal/room/room_entries.h"
#include "ui/order/order_text.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

ordered_json jsonOf(const std::vector<CutShare>& cuts)
{
    ordered_json list = ordered_json::array();
    for (const CutShare& cut : cuts) {
        list.push_back({{"code", cut.code},
                        {"date", toIso(cut.on)},
                        {"g", inGrams(cut.part)},
                        {"by_hand", cut.isByHand}});
    }
    return list;
}

ordered_json headOf(const Promise& promise, const std::string& variety)
{
    const Order& order = promise.order;
    ordered_json json;
    json["date"] = toIso(promise.day);
    json["customer"] =
        order.customer.empty() ? ordered_json(nullptr) : ordered_json(order.customer);
    json["variety"] = variety;
    json["promised_g"] = inGrams(order.amount);
    json["recurs"] = toText(order.recurs);
    json["ends_on"] = order.endsOn ? ordered_json(toIso(*order.endsOn)) : ordered_json(nullptr);
    return json;
}

ordered_json jsonOf(const ChanceOfTrays& chance)
{
    return {{"trays", chance.trays},
            {"chance", jsonNumber(chance.chance)},
            {"low_g", inGrams(chance.low)},
            {"mean_g", inGrams(chance.mean)},
            {"high_g", inGrams(chance.high)}};
}

ordered_json jsonOf(const SowingNeed& need)
{
    const auto grams = [](const std::optional<Mass>& mass) {
        return jsonNumber(mass ? std::optional(inGrams(*mass)) : std::nullopt);
    };
    ordered_json json;
    json["trays"] = need.trays;
    json["medium"] = need.medium.name;
    json["sow_on"] = toIso(need.times.sow.date);
    json["soak_on"] =
        need.times.soak ? ordered_json(toIso(need.times.soak->date)) : ordered_json(nullptr);
    json["too_late"] = need.isLate;
    json["free_places"] = need.isLate ? ordered_json(nullptr) : ordered_json(need.freePlaces);
    json["free_pieces"] = jsonOrNull(need.freePieces);
    json["seed_g"] = grams(need.seed);
    json["seed_left_g"] = grams(need.seedLeft);
    const YieldForecast tray = yieldOf(need.model);
    json["tray_g"] = {
        {"low", inGrams(tray.low)}, {"middle", inGrams(tray.middle)}, {"high", inGrams(tray.high)}};
    json["known_from"] = {{"source", toText(need.model.basis.from)},
                          {"trays", need.model.basis.trays},
                          {"discarded", need.model.discarded},
                          {"ended", need.model.ended},
                          {"library", need.model.basis.source}};
    return json;
}

ordered_json jsonOf(const OrderBook& book)
{
    ordered_json coming = ordered_json::array();
    for (const OrderLine& line : book.toCome) {
        ordered_json json = headOf(line.promise, line.variety);
        json["cut"] = jsonOf(line.cut);
        json["growing"] = ordered_json::array();
        for (const GrowingFor& tray : line.growing) {
            json["growing"].push_back({{"code", tray.code},
                                       {"due", toIso(tray.due)},
                                       {"middle_g", inGrams(tray.expected)}});
        }
        json["planned"] = jsonOf(line.planned);
        json["sowing"] = line.sowing ? jsonOf(*line.sowing) : ordered_json(nullptr);
        json["chances"] = ordered_json::array();
        for (const ChanceOfTrays& chance : line.chances) {
            json["chances"].push_back(jsonOf(chance));
        }
        coming.push_back(json);
    }
    ordered_json past = ordered_json::array();
    for (const PastPromise& one : book.past) {
        ordered_json json = headOf(one.promise, one.variety);
        json["weighed_g"] = inGrams(one.weighed());
        json["over_g"] = inGrams(one.over());
        json["kept"] = one.isKept();
        json["cuts"] = jsonOf(one.cuts);
        past.push_back(json);
    }
    return {{"date", toIso(book.today)}, {"to_come", coming}, {"past", past}};
}

void printBook(const OrderBook& book, const ui::UnitText& units)
{
    for (const OrderLine& line : book.toCome) {
        print(QStringLiteral("%1: %2 of %3")
                  .arg(ui::promiseText(line.promise), units.mass(line.promise.order.amount, 0),
                       QString::fromStdString(line.variety)));
        print("  " + ui::growingText(line, units) + ". " + ui::planText(line));
        for (const QString& lack : ui::lackTexts(line, units)) {
            print("  " + lack);
        }
    }
    for (const PastPromise& one : book.past) {
        print(QStringLiteral("%1: %2 of %3, %4 weighed, %5")
                  .arg(ui::promiseText(one.promise), units.mass(one.promise.order.amount, 0),
                       QString::fromStdString(one.variety), units.mass(one.weighed(), 0),
                       ui::keptText(one, units)));
    }
    if (book.toCome.empty() && book.past.empty()) {
        print(QStringLiteral("No order is written down."));
    }
}

} // namespace

int runOrders(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"json", ""});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL"});
    if (!given) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto opened = openToRead(given->front(), clock);
    if (!opened) {
        return refused(opened.error());
    }
    const auto book = (*opened)->orders().book();
    const auto layout = (*opened)->room().layout();
    if (!book || !layout) {
        return refused(book ? layout.error() : book.error());
    }
    if (parser.isSet("json")) {
        print(jsonOf(*book));
    } else {
        printBook(*book, ui::UnitText(layout->room.units));
    }
    return kDone;
}

} // namespace plumule::app
