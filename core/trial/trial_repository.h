#pragma once

#include "core/storage/database.h"
#include "core/trial/trial.h"
#include "core/variety/variety.h"

#include <map>
#include <vector>

namespace plumule {

// What was sown of one variety on one medium for a trial.
struct SownForTrial
{
    TrialId trial;
    MediumId medium;
    VarietyId variety;
    int trays = 0;
    int growing = 0;
    int harvested = 0;
    std::optional<Date> lastHarvest;
};

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
    // Of all trials, by trial, medium and variety: one query.
    [[nodiscard]] std::vector<SownForTrial> sown();
    // Whether trays or tastings belong to it.
    [[nodiscard]] bool isInUse(TrialId trial);

private:
    Database& m_database;
};

} // namespace plumule
