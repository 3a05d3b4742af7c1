#include "ui/trial/plan_text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class PlanTr
{
    Q_DECLARE_TR_FUNCTIONS(Plan)
};

QString massOf(double gramsValue, const UnitText& units)
{
    return units.mass(grams(gramsValue), gramsValue < 10 ? 1 : 0);
}

// Chances are never told closer than one in a hundred.
QString timesInHundred(double power)
{
    return QString::number(qBound(1, qRound(power * 100), 99));
}

} // namespace

QString powerTitle(const PlanOutlook& outlook, const UnitText& units)
{
    return PlanTr::tr("Chance of telling %1 apart").arg(massOf(outlook.margin, units));
}

QStringList outlookWords(const PlanOutlook& outlook, const UnitText& units)
{
    QStringList lines;
    if (outlook.chosen.trays < 2) {
        lines << PlanTr::tr("One tray of each can never tell a medium from chance.");
    } else {
        lines << PlanTr::tr(
                     "%n trays of each tell two media apart that differ by %1 %2 times in 100.",
                     nullptr, outlook.chosen.trays)
                     .arg(massOf(outlook.margin, units), timesInHundred(outlook.chosen.power));
    }
    if (!outlook.enough) {
        lines << PlanTr::tr("No number of trays up to 500 of each would do so 80 times in 100.");
    } else if (outlook.enough->trays > outlook.chosen.trays) {
        lines << PlanTr::tr("%1 of each would, %2 times in 100.")
                     .arg(outlook.enough->trays)
                     .arg(timesInHundred(outlook.enough->power));
    } else if (outlook.enough->trays < outlook.chosen.trays) {
        lines << PlanTr::tr("%1 of each would be enough for 80 in 100.").arg(outlook.enough->trays);
    }
    if (outlook.chosen.trays >= 2 && outlook.chosen.powerOfOnePair - outlook.chosen.power > 0.03) {
        lines << PlanTr::tr("Were only one pair of media asked about, %1 in 100.")
                     .arg(timesInHundred(outlook.chosen.powerOfOnePair));
    }
    if (outlook.smallestDifference) {
        lines << PlanTr::tr("What this plan sees 4 times in 5 is a difference of %1.")
                     .arg(massOf(*outlook.smallestDifference, units));
    }
    return lines;
}

QString spreadWords(const PlanOutlook& outlook, const UnitText& units)
{
    if (outlook.isOwnSpread) {
        return {};
    }
    const QString spread = massOf(outlook.spread, units);
    if (outlook.spreadFrom == SpreadFrom::Room) {
        return (outlook.isOfVariety ? PlanTr::tr("%1, from %n tray(s) of this variety here",
                                                 nullptr, outlook.spreadTrays)
                                    : PlanTr::tr("%1, from %n tray(s) of all varieties here",
                                                 nullptr, outlook.spreadTrays))
            .arg(spread);
    }
    return PlanTr::tr("%1, a tenth of the mean: nothing here is grown twice alike").arg(spread);
}

QString marginWords(const PlanOutlook& outlook, const UnitText& units)
{
    return outlook.isDefaultMargin
               ? PlanTr::tr("%1, a tenth of the mean").arg(massOf(outlook.margin, units))
               : QString();
}

QString nameOf(Design design)
{
    switch (design) {
    case Design::CompletelyRandom:
        return PlanTr::tr("completely random");
    case Design::RandomizedBlocks:
        return PlanTr::tr("randomized blocks");
    case Design::LatinSquare:
        return PlanTr::tr("Latin square");
    }
    return {};
}

QString squareWords(Design design, int row, int column)
{
    return design == Design::LatinSquare ? PlanTr::tr("row %1, column %2").arg(row).arg(column)
                                         : QString();
}

QString drawWords(const TrialDraft& draft)
{
    switch (draft.plan.design) {
    case Design::CompletelyRandom:
        return PlanTr::tr("Where each tray goes, drawn by lot over all places");
    case Design::RandomizedBlocks:
        return PlanTr::tr("Where each tray goes, drawn by lot within each shelf");
    case Design::LatinSquare:
        return PlanTr::tr(
            "Where each tray goes: each once in every row (shelf) and once in every column "
            "(place along the shelves)");
    }
    return {};
}

QString nameOf(Feeding feeding)
{
    switch (feeding) {
    case Feeding::AsProtocol:
        return {};
    case Feeding::Nutrient:
        return PlanTr::tr("+ nutrient");
    case Feeding::NoNutrient:
        return PlanTr::tr("no nutrient");
    }
    return {};
}

QString nameOf(TrialState state)
{
    switch (state) {
    case TrialState::Planned:
        return PlanTr::tr("planned");
    case TrialState::Growing:
        return PlanTr::tr("growing");
    case TrialState::Ended:
        return PlanTr::tr("harvested");
    }
    return {};
}

QString nameOf(const Supply& supply)
{
    const QString name = QString::fromStdString(supply.name);
    switch (supply.kind) {
    case SupplyKind::Seed:
        return PlanTr::tr("Seed, %1").arg(name);
    case SupplyKind::LooseMix:
        return name;
    case SupplyKind::Pieces:
        return PlanTr::tr("%1, clean pieces").arg(name);
    case SupplyKind::Concentrate:
        return PlanTr::tr("%1, whole trial")
            .arg(name.isEmpty() ? PlanTr::tr("Nutrient concentrate") : name);
    case SupplyKind::Water:
        return PlanTr::tr("Water, whole trial");
    }
    return name;
}

QString supplyText(SupplyKind kind, double amount, const UnitText& units)
{
    switch (kind) {
    case SupplyKind::Seed:
        return units.mass(grams(amount), 0);
    case SupplyKind::LooseMix:
    case SupplyKind::Water:
        return units.mixed(litres(amount));
    case SupplyKind::Concentrate:
        return units.concentrate(millilitres(amount));
    case SupplyKind::Pieces:
        break;
    }
    return numberText(amount, 0);
}

} // namespace plumule::ui
