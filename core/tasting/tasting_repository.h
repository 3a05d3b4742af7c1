#pragma once

#include "core/storage/database.h"
#include "core/tasting/tasting.h"

#include <map>

namespace plumule {

// How much of a panel there is.
struct PanelCounts
{
    int samples = 0;
    int attributes = 0;
    int tasters = 0;
    int servings = 0;
    int scores = 0;
};

// Stores tastings. Writing needs an open transaction.
class TastingRepository
{
public:
    explicit TastingRepository(Database& database)
        : m_database(database)
    {}

    // Newest first; of one trial, or all.
    [[nodiscard]] std::vector<Panel> panels(std::optional<TrialId> trial);
    [[nodiscard]] std::map<PanelId, PanelCounts> counts();
    [[nodiscard]] std::optional<Panel> find(PanelId panel);
    [[nodiscard]] PanelRecord record(const Panel& panel);
    // Media that the trial's trays grow on, or that its plan names; by id.
    [[nodiscard]] std::vector<MediumId> mediaOf(TrialId trial);

    void insert(Panel& panel);
    void update(const Panel& panel);
    // The panel with all that belongs to it.
    void remove(PanelId panel);
    // What belongs to it, but not the panel.
    void removeContents(PanelId panel);

    void insert(PanelSample& sample);
    void insert(PanelAttribute& attribute);
    void insert(Taster& taster);
    void insert(Serving& serving);
    void insert(Score& score);
    void update(const Score& score);
    void remove(ScoreId score);

private:
    Database& m_database;
};

} // namespace plumule
