#pragma once

#include "core/forecast/forecast.h"

#include <map>

namespace plumule {

// A stage of one tray: how long its protocol gave it at sowing, and when it began.
struct StageFact
{
    Stage stage = Stage::UnderWeight;
    int lengthMinutes = 0;
    int delayMinutes = 0; // of "not yet"; used of growing trays alone, since its day is not kept
    std::optional<Moment> started;
    bool operator==(const StageFact&) const = default;
};

// What is needed of one tray.
struct TrayFact
{
    TrayId tray;
    std::string code;
    VarietyId variety;
    MediumId medium;
    Moment sownAt;
    std::vector<StageFact> stages; // in order; none where it was brought in without
    std::optional<Moment> cutAt;   // its first cut
    Mass cut;
    std::optional<Moment> discardedAt; // without any cut
    bool isSetAside = false; // no observation: left out of the past, whenever it was set aside
    bool operator==(const TrayFact&) const = default;

    // Its first stage's start, which may be a soak.
    [[nodiscard]] Moment begunAt() const
    {
        return stages.empty() ? sownAt : stages.front().started.value_or(sownAt);
    }
    [[nodiscard]] bool isGrowing() const { return !cutAt && !discardedAt; }
};

// All that forecasts are made of, read once.
struct ForecastFacts
{
    Moment now;
    double trayArea = 0;         // m²
    std::vector<TrayFact> trays; // by sowing, then by id
    std::map<VarietyId, std::string> varieties;
    std::map<MediumId, Medium> media;
    bool operator==(const ForecastFacts&) const = default;
};

// The tray as it was known at that moment, which is past: what happened to it later has not
// happened. Delays are known at present alone.
[[nodiscard]] TrayFact knownAt(TrayFact tray, Moment moment);
// The facts likewise, without trays begun later.
[[nodiscard]] ForecastFacts knownAt(const ForecastFacts& facts, Moment moment);

} // namespace plumule
