#pragma once

#include <array>
#include <string_view>

namespace plumule {

// What is compared, one at a time.
enum class Response
{
    YieldPerTray,     // g, of the trays that were harvested
    YieldPerTraySown, // g: the sum of grams over all trays sown, failed ones too
    YieldPerArea,     // g/m²
    YieldPerSeed,     // g/g
    YieldPerDay,      // g a day in place
    CostPerGram,      // currency units / g: sum of costs, of failed trays too, over sum of grams
    HeightOnDay,      // mm above the medium's surface
    DaysToHarvest,    // day of growth of the last cut
    Residue,          // g, wet
    Evenness,         // %: variation of a tray's own height readings, on its last day with three
    Work              // min of the labour tasks, with the washing of a piece
};
inline constexpr std::array kResponses = {Response::YieldPerTray, Response::YieldPerTraySown,
                                          Response::YieldPerArea, Response::YieldPerSeed,
                                          Response::YieldPerDay,  Response::CostPerGram,
                                          Response::HeightOnDay,  Response::DaysToHarvest,
                                          Response::Residue,      Response::Evenness,
                                          Response::Work};

// As stored and as scripts name it: yield, yield_per_sown, yield_per_area, yield_per_seed,
// yield_per_day, cost, height, days, residue, evenness, work.
[[nodiscard]] const char* toText(Response response);
bool fromText(std::string_view text, Response& response);

} // namespace plumule
