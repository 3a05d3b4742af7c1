// Part of ui/text/text.h: amounts in the room's units.
#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

QString withUnit(double value, int decimals, const QString& unit)
{
    return QStringLiteral("%1 %2").arg(numberText(value, decimals), unit);
}

} // namespace

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
    return m_units == UnitSystem::Metric ? withUnit(inMillilitres(volume), 0, volumeUnit())
                                         : withUnit(inUsFluidOunces(volume), 1, volumeUnit());
}

QString UnitText::mixed(Volume volume) const
{
    return m_units == UnitSystem::Metric ? withUnit(inLitres(volume), 2, QStringLiteral("L"))
                                         : withUnit(inUsGallons(volume), 2, QStringLiteral("gal"));
}

QString UnitText::concentrate(Volume volume) const
{
    return m_units == UnitSystem::Metric ? withUnit(inMillilitres(volume), 1, QStringLiteral("mL"))
                                         : withUnit(inUsFluidOunces(volume), 2, volumeUnit());
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
