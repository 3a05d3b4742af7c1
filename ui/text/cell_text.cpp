#include "ui/text/cell_text.h"

#include "ui/text/key_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace plumule::ui {
namespace {

class Cells
{
    Q_DECLARE_TR_FUNCTIONS(Cells)
};

// Columns that a grower fills himself.
constexpr std::array kColumns = {
    KeyText{"net_mg", QT_TRANSLATE_NOOP("Cells", "net")},
    KeyText{"gross_mg", QT_TRANSLATE_NOOP("Cells", "on the scale")},
    KeyText{"tare_mg", QT_TRANSLATE_NOOP("Cells", "the bowl")},
    KeyText{"seed_mg", QT_TRANSLATE_NOOP("Cells", "seed")},
    KeyText{"bought_mg", QT_TRANSLATE_NOOP("Cells", "bought")},
    KeyText{"reading_um", QT_TRANSLATE_NOOP("Cells", "height")},
    KeyText{"surface_below_rim_um", QT_TRANSLATE_NOOP("Cells", "below the rim")},
    KeyText{"amount_mg", QT_TRANSLATE_NOOP("Cells", "promised")},
    KeyText{"for_date", QT_TRANSLATE_NOOP("Cells", "for")},
    KeyText{"end_date", QT_TRANSLATE_NOOP("Cells", "ends")},
    KeyText{"customer", QT_TRANSLATE_NOOP("Cells", "whom")},
    KeyText{"amount_ul", QT_TRANSLATE_NOOP("Cells", "water")},
    KeyText{"sown_on", QT_TRANSLATE_NOOP("Cells", "sown")},
    KeyText{"ended_on", QT_TRANSLATE_NOOP("Cells", "ended")},
    KeyText{"started_on", QT_TRANSLATE_NOOP("Cells", "begun")},
    KeyText{"from_date", QT_TRANSLATE_NOOP("Cells", "holds from")},
    KeyText{"bought_on", QT_TRANSLATE_NOOP("Cells", "bought on")},
    KeyText{"name", QT_TRANSLATE_NOOP("Cells", "name")},
    KeyText{"note", QT_TRANSLATE_NOOP("Cells", "note")},
    KeyText{"text", QT_TRANSLATE_NOOP("Cells", "note")},
    KeyText{"question", QT_TRANSLATE_NOOP("Cells", "question")},
    KeyText{"lot_number", QT_TRANSLATE_NOOP("Cells", "lot")},
    KeyText{"supplier", QT_TRANSLATE_NOOP("Cells", "supplier")},
    KeyText{"set_aside_reason", QT_TRANSLATE_NOOP("Cells", "set aside")},
    KeyText{"discard_reason", QT_TRANSLATE_NOOP("Cells", "discarded")},
};

QString wholeText(const std::string& column, std::int64_t value, const UnitText& units)
{
    if (column.ends_with("_mg")) {
        return units.mass(milligrams(value));
    }
    if (column.ends_with("_um")) {
        return units.length(Length::ofCount(value));
    }
    if (column.ends_with("_ul")) {
        return units.watering(Volume::ofCount(value));
    }
    return QString::number(value);
}

QString writtenText(const std::string& column, const std::string& value, int longest)
{
    if (column.ends_with("_on") || column.ends_with("_date")) {
        const auto day = dateFromIso(value);
        return day ? longDateText(*day) : QString();
    }
    const QString text = QString::fromStdString(value).simplified();
    return longest > 0 && text.size() > longest ? text.left(longest - 1) + QChar(0x2026) : text;
}

} // namespace

QString columnName(const std::string& column)
{
    const char* text = textOf(kColumns, column);
    return text == nullptr ? QString() : Cells::tr(text);
}

QString cellText(const std::string& column, const Cell& cell, const UnitText& units, int longest)
{
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
        return wholeText(column, *whole, units);
    }
    if (const auto* text = std::get_if<std::string>(&cell)) {
        return text->empty() ? Cells::tr("nothing") : writtenText(column, *text, longest);
    }
    return Cells::tr("nothing");
}

} // namespace plumule::ui
