#include "core/harvest/scale_text.h"

#include "core/base/number_text.h"
#include "core/base/text_reason.h"
#include "core/harvest/harvest_reason.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>
#include <string>

namespace plumule {
namespace {

constexpr double kHeaviestGrams = 50'000;

std::string upperCase(std::string_view text)
{
    std::string upper(text);
    std::transform(upper.begin(), upper.end(), upper.begin(),
                   [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
    return upper;
}

// Takes "ST," and the like off the front; false for a header that is no weight of a tray.
bool takeHeaders(std::string_view& text, ScaleReading& reading)
{
    const auto isLetter = [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; };
    while (text.size() >= 3 && text[2] == ',' && isLetter(text[0]) && isLetter(text[1])) {
        const std::string header = upperCase(text.substr(0, 2));
        if (header == "US") {
            reading.isStable = false;
        } else if (header == "NT") {
            reading.isNet = true;
        } else if (header != "ST" && header != "GS") {
            return false;
        }
        text = trimmed(text.substr(3));
    }
    return true;
}

// Takes a "?" off either end.
void takeUnstableMark(std::string_view& text, ScaleReading& reading)
{
    if (!text.empty() && text.front() == '?') {
        text.remove_prefix(1);
        reading.isStable = false;
    }
    if (!text.empty() && text.back() == '?') {
        text.remove_suffix(1);
        reading.isStable = false;
    }
    text = trimmed(text);
}

// Takes the letters of the unit off the end; grams in one of it.
std::optional<double> takeUnit(std::string_view& text, MassUnit assumed)
{
    std::size_t end = text.size();
    while (end > 0 && std::isalpha(static_cast<unsigned char>(text[end - 1])) != 0) {
        --end;
    }
    const std::string unit = upperCase(text.substr(end));
    text = trimmed(text.substr(0, end));
    if (unit.empty()) {
        return assumed == MassUnit::Gram ? 1.0 : kGramsPerOunce;
    }
    if (unit == "G") {
        return 1.0;
    }
    if (unit == "KG") {
        return 1000.0;
    }
    if (unit == "OZ") {
        return kGramsPerOunce;
    }
    if (unit == "LB") {
        return kGramsPerPound;
    }
    return std::nullopt;
}

// Scales right-align the digits behind the sign: "+ 12.3".
std::string withSignJoined(std::string_view text)
{
    if (text.empty() || (text.front() != '+' && text.front() != '-')) {
        return std::string(text);
    }
    return text.front() + std::string(trimmed(text.substr(1)));
}

} // namespace

Result<ScaleReading> scaleReadingFrom(std::string_view text, MassUnit unit)
{
    const auto refused = [&] {
        return fail(ErrorKind::Invalid, HarvestReason::ScaleText, std::string(text));
    };
    ScaleReading reading;
    std::string_view rest = trimmed(text);
    takeUnstableMark(rest, reading);
    if (!takeHeaders(rest, reading)) {
        return refused();
    }
    takeUnstableMark(rest, reading);
    const std::optional<double> gramsPerUnit = takeUnit(rest, unit);
    const std::string number = withSignJoined(rest);
    const auto value = decimalFromText(number);
    if (!value && gramsPerUnit && value.error().kind == ErrorKind::Ambiguous) {
        return fail(ErrorKind::Ambiguous, TextReason::ThousandsOrDecimals, std::string(text));
    }
    if (!gramsPerUnit || !value || std::abs(*value * *gramsPerUnit) > kHeaviestGrams) {
        return refused();
    }
    reading.mass = grams(*value * *gramsPerUnit);
    return reading;
}

} // namespace plumule
