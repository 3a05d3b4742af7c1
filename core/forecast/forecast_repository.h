#pragma once

#include "core/forecast/forecast_facts.h"

namespace plumule {

class Database;

// Reads what forecasts are made of: a fixed number of queries for any number of trays. Throws
// StorageFailure.
class ForecastRepository
{
public:
    explicit ForecastRepository(Database& database)
        : m_database(database)
    {}

    [[nodiscard]] ForecastFacts read(Moment now);

private:
    void readTrays(ForecastFacts& facts);
    void readStages(ForecastFacts& facts);
    void readCuts(ForecastFacts& facts);

    Database& m_database;
};

} // namespace plumule
