#pragma once

#include "core/storage/database.h"
#include "core/trial/trial.h"

#include <map>
#include <vector>

namespace plumule {

// Stores trials. Writing needs an open transaction. Codes are found whatever their letter case.
class TrialRepository
{
public:
    explicit TrialRepository(Database& database)
        : m_database(database)
    {}

    // Newest first.
    [[nodiscard]] std::vector<Trial> all();
    [[nodiscard]] std::map<TrialId, Trial> byId();
    [[nodiscard]] std::optional<Trial> find(TrialId trial);
    [[nodiscard]] std::optional<Trial> findByCode(const std::string& code);

    void insert(Trial& trial);
    void update(const Trial& trial);
    void remove(TrialId trial);
    // Whether trays belong to it.
    [[nodiscard]] bool isInUse(TrialId trial);

private:
    Database& m_database;
};

} // namespace plumule
