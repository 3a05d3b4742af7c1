#include "app/commands/command.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/week/week_entries.h"
#include "ui/text/text.h"
#include "ui/week/week_calendar.h"
#include "ui/week/week_sheet.h"
#include "ui/week/week_text.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

ordered_json jsonOf(const std::optional<ExpectedGrams>& expected)
{
    if (!expected) {
        return nullptr;
    }
    return {{"mean_g", jsonNumber(inGrams(expected->mean))},
            {"low_g", jsonNumber(inGrams(expected->low))},
            {"high_g", jsonNumber(inGrams(expected->high))}};
}

ordered_json jsonOf(const WeekEntry& entry)
{
    ordered_json json;
    json["task"] = toText(entry.task);
    json["what"] = entry.supply == SupplyKind::Pieces ? "pieces"
                   : entry.task == WeekTask::Order    ? "seed"
                                                      : "trays";
    json["name"] = entry.name;
    json["slot"] = toText(entry.slot);
    json["count"] = entry.count;
    json["proposed"] = entry.proposed;
    json["codes"] = entry.codes;
    json["shelves"] = entry.shelves;
    json["trials"] = entry.trials;
    json["further_cuts"] = entry.furtherCuts;
    return json;
}

ordered_json jsonOf(const Proposal& proposal)
{
    const auto gramsOf = [](const std::optional<Mass>& mass) {
        return jsonNumber(mass ? std::optional(inGrams(*mass)) : std::nullopt);
    };
    ordered_json json;
    json["due"] = toIso(proposal.due);
    json["variety"] = proposal.variety;
    json["medium"] = proposal.medium.name;
    json["trays"] = proposal.trays;
    json["sow_date"] =
        proposal.standsNowhere() ? ordered_json(nullptr) : ordered_json(toIso(proposal.sowAt.date));
    json["soak_date"] = proposal.soakAt && !proposal.standsNowhere()
                            ? ordered_json(toIso(proposal.soakAt->date))
                            : ordered_json(nullptr);
    json["cut_date"] =
        proposal.standsNowhere() ? ordered_json(nullptr) : ordered_json(toIso(proposal.cutOn));
    json["moved_because"] = proposal.shift == ProposalShift::None
                                ? ordered_json(nullptr)
                                : ordered_json(toText(proposal.shift));
    json["free_places_when_due"] = proposal.freeOnDue;
    json["free_places"] = proposal.freePlaces;
    json["seed_g"] = gramsOf(proposal.seedNeeded);
    json["seed_left_g"] = gramsOf(proposal.seedLeft);
    return json;
}

ordered_json jsonOf(const Week& week)
{
    ordered_json json;
    json["from"] = toIso(week.from);
    json["to"] = toIso(week.days.back().on);
    json["days"] = ordered_json::array();
    for (const WeekDay& day : week.days) {
        ordered_json row;
        row["date"] = toIso(day.on);
        row["tasks"] = ordered_json::array();
        for (const WeekEntry& entry : day.entries) {
            row["tasks"].push_back(jsonOf(entry));
        }
        row["expected"] = jsonOf(day.expected);
        row["free_places"] = day.freePlaces;
        json["days"].push_back(row);
    }
    json["expected"] = jsonOf(week.expected);
    json["proposals"] = ordered_json::array();
    for (const Proposal& proposal : week.proposals) {
        json["proposals"].push_back(jsonOf(proposal));
    }
    return json;
}

void printWeek(const Week& week, const ui::UnitText& units)
{
    for (const WeekDay& day : week.days) {
        print(ui::dayText(day.on) + (day.expected ? QStringLiteral(": %1, 8 in 10 %2")
                                                        .arg(ui::meanText(*day.expected, units),
                                                             ui::rangeText(*day.expected, units))
                                                  : QString()));
        for (const WeekEntry& entry : day.entries) {
            const QString behind = ui::behindText(entry);
            print("  " + ui::entryText(entry) + (behind.isEmpty() ? QString() : "  " + behind));
        }
    }
    for (const Proposal& proposal : week.proposals) {
        print(QStringLiteral("* %1, %2. %3")
                  .arg(ui::titleOf(proposal), ui::whenText(proposal, week.from),
                       ui::wordsOf(proposal, units)));
    }
}

int tellWeek(const QCommandLineParser& parser, const Week& week, const RoomLayout& layout,
             const Clock& clock)
{
    if (parser.isSet("ics")) {
        const Done written =
            ui::writeWeekCalendar(week, layout.room, clock.utcMilliseconds(), parser.value("ics"));
        return written ? kDone : refused(written.error());
    }
    if (parser.isSet("pdf")) {
        const Done written = ui::writeWeekSheet(week, layout, parser.value("pdf"));
        return written ? kDone : refused(written.error());
    }
    if (parser.isSet("json")) {
        print(jsonOf(week));
    } else {
        printWeek(week, ui::UnitText(layout.room.units));
    }
    return kDone;
}

} // namespace

int runWeek(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"json", ""});
    parser.addOption({"ics", "", "file"});
    parser.addOption({"pdf", "", "file"});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL"});
    if (!given) {
        return kBadCall;
    }
    if (parser.isSet("json") + parser.isSet("ics") + parser.isSet("pdf") > 1) {
        return badCall("Only one of --json, --ics and --pdf at a time.");
    }
    const SystemClock clock;
    const auto opened = openToRead(given->front(), clock);
    if (!opened) {
        return refused(opened.error());
    }
    Journal& journal = **opened;
    const auto layout = journal.room().layout();
    const auto week = journal.week().week();
    if (!layout || !week) {
        return refused(layout ? week.error() : layout.error());
    }
    return tellWeek(parser, *week, *layout, clock);
}

} // namespace plumule::app
