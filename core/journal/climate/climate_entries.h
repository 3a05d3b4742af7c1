#pragma once

#include "core/climate/logger_file.h"
#include "core/climate/logger_merge.h"
#include "core/journal/climate/climate_answers.h"

namespace plumule {

class Ledger;

enum class FaultyLines
{
    Refuse,
    LeaveOut // those who bring the file in have looked at them
};

// Loggers' files in, and the climate beside growth out.
class ClimateEntries
{
public:
    explicit ClimateEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // By name.
    [[nodiscard]] Result<std::vector<ClimateLogger>> loggers();
    // What the readings come to beside the journal, of a logger of that name at that rack or shelf.
    // Errors of the logger as bringIn()'s.
    [[nodiscard]] Result<HourMerge> foresee(const LoggerReadings& readings,
                                            const LoggerColumns& columns, const ClimateLogger& at);
    // Stores the readings as hours, all or nothing, as one intention. A logger of another name or
    // at another place is a new one. Missing without a name; NotFound for a place that is gone;
    // Conflict where its light was counted in the other unit so far, or for faulty lines that are
    // not to be left out; NothingThere where the journal holds all of it.
    Result<LoggerOutcome> bringIn(const LoggerReadings& readings, const LoggerColumns& columns,
                                  const ClimateLogger& at, FaultyLines faulty,
                                  const std::string& fileName);

    // Every logger's days between the two.
    [[nodiscard]] Result<std::vector<LoggerDays>> days(Date from, Date to);
    // NotFound.
    [[nodiscard]] Result<TrayClimate> ofTray(TrayId tray);
    [[nodiscard]] Result<TrialClimate> ofTrial(TrialId trial);

    // The photon flux density under the shelves' lamps in µmol/m²/s, of shelves where it is known.
    [[nodiscard]] Result<std::map<ShelfId, double>> lampLight();
    // Of these shelves, as one intention; none forgets it. Invalid below 0 or above kMostPpfd;
    // NotFound.
    Done setLampLight(const std::map<ShelfId, std::optional<double>>& ppfds);

private:
    Ledger& m_ledger;
};

} // namespace plumule
