#pragma once

#include "core/cost/cost.h"

#include <array>
#include <span>

namespace plumule {

// Where the cost of a gram comes from.
enum class CostPart
{
    Labour, // without the washing of pieces
    Medium,
    Seed,
    Light,
    Packaging,
    Water,   // and nutrient
    Washing, // of reusable pieces: supplies and work
    Failed,  // all that the trays cost that were thrown away
    Waste
};
inline constexpr std::array kPartsOfCost = {
    CostPart::Labour, CostPart::Medium,  CostPart::Seed,   CostPart::Light, CostPart::Packaging,
    CostPart::Water,  CostPart::Washing, CostPart::Failed, CostPart::Waste};
// labour, medium, seed, light, packaging, nutrient_water, washing, failed, waste
[[nodiscard]] const char* toText(CostPart part);
// The part that the price of an item goes into; labour's is also in washing.
[[nodiscard]] CostPart partOf(PriceItem item);

struct CostShare
{
    CostPart part = CostPart::Labour;
    double perGram = 0; // currency units / g, of what is known
    int lacking = 0;    // trays without it, for want of a price or an amount
    int unpriced = 0;   // of these, for want of a price
};

// The cost of a gram of some trays: sum of their costs, failed ones too, over sum of their grams.
struct CostBreakdown
{
    std::vector<CostShare> shares; // of kPartsOfCost, in their order; empty without a gram
    int harvested = 0;
    int failed = 0;
    double grams = 0;      // of those with any cost known, as the season counts them
    double failedCost = 0; // currency units, also where nothing was harvested

    // The sum of the shares; none without a gram or a price.
    [[nodiscard]] std::optional<double> perGram() const;
    [[nodiscard]] const CostShare* share(CostPart part) const;
};

// Adds trays up, one after another.
class CostSums
{
public:
    // `unpriced`: the items whose price it lacks.
    void addHarvested(const TrayCost& cost, double grams, const std::vector<PriceItem>& unpriced);
    void addFailed(const TrayCost& cost, const std::vector<PriceItem>& unpriced);
    [[nodiscard]] CostBreakdown breakdown() const;

private:
    struct Part
    {
        double cost = 0;
        int lacking = 0;
        int unpriced = 0;
    };
    [[nodiscard]] Part& of(CostPart part) { return m_parts[static_cast<std::size_t>(part)]; }

    std::array<Part, kPartsOfCost.size()> m_parts = {};
    int m_harvested = 0;
    int m_failed = 0;
    double m_grams = 0;
};

// Whole numbers of `unit` that stand for the values and add up to their sum as it is rounded: each
// is rounded down, and what is left goes to those with the largest remainders. Values ≥ 0, unit >
// 0.
[[nodiscard]] std::vector<std::int64_t> roundedToSum(std::span<const double> values, double unit);

} // namespace plumule
