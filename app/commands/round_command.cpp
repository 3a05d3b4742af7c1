#include "app/commands/command.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "ui/text/text.h"
#include "ui/watering/round_sheet.h"
#include "ui/watering/round_text.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

void putPlace(ordered_json& row, const std::optional<Spot>& spot)
{
    row["rack"] = spot ? ordered_json(spot->rack) : ordered_json(nullptr);
    row["shelf"] = spot ? ordered_json(spot->shelf) : ordered_json(nullptr);
    row["place"] = spot ? ordered_json(spot->number) : ordered_json(nullptr);
}

std::string actionOf(WateringMethod method)
{
    return method == WateringMethod::Mist ? "mist" : "water_from_below";
}

ordered_json rowOf(const RoundTray& tray)
{
    ordered_json row;
    row["code"] = tray.code;
    putPlace(row, tray.spot);
    row["variety"] = tray.variety;
    row["medium"] = tray.medium.name;
    row["stage"] = toText(tray.stage);
    row["day"] = tray.day;
    row["action"] = actionOf(tray.method);
    row["water"] = toText(tray.water);
    row["water_ml"] =
        jsonNumber(tray.amount ? std::optional(inMillilitres(*tray.amount)) : std::nullopt);
    row["done"] = tray.isDone();
    row["as_needed"] = tray.isAsNeeded;
    row["found_wet"] = tray.looked.has_value();
    const auto missed = tray.drought ? tray.drought->missed : std::nullopt;
    row["missed"] =
        missed ? ordered_json({{"date", toIso(missed->date)}, {"slot", toText(missed->slot)}})
               : ordered_json(nullptr);
    row["days_without_water"] = tray.drought ? tray.drought->days : 0;
    row["never_watered"] = tray.drought && tray.drought->isNever;
    row["between"] = ordered_json::array();
    for (const Watering& each : tray.between) {
        row["between"].push_back(
            {{"time", toClockText(each.minute)},
             {"water", toText(each.water)},
             {"water_ml", jsonNumber(each.amount ? std::optional(inMillilitres(*each.amount))
                                                 : std::nullopt)}});
    }
    return row;
}

ordered_json rowOf(const StageDecision& decision)
{
    ordered_json row;
    row["code"] = decision.code;
    putPlace(row, decision.spot);
    row["variety"] = decision.variety;
    row["medium"] = decision.medium.name;
    row["from"] = toText(decision.from);
    row["to"] = decision.to ? toText(*decision.to) : "harvest";
    row["cue"] = decision.cue;
    row["due_date"] = toIso(decision.due.date);
    row["due_time"] = toClockText(decision.due.minute);
    row["days_late"] = decision.daysLate;
    return row;
}

ordered_json rowOf(const MixLine& line)
{
    ordered_json row;
    row["water"] = toText(line.water);
    row["action"] = actionOf(line.method);
    row["litres"] = jsonNumber(inLitres(line.total));
    row["concentrate_ml"] = jsonNumber(
        line.concentrate ? std::optional(inMillilitres(*line.concentrate)) : std::nullopt);
    row["trays_without_amount"] = line.unmeasured;
    return row;
}

template <class Rows>
ordered_json listOf(const Rows& rows)
{
    ordered_json list = ordered_json::array();
    for (const auto& each : rows) {
        list.push_back(rowOf(each));
    }
    return list;
}

ordered_json jsonOf(const Round& round)
{
    ordered_json json;
    json["date"] = toIso(round.date);
    json["slot"] = toText(round.slot);
    json["trays"] = listOf(round.trays);
    json["decisions"] = listOf(round.decisions);
    json["mix"] = listOf(round.mix);
    json["tomorrow"] = {
        {"harvests", round.tomorrow.harvests},          {"into_light", round.tomorrow.intoLight},
        {"into_blackout", round.tomorrow.intoBlackout}, {"to_sow", round.tomorrow.toSow},
        {"free_places", round.tomorrow.freePlaces},     {"places", round.tomorrow.places}};
    return json;
}

QString amountText(const RoundTray& tray, const ui::UnitText& units)
{
    return tray.amount ? units.watering(*tray.amount) + ' ' + ui::nameOf(tray.water)
                       : ui::nameOf(tray.water);
}

void printRound(const Round& round, const ui::UnitText& units)
{
    print(QStringLiteral("%1, %2 round: %3 of %4 done")
              .arg(ui::dayText(round.date), ui::nameOf(round.slot))
              .arg(round.doneCount())
              .arg(ui::trayCount(round.toDoCount())));
    if (const QString words = ui::forgottenText(round); !words.isEmpty()) {
        print("  " + words);
    }
    for (const RoundTray& tray : round.trays) {
        const QString missed = ui::missedText(tray, {round.date, round.slot});
        print(QStringLiteral("  [%1] %2  %3  %4, %5: %6, %7%8")
                  .arg(tray.isDone() ? 'x' : ' ')
                  .arg(QString::fromStdString(tray.code), ui::nameOf(tray.spot),
                       QString::fromStdString(tray.variety),
                       QString::fromStdString(tray.medium.name), ui::nameOf(tray.method),
                       amountText(tray, units),
                       missed.isEmpty() ? QString() : "  " + missed.toUpper()));
    }
    for (const StageDecision& decision : round.decisions) {
        print(QStringLiteral("  look: %1  %2  %3")
                  .arg(QString::fromStdString(decision.code), ui::nameOf(decision.spot),
                       QString::fromStdString(decision.cue)));
    }
    for (const MixLine& line : round.mix) {
        print(QStringLiteral("  mix: %1 %2%3")
                  .arg(ui::nameOf(line.water), units.mixed(line.total),
                       line.concentrate ? QStringLiteral(", %1 of concentrate")
                                              .arg(units.concentrate(*line.concentrate))
                                        : QString()));
    }
}

// The slot asked for; nullopt, and a line said, where it is none.
std::optional<Slot> slotOption(const QCommandLineParser& parser, Slot otherwise)
{
    if (!parser.isSet("slot")) {
        return otherwise;
    }
    Slot slot = otherwise;
    if (!fromText(parser.value("slot").toStdString(), slot)) {
        badCall(QStringLiteral("--slot wants morning or evening, not \"%1\".")
                    .arg(parser.value("slot")));
        return std::nullopt;
    }
    return slot;
}

int tellRound(const QCommandLineParser& parser, const Round& round, const RoomLayout& layout)
{
    const ui::UnitText units(layout.room.units);
    if (parser.isSet("pdf")) {
        const Done written = ui::writeRoundSheet(round, layout, units, parser.value("pdf"));
        return written ? kDone : refused(written.error());
    }
    if (parser.isSet("json")) {
        print(jsonOf(round));
    } else {
        printRound(round, units);
    }
    return kDone;
}

} // namespace

int runRound(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"date", "", "day"});
    parser.addOption({"slot", "", "slot"});
    parser.addOption({"json", ""});
    parser.addOption({"pdf", "", "file"});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL"});
    if (!given) {
        return kBadCall;
    }
    if (parser.isSet("json") && parser.isSet("pdf")) {
        return badCall("--json and --pdf do not go together.");
    }
    const SystemClock clock;
    const auto day = dateOption(parser, "date", clock.today());
    if (!day) {
        return kBadCall;
    }
    const auto opened = openToRead(given->front(), clock);
    if (!opened) {
        return refused(opened.error());
    }
    Journal& journal = **opened;
    const auto layout = journal.room().layout();
    if (!layout) {
        return refused(layout.error());
    }
    const auto slot = slotOption(parser, slotAt(layout->room, clock.now().minute));
    if (!slot) {
        return kBadCall;
    }
    const auto round = journal.watering().round(*day, *slot);
    return round ? tellRound(parser, *round, *layout) : refused(round.error());
}

} // namespace plumule::app
