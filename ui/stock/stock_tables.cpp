#include "ui/stock/stock_tables.h"

#include "ui/medium/marker.h"
#include "ui/stock/stock_text.h"
#include "ui/widget/theme.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class TablesTr
{
    Q_DECLARE_TR_FUNCTIONS(StockTables)
};

const QString kNone = QStringLiteral("–");

QColor warnedIf(bool isWarned)
{
    return isWarned ? ui::palette().warning : QColor();
}

QString massOr(const std::optional<Mass>& mass, const UnitText& units)
{
    return mass ? units.mass(*mass, 0) : kNone;
}

QString pricePerKilogram(const SeedLot& lot, const QString& currency, UnitSystem units)
{
    if (!lot.price || !lot.bought || *lot.bought <= Mass{}) {
        return kNone;
    }
    return costPerGramText(inUnits(*lot.price) / inGrams(*lot.bought), currency, units);
}

} // namespace

std::vector<RowColumn<SeedLine>> seedColumns(const UnitText& units, const QString& currency)
{
    using Column = RowColumn<SeedLine>;
    Column lot{TablesTr::tr("Lot"), [](const SeedLine& line) {
                   return QString::fromStdString(line.stock.lot.lotNumber);
               }};
    lot.isStrong = true;
    Column variety{TablesTr::tr("Variety"),
                   [](const SeedLine& line) { return QString::fromStdString(line.variety); }};
    Column left{TablesTr::tr("Left"),
                [units](const SeedLine& line) { return massOr(line.stock.left, units); },
                Qt::AlignRight, true};
    Column planned{TablesTr::tr("Planned"),
                   [units](const SeedLine& line) {
                       return line.planned > Mass{} ? units.mass(line.planned, 0) : kNone;
                   },
                   Qt::AlignRight};
    Column then{TablesTr::tr("Then left"),
                [units](const SeedLine& line) { return massOr(line.thenLeft(), units); },
                Qt::AlignRight};
    then.ink = [](const SeedLine& line) { return warnedIf(line.thenLeft() < Mass{}); };
    Column days{TablesTr::tr("Out in days"),
                [](const SeedLine& line) { return daysText(line.daysLeft); }, Qt::AlignRight};
    days.ink = [](const SeedLine& line) { return warnedIf(line.low != Low::No); };
    Column germination{TablesTr::tr("Germ."),
                       [](const SeedLine& line) {
                           const auto percent = line.stock.lot.germinationPercent;
                           return percent ? TablesTr::tr("%1 %").arg(numberText(*percent, 0))
                                          : kNone;
                       },
                       Qt::AlignRight};
    germination.ink = [](const SeedLine& line) { return warnedIf(line.isWeak); };
    Column price{TablesTr::tr("Price"),
                 [units, currency](const SeedLine& line) {
                     return pricePerKilogram(line.stock.lot, currency, units.units());
                 },
                 Qt::AlignRight};
    return {lot, variety, left, planned, then, days, germination, price};
}

std::vector<RowColumn<PieceLine>> pieceColumns(const Medium& medium, Date today)
{
    using Column = RowColumn<PieceLine>;
    Column piece{TablesTr::tr("Piece"),
                 [](const PieceLine& line) { return QString::number(line.record.piece.number); }};
    piece.isStrong = true;
    Column uses{medium.plannedUses ? TablesTr::tr("Uses of %1").arg(*medium.plannedUses)
                                   : TablesTr::tr("Uses"),
                [](const PieceLine& line) { return QString::number(line.record.uses); },
                Qt::AlignRight};
    uses.ink = [](const PieceLine& line) { return warnedIf(line.isPast); };
    Column age{TablesTr::tr("Since"), [](const PieceLine& line) {
                   const auto bought = line.record.piece.boughtOn;
                   return bought ? monthText(*bought) : kNone;
               }};
    Column now{TablesTr::tr("Now"), [](const PieceLine& line) { return nowText(line); }};
    Column sanitised{TablesTr::tr("Sanitised"),
                     [](const PieceLine& line) { return sanitisedText(line.sanitised); }};
    Column due{TablesTr::tr("To sanitise"),
               [today](const PieceLine& line) { return dueText(line, today); }};
    due.ink = [](const PieceLine&) { return ui::palette().warning; };
    return {piece, uses, age, now, sanitised, due};
}

std::vector<RowColumn<StockLine>> supplyColumns(const UnitText& units)
{
    using Column = RowColumn<StockLine>;
    const auto amount = [units](const StockLine& line, const std::optional<StockAmount>& held) {
        return held ? amountText(*held, line.item.unit, units) : kNone;
    };
    Column name{TablesTr::tr("Medium, water, packing"),
                [](const StockLine& line) { return QString::fromStdString(line.item.name); }};
    name.icon = [](const StockLine& line) {
        return line.marker ? markerIcon(*line.marker) : QIcon();
    };
    Column left{TablesTr::tr("Left"),
                [amount](const StockLine& line) {
                    return line.left ? amount(line, line.left) : TablesTr::tr("not counted");
                },
                Qt::AlignRight, true};
    Column planned{TablesTr::tr("Planned"),
                   [amount](const StockLine& line) {
                       return line.planned && *line.planned > StockAmount{}
                                  ? amount(line, line.planned)
                                  : kNone;
                   },
                   Qt::AlignRight};
    Column then{TablesTr::tr("Then left"),
                [amount](const StockLine& line) { return amount(line, line.thenLeft()); },
                Qt::AlignRight};
    then.ink = [](const StockLine& line) { return warnedIf(line.thenLeft() < StockAmount{}); };
    Column days{TablesTr::tr("Out in days"),
                [](const StockLine& line) { return daysText(line.daysLeft); }, Qt::AlignRight};
    days.ink = [](const StockLine& line) { return warnedIf(line.low != Low::No); };
    Column counted{TablesTr::tr("Counted"), [](const StockLine& line) {
                       return line.countedOn ? shortDayText(*line.countedOn) : kNone;
                   }};
    return {name, left, planned, then, days, counted};
}

} // namespace plumule::ui
