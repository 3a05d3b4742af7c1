#pragma once

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/room/room.h"

#include <QDate>
#include <QString>

#include <optional>

namespace plumule {
enum class CostPart;
enum class FolderKind;
enum class LabourKind;
enum class MediumForm;
enum class PriceItem;
enum class ReadFrom;
enum class Stage;
enum class TrayState;
enum class WaterKind;
enum class WateringMethod;
struct HistoryEntry;
} // namespace plumule

namespace plumule::ui {

// All wording of what core answers. Sentences end with a full stop; names don't.

[[nodiscard]] QString sentence(const Error& error);
// What was done: "Moved RD029 to B2, place 4."
[[nodiscard]] QString sentence(const HistoryEntry& entry, UnitSystem units);
// That the program ended unexpectedly, and what was recorded last: "… 18:02: Sowed RD029."
[[nodiscard]] QString unexpectedEnd(const std::optional<HistoryEntry>& last, UnitSystem units,
                                    Date today);

// What a journal's folder means for its keeping; nothing of a local one.
[[nodiscard]] QString explanationOf(FolderKind folder);

[[nodiscard]] QString nameOf(Stage stage);           // "under weight"
[[nodiscard]] QString nameOf(WaterKind water);       // "nutrient mix"
[[nodiscard]] QString nameOf(WateringMethod method); // "mist from above"
[[nodiscard]] QString nameOf(Slot slot);             // "morning"
[[nodiscard]] QString nameOf(MediumForm form);
[[nodiscard]] QString nameOf(TrayState state);
[[nodiscard]] QString nameOf(ReadFrom from);
[[nodiscard]] QString nameOf(PriceItem item);  // "electricity"
[[nodiscard]] QString nameOf(LabourKind kind); // "watering a tray once"
[[nodiscard]] QString nameOf(CostPart part);   // "nutrient, water"
[[nodiscard]] QString nameOf(UnitSystem units);
// What a room of those units usually reckons in, unless a currency of another kind was written.
[[nodiscard]] QString proposedCurrency(const QString& written, UnitSystem units);
// What the price is for: "a kilowatt-hour".
[[nodiscard]] QString unitOf(PriceItem item, bool isLooseMix);
// "A3 · place 2"; "no place" where there is none.
[[nodiscard]] QString nameOf(const std::optional<Spot>& spot);

[[nodiscard]] QDate toQDate(Date date);
[[nodiscard]] Date fromQDate(QDate date);
[[nodiscard]] QString dayText(Date date);      // "Thursday 12 March"
[[nodiscard]] QString shortDayText(Date date); // "12 Mar"
[[nodiscard]] QString weekdayText(Date date);  // "Thu 12 Mar"
[[nodiscard]] QString longDateText(Date date); // "12 Mar 2026"
[[nodiscard]] QString monthText(Date date);    // "Mar 2026"
[[nodiscard]] QString clockText(int minute);   // "06:50"

// A whole or decimal number in the C locale's digits with U+2212 for minus.
[[nodiscard]] QString numberText(double value, int decimals);
[[nodiscard]] QString moneyText(double units, const QString& currency, int decimals = 2);

// What US customary amounts under a US cup are measured with in this room.
enum class SmallVolume
{
    FluidOunce,
    Teaspoon,
    Millilitre
};

// The unit that gives a cost of a gram two to four figures: by the kilogram or the pound, or where
// that makes thousands in cents by the gram or by the ounce.
struct CostUnit
{
    double ofAGram = 1; // a cost of a gram times this is the number shown
    QString name;       // "EUR/kg", "USD/oz"
};
[[nodiscard]] CostUnit costUnitOf(double costPerGram, const QString& currency, UnitSystem units);
// "23.4 EUR/kg", "1.42 USD/oz".
[[nodiscard]] QString costPerGramText(double costPerGram, const QString& currency,
                                      UnitSystem units);

// Amounts as the room shows them, so that they can be measured.
class UnitText
{
public:
    explicit UnitText(UnitSystem units = UnitSystem::Metric)
        : m_units(units)
    {}

    // For the whole program; US fluid ounces unless set.
    static void measureSmallIn(SmallVolume small);

    [[nodiscard]] UnitSystem units() const { return m_units; }
    [[nodiscard]] QString mass(Mass mass, int decimals = 1) const; // "289.5 g", "10.21 oz"
    [[nodiscard]] QString watering(Volume volume) const;           // "120 mL", "4.1 fl oz", "3 tsp"
    [[nodiscard]] QString mixed(Volume volume) const; // "1.62 L", "0.43 gal"; little as watering()
    [[nodiscard]] QString concentrate(Volume volume) const;  // "13.0 mL", "1.25 fl oz"
    [[nodiscard]] QString dose(Volume perLitre) const;       // "11.72 mL/L", "1.50 fl oz/gal"
    [[nodiscard]] QString length(Length length) const;       // "48 mm", "1.9 in"
    [[nodiscard]] QString temperature(double celsius) const; // "21.4 °C", "70.5 °F"

    [[nodiscard]] QString massUnit() const;
    [[nodiscard]] QString volumeUnit() const; // of a watering
    [[nodiscard]] QString lengthUnit() const;

private:
    UnitSystem m_units;
};

} // namespace plumule::ui
