#pragma once

#include "core/review/answer/costs_answer.h"
#include "ui/text/text.h"
#include "ui/widget/text_table.h"

namespace plumule::ui {

// The unit that all costs of an answer are shown in.
[[nodiscard]] CostUnit unitOf(const CostsAnswer& answer);
// "Of these 64 trays those on steel mesh cost least: 25.06 EUR/kg, 69 % of it labour."
[[nodiscard]] QString costsHeadline(const CostsAnswer& answer);
// "Waste has no price and is left out of every bar."
[[nodiscard]] QString lackText(const PriceLack& lack, const CostsAnswer& answer);
// Of the seed, and of amounts that were not written down; empty where nothing is lacking.
[[nodiscard]] QStringList otherLacks(const CostsAnswer& answer);
// "coir mix", "electricity", "Radish seed"
[[nodiscard]] QString nameOfPriced(const PriceHistory& history,
                                   const std::map<MediumId, QString>& media,
                                   const QString& variety);
// What a price is said by: "EUR/L", or as US rooms usually buy it "USD/ft³".
struct PricedUnit
{
    QString name;
    double times = 1; // of the litre, kilogram … that prices are kept by
};
[[nodiscard]] PricedUnit unitOfPriced(const PriceHistory& history, const CostsAnswer& answer);

// The parts by medium: a row a part, then together, what-if and how many trays were cut. The cells
// of a medium add up to its total as they stand.
struct PartsTable
{
    QStringList header;
    std::vector<TextRow> rows;
};
[[nodiscard]] PartsTable partsTable(const CostsAnswer& answer);

} // namespace plumule::ui
