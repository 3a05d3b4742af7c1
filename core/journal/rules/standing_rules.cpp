#include "core/journal/rules/standing_rules.h"

#include <algorithm>

namespace plumule {

void StandingRules::touch(const std::vector<ChangedRows>& rows)
{
    for (const ChangedRows& each : rows) {
        m_touched[each.table].insert(each.ids.begin(), each.ids.end());
    }
    m_repository.addOwners(m_touched);
}

void StandingRules::look(const HistoryEntry& step, const std::vector<ChangedRows>& rows)
{
    m_touched["step"] = {step.id.value};
    touch(rows);
    m_before = m_repository.brokenAmong(m_touched);
    // That a score of a closed tasting is touched is itself the fault.
    std::erase_if(m_before, [](const BrokenRule& broken) {
        return broken.reason == RuleReason::TastingIsFinal;
    });
}

Done StandingRules::check(const std::vector<ChangedRows>& rows)
{
    // Once more: what was only just put back has owners too.
    std::vector<ChangedRows> there;
    std::copy_if(rows.begin(), rows.end(), std::back_inserter(there),
                 [](const ChangedRows& each) { return !each.areGone; });
    if (!there.empty()) {
        touch(there);
    }
    for (const BrokenRule& broken : m_repository.brokenAmong(m_touched)) {
        if (std::find(m_before.begin(), m_before.end(), broken) == m_before.end()) {
            auto refused = fail(ErrorKind::Conflict, broken.reason);
            refused.value().values = broken.values;
            return refused;
        }
    }
    return {};
}

} // namespace plumule
