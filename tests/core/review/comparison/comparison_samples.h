#pragma once

#include "core/review/comparison/comparison.h"
#include "tests/core/review/facts/season_samples.h"

namespace plumule {

// Seasons for comparisons, by hand: trays are added with their values, many at once.
class ComparisonSamples : public SeasonSamples
{
public:
    // Codes are "A1", "A2" …; the records added last are returned by number from the end.
    void addTrays(MediumId medium, const std::vector<double>& yields, VarietyId variety = {1},
                  std::optional<TrialId> trial = std::nullopt)
    {
        for (const double yield : yields) {
            SeasonRecord& record = add("A" + std::to_string(facts.trays.size() + 1), medium, yield);
            record.tray.variety = variety;
            record.tray.trial = trial;
        }
    }

    // One tray of each medium in each block of the trial.
    void addBlocks(TrialId trial, const std::vector<double>& mix, const std::vector<double>& mesh)
    {
        for (std::size_t block = 0; block < mix.size(); ++block) {
            addTrays(kMix, {mix[block]}, {1}, trial);
            facts.trays.back().tray.block = static_cast<int>(block) + 1;
            addTrays(kMesh, {mesh[block]}, {1}, trial);
            facts.trays.back().tray.block = static_cast<int>(block) + 1;
        }
    }

    void nameTrials(int count)
    {
        for (int trial = 1; trial <= count; ++trial) {
            facts.trials[TrialId{trial}] = "T" + std::to_string(trial);
        }
    }

    [[nodiscard]] SeasonComparison compare(Response response = Response::YieldPerTray,
                                           std::optional<double> marginPercent = std::nullopt)
    {
        priceTrays(facts);
        ComparisonAsk ask;
        ask.response = response;
        ask.marginPercent = marginPercent;
        return compare(ask);
    }
    [[nodiscard]] SeasonComparison compare(const ComparisonAsk& ask) const
    {
        return comparisonOf(facts, filter, series, ask);
    }

    // The one pair of mesh and mix.
    [[nodiscard]] MediaPair onlyPair(std::optional<double> marginPercent = std::nullopt)
    {
        return compare(Response::YieldPerTray, marginPercent).pairs.at(0);
    }

    // All trays in one model.
    [[nodiscard]] TrayModel model(Response response = Response::YieldPerTray)
    {
        priceTrays(facts);
        ComparisonAsk ask;
        ask.response = response;
        return trayModelOf(facts, comparedTrays(facts, filter, ask));
    }

    // A trial with trays of both media, sown on that day of the season.
    void addTrial(int number, int dayOfSeason, const std::vector<double>& mix,
                  const std::vector<double>& mesh, VarietyId variety = {1})
    {
        const TrialId trial{number};
        facts.trials[trial] = "T" + std::to_string(number);
        const std::size_t first = facts.trays.size();
        addTrays(kMix, mix, variety, trial);
        addTrays(kMesh, mesh, variety, trial);
        sowFrom(first, date(2026, 1, 1) + dayOfSeason);
    }

    void sowFrom(std::size_t first, Date day)
    {
        for (std::size_t i = first; i < facts.trays.size(); ++i) {
            SeasonRecord& record = facts.trays[i];
            record.tray.sownOn = day;
            record.tray.endedOn = day + 12;
            record.lastCut = day + 12;
            record.cutOn = {day + 12};
            if (record.tray.trial) {
                record.trialSownOn = day;
            }
        }
    }

    // Thrown away instead of cut.
    void discard(std::size_t tray)
    {
        SeasonRecord& record = facts.trays[tray];
        record.tray.state = TrayState::Discarded;
        record.yield = {};
        record.lastCut.reset();
        record.cutOn.clear();
        record.use.isHarvested = false;
        record.use.cuts = 0;
    }

    Series series;
};

} // namespace plumule
