#include "core/merge/families.h"

#include <algorithm>
#include <array>
#include <set>

namespace plumule {
namespace {

struct Member
{
    const char* table;
    const char* family;
    const char* column;            // the owner's id, or that of the row `through`
    const char* through = nullptr; // the table by which it belongs
};

constexpr std::array kMembers = {
    Member{"tray", "cut", "id"},
    Member{"harvest", "cut", "tray_id"},
    Member{"bowl", "cut", "harvest_id", "harvest"},
    Member{"tray_stage", "stages", "tray_id"},
    Member{"stay", "stays", "tray_id"},
    Member{"residue", "residue", "tray_id"},
    Member{"watering", "watering", "id"},
    Member{"watering_between", "watering", "watering_id"},
    Member{"variety", "variety", "id"},
    Member{"protocol_stage", "variety", "variety_id"},
    Member{"medium", "medium", "id"},
    Member{"medium_as_run", "medium", "medium_id"},
    Member{"medium_group", "medium", "medium_id"},
    Member{"sanitising", "sanitising", "id"},
    Member{"sanitising_detail", "sanitising", "sanitising_id"},
    Member{"price", "price", "id"},
    Member{"price_measure", "price", "price_id"},
    Member{"trial", "trial", "id"},
    Member{"trial_plan", "trial", "trial_id"},
    Member{"treatment", "trial", "trial_id"},
    Member{"planned_tray", "trial", "trial_id"},
    Member{"panel", "panel", "id"},
    Member{"panel_sample", "panel", "panel_id"},
    Member{"panel_attribute", "panel", "panel_id"},
    Member{"taster", "panel", "panel_id"},
    Member{"serving", "panel", "panel_id"},
    Member{"score", "panel", "serving_id", "serving"},
};

const Member* memberOf(const std::string& table)
{
    const auto found = std::find_if(kMembers.begin(), kMembers.end(),
                                    [&](const Member& each) { return each.table == table; });
    return found == kMembers.end() ? nullptr : &*found;
}

std::int64_t idIn(Database& schema, const std::string& table, const WholeRow& row,
                  const char* column)
{
    const auto place = placeOfColumn(schema, table, column);
    return place && *place < row.size() ? wholeIn(row[*place]) : 0;
}

} // namespace

Family familyOf(Database& schema, const RowKey& key, const WholeRow& row, const RowFinder& find)
{
    const Member* member = memberOf(key.table);
    if (member == nullptr) {
        return {key.table, key.id};
    }
    const std::int64_t id = idIn(schema, key.table, row, member->column);
    if (member->through == nullptr) {
        return {member->family, id};
    }
    const RowKey parent{member->through, id};
    const RowState found = find(parent);
    return found ? familyOf(schema, parent, *found, find) : Family{key.table, key.id};
}

std::vector<RowKey> rowsOfFamily(Database& database, const Family& family)
{
    std::vector<RowKey> keys;
    const auto add = [&](const char* table, const char* column, std::int64_t id) {
        for (const std::int64_t each : rowsWhere(database, table, column, Cell(id))) {
            keys.push_back({table, each});
        }
    };
    bool isMembers = false;
    for (const Member& member : kMembers) {
        if (family.name != member.family) {
            continue;
        }
        isMembers = true;
        if (member.through == nullptr) {
            add(member.table, member.column, family.owner);
            continue;
        }
        const std::size_t before = keys.size(); // what it goes through stands before it
        for (std::size_t i = 0; i < before; ++i) {
            if (keys[i].table == member.through) {
                add(member.table, member.column, keys[i].id);
            }
        }
    }
    if (!isMembers) {
        const RowKey key{ownerTableOf(family), family.owner};
        if (wholeRow(database, key)) {
            keys.push_back(key);
        }
    }
    return keys;
}

std::string ownerTableOf(const Family& family)
{
    constexpr std::array kOfTrays = {"cut", "stages", "stays", "residue", "on_piece"};
    return std::find(kOfTrays.begin(), kOfTrays.end(), family.name) == kOfTrays.end() ? family.name
                                                                                      : "tray";
}

std::int64_t trayOf(Database& schema, const MergeRow& row)
{
    if (ownerTableOf(row.family) == "tray") {
        return row.family.owner;
    }
    for (const RowState* state : {&row.here, &row.there, &row.before}) {
        if (*state) {
            if (const std::int64_t tray = idIn(schema, row.key.table, **state, "tray_id")) {
                return tray;
            }
        }
    }
    return 0;
}

std::vector<std::vector<Family>> joinedFamilies(const std::vector<std::vector<Family>>& links)
{
    std::vector<std::set<Family>> sets;
    for (const auto& link : links) {
        std::set<Family> joined(link.begin(), link.end());
        std::erase_if(sets, [&](const std::set<Family>& other) {
            const bool meets = std::any_of(other.begin(), other.end(), [&](const Family& each) {
                return joined.contains(each);
            });
            if (meets) {
                joined.insert(other.begin(), other.end());
            }
            return meets;
        });
        sets.push_back(std::move(joined));
    }
    std::sort(sets.begin(), sets.end());
    std::vector<std::vector<Family>> families;
    for (const auto& set : sets) {
        if (!set.empty()) {
            families.emplace_back(set.begin(), set.end());
        }
    }
    return families;
}

} // namespace plumule
