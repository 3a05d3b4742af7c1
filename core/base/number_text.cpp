#include "core/base/number_text.h"

#include "core/base/text_reason.h"

#include <algorithm>
#include <charconv>
#include <optional>

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

// The sign taken off: digits and marks, one digit at least.
struct Figures
{
    std::string_view text;
    bool isNegative = false;
};

std::optional<Figures> figuresIn(std::string_view text)
{
    Figures figures{text, !text.empty() && text.front() == '-'};
    if (figures.isNegative || (!text.empty() && text.front() == '+')) {
        figures.text.remove_prefix(1);
    }
    const bool isPlain = std::all_of(figures.text.begin(), figures.text.end(),
                                     [](char c) { return isDigit(c) || c == '.' || c == ','; }) &&
                         std::any_of(figures.text.begin(), figures.text.end(), isDigit);
    return isPlain ? std::optional(figures) : std::nullopt;
}

// "1,234" and "12,345,678", not "0,125" or "1234,567".
bool isParted(std::string_view whole, char mark)
{
    const std::size_t first = whole.find(mark);
    if (first == 0 || first > 3 || whole.front() == '0') {
        return false;
    }
    for (std::size_t at = first; at < whole.size(); at += 4) {
        const std::string_view group = whole.substr(at + 1, 3);
        if (whole[at] != mark || group.size() < 3 ||
            !std::all_of(group.begin(), group.end(), isDigit)) {
            return false;
        }
    }
    return true;
}

std::optional<double> valueOfPlain(const std::string& plain)
{
    double value = 0;
    const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
    const bool isWhole = error == std::errc{} && end == plain.data() + plain.size();
    return isWhole ? std::optional(value) : std::nullopt;
}

// What the figures say where `decimal` is the decimal mark and the other parts thousands.
std::optional<double> valueWith(const Figures& figures, char decimal)
{
    const char group = decimal == '.' ? ',' : '.';
    const std::size_t at = figures.text.find(decimal);
    const std::string_view whole = figures.text.substr(0, at);
    if (whole.find(group) != std::string_view::npos && !isParted(whole, group)) {
        return std::nullopt;
    }
    std::string plain(whole);
    std::erase(plain, group);
    if (at != std::string_view::npos) {
        plain += '.' + std::string(figures.text.substr(at + 1));
    }
    return valueOfPlain(plain);
}

std::optional<double> valueWithOneMark(const Figures& figures)
{
    std::string plain(figures.text);
    std::replace(plain.begin(), plain.end(), ',', '.');
    return valueOfPlain(plain);
}

bool mayPartThousands(const Figures& figures, DecimalMark mark)
{
    const auto isOnePart = [&figures](char sign) {
        return std::count(figures.text.begin(), figures.text.end(), sign) == 1 &&
               isParted(figures.text, sign);
    };
    return isOnePart(',') || (mark == DecimalMark::Unclear && isOnePart('.'));
}

char markOf(DecimalMark mark)
{
    return mark == DecimalMark::Comma ? ',' : '.';
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

Result<double> decimalFromText(std::string_view text, DecimalMark mark)
{
    const std::optional<Figures> figures = figuresIn(trimmed(text));
    if (!figures) {
        return fail(ErrorKind::Invalid, TextReason::NotANumber, std::string(text));
    }
    const bool isEither = mark == DecimalMark::Ours || mark == DecimalMark::Unclear;
    if (isEither && mayPartThousands(*figures, mark)) {
        return fail(ErrorKind::Ambiguous, TextReason::ThousandsOrDecimals, std::string(text));
    }
    const auto value = isEither ? valueWithOneMark(*figures) : valueWith(*figures, markOf(mark));
    if (!value) {
        return fail(ErrorKind::Invalid, TextReason::NotANumber, std::string(text));
    }
    return figures->isNegative ? -*value : *value;
}

DecimalMark decimalMarkOf(const std::vector<std::string_view>& column, DecimalMark otherwise)
{
    bool isPoint = false;
    bool isComma = false;
    for (const std::string_view cell : column) {
        if (const auto figures = figuresIn(trimmed(cell))) {
            const bool asPoint = valueWith(*figures, '.').has_value();
            const bool asComma = valueWith(*figures, ',').has_value();
            isPoint = isPoint || (asPoint && !asComma);
            isComma = isComma || (asComma && !asPoint);
        }
    }
    if (isPoint && isComma) {
        return DecimalMark::Unclear;
    }
    return isPoint ? DecimalMark::Point : isComma ? DecimalMark::Comma : otherwise;
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
