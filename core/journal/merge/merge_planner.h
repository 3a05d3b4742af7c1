#pragma once

#include "core/journal/rules/standing_rules_repository.h"
#include "core/merge/merge_plan.h"
#include "core/merge/two_sides_repository.h"

namespace plumule {

// Plans how two sides come together: by trying what was chosen, within a transaction that is rolled
// back, it finds which of their rows can't stand beside each other, be it that both changed one or
// that both put a tray on one place.
class MergePlanner
{
public:
    MergePlanner(Database& here, TwoSidesRepository& sides)
        : m_here(here)
        , m_sides(sides)
    {}

    // Not inside a transaction. Throws StorageFailure.
    [[nodiscard]] MergePlan plan(const TakenCopy& copy, const Choices& choices);

private:
    using Links = std::vector<std::vector<Family>>;

    [[nodiscard]] Links changedOnBoth();
    void fill(MergePlan& plan, const Links& links, const Choices& choices);
    [[nodiscard]] std::vector<MergeRow> rowsOf(const Family& family);
    // What is broken once the plan is carried out, as families to choose between.
    [[nodiscard]] Links brokenBy(MergePlan& plan);
    [[nodiscard]] Links triedOut(MergePlan& plan);
    [[nodiscard]] Links pointersBrokenBy(const std::map<RowKey, RowState>& outcome);
    [[nodiscard]] std::vector<Family> familiesOf(const BrokenRule& broken);
    [[nodiscard]] std::vector<Family> familiesOf(const RowKey& child, const RowKey& parent);
    [[nodiscard]] std::vector<Family> onThePieceOf(std::int64_t tray);
    [[nodiscard]] std::vector<Family> ticksOf(std::int64_t tray, const std::string& day);
    [[nodiscard]] std::vector<Family> named(const std::string& name);
    [[nodiscard]] std::int64_t trayCoded(const std::string& code);

    Database& m_here;
    TwoSidesRepository& m_sides;
};

} // namespace plumule
