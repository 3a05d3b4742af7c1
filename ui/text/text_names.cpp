// Part of ui/text/text.h: the names of things.
#include "ui/text/text.h"

#include "core/cost/cost_parts.h"

#include <QCoreApplication>
#include <QLocale>

namespace plumule::ui {
namespace {

class Names
{
    Q_DECLARE_TR_FUNCTIONS(Names)
};

} // namespace

QString nameOf(Stage stage)
{
    switch (stage) {
    case Stage::Soak:
        return Names::tr("soak");
    case Stage::UnderWeight:
        return Names::tr("under weight");
    case Stage::Blackout:
        return Names::tr("blackout");
    case Stage::Light:
        return Names::tr("light");
    }
    return {};
}

QString nameOf(WaterKind water)
{
    switch (water) {
    case WaterKind::Plain:
        return Names::tr("plain water");
    case WaterKind::PhSet:
        return Names::tr("plain, pH set");
    case WaterKind::Nutrient:
        return Names::tr("nutrient mix");
    }
    return {};
}

QString nameOf(WateringMethod method)
{
    switch (method) {
    case WateringMethod::None:
        return Names::tr("no watering");
    case WateringMethod::Mist:
        return Names::tr("mist from above");
    case WateringMethod::Below:
        return Names::tr("water from below");
    }
    return {};
}

QString nameOf(Slot slot)
{
    return slot == Slot::Morning ? Names::tr("morning") : Names::tr("evening");
}

QString nameOf(MediumForm form)
{
    switch (form) {
    case MediumForm::LooseMix:
        return Names::tr("loose mix");
    case MediumForm::Mat:
        return Names::tr("mat");
    case MediumForm::Mesh:
        return Names::tr("mesh");
    }
    return {};
}

QString nameOf(TrayState state)
{
    switch (state) {
    case TrayState::Growing:
        return Names::tr("growing");
    case TrayState::Harvested:
        return Names::tr("harvested");
    case TrayState::Discarded:
        return Names::tr("discarded");
    }
    return {};
}

QString nameOf(ReadFrom from)
{
    return from == ReadFrom::Rim ? Names::tr("from the tray's rim")
                                 : Names::tr("from the medium's surface");
}

QString nameOf(const std::optional<Spot>& spot)
{
    if (!spot) {
        return Names::tr("no place");
    }
    return Names::tr("%1%2 · place %3")
        .arg(QString::fromStdString(spot->rack), QString::fromStdString(spot->shelf),
             QString::number(spot->number));
}

QDate toQDate(Date date)
{
    return QDate(1970, 1, 1).addDays(date.days);
}

Date fromQDate(QDate date)
{
    return {static_cast<std::int32_t>(QDate(1970, 1, 1).daysTo(date))};
}

QString dayText(Date date)
{
    return QLocale(QLocale::English).toString(toQDate(date), QStringLiteral("dddd d MMMM"));
}

QString shortDayText(Date date)
{
    return QLocale(QLocale::English).toString(toQDate(date), QStringLiteral("d MMM"));
}

QString weekdayText(Date date)
{
    return QLocale(QLocale::English).toString(toQDate(date), QStringLiteral("ddd d MMM"));
}

QString monthText(Date date)
{
    return QLocale(QLocale::English).toString(toQDate(date), QStringLiteral("MMM yyyy"));
}

QString longDateText(Date date)
{
    return QLocale(QLocale::English).toString(toQDate(date), QStringLiteral("d MMM yyyy"));
}

QString clockText(int minute)
{
    return QString::fromStdString(toClockText(minute));
}

QString nameOf(PriceItem item)
{
    switch (item) {
    case PriceItem::Medium:
        return Names::tr("medium");
    case PriceItem::Concentrate:
        return Names::tr("nutrient concentrate");
    case PriceItem::Water:
        return Names::tr("water");
    case PriceItem::Electricity:
        return Names::tr("electricity");
    case PriceItem::Labour:
        return Names::tr("work");
    case PriceItem::Packaging:
        return Names::tr("packaging");
    case PriceItem::Washing:
        return Names::tr("washing a piece");
    case PriceItem::Waste:
        return Names::tr("waste");
    }
    return {};
}

QString nameOf(LabourKind kind)
{
    switch (kind) {
    case LabourKind::Sowing:
        return Names::tr("sowing a tray");
    case LabourKind::Watering:
        return Names::tr("watering a tray once");
    case LabourKind::StageMove:
        return Names::tr("moving a tray on a stage");
    case LabourKind::Harvesting:
        return Names::tr("cutting and weighing a tray");
    case LabourKind::Packing:
        return Names::tr("packing a tray's harvest");
    case LabourKind::ClearingOut:
        return Names::tr("clearing a tray out");
    case LabourKind::PieceWashing:
        return Names::tr("washing a piece");
    }
    return {};
}

QString nameOf(CostPart part)
{
    switch (part) {
    case CostPart::Labour:
        return Names::tr("labour");
    case CostPart::Medium:
        return Names::tr("medium");
    case CostPart::Seed:
        return Names::tr("seed");
    case CostPart::Light:
        return Names::tr("light");
    case CostPart::Packaging:
        return Names::tr("packaging");
    case CostPart::Water:
        return Names::tr("nutrient, water");
    case CostPart::Washing:
        return Names::tr("washing");
    case CostPart::Failed:
        return Names::tr("trays that failed");
    case CostPart::Waste:
        return Names::tr("waste");
    }
    return {};
}

QString nameOf(UnitSystem units)
{
    return units == UnitSystem::Metric ? Names::tr("metric (g, mL, mm)")
                                       : Names::tr("US customary (oz, fl oz, in)");
}

QString proposedCurrency(const QString& written, UnitSystem units)
{
    const QString metric = QStringLiteral("EUR");
    const QString customary = QStringLiteral("USD");
    const QString trimmed = written.trimmed();
    if (!trimmed.isEmpty() && trimmed != metric && trimmed != customary) {
        return written;
    }
    return units == UnitSystem::Metric ? metric : customary;
}

QString unitOf(PriceItem item, bool isLooseMix)
{
    switch (item) {
    case PriceItem::Medium:
        return isLooseMix ? Names::tr("a litre") : Names::tr("a piece");
    case PriceItem::Concentrate:
    case PriceItem::Water:
        return Names::tr("a litre");
    case PriceItem::Electricity:
        return Names::tr("a kilowatt-hour");
    case PriceItem::Labour:
        return Names::tr("an hour");
    case PriceItem::Packaging:
        return Names::tr("a harvested tray");
    case PriceItem::Washing:
        return Names::tr("each time: water and sanitiser");
    case PriceItem::Waste:
        return Names::tr("a kilogram of residue");
    }
    return {};
}

} // namespace plumule::ui
