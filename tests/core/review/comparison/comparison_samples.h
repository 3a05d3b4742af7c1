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
            SeasonRecord& record = add("A" + std::to_string(facts.cut.size() + 1), medium, yield);
            record.tray.variety = variety;
            record.tray.trial = trial;
        }
    }

    // One tray of each medium in each block of the trial.
    void addBlocks(TrialId trial, const std::vector<double>& mix, const std::vector<double>& mesh)
    {
        for (std::size_t block = 0; block < mix.size(); ++block) {
            addTrays(kMix, {mix[block]}, {1}, trial);
            facts.cut.back().tray.block = static_cast<int>(block) + 1;
            addTrays(kMesh, {mesh[block]}, {1}, trial);
            facts.cut.back().tray.block = static_cast<int>(block) + 1;
        }
    }

    void nameTrials(int count)
    {
        for (int trial = 1; trial <= count; ++trial) {
            facts.trials[TrialId{trial}] = "T" + std::to_string(trial);
        }
    }

    [[nodiscard]] SeasonComparison compare(Response response = Response::YieldPerTray,
                                           std::optional<double> margin = std::nullopt)
    {
        priceTrays(facts);
        ComparisonAsk ask;
        ask.response = response;
        ask.margin = margin;
        return comparisonOf(facts, filter, ask);
    }

    // The verdict of mesh against mix.
    [[nodiscard]] MediaPair meshAgainstMix(std::optional<double> margin = std::nullopt)
    {
        return compare(Response::YieldPerTray, margin).pairs.at(0);
    }
};

} // namespace plumule
