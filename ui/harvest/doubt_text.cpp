#include "ui/harvest/doubt_text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

QString words(const char* text)
{
    return QCoreApplication::translate("Weighing", text);
}

QString rangeText(const ExpectedRange& range, const UnitText& units)
{
    const int decimals = units.units() == UnitSystem::Metric ? 0 : 1;
    return QStringLiteral("%1–%2").arg(units.mass(*range.low, decimals).section(' ', 0, 0),
                                       units.mass(*range.high, decimals));
}

QString doubtText(Doubt doubt, const ExpectedRange& range, const UnitText& units)
{
    switch (doubt) {
    case Doubt::OutsideExpected:
        return words("Far from the expected %1.").arg(rangeText(range, units));
    case Doubt::AlreadyWeighed:
        return words("This tray is weighed already.");
    case Doubt::UnstableReading:
        return words("The scale had not come to rest.");
    case Doubt::TareForgotten:
        return words("No tare, though the last bowl had one.");
    case Doubt::NotDueYet:
        return words("This tray has not been in light yet.");
    }
    return {};
}

} // namespace

QString expectedText(const ExpectedRange& range, const UnitText& units)
{
    if (!range.low || !range.high) {
        return words("No expected weight yet: it takes three trays of this variety on this medium, "
                     "and "
                     "there are %1.")
            .arg(range.trays);
    }
    return words("Expected %1, from %2 trays of this variety on this medium.")
        .arg(rangeText(range, units))
        .arg(range.trays);
}

QString doubtsText(const std::vector<Doubt>& doubts, const ExpectedRange& range,
                   const UnitText& units)
{
    QStringList parts;
    for (const Doubt doubt : doubts) {
        parts << doubtText(doubt, range, units);
    }
    parts << words("Enter again records it all the same; Esc leaves it to be corrected.");
    return parts.join(' ');
}

} // namespace plumule::ui
