#pragma once

#include "core/climate/climate_days.h"
#include "core/storage/database.h"

namespace plumule {

// Loggers, their hours and the light of the shelves. Writing needs an open transaction.
class ClimateRepository
{
public:
    explicit ClimateRepository(Database& database)
        : m_database(database)
    {}

    // By name.
    [[nodiscard]] std::vector<ClimateLogger> loggers();
    // The one of that name at that place; names by letters as they are.
    [[nodiscard]] std::optional<ClimateLogger> find(const ClimateLogger& logger);
    void insert(ClimateLogger& logger);
    void update(const ClimateLogger& logger);

    using HoursByLogger = std::map<ClimateLoggerId, std::vector<ClimateHour>>;
    // Hours of these days, in order; one query.
    [[nodiscard]] HoursByLogger hours(const std::vector<ClimateLogger>& loggers, Date from,
                                      Date to);
    void insert(ClimateLoggerId logger, ClimateHour& hour);
    void update(ClimateLoggerId logger, const ClimateHour& hour);

    [[nodiscard]] std::vector<ShelfPpfd> ppfds();
    // None takes the shelf's away.
    void setPpfd(ShelfId shelf, std::optional<std::int64_t> milli);

    // What all loggers tell of these days.
    [[nodiscard]] RoomClimate climate(Date from, Date to);

private:
    Database& m_database;
};

} // namespace plumule
