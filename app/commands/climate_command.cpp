#include "app/commands/command.h"

#include "core/journal/climate/climate_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/climate/climate_text.h"
#include "ui/text/text.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

void putMean(ordered_json& row, const std::string& name, const std::string& unit,
             const std::optional<DayMean>& mean)
{
    const auto part = [&](double DayMean::*field) {
        return jsonNumber(mean ? std::optional((*mean).*field) : std::nullopt);
    };
    row[name + "_mean_" + unit] = part(&DayMean::mean);
    row[name + "_low_" + unit] = part(&DayMean::low);
    row[name + "_high_" + unit] = part(&DayMean::high);
}

ordered_json jsonOf(const std::vector<ClimateDay>& days)
{
    ordered_json list = ordered_json::array();
    for (const ClimateDay& day : days) {
        ordered_json row;
        row["date"] = toIso(day.on);
        row["hours"] = day.hours;
        putMean(row, "temperature", "c", day.temperature);
        putMean(row, "humidity", "percent", day.humidity);
        row["vpd_kpa"] = jsonNumber(day.vpd);
        row["dli_mol_m2"] = jsonNumber(day.dli);
        row["dli_of_lamp"] = day.isLightOfLamp;
        row["light_mean_lux"] = jsonNumber(day.lux);
        list.push_back(row);
    }
    return list;
}

ordered_json jsonOf(const TrayClimate& climate)
{
    ordered_json json;
    json["code"] = climate.tray.code;
    json["sown_on"] = toIso(climate.tray.sownOn);
    json["loggers"] = climate.loggers;
    json["days"] = jsonOf(climate.days);
    json["growth"] = {{"temperature_mean_c", jsonNumber(climate.growth.temperature)},
                      {"vpd_kpa", jsonNumber(climate.growth.vpd)},
                      {"dli_mol_m2_d", jsonNumber(climate.growth.dli)}};
    return json;
}

ordered_json jsonOf(const std::vector<LoggerDays>& loggers, const RoomLayout& layout)
{
    ordered_json list = ordered_json::array();
    for (const LoggerDays& one : loggers) {
        ordered_json json;
        json["name"] = one.logger.name;
        json["rack"] = nullptr;
        json["shelf"] = nullptr;
        std::optional<RackId> rack = one.logger.rack;
        for (const Shelf& shelf : layout.shelves) {
            if (one.logger.shelf == shelf.id) {
                rack = shelf.rack;
                json["shelf"] = shelf.name;
            }
        }
        for (const Rack& each : layout.racks) {
            if (rack == each.id) {
                json["rack"] = each.name;
            }
        }
        json["days"] = jsonOf(one.days);
        list.push_back(json);
    }
    return {{"loggers", list}};
}

void printDays(const std::vector<ClimateDay>& days, const ui::UnitText& units)
{
    const QString none = QStringLiteral("–");
    for (const ClimateDay& day : days) {
        print(QStringLiteral("  %1  %2  %3  %4  %5")
                  .arg(QString::fromStdString(toIso(day.on)),
                       day.temperature ? units.temperature(day.temperature->mean) : none,
                       day.humidity ? ui::numberText(day.humidity->mean, 0) + " %" : none,
                       day.vpd ? ui::numberText(*day.vpd, 2) + " kPa" : none,
                       day.dli   ? ui::numberText(*day.dli, 1) + " mol/m²"
                       : day.lux ? ui::numberText(*day.lux, 0) + " lx"
                                 : none));
    }
}

int tellTray(Journal& journal, const QString& code, bool asJson, const ui::UnitText& units)
{
    const auto tray = journal.trays().find(code.toStdString());
    const auto climate = tray ? journal.climate().ofTray(*tray) : Result<TrayClimate>(passOn(tray));
    if (!climate) {
        return refused(climate.error());
    }
    if (asJson) {
        print(jsonOf(*climate));
        return kDone;
    }
    print(QString::fromStdString(climate->tray.code));
    printDays(climate->days, units);
    for (const QString& words : {ui::sourceWords(*climate), ui::ruleWords()}) {
        if (!words.isEmpty()) {
            print(words);
        }
    }
    return kDone;
}

int tellLoggers(Journal& journal, Date from, Date to, bool asJson, const RoomLayout& layout)
{
    const auto loggers = journal.climate().days(from, to);
    if (!loggers) {
        return refused(loggers.error());
    }
    if (asJson) {
        print(jsonOf(*loggers, layout));
        return kDone;
    }
    for (const LoggerDays& one : *loggers) {
        print(QStringLiteral("%1, %2").arg(QString::fromStdString(one.logger.name),
                                           ui::placeName(one.logger, layout)));
        printDays(one.days, ui::UnitText(layout.room.units));
    }
    print(loggers->empty() ? QStringLiteral("No climate logger's file was brought in yet.")
                           : ui::ruleWords());
    return kDone;
}

} // namespace

int runClimate(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"tray", "", "code"});
    parser.addOption({"from", "", "day"});
    parser.addOption({"to", "", "day"});
    parser.addOption({"json", ""});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL"});
    if (!given) {
        return kBadCall;
    }
    if (parser.isSet("tray") && (parser.isSet("from") || parser.isSet("to"))) {
        return badCall("--tray goes without --from and --to: it shows the tray's own days.");
    }
    const auto from = dateOption(parser, "from", date(1990, 1, 1));
    const auto to = from ? dateOption(parser, "to", date(2100, 12, 31)) : std::nullopt;
    if (!to) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto opened = Journal::open(given->front().toStdString(), clock, Access::ReadOnly);
    if (!opened) {
        return refused(opened.error());
    }
    Journal& journal = **opened;
    const auto layout = journal.room().layout();
    if (!layout) {
        return refused(layout.error());
    }
    const bool asJson = parser.isSet("json");
    return parser.isSet("tray")
               ? tellTray(journal, parser.value("tray"), asJson, ui::UnitText(layout->room.units))
               : tellLoggers(journal, *from, *to, asJson, *layout);
}

} // namespace plumule::app
