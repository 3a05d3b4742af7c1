#pragma once

#include "core/storage/database.h"
#include "core/trial/trial_plan.h"

#include <set>

namespace plumule {

// Stores what is planned of trials: plan, treatments and layout. Writing needs an open transaction.
class TrialPlanRepository
{
public:
    explicit TrialPlanRepository(Database& database)
        : m_database(database)
    {}

    // None where the trial has no plan.
    [[nodiscard]] std::optional<TrialDraft> find(TrialId trial);
    // Of every trial that has one, by id: four queries for any number of them.
    [[nodiscard]] std::vector<TrialDraft> all();
    [[nodiscard]] bool isSown(TrialId trial);
    // Places that plans without trays hold, but for this trial's own.
    [[nodiscard]] std::set<PlaceId> heldPlaces(TrialId except);

    // Stores plan, treatments and layout of a stored trial instead of what it had; rows that stay
    // keep their id, and the draft gets them.
    void store(TrialDraft& draft);
    void update(const PlannedTray& tray);
    void remove(TrialId trial);

private:
    Database& m_database;
};

} // namespace plumule
