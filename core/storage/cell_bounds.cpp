#include "core/storage/cell_bounds.h"

#include "core/base/utf8.h"

#include <algorithm>
#include <array>
#include <limits>

namespace plumule {
namespace {

constexpr std::size_t kLongestProse = 20'000;
constexpr std::size_t kLongestName = 1'000;
const Date kFirstDay = date(1990, 1, 1);
const Date kLastDay = date(2100, 12, 31);

constexpr std::array<std::string_view, 6> kProse = {
    "note", "text", "question", "caption", "discard_reason", "set_aside_reason"};

constexpr std::int64_t kMostOfAnything = std::numeric_limits<std::int64_t>::max();

struct Range
{
    std::string_view ending;
    std::int64_t from = 0;
    std::int64_t to = 0;
};

// The first whose ending fits.
constexpr Range kWholes[] = {
    {"change_mg", -10'000'000'000, 10'000'000'000},
    {"_mg", 0, 10'000'000'000},
    {"_ul", 0, 10'000'000'000},
    {"_ul_per_l", 0, 10'000'000'000},
    {"_um", -10'000'000, 10'000'000},
    {"_mw", 0, 100'000'000},
    {"_minutes", 0, 1440},
    {"_min", -5'260'000, 5'260'000},
    {"seconds", 0, 864'000},
    {"amount", 0, 1'000'000'000'000}, // counted in 1/10 000
    {"price", 0, 1'000'000'000'000},
    {"starts_with_soak", 0, 1},
    {"_id", 1, kMostOfAnything},
    {"draw_number", -kMostOfAnything, kMostOfAnything},
    {"", -1'000'000'000, 1'000'000'000},
};

bool isMinuteOfDay(std::string_view column)
{
    return column == "minute" || column.ends_with("_minute");
}

bool isDay(std::string_view column)
{
    return column.ends_with("_on") || column.ends_with("_date");
}

Range rangeOf(std::string_view column)
{
    if (isMinuteOfDay(column)) {
        return {"", 0, kMinutesPerDay - 1};
    }
    if (column.starts_with("is_")) {
        return {"", 0, 1};
    }
    if (column == "id") {
        return {"", 1, kMostOfAnything};
    }
    return *std::find_if(std::begin(kWholes), std::end(kWholes),
                         [&](const Range& each) { return column.ends_with(each.ending); });
}

double mostOfReal(std::string_view column)
{
    return column.starts_with("ph") ? 14 : column.ends_with("_percent") ? 100 : 100'000;
}

} // namespace

CellBounds::CellBounds(std::string_view column)
    : m_mostReal(mostOfReal(column))
    , m_isMinuteOfDay(plumule::isMinuteOfDay(column))
    , m_isDay(plumule::isDay(column))
{
    const Range range = rangeOf(column);
    m_least = range.from;
    m_most = range.to;
    const bool isProse = std::find(kProse.begin(), kProse.end(), column) != kProse.end();
    m_longest = isProse ? kLongestProse : kLongestName;
}

std::optional<BoundsReason> CellBounds::textFault(const std::string& text) const
{
    if (m_isDay) {
        const auto day = dateFromIso(text);
        return !day || *day < kFirstDay || *day > kLastDay ? std::optional(BoundsReason::Day)
                                                           : std::nullopt;
    }
    if (text.size() > m_longest) {
        return BoundsReason::TextLength;
    }
    return firstNotUtf8(text) ? std::optional(BoundsReason::TextCharacters) : std::nullopt;
}

std::optional<BoundsReason> CellBounds::fault(const Cell& cell) const
{
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
        if (*whole >= m_least && *whole <= m_most) {
            return std::nullopt;
        }
        return m_isMinuteOfDay ? BoundsReason::TimeOfDay : BoundsReason::Amount;
    }
    if (const auto* real = std::get_if<double>(&cell)) {
        return *real >= 0 && *real <= m_mostReal ? std::nullopt
                                                 : std::optional(BoundsReason::Amount);
    }
    const auto* text = std::get_if<std::string>(&cell);
    return text == nullptr ? std::nullopt : textFault(*text);
}

} // namespace plumule
