#include "core/exchange/decimal_text.h"

#include <algorithm>
#include <charconv>

namespace plumule {
namespace {

bool isDigits(std::string_view text)
{
    return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

} // namespace

std::string decimalText(std::int64_t count, int decimals)
{
    std::string digits = std::to_string(count);
    const std::string sign = count < 0 ? "-" : "";
    digits.erase(0, sign.size());
    const auto places = static_cast<std::size_t>(decimals);
    if (digits.size() <= places) {
        digits.insert(0, places + 1 - digits.size(), '0');
    }
    std::string fraction = digits.substr(digits.size() - places);
    fraction.erase(fraction.find_last_not_of('0') + 1);
    return sign + digits.substr(0, digits.size() - places) +
           (fraction.empty() ? "" : "." + fraction);
}

tl::expected<std::int64_t, NoCount> countFromDecimal(std::string_view text, int decimals)
{
    const bool isNegative = text.starts_with('-');
    text.remove_prefix(isNegative ? 1 : 0);
    const std::size_t point = text.find('.');
    const std::string_view whole = text.substr(0, point);
    std::string fraction(point == std::string_view::npos ? "" : text.substr(point + 1));
    if (!isDigits(whole) || (point != std::string_view::npos && !isDigits(fraction))) {
        return tl::unexpected(NoCount::NotANumber);
    }
    const auto places = static_cast<std::size_t>(decimals);
    if (fraction.size() > places && fraction.find_first_not_of('0', places) != std::string::npos) {
        return tl::unexpected(NoCount::TooFine);
    }
    fraction.resize(places, '0');
    const std::string digits = (isNegative ? "-" : "") + std::string(whole) + fraction;
    std::int64_t count = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), count);
    if (error != std::errc{} || end != digits.data() + digits.size()) {
        return tl::unexpected(NoCount::NotANumber);
    }
    return count;
}

} // namespace plumule
