#pragma once

#include "core/base/bounds_reason.h"
#include "core/storage/column_traits.h"

#include <cstdint>
#include <optional>
#include <string_view>

namespace plumule {

// The least and the most that a number may be.
struct NumberBounds
{
    double least = 0;
    double most = 0;
};

// The one table of bounds, by the unit that a column's name ends on ("net_mg", "sown_on"): what any
// intention, import or file may put into a cell of the journal. An empty cell is within them.
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
class CellBounds
{
public:
    // Of the column of that name.
    explicit CellBounds(std::string_view column);

    // None where the cell is within them.
    [[nodiscard]] std::optional<BoundsReason> fault(const Cell& cell) const;
    [[nodiscard]] NumberBounds ofWholes() const { return {double(m_least), double(m_most)}; }
    [[nodiscard]] NumberBounds ofReals() const { return {0, m_mostReal}; }
    // The most bytes that a text may have.
    [[nodiscard]] std::size_t longestText() const { return m_longest; }

private:
    [[nodiscard]] std::optional<BoundsReason> textFault(const std::string& text) const;

    std::int64_t m_least = 0;
    std::int64_t m_most = 0;
    double m_mostReal = 0;
    std::size_t m_longest = 0;
    bool m_isMinuteOfDay = false;
    bool m_isDay = false;
};

// Of one cell alone.
[[nodiscard]] inline std::optional<BoundsReason> boundsFault(std::string_view column,
                                                             const Cell& cell)
{
    return CellBounds(column).fault(cell);
}
[[nodiscard]] inline std::size_t longestText(std::string_view column)
{
    return CellBounds(column).longestText();
}

} // namespace plumule
