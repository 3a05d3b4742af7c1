#pragma once

#include "core/journal/rules/standing_rules_repository.h"
#include "core/storage/history.h"

namespace plumule {

// The rules that intentions keep, asked once more where an entry is taken back out of its turn: a
// changeset fits wherever its own rows are as it left them, though another tray may stand in the
// place by now. Only rows that the step touches are looked at, and a rule that was broken before it
// is not held against it.
//
// Redo is not asked: an intention drops what could be redone, so what is done again leads back to
// the very state that was taken back, which kept the rules.
class StandingRules : public UndoGuard
{
public:
    explicit StandingRules(Database& database)
        : m_repository(database)
    {}

    void look(const HistoryEntry& step, const std::vector<ChangedRows>& rows) override;
    // Conflict with the RuleReason that is broken first.
    [[nodiscard]] Done check(const std::vector<ChangedRows>& rows) override;

private:
    void touch(const std::vector<ChangedRows>& rows);

    StandingRulesRepository m_repository;
    TouchedRows m_touched;
    std::vector<BrokenRule> m_before;
};

} // namespace plumule
