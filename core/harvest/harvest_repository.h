#pragma once

#include "core/harvest/expected_range.h"
#include "core/harvest/harvest.h"

#include <map>

namespace plumule {

class Database;

// Cuts, their bowls and residues. Whatever is asked for many trays is one query. Throws
// StorageFailure; writes only inside a transaction.
class HarvestRepository
{
public:
    explicit HarvestRepository(Database& database)
        : m_database(database)
    {}

    [[nodiscard]] std::optional<Harvest> find(HarvestId harvest);
    // A tray's cuts, first cut first.
    [[nodiscard]] std::vector<Harvest> ofTray(TrayId tray);
    [[nodiscard]] std::vector<Residue> residuesOfTray(TrayId tray);
    // Trays without any are not in the map.
    [[nodiscard]] std::map<TrayId, std::vector<Harvest>> ofTrays(const std::vector<TrayId>& trays);
    [[nodiscard]] std::map<TrayId, std::vector<Residue>>
    residuesOfTrays(const std::vector<TrayId>& trays);
    // Sums of the cuts.
    [[nodiscard]] std::map<TrayId, Mass> yieldsOfTrays(const std::vector<TrayId>& trays);
    [[nodiscard]] std::vector<Bowl> bowls(HarvestId harvest);

    // Weighed from one day to another, both included, oldest first.
    [[nodiscard]] std::vector<Harvest> between(Date from, Date to);
    // The latest weights of cuts of that number, newest tray first, of the 100 trays sown last that
    // the source says; the tray itself, those set aside and those discarded left out. Of
    // RoomBySeed, the room's latest cuts of all varieties.
    [[nodiscard]] std::vector<PastWeight> pastCuts(const Tray& tray, RangeSource from, int cut);
    // The same of residues, a tray's together; VarietyOnMedium or Medium.
    [[nodiscard]] std::vector<PastWeight> pastResidues(const Tray& tray, RangeSource from);
    // Of the bowls weighed last, newest first.
    [[nodiscard]] std::vector<Mass> lastTares(int count);
    // This tray is that many-th sown on its piece; 0 where it has none.
    [[nodiscard]] int useOfPiece(const Tray& tray);
    // Harvested from one day to another, both included, with no residue weighed; newest first.
    [[nodiscard]] std::vector<TrayId> traysWithoutResidue(Date from, Date to);

    // These give the row its id where it has none.
    void insert(Harvest& harvest);
    void insert(Bowl& bowl);
    void insert(Residue& residue);
    void update(const Harvest& harvest);
    void removeBowls(HarvestId harvest);
    // With its bowls.

private:
    Database& m_database;
};

} // namespace plumule
