// Part of ui/review/verdict_text.h: numbers with their units.
#include "ui/review/verdict_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>

#include <cmath>

namespace plumule::ui {
namespace {

class UnitTr
{
    Q_DECLARE_TR_FUNCTIONS(Verdict)
};

} // namespace

int responseDecimals(const SeasonComparison& comparison)
{
    if (comparison.ask.response == Response::CostPerGram) {
        return 4;
    }
    // Two digits of the spread between trays: more would be noise, fewer would hide differences.
    const double spread =
        comparison.spreadPercent.value_or(10) / 100 * std::abs(comparison.grandMean);
    return spread <= 0 || spread >= 10 ? 0 : spread >= 1 ? 1 : spread >= 0.1 ? 2 : 3;
}

QString pText(double p)
{
    return p < 0.0001 ? QStringLiteral("< 0.0001") : numberText(p, p < 0.1 ? 4 : 2);
}

QString responseUnit(const SeasonComparison& comparison)
{
    switch (comparison.ask.response) {
    case Response::YieldPerTray:
        return UnitTr::tr("g a tray");
    case Response::YieldPerTraySown:
        return UnitTr::tr("g a tray sown");
    case Response::YieldPerArea:
        return UnitTr::tr("g/m²");
    case Response::YieldPerSeed:
        return UnitTr::tr("g per g of seed");
    case Response::YieldPerDay:
        return UnitTr::tr("g a day");
    case Response::CostPerGram:
        return UnitTr::tr("%1 a gram").arg(QString::fromStdString(comparison.currency));
    case Response::HeightOnDay:
        return UnitTr::tr("mm");
    case Response::DaysToHarvest:
        return UnitTr::tr("days");
    case Response::Residue:
        return UnitTr::tr("g of residue");
    case Response::Evenness:
        return UnitTr::tr("% variation within a tray");
    case Response::Work:
        return UnitTr::tr("minutes of work a tray");
    }
    return {};
}

QString responseText(double value, const SeasonComparison& comparison)
{
    return QStringLiteral("%1 %2").arg(numberText(value, responseDecimals(comparison)),
                                       responseUnit(comparison));
}

} // namespace plumule::ui
