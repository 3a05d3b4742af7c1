#include "ui/watering/round_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <limits>
#include <map>

namespace plumule::ui {
namespace {

class RoundTr
{
    Q_DECLARE_TR_FUNCTIONS(Round)
};

QString thenWhat(const StageDecision& decision)
{
    if (!decision.to) {
        return RoundTr::tr("Then cut and weigh it.");
    }
    if (decision.from == Stage::Soak) {
        return RoundTr::tr("Then drain and sow it.");
    }
    switch (*decision.to) {
    case Stage::Soak:
        return {};
    case Stage::UnderWeight:
        return RoundTr::tr("Then put it under weight.");
    case Stage::Blackout:
        return decision.from == Stage::UnderWeight
                   ? RoundTr::tr("Then lift the weight and dome it for blackout.")
                   : RoundTr::tr("Then dome it for blackout.");
    case Stage::Light:
        return RoundTr::tr("Then uncover it and bring it into light.");
    }
    return {};
}

QString dryWords(const Drought& drought)
{
    if (drought.isNever) {
        return RoundTr::tr("Never watered");
    }
    return RoundTr::tr("Not watered for %n day(s)", nullptr, drought.days);
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
        return RoundTr::tr("from %1").arg(numberText(*low, decimals));
    }
    return high ? RoundTr::tr("up to %1").arg(numberText(*high, decimals)) : QString();
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
        words.kind = amount ? RoundTr::tr("mist, %1") : RoundTr::tr("Mist, %1");
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
    return RoundTr::tr("%n tray(s)", nullptr, count);
}

QString standing(Stage stage)
{
    switch (stage) {
    case Stage::Soak:
        return RoundTr::tr("soaking");
    case Stage::UnderWeight:
        return RoundTr::tr("under weight");
    case Stage::Blackout:
        return RoundTr::tr("in blackout");
    case Stage::Light:
        return RoundTr::tr("in light");
    }
    return {};
}

QString titleOf(RoundKey round)
{
    return round.slot == Slot::Morning ? RoundTr::tr("Morning round")
                                       : RoundTr::tr("Evening round");
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
    return RoundTr::tr("day %1 of %2").arg(tray.day).arg(tray.harvestDay);
}

QString missedText(const RoundTray& tray, RoundKey round)
{
    // Water given between rounds has ended it.
    if (!tray.drought || tray.isDone() || !tray.isAsked || !tray.between.empty()) {
        return {};
    }
    const Drought& drought = *tray.drought;
    if (tray.isForgotten()) {
        return drought.isNever ? RoundTr::tr("never watered")
                               : RoundTr::tr("%n day(s) dry", nullptr, drought.days);
    }
    if (!drought.missed) {
        return {};
    }
    return RoundTr::tr("missed %1")
        .arg(sameDayOr(drought.missed->date, drought.missed->slot, round, RoundTr::tr("a.m."),
                       RoundTr::tr("p.m.")));
}

QString missedSentence(const RoundTray& tray)
{
    if (!tray.drought || (!tray.isForgotten() && !tray.drought->missed)) {
        return {};
    }
    const Drought& drought = *tray.drought;
    if (!tray.isForgotten()) {
        return RoundTr::tr("The %1 watering of %2 was not given.")
            .arg(nameOf(drought.missed->slot), dayText(drought.missed->date));
    }
    const QString since =
        dryWords(drought) + RoundTr::tr(", since %1.").arg(dayText(drought.since));
    return tray.looksSince == 0 ? since : since + ' ' + looksText(tray.looksSince);
}

QString looksText(int looks)
{
    return looks == 1 ? RoundTr::tr("“Not needed” once since.")
                      : RoundTr::tr("“Not needed” %n time(s) since.", nullptr, looks);
}

QString forgottenText(const Round& round)
{
    QStringList sentences;
    QString words;
    std::vector<std::string> codes;
    const auto close = [&] {
        if (!codes.empty()) {
            sentences << RoundTr::tr("%1: %2.").arg(words, codesText(codes));
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
        parts << RoundTr::tr("%1 at %2").arg(words.whole(), clockText(each.minute));
    }
    return parts.isEmpty() ? QString()
                           : RoundTr::tr("As needed: %1.").arg(parts.join(RoundTr::tr(", ")));
}

QString lastText(const RoundTray& tray, RoundKey round)
{
    if (tray.given) {
        return clockText(tray.given->minute);
    }
    if (tray.looked) {
        return RoundTr::tr("not needed %1").arg(clockText(tray.looked->minute));
    }
    if (!tray.between.empty()) {
        return RoundTr::tr("given %1").arg(clockText(tray.between.back().minute));
    }
    if (!tray.last) {
        return RoundTr::tr("first watering");
    }
    const QString at = clockText(tray.last->minute);
    const RoundKey last{tray.last->on, tray.last->slot};
    if (last.date == round.date || last == roundBefore(round)) {
        return RoundTr::tr("last %1").arg(at);
    }
    return RoundTr::tr("last %1").arg(shortDayText(tray.last->on));
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
        cue = RoundTr::tr("Is it ready");
    }
    return RoundTr::tr("%1? %2").arg(capitalised(cue), thenWhat(decision));
}

QString latenessText(const StageDecision& decision)
{
    if (decision.daysLate <= 0) {
        return {};
    }
    return RoundTr::tr("%n day(s) late", nullptr, decision.daysLate);
}

QString mixName(const MixLine& line)
{
    if (line.method != WateringMethod::Mist) {
        return capitalised(nameOf(line.water));
    }
    switch (line.water) {
    case WaterKind::Plain:
        return RoundTr::tr("Misting");
    case WaterKind::PhSet:
        return RoundTr::tr("Misting, pH set");
    case WaterKind::Nutrient:
        return RoundTr::tr("Misting, nutrient mix");
    }
    return {};
}

QString bandText(const WaterRecipe& recipe)
{
    QStringList parts;
    const QString ph = bandOf(recipe.phLow, recipe.phHigh, 1);
    const QString ec = bandOf(recipe.ecLow, recipe.ecHigh, 0);
    if (!ph.isEmpty()) {
        parts << RoundTr::tr("pH %1").arg(ph);
    }
    if (!ec.isEmpty()) {
        parts << RoundTr::tr("EC %1 µS/cm").arg(ec);
    }
    return parts.join(RoundTr::tr(", "));
}

QString readingText(const WaterReading& reading, RoundKey round)
{
    QStringList parts;
    if (reading.ph) {
        parts << RoundTr::tr("pH %1").arg(numberText(*reading.ph, 1));
    }
    if (reading.ec) {
        parts << RoundTr::tr("EC %1 µS/cm").arg(numberText(*reading.ec, 0));
    }
    const bool isNear = round.date - reading.on <= 1;
    parts << (isNear ? roundWords({reading.on, reading.slot}, round.date)
                     : shortDayText(reading.on));
    return parts.join(RoundTr::tr(", "));
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
        return isMorning ? RoundTr::tr("this morning") : RoundTr::tr("this evening");
    case -1:
        return isMorning ? RoundTr::tr("yesterday morning") : RoundTr::tr("yesterday evening");
    case 1:
        return isMorning ? RoundTr::tr("tomorrow morning") : RoundTr::tr("tomorrow evening");
    default:
        return (isMorning ? RoundTr::tr("on the morning of %1")
                          : RoundTr::tr("on the evening of %1"))
            .arg(dayText(round.date));
    }
}

} // namespace plumule::ui
