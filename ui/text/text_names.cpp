// Part of ui/text/text.h: the names of things.
#include "ui/text/text.h"

#include <QCoreApplication>
#include <QLocale>

namespace plumule::ui {
namespace {

QString words(const char* text)
{
    return QCoreApplication::translate("Names", text);
}

} // namespace

QString nameOf(Stage stage)
{
    switch (stage) {
    case Stage::Soak:
        return words("soak");
    case Stage::UnderWeight:
        return words("under weight");
    case Stage::Blackout:
        return words("blackout");
    case Stage::Light:
        return words("light");
    }
    return {};
}

QString nameOf(WaterKind water)
{
    switch (water) {
    case WaterKind::Plain:
        return words("plain water");
    case WaterKind::PhSet:
        return words("plain, pH set");
    case WaterKind::Nutrient:
        return words("nutrient mix");
    }
    return {};
}

QString nameOf(WateringMethod method)
{
    switch (method) {
    case WateringMethod::None:
        return words("no watering");
    case WateringMethod::Mist:
        return words("mist from above");
    case WateringMethod::Below:
        return words("water from below");
    }
    return {};
}

QString nameOf(Slot slot)
{
    return slot == Slot::Morning ? words("morning") : words("evening");
}

QString nameOf(MediumForm form)
{
    switch (form) {
    case MediumForm::LooseMix:
        return words("loose mix");
    case MediumForm::Mat:
        return words("mat");
    case MediumForm::Mesh:
        return words("mesh");
    }
    return {};
}

QString nameOf(TrayState state)
{
    switch (state) {
    case TrayState::Growing:
        return words("growing");
    case TrayState::Harvested:
        return words("harvested");
    case TrayState::Discarded:
        return words("discarded");
    }
    return {};
}

QString nameOf(ReadFrom from)
{
    return from == ReadFrom::Rim ? words("from the tray's rim")
                                 : words("from the medium's surface");
}

QString nameOf(const std::optional<Spot>& spot)
{
    if (!spot) {
        return words("no place");
    }
    return words("%1%2 · place %3")
        .arg(QString::fromStdString(spot->rack), QString::fromStdString(spot->shelf))
        .arg(spot->number);
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
        return words("medium");
    case PriceItem::Concentrate:
        return words("nutrient concentrate");
    case PriceItem::Water:
        return words("water");
    case PriceItem::Electricity:
        return words("electricity");
    case PriceItem::Labour:
        return words("work");
    case PriceItem::Packaging:
        return words("packaging");
    case PriceItem::Washing:
        return words("washing a piece");
    case PriceItem::Waste:
        return words("waste");
    }
    return {};
}

QString nameOf(UnitSystem units)
{
    return units == UnitSystem::Metric ? words("metric (g, mL, mm)")
                                       : words("US customary (oz, fl oz, in)");
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
        return isLooseMix ? words("a litre") : words("a piece");
    case PriceItem::Concentrate:
    case PriceItem::Water:
        return words("a litre");
    case PriceItem::Electricity:
        return words("a kilowatt-hour");
    case PriceItem::Labour:
        return words("an hour");
    case PriceItem::Packaging:
        return words("a harvested tray");
    case PriceItem::Washing:
        return words("each time: water and sanitiser");
    case PriceItem::Waste:
        return words("a kilogram of residue");
    }
    return {};
}

} // namespace plumule::ui
