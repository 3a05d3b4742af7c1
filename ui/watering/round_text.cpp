#include "ui/watering/round_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <limits>
#include <map>

namespace plumule::ui {
namespace {

QString say(const char* text)
{
    return QCoreApplication::translate("Round", text);
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

QString dryWords(const Drought& drought)
{
    if (drought.isNever) {
        return say("Never watered");
    }
    return drought.days == 1 ? say("Not watered for 1 day")
                             : say("Not watered for %1 days").arg(drought.days);
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

WaterWords wordsOf(WateringMethod method, WaterKind water, std::optional<Volume> amount,
                   const UnitText& units)
{
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

} // namespace

QString capitalised(const QString& text)
{
    return text.isEmpty() ? text : text.front().toUpper() + text.mid(1);
}

QString trayCount(int count)
{
    return count == 1 ? say("1 tray") : say("%1 trays").arg(count);
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

QString titleOf(RoundKey round)
{
    return round.slot == Slot::Morning ? say("Morning round") : say("Evening round");
}

QString WaterWords::whole() const
{
    return amount.isEmpty() ? kind : amount + ' ' + kind;
}

WaterWords waterWords(const RoundTray& tray, const UnitText& units)
{
    if (tray.given) {
        return wordsOf(tray.given->method, tray.given->water, tray.given->amount, units);
    }
    return wordsOf(tray.method, tray.water, tray.amount, units);
}

QString dayOfGrowth(const RoundTray& tray)
{
    return say("day %1 of %2").arg(tray.day).arg(tray.harvestDay);
}

QString missedText(const RoundTray& tray, RoundKey round)
{
    if (!tray.drought || tray.isDone() || !tray.isAsked) {
        return {};
    }
    const Drought& drought = *tray.drought;
    if (tray.isForgotten()) {
        return drought.isNever     ? say("never watered")
               : drought.days == 1 ? say("1 day dry")
                                   : say("%1 days dry").arg(drought.days);
    }
    if (!drought.missed) {
        return {};
    }
    return say("missed %1")
        .arg(
            sameDayOr(drought.missed->date, drought.missed->slot, round, say("a.m."), say("p.m.")));
}

QString missedSentence(const RoundTray& tray)
{
    if (!tray.drought || (!tray.isForgotten() && !tray.drought->missed)) {
        return {};
    }
    const Drought& drought = *tray.drought;
    if (!tray.isForgotten()) {
        return say("The %1 watering of %2 was not given.")
            .arg(nameOf(drought.missed->slot), dayText(drought.missed->date));
    }
    const QString since = dryWords(drought) + say(", since %1.").arg(dayText(drought.since));
    return tray.looksSince == 0 ? since : since + ' ' + looksText(tray.looksSince);
}

QString looksText(int looks)
{
    return looks == 1 ? say("“Not needed” once since.")
                      : say("“Not needed” %1 times since.").arg(looks);
}

QString forgottenText(const Round& round)
{
    QStringList sentences;
    QString words;
    std::vector<std::string> codes;
    const auto close = [&] {
        if (!codes.empty()) {
            sentences << say("%1: %2.").arg(words, codesText(codes));
        }
        codes.clear();
    };
    for (const RoundTray* tray : round.forgotten()) {
        if (const QString next = dryWords(*tray->drought); next != words) {
            close();
            words = next;
        }
        codes.push_back(tray->code);
    }
    close();
    return sentences.join(' ');
}

QString betweenSentence(const RoundTray& tray, const UnitText& units)
{
    QStringList parts;
    for (const Watering& each : tray.between) {
        WaterWords words = wordsOf(each.method, each.water, each.amount, units);
        parts << say("%1 at %2").arg(words.whole(), clockText(each.minute));
    }
    return parts.isEmpty() ? QString() : say("As needed: %1.").arg(parts.join(say(", ")));
}

QString lastText(const RoundTray& tray, RoundKey round)
{
    if (tray.given) {
        return clockText(tray.given->minute);
    }
    if (tray.looked) {
        return say("not needed %1").arg(clockText(tray.looked->minute));
    }
    if (!tray.between.empty()) {
        return say("given %1").arg(clockText(tray.between.back().minute));
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
