#include "core/tray/tray_code.h"

namespace plumule {

std::string codeOf(const std::string& prefix, int number)
{
    std::string digits = std::to_string(number);
    digits.insert(0, digits.size() < 3 ? 3 - digits.size() : 0, '0');
    return prefix + digits;
}

} // namespace plumule
