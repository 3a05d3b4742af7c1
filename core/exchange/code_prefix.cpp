#include "core/exchange/code_prefix.h"

#include <algorithm>

namespace plumule {
namespace {

std::string lettersOf(const std::string& name)
{
    std::string letters = upperCase(name);
    std::erase_if(letters, [](char c) { return c < 'A' || c > 'Z'; });
    return letters.empty() ? "X" : letters;
}

} // namespace

std::string upperCase(std::string text)
{
    std::transform(text.begin(), text.end(), text.begin(), [](char c) {
        return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    });
    return text;
}

std::string freePrefix(const std::set<std::string>& taken, const std::string& name)
{
    const std::string letters = lettersOf(name) + "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    for (std::size_t first = 0; first < letters.size(); ++first) {
        for (std::size_t second = first + 1; second < letters.size(); ++second) {
            const std::string prefix{letters[first], letters[second]};
            if (!taken.contains(prefix)) {
                return prefix;
            }
        }
    }
    return letters.substr(0, 2);
}

} // namespace plumule
