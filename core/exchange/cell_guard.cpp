#include "core/exchange/cell_guard.h"

#include <charconv>

namespace plumule {
namespace {

constexpr std::string_view kRun = "=+-@\t\r";

bool isNumber(std::string_view text)
{
    if (!text.empty() && text.front() == '+') {
        text.remove_prefix(1);
    }
    const std::size_t figures = text.find_first_not_of("-.");
    if (figures == std::string_view::npos || text[figures] < '0' || text[figures] > '9') {
        return false; // "inf" is a name
    }
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc{} && end == text.data() + text.size();
}

bool needsGuard(std::string_view text)
{
    const std::size_t first = text.find_first_not_of('\'');
    return first != std::string_view::npos && kRun.find(text[first]) != std::string_view::npos &&
           !isNumber(text.substr(first));
}

} // namespace

std::string guarded(std::string_view cell)
{
    return (needsGuard(cell) ? "'" : "") + std::string(cell);
}

void unguard(std::string& cell)
{
    if (!cell.empty() && cell.front() == '\'' && needsGuard(std::string_view(cell).substr(1))) {
        cell.erase(0, 1);
    }
}

} // namespace plumule
