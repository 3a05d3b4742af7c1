#include "app/commands/command.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "ui/stock/stock_text.h"
#include "ui/text/text.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

const char* keyOf(Low low)
{
    switch (low) {
    case Low::No:
        return "no";
    case Low::Days:
        return "days";
    case Low::Amount:
        return "amount";
    case Low::Planned:
        return "planned";
    case Low::None:
        return "none_left";
    }
    return "";
}

std::optional<double> massInGrams(const std::optional<Mass>& mass)
{
    return mass ? std::optional(inGrams(*mass)) : std::nullopt;
}

// In millilitres, or in pieces.
std::optional<double> numberOf(const std::optional<StockAmount>& amount, StockUnit unit)
{
    if (!amount) {
        return std::nullopt;
    }
    return unit == StockUnit::Piece ? static_cast<double>(amount->count())
                                    : inMillilitres(asVolume(*amount));
}

std::optional<std::string> isoOf(const std::optional<Date>& day)
{
    return day ? std::optional(toIso(*day)) : std::nullopt;
}

ordered_json jsonOf(const SeedLine& line)
{
    ordered_json json;
    json["lot"] = line.stock.lot.lotNumber;
    json["variety"] = line.variety;
    json["left_g"] = jsonNumber(massInGrams(line.stock.left));
    json["sown_g"] = jsonNumber(inGrams(line.stock.sown));
    json["planned_g"] = jsonNumber(inGrams(line.planned));
    json["then_left_g"] = jsonNumber(massInGrams(line.thenLeft()));
    json["days_left"] = jsonNumber(line.daysLeft);
    json["low"] = keyOf(line.low);
    json["germination_percent"] = jsonNumber(line.stock.lot.germinationPercent);
    return json;
}

ordered_json jsonOf(const StockLine& line)
{
    ordered_json json;
    json["name"] = line.item.name;
    json["kind"] = toText(line.item.kind);
    json["unit"] = toText(line.item.unit);
    json["left"] = jsonNumber(numberOf(line.left, line.item.unit));
    json["planned"] = jsonNumber(numberOf(line.planned, line.item.unit));
    json["used_since"] = jsonNumber(numberOf(line.usedSince, line.item.unit));
    json["days_left"] = jsonNumber(line.daysLeft);
    json["counted_on"] = jsonOrNull(isoOf(line.countedOn));
    json["low"] = keyOf(line.low);
    return json;
}

ordered_json jsonOf(const PieceGroup& group)
{
    ordered_json list = ordered_json::array();
    for (const PieceLine& line : group.pieces) {
        ordered_json json;
        json["number"] = line.record.piece.number;
        json["uses"] = line.record.uses;
        json["planned_uses"] = jsonOrNull(group.medium.plannedUses);
        json["past_planned_uses"] = line.isPast;
        json["bought_on"] = jsonOrNull(isoOf(line.record.piece.boughtOn));
        json["tray"] = line.inUse ? ordered_json(line.inUse->tray) : ordered_json(nullptr);
        json["sanitise_since"] = jsonOrNull(isoOf(line.due));
        json["sanitised"] = nullptr;
        if (line.sanitised) {
            const SanitisingDraft& how = line.sanitised->how;
            json["sanitised"] = {{"date", toIso(line.sanitised->on)},
                                 {"agent", how.method},
                                 {"strength", jsonNumber(how.strength)},
                                 {"strength_unit", toText(how.strengthUnit)},
                                 {"minutes", jsonOrNull(how.contactMinutes)},
                                 {"by", how.by}};
        }
        list.push_back(json);
    }
    return {{"medium", group.medium.name}, {"pieces", list}};
}

ordered_json jsonOf(const Stock& stock)
{
    ordered_json json;
    json["date"] = toIso(stock.today);
    json["last_counted"] = jsonOrNull(isoOf(stock.lastCounted));
    json["seed"] = ordered_json::array();
    for (const SeedLine& line : stock.seed) {
        json["seed"].push_back(jsonOf(line));
    }
    json["supplies"] = ordered_json::array();
    for (const StockLine& line : stock.supplies) {
        json["supplies"].push_back(jsonOf(line));
    }
    json["media"] = ordered_json::array();
    for (const PieceGroup& group : stock.pieces) {
        json["media"].push_back(jsonOf(group));
    }
    json["low"] = ordered_json::array();
    for (const LowThing& thing : stock.low) {
        json["low"].push_back({{"name", thing.name},
                               {"why", keyOf(thing.why)},
                               {"days_left", jsonNumber(thing.daysLeft)}});
    }
    return json;
}

void printStock(const Stock& stock, const ui::UnitText& units)
{
    const QString low = ui::lowSentence(stock.low);
    print(low.isEmpty() ? QStringLiteral("Nothing runs low.") : low);
    for (const SeedLine& line : stock.seed) {
        const auto left = line.stock.left;
        print(QStringLiteral("  %1 %2: %3, %4 days")
                  .arg(QString::fromStdString(line.variety),
                       QString::fromStdString(line.stock.lot.lotNumber),
                       left ? units.mass(*left, 0) : QStringLiteral("not weighed"),
                       ui::daysText(line.daysLeft)));
    }
    for (const StockLine& line : stock.supplies) {
        print(QStringLiteral("  %1: %2, %3 days")
                  .arg(QString::fromStdString(line.item.name),
                       line.left ? ui::amountText(*line.left, line.item.unit, units)
                                 : QStringLiteral("not counted"),
                       ui::daysText(line.daysLeft)));
    }
    for (const PieceGroup& group : stock.pieces) {
        print(QStringLiteral("  %1: %2")
                  .arg(QString::fromStdString(group.medium.name), ui::groupText(group)));
        for (const PieceLine& line : group.pieces) {
            const QString due = ui::dueText(line, stock.today);
            if (!due.isEmpty()) {
                print(QStringLiteral("    %1: %2").arg(line.record.piece.number).arg(due));
            }
        }
    }
}

} // namespace

int runStock(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"json", ""});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL"});
    if (!given) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto journal = openToRead(given->front(), clock);
    if (!journal) {
        return refused(journal.error());
    }
    const auto layout = (*journal)->room().layout();
    const auto stock = (*journal)->stock().now();
    if (!layout || !stock) {
        return refused(layout ? stock.error() : layout.error());
    }
    if (parser.isSet("json")) {
        print(jsonOf(*stock));
    } else {
        printStock(*stock, ui::UnitText(layout->room.units));
    }
    return kDone;
}

} // namespace plumule::app
