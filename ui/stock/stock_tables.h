#pragma once

#include "core/stock/stock.h"
#include "ui/text/text.h"
#include "ui/widget/rows_model.h"

namespace plumule::ui {

// The tables of the stock: what stands in which column. Lines that are warned of have their words
// in the colour of warnings, and say why in words.
[[nodiscard]] std::vector<RowColumn<SeedLine>> seedColumns(const UnitText& units,
                                                           const QString& currency);
[[nodiscard]] std::vector<RowColumn<PieceLine>> pieceColumns(const Medium& medium, Date today);
[[nodiscard]] std::vector<RowColumn<StockLine>> supplyColumns(const UnitText& units);

// The columns that hold a bar.
inline constexpr int kSeedDaysColumn = 5;
inline constexpr int kPieceUsesColumn = 1;
inline constexpr int kSupplyDaysColumn = 4;

} // namespace plumule::ui
