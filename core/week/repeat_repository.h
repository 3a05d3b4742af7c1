#pragma once

#include "core/storage/database.h"
#include "core/week/repeat.h"

#include <map>
#include <set>
#include <vector>

namespace plumule {

// Stores repeating sowings and how their days were answered. Writing needs an open transaction.
class RepeatRepository
{
public:
    explicit RepeatRepository(Database& database)
        : m_database(database)
    {}

    // By first day, then as they were made.
    [[nodiscard]] std::vector<Repeat> all();
    [[nodiscard]] std::optional<Repeat> find(RepeatId repeat);
    void insert(Repeat& repeat);
    void update(const Repeat& repeat);
    void remove(RepeatId repeat);

    // From that day on; one query.
    [[nodiscard]] std::map<RepeatId, std::set<Date>> answeredSince(Date from);
    [[nodiscard]] bool isAnswered(RepeatId repeat, Date on);
    [[nodiscard]] bool hasAnswers(RepeatId repeat);
    void insert(RepeatDay& day);

private:
    Database& m_database;
};

} // namespace plumule
