#include "core/journal/merge/merge_planner.h"

#include "core/merge/merge_reason.h"

#include <algorithm>
#include <array>

namespace plumule {
namespace {

TouchedRows touchedBy(const std::map<RowKey, RowState>& outcome)
{
    TouchedRows touched;
    // As if both sides had worked after everything else: all that meets is told.
    touched["step"] = {0};
    for (const auto& [key, state] : outcome) {
        touched[key.table].insert(key.id);
    }
    return touched;
}

bool isIn(const std::vector<BrokenRule>& rules, const BrokenRule& rule)
{
    return std::find(rules.begin(), rules.end(), rule) != rules.end();
}

} // namespace

MergePlan MergePlanner::plan(const TakenCopy& copy, const Choices& choices)
{
    MergePlan plan;
    plan.copy = copy;
    plan.renamed = m_sides.renamed();
    plan.actsHere = m_sides.actsHere();
    plan.actsThere = m_sides.actsThere();
    Links links = changedOnBoth();
    for (;;) {
        fill(plan, links, choices);
        const auto known = joinedFamilies(links);
        for (auto& link : brokenBy(plan)) {
            links.push_back(std::move(link));
        }
        if (joinedFamilies(links) == known) {
            return plan;
        }
    }
}

MergePlanner::Links MergePlanner::changedOnBoth()
{
    Links links;
    std::set<Family> met;
    for (const auto& [key, row] : m_sides.rows()) {
        if (!row.isFree() || m_sides.wasMadeOnBoth(row.family)) {
            met.insert(row.family);
            links.push_back({row.family});
        }
    }
    // How a tray ended and where it stood until then are one question.
    for (const Family& family : met) {
        const Family stays{"stays", family.owner};
        if (family.name == "cut" && met.contains(stays)) {
            links.push_back({family, stays});
        }
    }
    return links;
}

std::vector<MergeRow> MergePlanner::rowsOf(const Family& family)
{
    if (family.name != "on_piece") {
        return m_sides.rowsOf(family);
    }
    const RowKey key{"tray", family.owner};
    const auto read = m_sides.rows().find(key);
    MergeRow row;
    if (read != m_sides.rows().end()) {
        row = read->second;
    } else {
        row.key = key;
        row.here = wholeRow(m_here, key);
        row.there = m_sides.thereNow(key);
        row.before = row.there;
    }
    row.family = family;
    return {row};
}

void MergePlanner::fill(MergePlan& plan, const Links& links, const Choices& choices)
{
    plan.items.clear();
    plan.free.clear();
    plan.broken.reset();
    std::set<Family> met;
    for (auto& families : joinedFamilies(links)) {
        std::vector<MergeRow> rows;
        for (const Family& family : families) {
            met.insert(family);
            for (MergeRow& row : rowsOf(family)) {
                rows.push_back(std::move(row));
            }
        }
        if (!rows.empty()) {
            plan.items.push_back(itemOf(m_here, families, std::move(rows), choices));
        }
    }
    for (const auto& [key, row] : m_sides.rows()) {
        if (!met.contains(row.family)) {
            plan.free.push_back(row);
        }
    }
}

MergePlanner::Links MergePlanner::brokenBy(MergePlan& plan)
{
    Links links = triedOut(plan);
    // Families that are alike on both sides leave nothing to choose.
    for (auto& link : links) {
        std::erase_if(link, [&](const Family& family) { return rowsOf(family).empty(); });
    }
    std::erase_if(links, [](const auto& link) { return link.empty(); });
    return links;
}

MergePlanner::Links MergePlanner::triedOut(MergePlan& plan)
{
    const auto outcome = outcomeOf(m_here, plan);
    StandingRulesRepository rules(m_here);
    TouchedRows touched = touchedBy(outcome);
    rules.addOwners(touched);
    const auto before = rules.brokenAmong(touched);
    const Transaction rolledBack(m_here);
    putRows(m_here, outcome);
    rules.addOwners(touched);
    Links links = pointersBrokenBy(outcome);
    if (!links.empty()) {
        plan.broken = fail(ErrorKind::Conflict, MergeReason::StillBroken).value();
    }
    for (const BrokenRule& broken : rules.brokenAmong(touched)) {
        if (!isIn(before, broken)) {
            links.push_back(familiesOf(broken));
            plan.broken = fail(ErrorKind::Conflict, MergeReason::StillBroken).value();
            plan.broken->values = broken.values;
        }
    }
    return links;
}

// A row that points at one that is not there, and what points at a row that goes.
MergePlanner::Links MergePlanner::pointersBrokenBy(const std::map<RowKey, RowState>& outcome)
{
    Links links;
    for (const auto& [key, state] : outcome) {
        if (!state) {
            for (const RowKey& child : rowsPointingAt(m_here, key)) {
                links.push_back(familiesOf(child, key));
            }
            continue;
        }
        for (const Pointer& pointer : pointersOf(m_here, key.table)) {
            const RowKey parent{pointer.table, wholeIn((*state)[pointer.column])};
            if (parent.id != 0 && !wholeRow(m_here, parent)) {
                links.push_back(familiesOf(key, parent));
            }
        }
    }
    return links;
}

std::vector<Family> MergePlanner::familiesOf(const RowKey& child, const RowKey& parent)
{
    std::vector<Family> families;
    if (const RowState row = wholeRow(m_here, child)) {
        families.push_back(m_sides.familyOfRow(child, *row));
    }
    const auto known = m_sides.rows().find(parent);
    if (known != m_sides.rows().end()) {
        families.push_back(known->second.family);
    } else if (const RowState there = m_sides.thereNow(parent)) {
        families.push_back(m_sides.familyOfRow(parent, *there));
    }
    return families;
}

std::int64_t MergePlanner::trayCoded(const std::string& code)
{
    const auto found = rowsWhere(m_here, "tray", "code", Cell(code));
    return found.empty() ? 0 : found.front();
}

// Trays that one side sowed on the piece.
std::vector<Family> MergePlanner::onThePieceOf(std::int64_t tray)
{
    const RowState row = wholeRow(m_here, {"tray", tray});
    const auto place = placeOfColumn(m_here, "tray", "piece_id");
    if (!row || std::holds_alternative<std::monostate>((*row)[*place])) {
        return {};
    }
    std::vector<Family> families;
    for (const std::int64_t each : rowsWhere(m_here, "tray", "piece_id", (*row)[*place])) {
        if (m_sides.rows().contains({"tray", each}) || !m_sides.thereNow({"tray", each})) {
            families.push_back({"on_piece", each});
        }
    }
    return families;
}

std::vector<Family> MergePlanner::ticksOf(std::int64_t tray, const std::string& day)
{
    std::vector<Family> families;
    for (const char* table : {"watering", "watering_look"}) {
        const auto place = placeOfColumn(m_here, table, "on_date");
        for (const std::int64_t id : rowsWhere(m_here, table, "tray_id", Cell(tray))) {
            const RowState row = wholeRow(m_here, {table, id});
            if (row && textIn((*row)[*place]) == day) {
                families.push_back({table, id});
            }
        }
    }
    return families;
}

std::vector<Family> MergePlanner::named(const std::string& name)
{
    constexpr std::array kNames = {
        std::pair{"rack", "name"},    std::pair{"shelf", "name"},
        std::pair{"variety", "name"}, std::pair{"seed_lot", "lot_number"},
        std::pair{"medium", "name"},  std::pair{"trial", "code"},
        std::pair{"panel", "name"}};
    std::vector<Family> families;
    for (const auto& [table, column] : kNames) {
        for (const std::int64_t id : rowsWhere(m_here, table, column, Cell(name))) {
            families.push_back({table, id});
        }
    }
    return families;
}

// The values of a broken rule, as RuleReason says them.
std::vector<Family> MergePlanner::familiesOf(const BrokenRule& broken)
{
    const auto tray = [&](std::size_t value) {
        return value < broken.values.size() ? trayCoded(broken.values[value]) : 0;
    };
    const std::string first = broken.values.empty() ? std::string() : broken.values.front();
    switch (broken.reason) {
    case RuleReason::PlaceTaken:
        return {{"stays", tray(2)}, {"stays", tray(3)}};
    case RuleReason::TrayTwice:
        return {{"stays", tray(0)}};
    case RuleReason::EndedTrayStands:
        return {{"stays", tray(0)}, {"cut", tray(0)}};
    case RuleReason::PieceTaken:
    case RuleReason::PieceRetired:
    case RuleReason::PieceNotSanitised:
        return onThePieceOf(tray(2));
    case RuleReason::GrowsAfterLastCut:
    case RuleReason::NoLastCut:
        return {{"cut", tray(0)}};
    case RuleReason::StagesOutOfOrder:
        return {{"stages", tray(0)}};
    case RuleReason::TickedTwice:
        return ticksOf(tray(0), broken.values.back());
    case RuleReason::NameTaken:
    case RuleReason::TastingStaysClosed:
    case RuleReason::TastingIsFinal:
        return named(first);
    case RuleReason::MarkerTaken:
    case RuleReason::NumberTaken:
    case RuleReason::PriceTwice:
        break;
    }
    return {};
}

} // namespace plumule
