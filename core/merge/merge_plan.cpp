#include "core/merge/merge_plan.h"

#include "core/merge/families.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr const char* kOnPiece = "on_piece";

// Trays that one side sowed since: they are there, whatever is chosen.
std::set<std::int64_t> sownOnOneSide(const MergeItem& item)
{
    std::set<std::int64_t> trays;
    for (const MergeRow& row : item.rows) {
        const bool isOfOne = row.here.has_value() != row.there.has_value();
        if (row.key.table == "tray" && isOfOne && row.isBeforeKnown &&
            (!row.before || row.before == row.there)) {
            trays.insert(row.key.id);
        }
    }
    return trays;
}

const RowState& chosenState(const MergeRow& row, Side side, const std::set<std::int64_t>& sown)
{
    if (row.family.name == "cut" && sown.contains(row.family.owner) &&
        row.here.has_value() != row.there.has_value()) {
        return row.here ? row.here : row.there;
    }
    return side == Side::Here ? row.here : row.there;
}

void setPiece(Database& schema, const MergeRow& row, Side side, RowState& tray)
{
    const auto place = placeOfColumn(schema, "tray", "piece_id");
    const RowState& from = side == Side::Here ? row.here : row.there;
    if (tray && place) {
        (*tray)[*place] = from ? (*from)[*place] : Cell();
    }
}

} // namespace

int MergePlan::unchosen() const
{
    return static_cast<int>(std::count_if(items.begin(), items.end(),
                                          [](const MergeItem& item) { return !item.chosen; }));
}

MergeItem itemOf(Database& schema, std::vector<Family> families, std::vector<MergeRow> rows,
                 const Choices& choices)
{
    MergeItem item{std::move(families), std::move(rows), std::nullopt, {}};
    bool isAlike = true;
    for (const Family& family : item.families) {
        const auto found = choices.find(family);
        isAlike =
            isAlike && found != choices.end() && (!item.chosen || *item.chosen == found->second);
        if (found != choices.end()) {
            item.chosen = found->second;
        }
    }
    if (!isAlike) {
        item.chosen.reset();
    }
    for (const MergeRow& row : item.rows) {
        if (const std::int64_t tray = trayOf(schema, row)) {
            item.trays.insert(tray);
        }
    }
    return item;
}

std::map<RowKey, RowState> outcomeOf(Database& schema, const MergePlan& plan)
{
    std::map<RowKey, RowState> states;
    std::map<RowKey, RowState> here;
    for (const MergeRow& row : plan.free) {
        states[row.key] = row.there;
        here[row.key] = row.here;
    }
    for (const MergeItem& item : plan.items) {
        const auto sown = sownOnOneSide(item);
        for (const MergeRow& row : item.rows) {
            if (row.family.name != kOnPiece) {
                states[row.key] = chosenState(row, item.chosen.value_or(Side::Here), sown);
                here[row.key] = row.here;
            }
        }
    }
    for (const MergeItem& item : plan.items) {
        for (const MergeRow& row : item.rows) {
            if (row.family.name == kOnPiece) {
                here[row.key] = row.here;
                auto& tray =
                    states.try_emplace(row.key, row.here ? row.here : row.there).first->second;
                setPiece(schema, row, item.chosen.value_or(Side::Here), tray);
            }
        }
    }
    std::erase_if(states, [&](const auto& each) { return each.second == here[each.first]; });
    return states;
}

std::vector<MergeRow> rowsNotKept(const MergeItem& item)
{
    std::vector<MergeRow> rows;
    if (!item.chosen) {
        return rows;
    }
    const auto sown = sownOnOneSide(item);
    std::copy_if(item.rows.begin(), item.rows.end(), std::back_inserter(rows),
                 [&](const MergeRow& row) {
                     return row.family.name == kOnPiece ||
                            chosenState(row, *item.chosen, sown) !=
                                (*item.chosen == Side::Here ? row.there : row.here);
                 });
    return rows;
}

} // namespace plumule
