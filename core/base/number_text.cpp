#include "core/base/number_text.h"

#include "core/base/text_reason.h"

#include <algorithm>
#include <charconv>

namespace plumule {
namespace {

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

bool isBlank(char c)
{
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

} // namespace

std::string_view trimmed(std::string_view text)
{
    while (!text.empty() && isBlank(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && isBlank(text.back())) {
        text.remove_suffix(1);
    }
    return text;
}

Result<double> decimalFromText(std::string_view text)
{
    std::string plain(trimmed(text));
    std::replace(plain.begin(), plain.end(), ',', '.');
    const std::size_t first =
        !plain.empty() && (plain.front() == '-' || plain.front() == '+') ? 1 : 0;
    const auto marks = std::count(plain.begin(), plain.end(), '.');
    const bool allowed = std::all_of(plain.begin() + static_cast<std::ptrdiff_t>(first),
                                     plain.end(), [](char c) { return isDigit(c) || c == '.'; });
    const bool hasDigit = std::any_of(plain.begin(), plain.end(), isDigit);
    double value = 0;
    // from_chars() takes no plus.
    const char* begin = plain.data() + (!plain.empty() && plain.front() == '+' ? 1 : 0);
    const auto [end, error] = std::from_chars(begin, plain.data() + plain.size(), value);
    const bool whole = error == std::errc{} && end == plain.data() + plain.size();
    if (marks > 1 || !allowed || !hasDigit || !whole) {
        return fail(ErrorKind::Invalid, TextReason::NotANumber, std::string(text));
    }
    return value;
}

Result<long long> wholeFromText(std::string_view text)
{
    std::string_view plain = trimmed(text);
    if (plain.size() > 1 && plain.front() == '+' && isDigit(plain[1])) {
        plain.remove_prefix(1);
    }
    long long value = 0;
    const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
    if (plain.empty() || error != std::errc{} || end != plain.data() + plain.size()) {
        return fail(ErrorKind::Invalid, TextReason::NotAWholeNumber, std::string(text));
    }
    return value;
}

} // namespace plumule
