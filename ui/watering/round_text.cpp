#include "ui/watering/round_text.h"

#include <QCoreApplication>

#include <map>

namespace plumule::ui {
namespace {

QString say(const char* text)
{
    return QCoreApplication::translate("Round", text);
}

QString standing(Stage stage)
{
    switch (stage) {
    case Stage::Soak:
        return say("soaking");
    case Stage::UnderWeight:
        return say("under weight");
    case Stage::Blackout:
        return say("in blackout");
    case Stage::Light:
        return say("in light");
    }
    return {};
}

QString thenWhat(const StageDecision& decision)
{
    if (!decision.to) {
        return say("Then cut and weigh it.");
    }
    if (decision.from == Stage::Soak) {
        return say("Then drain and sow it.");
    }
    switch (*decision.to) {
    case Stage::Soak:
        return {};
    case Stage::UnderWeight:
        return say("Then put it under weight.");
    case Stage::Blackout:
        return decision.from == Stage::UnderWeight
                   ? say("Then lift the weight and dome it for blackout.")
                   : say("Then dome it for blackout.");
    case Stage::Light:
        return say("Then uncover it and bring it into light.");
    }
    return {};
}

QString sameDayOr(Date day, Slot slot, RoundKey round, const QString& thisMorning,
                  const QString& lastEvening)
{
    if (day == round.date && slot == Slot::Morning) {
        return thisMorning;
    }
    if (day + 1 == round.date && slot == Slot::Evening) {
        return lastEvening;
    }
    return shortDayText(day);
}

QString bandOf(std::optional<double> low, std::optional<double> high, int decimals)
{
    if (low && high) {
        return numberText(*low, decimals) + QChar(0x2013) + numberText(*high, decimals);
    }
    if (low) {
        return say("from %1").arg(numberText(*low, decimals));
    }
    return high ? say("up to %1").arg(numberText(*high, decimals)) : QString();
}

bool isBeyond(std::optional<double> value, std::optional<double> low, std::optional<double> high)
{
    return value && ((low && *value < *low) || (high && *value > *high));
}

} // namespace

QString capitalised(const QString& text)
{
    return text.isEmpty() ? text : text.front().toUpper() + text.mid(1);
}

QString trayCount(int count)
{
    return count == 1 ? say("1 tray") : say("%1 trays").arg(count);
}

std::vector<ShelfGroup> shelvesOf(const Round& round)
{
    std::vector<ShelfGroup> groups;
    for (std::size_t i = 0; i < round.trays.size(); ++i) {
        const auto& spot = round.trays[i].spot;
        const bool isSame = !groups.empty() && groups.back().spot.has_value() == spot.has_value() &&
                            (!spot || groups.back().spot->shelfId == spot->shelfId);
        if (!isSame) {
            groups.push_back({spot, {}});
        }
        groups.back().trays.push_back(i);
    }
    return groups;
}

QString titleOf(RoundKey round)
{
    return round.slot == Slot::Morning ? say("Morning round") : say("Evening round");
}

QString shelfName(const ShelfGroup& shelf)
{
    if (!shelf.spot) {
        return say("No place yet");
    }
    return say("Rack %1 · shelf %2")
        .arg(QString::fromStdString(shelf.spot->rack), QString::fromStdString(shelf.spot->shelf));
}

QString shelfWork(const Round& round, const ShelfGroup& shelf)
{
    std::map<std::pair<Stage, WateringMethod>, int> counts;
    for (const std::size_t i : shelf.trays) {
        ++counts[{round.trays[i].stage, round.trays[i].method}];
    }
    if (counts.size() == 1) {
        const auto& [stage, method] = counts.begin()->first;
        return say("%1, %2").arg(standing(stage), nameOf(method));
    }
    QStringList parts;
    for (const auto& [work, count] : counts) {
        parts << say("%1 %2").arg(count).arg(standing(work.first));
    }
    return parts.join(say(", "));
}

QString WaterWords::whole() const
{
    return amount.isEmpty() ? kind : amount + ' ' + kind;
}

WaterWords waterWords(const RoundTray& tray, const UnitText& units)
{
    const WaterKind water = tray.given ? tray.given->water : tray.water;
    const WateringMethod method = tray.given ? tray.given->method : tray.method;
    const auto amount = tray.given ? tray.given->amount : tray.amount;
    WaterWords words;
    if (amount) {
        words.amount = units.watering(*amount);
    }
    if (method == WateringMethod::Mist) {
        words.kind = amount ? say("mist, %1") : say("Mist, %1");
        words.kind = words.kind.arg(nameOf(water));
    } else {
        words.kind = amount ? nameOf(water) : capitalised(nameOf(water));
    }
    return words;
}

QString dayOfGrowth(const RoundTray& tray)
{
    return say("day %1 of %2").arg(tray.day).arg(tray.harvestDay);
}

QString missedText(const RoundTray& tray, RoundKey round)
{
    if (!tray.missed || tray.isDone()) {
        return {};
    }
    const auto& [day, slot] = *tray.missed;
    return say("missed %1").arg(sameDayOr(day, slot, round, say("a.m."), say("p.m.")));
}

QString missedSentence(const RoundTray& tray)
{
    if (!tray.missed) {
        return {};
    }
    return say("The %1 watering of %2 was not given.")
        .arg(nameOf(tray.missed->second), dayText(tray.missed->first));
}

QString lastText(const RoundTray& tray, RoundKey round)
{
    if (tray.given) {
        return clockText(tray.given->minute);
    }
    if (!tray.last) {
        return say("first watering");
    }
    const QString at = clockText(tray.last->minute);
    const RoundKey last{tray.last->on, tray.last->slot};
    if (last.date == round.date || last == roundBefore(round)) {
        return say("last %1").arg(at);
    }
    return say("last %1").arg(shortDayText(tray.last->on));
}

QString cueText(const StageDecision& decision)
{
    QString cue = QString::fromStdString(decision.cue).trimmed();
    const bool isTold = cue.contains('?');
    if (isTold) {
        return capitalised(cue.endsWith('?') ? cue + ' ' + thenWhat(decision) : cue);
    }
    while (cue.endsWith('.')) {
        cue.chop(1);
    }
    if (cue.isEmpty()) {
        cue = say("Is it ready");
    }
    return say("%1? %2").arg(capitalised(cue), thenWhat(decision));
}

QString latenessText(const StageDecision& decision)
{
    if (decision.daysLate <= 0) {
        return {};
    }
    return decision.daysLate == 1 ? say("1 day late") : say("%1 days late").arg(decision.daysLate);
}

QString mixName(const MixLine& line)
{
    if (line.method != WateringMethod::Mist) {
        return capitalised(nameOf(line.water));
    }
    switch (line.water) {
    case WaterKind::Plain:
        return say("Misting");
    case WaterKind::PhSet:
        return say("Misting, pH set");
    case WaterKind::Nutrient:
        return say("Misting, nutrient mix");
    }
    return {};
}

QString bandText(const WaterRecipe& recipe)
{
    QStringList parts;
    const QString ph = bandOf(recipe.phLow, recipe.phHigh, 1);
    const QString ec = bandOf(recipe.ecLow, recipe.ecHigh, 0);
    if (!ph.isEmpty()) {
        parts << say("pH %1").arg(ph);
    }
    if (!ec.isEmpty()) {
        parts << say("EC %1 µS/cm").arg(ec);
    }
    return parts.join(say(", "));
}

QString readingText(const WaterReading& reading, RoundKey round)
{
    QStringList parts;
    if (reading.ph) {
        parts << say("pH %1").arg(numberText(*reading.ph, 1));
    }
    if (reading.ec) {
        parts << say("EC %1 µS/cm").arg(numberText(*reading.ec, 0));
    }
    const bool isNear = round.date - reading.on <= 1;
    parts << (isNear ? roundWords({reading.on, reading.slot}, round.date)
                     : shortDayText(reading.on));
    return parts.join(say(", "));
}

bool isOutsideBand(const WaterReading& reading, const WaterRecipe& recipe)
{
    return isBeyond(reading.ph, recipe.phLow, recipe.phHigh) ||
           isBeyond(reading.ec, recipe.ecLow, recipe.ecHigh);
}

QString roundWords(RoundKey round, Date today)
{
    const bool isMorning = round.slot == Slot::Morning;
    switch (round.date - today) {
    case 0:
        return isMorning ? say("this morning") : say("this evening");
    case -1:
        return isMorning ? say("yesterday morning") : say("yesterday evening");
    case 1:
        return isMorning ? say("tomorrow morning") : say("tomorrow evening");
    default:
        return (isMorning ? say("on the morning of %1") : say("on the evening of %1"))
            .arg(dayText(round.date));
    }
}

} // namespace plumule::ui
