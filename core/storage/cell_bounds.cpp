#include "core/storage/cell_bounds.h"

#include "core/base/utf8.h"

#include <algorithm>
#include <array>
#include <limits>

namespace plumule {
namespace {

constexpr std::size_t kLongestProse = 20'000;
constexpr std::size_t kLongestName = 1'000;

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

std::optional<BoundsReason> wholeFault(std::string_view column, std::int64_t value)
{
    const Range range = rangeOf(column);
    if (value >= range.from && value <= range.to) {
        return std::nullopt;
    }
    return isMinuteOfDay(column) ? BoundsReason::TimeOfDay : BoundsReason::Amount;
}

double mostOfReal(std::string_view column)
{
    return column.starts_with("ph") ? 14 : column.ends_with("_percent") ? 100 : 100'000;
}

std::optional<BoundsReason> realFault(std::string_view column, double value)
{
    return !(value >= 0 && value <= mostOfReal(column)) ? std::optional(BoundsReason::Amount)
                                                        : std::nullopt;
}

std::optional<BoundsReason> textFault(std::string_view column, const std::string& text)
{
    if (isDay(column)) {
        const auto day = dateFromIso(text);
        return !day || *day < date(1990, 1, 1) || *day > date(2100, 12, 31)
                   ? std::optional(BoundsReason::Day)
                   : std::nullopt;
    }
    if (text.size() > longestText(column)) {
        return BoundsReason::TextLength;
    }
    return firstNotUtf8(text) ? std::optional(BoundsReason::TextCharacters) : std::nullopt;
}

} // namespace

std::size_t longestText(std::string_view column)
{
    const bool isProse = std::find(kProse.begin(), kProse.end(), column) != kProse.end();
    return isProse ? kLongestProse : kLongestName;
}

NumberBounds numberBounds(const ColumnInfo& column)
{
    if (column.type == "REAL") {
        return {0, mostOfReal(column.name)};
    }
    const Range range = rangeOf(column.name);
    return {static_cast<double>(range.from), static_cast<double>(range.to)};
}

std::optional<BoundsReason> boundsFault(std::string_view column, const Cell& cell)
{
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
        return wholeFault(column, *whole);
    }
    if (const auto* real = std::get_if<double>(&cell)) {
        return realFault(column, *real);
    }
    if (const auto* text = std::get_if<std::string>(&cell)) {
        return textFault(column, *text);
    }
    return std::nullopt;
}

} // namespace plumule
