// Part of ui/text/text.h: amounts in the room's units.
#include "ui/text/text.h"

#include "core/climate/climate_sums.h"

#include <QStringList>

#include <cmath>

namespace plumule::ui {
namespace {

QString withUnit(double value, int decimals, const QString& unit)
{
    return QStringLiteral("%1 %2").arg(numberText(value, decimals), unit);
}

constexpr double kTeaspoon = kMillilitresPerUsFluidOunce / 6; // US
constexpr double kLeastGallons = 0.25;                        // under a quart: in fluid ounces
constexpr double kGramsAPound = 453.59237;
constexpr double kGramsAnOunce = kGramsAPound / 16;

SmallVolume& smallVolume()
{
    static SmallVolume chosen = SmallVolume::FluidOunce;
    return chosen;
}

// Without zeros behind the decimal point: "3 tsp", "2.5 tsp".
QString shortNumber(double value, int decimals)
{
    QString text = numberText(value, decimals);
    while (text.contains('.') && (text.endsWith('0') || text.endsWith('.'))) {
        text.chop(1);
    }
    return text;
}

QString smallUsVolume(Volume volume)
{
    switch (smallVolume()) {
    case SmallVolume::FluidOunce:
        break;
    case SmallVolume::Teaspoon:
        return QStringLiteral("%1 tsp").arg(shortNumber(inMillilitres(volume) / kTeaspoon, 1));
    case SmallVolume::Millilitre:
        return withUnit(inMillilitres(volume), 0, QStringLiteral("mL"));
    }
    const double ounces = inUsFluidOunces(volume);
    return withUnit(ounces, ounces < 1 ? 2 : 1, QStringLiteral("fl oz"));
}

bool hasCents(const QString& currency)
{
    static const QStringList kWithCents{"EUR", "USD", "CAD", "AUD", "NZD", "SGD"};
    return kWithCents.contains(currency);
}

// Three figures.
QString figures(double value)
{
    const double size = std::abs(value);
    return numberText(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3);
}

} // namespace

CostUnit costUnitOf(double costPerGram, const QString& currency, UnitSystem units)
{
    constexpr double kMost = 1000;
    const bool isMetric = units == UnitSystem::Metric;
    const double large = isMetric ? 1000 : kGramsAPound;
    if (std::abs(costPerGram) * large < kMost) {
        return {large, currency + (isMetric ? QStringLiteral("/kg") : QStringLiteral("/lb"))};
    }
    if (!isMetric) {
        return {kGramsAnOunce, currency + QStringLiteral("/oz")};
    }
    return hasCents(currency) ? CostUnit{100, QStringLiteral("ct/g")}
                              : CostUnit{1, currency + QStringLiteral("/g")};
}

QString costPerGramText(double costPerGram, const QString& currency, UnitSystem units)
{
    const CostUnit unit = costUnitOf(costPerGram, currency, units);
    return QStringLiteral("%1 %2").arg(figures(costPerGram * unit.ofAGram), unit.name);
}

void UnitText::measureSmallIn(SmallVolume small)
{
    smallVolume() = small;
}

QString numberText(double value, int decimals)
{
    QString text = QString::number(value, 'f', decimals);
    if (text.startsWith('-')) {
        const bool isZero = text.count('0') + text.count('.') == text.size() - 1;
        text.replace(0, 1, isZero ? QString() : QString(QChar(0x2212)));
    }
    return text;
}

QString moneyText(double units, const QString& currency, int decimals)
{
    return QStringLiteral("%1 %2").arg(numberText(units, decimals), currency);
}

QString UnitText::mass(Mass mass, int decimals) const
{
    return m_units == UnitSystem::Metric ? withUnit(inGrams(mass), decimals, massUnit())
                                         : withUnit(inOunces(mass), decimals + 1, massUnit());
}

QString UnitText::watering(Volume volume) const
{
    if (m_units == UnitSystem::Metric) {
        return withUnit(inMillilitres(volume), 0, volumeUnit());
    }
    return volume < usCups(1) ? smallUsVolume(volume)
                              : withUnit(inUsFluidOunces(volume), 1, volumeUnit());
}

QString UnitText::mixed(Volume volume) const
{
    if (m_units == UnitSystem::Metric) {
        return withUnit(inLitres(volume), 2, QStringLiteral("L"));
    }
    return inUsGallons(volume) < kLeastGallons
               ? watering(volume)
               : withUnit(inUsGallons(volume), 2, QStringLiteral("gal"));
}

// Less than a fluid ounce is measured with a syringe, whatever else is in the room.
QString UnitText::concentrate(Volume volume) const
{
    const double ounces = inUsFluidOunces(volume);
    return m_units == UnitSystem::Metric || ounces < 1
               ? withUnit(inMillilitres(volume), 1, QStringLiteral("mL"))
               : withUnit(ounces, 2, volumeUnit());
}

QString UnitText::dose(Volume perLitre) const
{
    if (m_units == UnitSystem::Metric) {
        return withUnit(inMillilitres(perLitre), 2, QStringLiteral("mL/L"));
    }
    const double perGallon = inUsFluidOunces(perLitre) * kMillilitresPerUsGallon / 1e3;
    return withUnit(perGallon, 2, QStringLiteral("fl oz/gal"));
}

QString UnitText::length(Length length) const
{
    return m_units == UnitSystem::Metric ? withUnit(inMillimetres(length), 0, lengthUnit())
                                         : withUnit(inInches(length), 2, lengthUnit());
}

QString UnitText::temperature(double celsius) const
{
    return m_units == UnitSystem::Metric
               ? withUnit(celsius, 1, QStringLiteral("°C"))
               : withUnit(fahrenheitOfCelsius(celsius), 1, QStringLiteral("°F"));
}

QString UnitText::massUnit() const
{
    return m_units == UnitSystem::Metric ? QStringLiteral("g") : QStringLiteral("oz");
}

QString UnitText::volumeUnit() const
{
    return m_units == UnitSystem::Metric ? QStringLiteral("mL") : QStringLiteral("fl oz");
}

QString UnitText::lengthUnit() const
{
    return m_units == UnitSystem::Metric ? QStringLiteral("mm") : QStringLiteral("in");
}

} // namespace plumule::ui
