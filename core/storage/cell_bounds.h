#pragma once

#include "core/base/bounds_reason.h"
#include "core/storage/database.h"

#include <optional>
#include <string_view>

namespace plumule {

// The one table of bounds, by the unit that a column's name ends on ("net_mg", "sown_on"): what any
// intention, import or file may put into a cell of the journal. None where the cell is within them.
// Empty cells are.
//   …_on, on_date, from_date  days 1990-01-01 to 2100-12-31
//   minute, …_minute          0 to 1439
//   …_mg                      0 to 10 t, change_mg to either side
//   …_ul, …_ul_per_l          0 to 10 m³
//   …_um                      10 m to either side (a surface may lie above the rim)
//   …_mw                      0 to 100 kW
//   …_min                     10 years to either side (a stage may be moved back)
//   seconds                   0 to 10 days
//   amount, price             0 to 100 million of the currency's unit
//   is_…, starts_with_soak    0 or 1
//   ph…, …_percent, …_us_cm   0 to 14, 0 to 100, 0 to 100 000
//   id, …_id                  above 0
//   other numbers             a thousand million to either side; draw_number any
//   texts                     UTF-8 without null: 20,000 bytes where prose is written, else 1,000
[[nodiscard]] std::optional<BoundsReason> boundsFault(std::string_view column, const Cell& cell);

// The least and the most that a number of that column may be.
struct NumberBounds
{
    double least = 0;
    double most = 0;
};
[[nodiscard]] NumberBounds numberBounds(const ColumnInfo& column);

// The most bytes that a text of that column may have.
[[nodiscard]] std::size_t longestText(std::string_view column);

} // namespace plumule
