#include "app/commands/command.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "ui/stock/stock_text.h"
#include "ui/text/text.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

const char* keyOf(Part part)
{
    switch (part) {
    case Part::None:
        return "";
    case Part::Sowed:
        return "sowed";
    case Part::Sanitised:
        return "sanitised";
    case Part::Both:
        return "both";
    }
    return "";
}

ordered_json jsonOfTray(const TracedTray& traced)
{
    ordered_json json;
    const Tray& tray = traced.tray;
    json["code"] = tray.code;
    json["variety"] = traced.variety;
    json["seed_lot"] = jsonOrNull(traced.seedLot);
    json["medium"] = traced.medium.name;
    json["piece"] = jsonOrNull(traced.pieceNumber);
    json["seed_g"] = jsonNumber(tray.seed ? std::optional(inGrams(*tray.seed)) : std::nullopt);
    json["sown_on"] = toIso(tray.sownOn);
    json["sown_by"] = jsonOrNull(tray.sownBy);
    json["state"] = toText(tray.state);
    json["ended_on"] = tray.endedOn ? ordered_json(toIso(*tray.endedOn)) : ordered_json(nullptr);
    json["discard_reason"] = jsonOrNull(tray.discardReason);
    json["cuts"] = ordered_json::array();
    for (const Harvest& cut : traced.cuts) {
        json["cuts"].push_back({{"date", toIso(cut.on)}, {"net_g", jsonNumber(inGrams(cut.net))}});
    }
    json["yield_g"] = jsonNumber(inGrams(traced.yield()));
    json["promises"] = ordered_json::array();
    for (const TracedPromise& promise : traced.promises) {
        json["promises"].push_back(
            {{"date", toIso(promise.key.day)},
             {"customer",
              promise.customer.empty() ? ordered_json() : ordered_json(promise.customer)},
             {"g", jsonNumber(inGrams(promise.part))}});
    }
    if (traced.part != Part::None) {
        json["part"] = keyOf(traced.part);
    }
    return json;
}

ordered_json jsonOfSanitising(const Sanitising& one)
{
    return {{"date", toIso(one.on)},
            {"time", toClockText(one.minute)},
            {"agent", one.how.method},
            {"strength", jsonNumber(one.how.strength)},
            {"strength_unit", toText(one.how.strengthUnit)},
            {"minutes", jsonOrNull(one.how.contactMinutes)},
            {"by", one.how.by}};
}

ordered_json jsonOf(const ForwardTrace& trace)
{
    ordered_json json;
    json["direction"] = "forward";
    json["of"] = ui::titleOf(trace).toStdString();
    json["trays"] = ordered_json::array();
    for (const TracedSowing& sowing : trace.sowings) {
        for (const TracedTray& tray : sowing.trays) {
            json["trays"].push_back(jsonOfTray(tray));
        }
    }
    json["sanitisings"] = ordered_json::array();
    for (const Sanitising& one : trace.sanitisings) {
        json["sanitisings"].push_back(jsonOfSanitising(one));
    }
    const TraceSums& sums = trace.sums;
    json["sums"] = {{"sown", sums.sown},
                    {"cut", sums.cut},
                    {"thrown_away", sums.thrownAway},
                    {"growing", sums.growing},
                    {"seed_g", jsonNumber(inGrams(sums.seed))},
                    {"without_seed", sums.withoutSeed},
                    {"yield_g", jsonNumber(inGrams(sums.yield))},
                    {"promises", sums.promises}};
    return json;
}

ordered_json jsonOf(const TracedWater& water)
{
    ordered_json json;
    json["water"] = toText(water.water);
    json["concentrate"] = water.concentrate;
    json["times"] = water.times;
    json["water_ml"] = jsonNumber(inMillilitres(water.amount));
    json["unmeasured"] = water.unmeasured;
    json["first"] = toIso(water.first);
    json["last"] = toIso(water.last);
    json["readings"] = ordered_json::array();
    for (const WaterReading& reading : water.readings) {
        json["readings"].push_back({{"date", toIso(reading.on)},
                                    {"ph", jsonNumber(reading.ph)},
                                    {"ec_us_cm", jsonNumber(reading.ec)}});
    }
    return json;
}

ordered_json jsonOf(const BackTrace& trace)
{
    ordered_json json;
    json["direction"] = "back";
    json["tray"] = jsonOfTray(trace.tray);
    json["lot"] = nullptr;
    if (trace.lot) {
        const SeedLot& lot = trace.lot->lot;
        json["lot"] = {{"number", lot.lotNumber},
                       {"supplier", lot.supplier},
                       {"bought_on",
                        lot.boughtOn ? ordered_json(toIso(*lot.boughtOn)) : ordered_json(nullptr)},
                       {"germination_percent", jsonNumber(lot.germinationPercent)}};
    }
    json["use_of_piece"] = trace.piece ? ordered_json(trace.useOfPiece) : ordered_json(nullptr);
    json["sanitised"] =
        trace.sanitised ? jsonOfSanitising(*trace.sanitised) : ordered_json(nullptr);
    json["tray_before"] = jsonOrNull(trace.trayBefore);
    json["waters"] = ordered_json::array();
    for (const TracedWater& water : trace.waters) {
        json["waters"].push_back(jsonOf(water));
    }
    json["stays"] = ordered_json::array();
    for (const TracedStay& stay : trace.stays) {
        json["stays"].push_back({{"place", ui::nameOf(stay.spot).toStdString()},
                                 {"from", toIso(stay.stay.fromOn)},
                                 {"to", stay.stay.toOn ? ordered_json(toIso(*stay.stay.toOn))
                                                       : ordered_json(nullptr)}});
    }
    json["residue_g"] =
        jsonNumber(trace.residue ? std::optional(inGrams(*trace.residue)) : std::nullopt);
    json["trial"] = jsonOrNull(trace.trialCode);
    return json;
}

void printForward(const ForwardTrace& trace, const ui::UnitText& units)
{
    print(ui::titleOf(trace));
    for (const QString& fact : ui::factsOf(trace, units)) {
        print(fact);
    }
    for (const TracedSowing& sowing : trace.sowings) {
        print(QStringLiteral("  %1  %2  %3  %4")
                  .arg(QString::fromStdString(toIso(sowing.on)), ui::codesOf(sowing),
                       ui::cutText(sowing), units.mass(sowing.yield(), 0)));
        for (const ui::TraceNote& note : ui::notesOf(sowing)) {
            print(QStringLiteral("      ") + note.words);
        }
    }
    print(QStringLiteral("%1; %2").arg(ui::sumText(trace.sums), units.mass(trace.sums.yield, 0)));
    if (const QString held = ui::promisesText(trace.sums); !held.isEmpty()) {
        print(held);
    }
}

void printBack(const BackTrace& trace, const ui::UnitText& units)
{
    print(ui::titleOf(trace));
    for (const ui::TraceStep& step : ui::stepsOf(trace, units)) {
        print(step.what);
        for (const QString& line : step.lines) {
            print(QStringLiteral("  ") + line);
        }
    }
}

// The answer, in either form.
template <class Trace, class Print>
int tell(const Result<Trace>& trace, bool asJson, Print printIt)
{
    if (!trace) {
        return refused(trace.error());
    }
    if (asJson) {
        print(jsonOf(*trace));
    } else {
        printIt(*trace);
    }
    return kDone;
}

// The days of a mix, as they were asked for; none, and a line said, where that can't be.
std::optional<TraceFrom> withDays(const TraceFrom& from, const QCommandLineParser& parser)
{
    const auto* mix = std::get_if<MixSpan>(&from);
    if (mix == nullptr) {
        if (parser.isSet("from") || parser.isSet("to")) {
            badCall("--from and --to go with a water: nutrient, ph_set or plain.");
            return std::nullopt;
        }
        return from;
    }
    const auto first = dateOption(parser, "from", mix->from);
    const auto last = first ? dateOption(parser, "to", mix->to) : std::nullopt;
    return last ? std::optional<TraceFrom>(MixSpan{mix->water, *first, *last}) : std::nullopt;
}

} // namespace

int runTrace(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"from", "", "day"});
    parser.addOption({"to", "", "day"});
    parser.addOption({"json", ""});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL", "CODE"});
    if (!given) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto journal = openToRead(given->front(), clock);
    if (!journal) {
        return refused(journal.error());
    }
    StockEntries& stock = (*journal)->stock();
    const auto found = stock.find(given->at(1).toStdString());
    const auto layout = (*journal)->room().layout();
    if (!found || !layout) {
        return refused(found ? layout.error() : found.error());
    }
    const auto from = withDays(*found, parser);
    if (!from) {
        return kBadCall;
    }
    const ui::UnitText units(layout->room.units);
    const bool asJson = parser.isSet("json");
    if (const auto* tray = std::get_if<TrayId>(&*from)) {
        return tell(stock.back(*tray), asJson,
                    [&](const BackTrace& trace) { printBack(trace, units); });
    }
    return tell(stock.forward(*from), asJson,
                [&](const ForwardTrace& trace) { printForward(trace, units); });
}

} // namespace plumule::app
