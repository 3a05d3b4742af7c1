#include "ui/cost/costs_text.h"

#include "ui/chart/part_colours.h"
#include "ui/text/price_units.h"

#include <QCoreApplication>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr double kShownUnit = 0.01;

class CostsTr
{
    Q_DECLARE_TR_FUNCTIONS(Costs)
};

QString capital(QString text)
{
    if (!text.isEmpty()) {
        text[0] = text[0].toUpper();
    }
    return text;
}

QString mediumName(const CostsAnswer& answer, std::optional<MediumId> medium)
{
    const auto found =
        std::find_if(answer.media.begin(), answer.media.end(),
                     [&](const MediumCosts& each) { return medium && each.medium.id == *medium; });
    return found == answer.media.end() ? QString() : QString::fromStdString(found->medium.name);
}

QString nameOfItem(const CostsAnswer& answer, PriceItem item, std::optional<MediumId> medium)
{
    return item == PriceItem::Medium ? mediumName(answer, medium) : nameOf(item);
}

const CostShare& largestShare(const CostBreakdown& costs)
{
    return *std::max_element(
        costs.shares.begin(), costs.shares.end(),
        [](const CostShare& a, const CostShare& b) { return a.perGram < b.perGram; });
}

// What the cells of one medium show: hundredths of the unit that add up.
std::vector<QString> cellsOf(const CostBreakdown& costs, const CostUnit& unit)
{
    std::vector<double> values;
    for (const CostShare& share : costs.shares) {
        values.push_back(share.perGram * unit.ofAGram);
    }
    const auto rounded = roundedToSum(values, kShownUnit);
    std::vector<QString> cells;
    for (std::size_t i = 0; i < rounded.size(); ++i) {
        const CostShare& share = costs.shares[i];
        const bool isLeftOut = share.lacking > 0 && share.part != CostPart::Failed;
        if (share.perGram > 0) {
            cells.push_back(numberText(double(rounded[i]) * kShownUnit, 2) +
                            (isLeftOut ? QStringLiteral(" *") : QString()));
        } else if (isLeftOut) {
            cells.push_back(share.unpriced > 0 ? CostsTr::tr("no price")
                                               : CostsTr::tr("not noted"));
        } else {
            cells.push_back(QStringLiteral("–"));
        }
    }
    cells.resize(kPartsOfCost.size(), QStringLiteral("–"));
    return cells;
}

bool isPartLeftOut(const CostsAnswer& answer, CostPart part)
{
    return std::any_of(answer.media.begin(), answer.media.end(), [part](const MediumCosts& each) {
        const CostShare* share = each.today.share(part);
        return share != nullptr && share->unpriced > 0 && !(share->perGram > 0);
    });
}

bool isPartShown(const CostsAnswer& answer, CostPart part)
{
    return std::any_of(answer.media.begin(), answer.media.end(), [part](const MediumCosts& each) {
        const CostShare* share = each.today.share(part);
        return share != nullptr &&
               (share->perGram > 0 || (share->lacking > 0 && part != CostPart::Failed));
    });
}

template <class Cell>
TextRow rowOf(const QString& name, const CostsAnswer& answer, Cell cell)
{
    TextRow row;
    row.cells << name;
    for (const MediumCosts& each : answer.media) {
        row.cells << cell(each);
    }
    return row;
}

QString costText(std::optional<double> perGram, const CostUnit& unit)
{
    return perGram ? numberText(*perGram * unit.ofAGram, 2) : QStringLiteral("–");
}

QString changeText(const MediumCosts& costs, const CostUnit& unit)
{
    const auto is = costs.today.perGram();
    const auto would = costs.whatIf ? costs.whatIf->perGram() : std::nullopt;
    if (!is || !would) {
        return QStringLiteral("–");
    }
    const QString text = numberText((*would - *is) * unit.ofAGram, 2);
    return *would > *is ? QLatin1Char('+') + text : text;
}

void addTotals(std::vector<TextRow>& rows, const CostsAnswer& answer, const CostUnit& unit)
{
    rows.push_back(rowOf(CostsTr::tr("together"), answer, [&](const MediumCosts& each) {
        return costText(each.today.perGram(), unit);
    }));
    rows.back().isStrong = true;
    const bool hasWhatIf =
        std::any_of(answer.media.begin(), answer.media.end(),
                    [](const MediumCosts& each) { return each.whatIf.has_value(); });
    if (hasWhatIf) {
        rows.push_back(rowOf(
            CostsTr::tr("what if, as the sliders stand"), answer, [&](const MediumCosts& each) {
                return costText(each.whatIf ? each.whatIf->perGram() : std::nullopt, unit);
            }));
        rows.push_back(rowOf(CostsTr::tr("change"), answer,
                             [&](const MediumCosts& each) { return changeText(each, unit); }));
    }
    rows.push_back(rowOf(CostsTr::tr("trays cut of sown"), answer, [](const MediumCosts& each) {
        return CostsTr::tr("%1 of %2")
            .arg(each.today.harvested)
            .arg(each.today.harvested + each.today.failed);
    }));
}

bool isOfLooseMix(const PriceHistory& history, const CostsAnswer& answer)
{
    return std::any_of(answer.media.begin(), answer.media.end(), [&](const MediumCosts& each) {
        return history.medium && each.medium.id == *history.medium &&
               each.medium.form == MediumForm::LooseMix;
    });
}

QString shortNameOf(PriceMeasure measure)
{
    switch (measure) {
    case PriceMeasure::Unit:
        break;
    case PriceMeasure::CubicMetre:
        return CostsTr::tr("m³");
    case PriceMeasure::CubicFoot:
        return CostsTr::tr("ft³");
    case PriceMeasure::UsQuart:
        return CostsTr::tr("qt");
    case PriceMeasure::UsGallon:
        return CostsTr::tr("gal");
    case PriceMeasure::ThousandUsGallons:
        return CostsTr::tr("1,000 gal");
    case PriceMeasure::UsFluidOunce:
        return CostsTr::tr("fl oz");
    case PriceMeasure::Pound:
        return CostsTr::tr("lb");
    case PriceMeasure::Ounce:
        return CostsTr::tr("oz");
    }
    return {};
}

QString unitByItem(PriceItem item, bool isLooseMix, const QString& currency)
{
    switch (item) {
    case PriceItem::Medium:
        return isLooseMix ? CostsTr::tr("%1/L").arg(currency)
                          : CostsTr::tr("%1 each").arg(currency);
    case PriceItem::Concentrate:
    case PriceItem::Water:
        return CostsTr::tr("%1/L").arg(currency);
    case PriceItem::Electricity:
        return CostsTr::tr("%1/kWh").arg(currency);
    case PriceItem::Labour:
        return CostsTr::tr("%1/h").arg(currency);
    case PriceItem::Packaging:
        return CostsTr::tr("%1 a tray").arg(currency);
    case PriceItem::Washing:
        return CostsTr::tr("%1 a piece").arg(currency);
    case PriceItem::Waste:
        return CostsTr::tr("%1/kg").arg(currency);
    }
    return currency;
}

} // namespace

CostUnit unitOf(const CostsAnswer& answer)
{
    double most = 0;
    for (const MediumCosts& each : answer.media) {
        most = std::max(most, each.today.perGram().value_or(0));
    }
    return costUnitOf(most, QString::fromStdString(answer.review.currency), answer.units);
}

QString costsHeadline(const CostsAnswer& answer)
{
    if (answer.media.empty() || !answer.media.front().today.perGram()) {
        return answer.harvested + answer.failed > 0
                   ? CostsTr::tr("No price of what these trays used is known.")
                   : CostsTr::tr("No tray was harvested in these days.");
    }
    const MediumCosts& least = answer.media.front();
    const CostUnit unit = unitOf(answer);
    const double cost = *least.today.perGram();
    const CostShare& most = largestShare(least.today);
    const QString medium = QString::fromStdString(least.medium.name);
    const QString amount =
        CostsTr::tr("%1 %2, %3 % of it %4")
            .arg(numberText(cost * unit.ofAGram, 2), unit.name,
                 QString::number(qRound(100 * most.perGram / cost)), nameOf(most.part));
    const int trays = answer.harvested + answer.failed;
    return answer.media.size() > 1
               ? CostsTr::tr("Of these %n tray(s) those on %1 cost least: %2.", nullptr, trays)
                     .arg(medium, amount)
               : CostsTr::tr("%n tray(s) on %1 cost %2.", nullptr, trays).arg(medium, amount);
}

QString lackText(const PriceLack& lack, const CostsAnswer& answer)
{
    const QString what = capital(nameOfItem(answer, lack.item, lack.medium));
    const int all = answer.harvested + answer.failed;
    if (!lack.from) {
        return lack.trays == all && lack.item != PriceItem::Medium
                   ? CostsTr::tr("%1 has no price and is left out of every bar.").arg(what)
                   : CostsTr::tr("%1 has no price and is left out of %n tray(s).", nullptr,
                                 lack.trays)
                         .arg(what);
    }
    return CostsTr::tr("%1 has its first price from %2, after the sowing of %n tray(s).", nullptr,
                       lack.trays)
        .arg(what, longDateText(*lack.from));
}

QStringList otherLacks(const CostsAnswer& answer)
{
    QStringList lines;
    if (answer.lacks.seed > 0) {
        lines << CostsTr::tr("The seed of %n tray(s) has no cost: its lot, the lot's price or "
                             "weight, or what was sown is not noted.",
                             nullptr, answer.lacks.seed);
    }
    for (const CostPart part : kPartsOfCost) {
        int unknown = 0;
        for (const MediumCosts& each : answer.media) {
            const CostShare* share = each.today.share(part);
            unknown += share == nullptr ? 0 : share->lacking - share->unpriced;
        }
        if (unknown > 0 && part != CostPart::Failed && part != CostPart::Seed) {
            lines << CostsTr::tr("Of %n tray(s) it is not noted how much %1 there was.", nullptr,
                                 unknown)
                         .arg(nameOf(part));
        }
    }
    return lines;
}

QString nameOfPriced(const PriceHistory& history, const std::map<MediumId, QString>& media,
                     const QString& variety)
{
    if (history.medium) {
        const auto found = media.find(*history.medium);
        return found == media.end() ? QString() : found->second;
    }
    return history.item ? capital(nameOf(*history.item)) : CostsTr::tr("%1 seed").arg(variety);
}

PricedUnit unitOfPriced(const PriceHistory& history, const CostsAnswer& answer)
{
    const QString currency = QString::fromStdString(answer.review.currency);
    const bool isUs = answer.units == UnitSystem::UsCustomary;
    if (!history.item) {
        return isUs ? PricedUnit{CostsTr::tr("%1/lb").arg(currency), unitsIn(PriceMeasure::Pound)}
                    : PricedUnit{CostsTr::tr("%1/kg").arg(currency)};
    }
    const bool isLooseMix = isOfLooseMix(history, answer);
    const PriceUnit usual = priceUnits(*history.item, isLooseMix, answer.units).front();
    return usual.measure == PriceMeasure::Unit
               ? PricedUnit{unitByItem(*history.item, isLooseMix, currency)}
               : PricedUnit{QStringLiteral("%1/%2").arg(currency, shortNameOf(usual.measure)),
                            unitsIn(usual.measure)};
}

PartsTable partsTable(const CostsAnswer& answer)
{
    const CostUnit unit = unitOf(answer);
    PartsTable table;
    table.header << unit.name;
    std::vector<std::vector<QString>> cells;
    for (const MediumCosts& each : answer.media) {
        table.header << QString::fromStdString(each.medium.name);
        cells.push_back(cellsOf(each.today, unit));
    }
    for (std::size_t i = 0; i < kPartsOfCost.size(); ++i) {
        const CostPart part = kPartsOfCost[i];
        if (!isPartShown(answer, part)) {
            continue;
        }
        TextRow row;
        row.isWarned = isPartLeftOut(answer, part);
        row.icon = row.isWarned ? leftOutIcon() : partIcon(static_cast<int>(part));
        row.cells << nameOf(part);
        for (const auto& each : cells) {
            row.cells << each[i];
        }
        table.rows.push_back(std::move(row));
    }
    addTotals(table.rows, answer, unit);
    return table;
}

} // namespace plumule::ui
