#include "core/base/utf8.h"

namespace plumule {
namespace {

// How many bytes the UTF-8 character at `at` has; 0 where it is none (RFC 3629).
std::size_t characterLength(std::string_view text, std::size_t at)
{
    const auto byte = [&](std::size_t i) {
        return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
    };
    const unsigned first = byte(0);
    const unsigned second = byte(1);
    std::size_t length = 0;
    if (first < 0x80) {
        return first == 0 ? 0 : 1;
    }
    if (first >= 0xC2 && first <= 0xDF) {
        length = 2;
    } else if (first >= 0xE0 && first <= 0xEF) {
        length = (first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F) ? 0 : 3;
    } else if (first >= 0xF0 && first <= 0xF4) {
        length = (first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F) ? 0 : 4;
    }
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xC0U) != 0x80U) {
            return 0;
        }
    }
    return length;
}

} // namespace

std::optional<std::size_t> firstNotUtf8(std::string_view text)
{
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = characterLength(text, at);
        if (length == 0) {
            return at;
        }
        at += length;
    }
    return std::nullopt;
}

} // namespace plumule
