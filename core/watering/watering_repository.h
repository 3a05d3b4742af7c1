#pragma once

#include "core/watering/watering.h"

#include <map>

namespace plumule {

class Database;

// What was given, what was measured, and how the waters are made.
class WateringRepository
{
public:
    template <class Row>
    using ByTray = std::map<TrayId, std::vector<Row>>;

    explicit WateringRepository(Database& database)
        : m_database(database)
    {}

    [[nodiscard]] std::optional<Watering> find(WateringId watering) const;
    // The tray's tick in that round.
    [[nodiscard]] std::optional<Watering> find(TrayId tray, Date date, Slot slot) const;
    // Oldest first: by day, morning before evening.
    [[nodiscard]] std::vector<Watering> waterings(TrayId tray) const;
    // Of these trays, from that day on, oldest first.
    [[nodiscard]] std::vector<Watering> wateringsSince(const std::vector<TrayId>& trays,
                                                       Date from) const;
    // The newest watering before that round, one index look-up a tray; trays never watered are not
    // in it.
    [[nodiscard]] std::map<TrayId, Watering> lastBefore(const std::vector<TrayId>& trays, Date date,
                                                        Slot slot) const;
    void insert(Watering& watering);
    void update(const Watering& watering);
    void remove(WateringId watering);

    // Looks that found no need, of these trays, from that day on, oldest first.
    [[nodiscard]] std::vector<WateringLook> looksSince(const std::vector<TrayId>& trays,
                                                       Date from) const;
    [[nodiscard]] std::optional<WateringLook> findLook(TrayId tray, Date date, Slot slot) const;
    void insert(WateringLook& look);
    void remove(WateringLookId look);

    // One a kind of water, in the order plain, pH-set, nutrient.
    [[nodiscard]] std::vector<WaterRecipe> recipes() const;
    [[nodiscard]] std::optional<WaterRecipe> find(WaterRecipeId recipe) const;
    void insert(WaterRecipe& recipe);
    void update(const WaterRecipe& recipe);

    // From that day to that day, oldest first.
    [[nodiscard]] std::vector<WaterReading> readings(Date from, Date to) const;
    void insert(WaterReading& reading);

private:
    void sayWhichAreBetween(std::vector<Watering>& waterings) const;

    Database& m_database;
};

} // namespace plumule
