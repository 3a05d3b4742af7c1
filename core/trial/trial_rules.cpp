#include "core/trial/trial_rules.h"

#include "core/base/number_text.h"
#include "core/trial/trial_reason.h"

#include <algorithm>

namespace plumule {

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
    long long highest = 0;
    for (const std::string& code : used) {
        if (code.size() < 2 || code.front() != 'T') {
            continue;
        }
        highest = std::max(highest, wholeFromText(code.substr(1)).value_or(0));
    }
    return "T" + std::to_string(highest + 1);
}

} // namespace plumule
