#include "core/trial/trial_rules.h"

#include "core/base/number_text.h"
#include "core/trial/trial_reason.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr std::size_t kMostCodeDigits = 8;

} // namespace

Done checkTrial(const Trial& trial)
{
    if (trimmed(trial.name).empty()) {
        return fail(ErrorKind::Missing, TrialReason::NameMissing);
    }
    if (trial.margin && *trial.margin <= Mass{}) {
        return fail(ErrorKind::Invalid, TrialReason::Margin);
    }
    return {};
}

std::string nextTrialCode(const std::vector<std::string>& used)
{
    // A number that a grower typed may be longer than any that is counted on from.
    int highest = 0;
    for (const std::string& code : used) {
        const bool isOurs = code.size() > 1 && code.size() <= 1 + kMostCodeDigits &&
                            (code.front() == 'T' || code.front() == 't');
        if (isOurs) {
            highest =
                std::max(highest, static_cast<int>(wholeFromText(code.substr(1)).value_or(0)));
        }
    }
    std::string next;
    do {
        next = "T" + std::to_string(++highest);
    } while (std::find(used.begin(), used.end(), next) != used.end());
    return next;
}

} // namespace plumule
