#include "ui/forecast/forecast_text.h"

#include "core/starter/starter_yields.h"

#include <QCoreApplication>
#include <QLocale>

#include <cmath>

namespace plumule::ui {
namespace {

class ForecastTr
{
    Q_DECLARE_TR_FUNCTIONS(Forecast)
};

int inHundred(int part, int whole)
{
    return whole == 0 ? 0 : static_cast<int>(std::lround(100.0 * part / whole));
}

QString sourceText(const std::string& source)
{
    return source == kFromMemory ? ForecastTr::tr("from memory") : QString::fromStdString(source);
}

QString yieldBasis(const ForecastBasis& basis)
{
    if (basis.from == ForecastSource::Library) {
        return ForecastTr::tr(
                   "Yield: the library's value (%1), since this room has cut %n tray(s) of it "
                   "on this medium and %2 are needed. It is not scored.",
                   nullptr, basis.trays)
            .arg(sourceText(basis.source))
            .arg(kFewestForOwnPast);
    }
    const QString trays = ForecastTr::tr("%n tray(s)", nullptr, basis.trays);
    const QString sowings = ForecastTr::tr("%n sowing(s)", nullptr, basis.sowings);
    return basis.span == PastSpan::Season
               ? ForecastTr::tr(
                     "Yield: from %1 of %2 on this medium in this room, at this time of year.")
                     .arg(trays, sowings)
               : ForecastTr::tr("Yield: from %1 of %2 on this medium in this room.")
                     .arg(trays, sowings);
}

QString dayBasis(const std::optional<DayForecast>& day)
{
    if (!day) {
        return ForecastTr::tr("Day: not known, since the tray was brought in without its stages.");
    }
    if (day->basis.from == ForecastSource::Library) {
        return ForecastTr::tr("Day: the protocol's; how far off it may be is from memory.");
    }
    return ForecastTr::tr("Day: from %n tray(s), and this tray's stages as they began.", nullptr,
                          day->basis.trays);
}

QString widenedText(double times)
{
    return times > 1 ? ForecastTr::tr("Drawn %1 times as wide.").arg(numberText(times, 1))
                     : QString();
}

} // namespace

QString coverageSentence(const ForecastReport& report)
{
    const VarietyScore& all = report.all;
    if (all.harvests == 0) {
        return ForecastTr::tr("No harvest was foretold from this room's own past yet.");
    }
    return ForecastTr::tr("Of %n harvest(s), %1 fell in their 80 % interval.", nullptr,
                          all.harvests)
        .arg(all.yieldInside);
}

QString coverageDetail(const ForecastReport& report)
{
    const VarietyScore& all = report.all;
    QStringList words;
    if (all.harvests == 0) {
        words << ForecastTr::tr("It takes %1 trays of a variety on a medium; until then the "
                                "library's values are shown, which are not scored.")
                     .arg(kFewestForOwnPast);
        return words.join(' ');
    }
    const int yields = inHundred(all.yieldInside, all.harvests);
    words << (all.days > 0 ? ForecastTr::tr("%1 in 100 for yield, %2 for the day.")
                                 .arg(yields)
                                 .arg(inHundred(all.dayInside, all.days))
                           : ForecastTr::tr("%1 in 100 for yield.").arg(yields));
    words << ForecastTr::tr(
        "About 80 is right: more means needlessly wide, fewer means sure of too "
        "much. Days are whole, so that they hold some more.");
    if (report.unscored > 0) {
        words << ForecastTr::tr("%n more harvest(s) had only the library's value.", nullptr,
                                report.unscored);
    }
    return words.join(' ');
}

QString badHeading(const VarietyScore& score, const QString& variety)
{
    if (score.yieldWidened > 1) {
        return ForecastTr::tr("%1 has scored badly: %2 of %3")
            .arg(variety)
            .arg(score.yieldInside)
            .arg(score.harvests);
    }
    if (score.dayWidened > 1) {
        return ForecastTr::tr("%1 has scored badly for the day: %2 of %3")
            .arg(variety)
            .arg(score.dayInside)
            .arg(score.days);
    }
    return {};
}

QString badDetail(const VarietyScore& score)
{
    QStringList words;
    if (score.yieldWidened > 1) {
        words << ForecastTr::tr("Its intervals of yield are now drawn %1 times as wide.")
                     .arg(numberText(score.yieldWidened, 1));
    }
    if (score.dayWidened > 1) {
        words << ForecastTr::tr("Its days are now drawn %1 times as wide.")
                     .arg(numberText(score.dayWidened, 1));
    }
    words << ForecastTr::tr(
                 "So they stay, here and wherever forecasts are used, until its latest %1 "
                 "harvests say otherwise.")
                 .arg(kScoredOfEach);
    return words.join(' ');
}

QString basisWords(const TrayForecast& forecast)
{
    QStringList words{yieldBasis(forecast.yield.basis), widenedText(forecast.yield.basis.widened),
                      dayBasis(forecast.day)};
    if (forecast.day) {
        words << widenedText(forecast.day->basis.widened);
        if (forecast.day->asPlanned != forecast.day->middle) {
            words
                << ForecastTr::tr("By the protocol: %1.").arg(weekdayText(forecast.day->asPlanned));
        }
    }
    words.removeAll(QString());
    return words.join(' ');
}

QString dayWords(const TrayForecast& forecast)
{
    if (!forecast.day) {
        return QStringLiteral("–");
    }
    const DayForecast& day = *forecast.day;
    return day.low == day.high
               ? weekdayText(day.middle)
               : ForecastTr::tr("%1 (%2 to %3)")
                     .arg(weekdayText(day.middle), shortDayText(day.low), shortDayText(day.high));
}

double shownMass(Mass mass, const UnitText& units)
{
    return units.units() == UnitSystem::Metric ? inGrams(mass) : inOunces(mass);
}

QString yieldMiddle(const YieldForecast& yield, const UnitText& units)
{
    const int decimals = units.units() == UnitSystem::Metric ? 0 : 1;
    return numberText(shownMass(yield.middle, units), decimals);
}

QString yieldRange(const YieldForecast& yield, const UnitText& units)
{
    const int decimals = units.units() == UnitSystem::Metric ? 0 : 1;
    return QStringLiteral("%1–%2").arg(numberText(shownMass(yield.low, units), decimals),
                                       numberText(shownMass(yield.high, units), decimals));
}

} // namespace plumule::ui
