#pragma once

#include "core/journal/rules/rule_reason.h"

#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace plumule {

class Database;

// The ids of rows that a step touches, by table; besides tables there are keys of what such rows
// belong to ("tray of a cut").
using TouchedRows = std::map<std::string, std::set<std::int64_t>>;

struct BrokenRule
{
    RuleReason reason{};
    std::vector<std::string> values; // as its reason says
    bool operator==(const BrokenRule&) const = default;
};

// The standing rules, each a query after rows that break it. Read within the transaction that may
// break them; throws StorageFailure.
class StandingRulesRepository
{
public:
    explicit StandingRulesRepository(Database& database)
        : m_database(database)
    {}

    // Adds what the touched rows belong to, as far as they are there.
    void addOwners(TouchedRows& touched);
    // In the order of the rules.
    [[nodiscard]] std::vector<BrokenRule> brokenAmong(const TouchedRows& touched);
    // In the whole journal, of the rules that hold at any time; those of what a step may change are
    // left out. A pair of trays is named once.
    [[nodiscard]] std::vector<BrokenRule> brokenAnywhere();

private:
    Database& m_database;
};

} // namespace plumule
