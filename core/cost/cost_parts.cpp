#include "core/cost/cost_parts.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace plumule {
namespace {

struct PartOfTray
{
    std::optional<double> TrayCost::*field;
    CostPart part;
};

constexpr std::array kPartsOfTray = {
    PartOfTray{&TrayCost::labour, CostPart::Labour},
    PartOfTray{&TrayCost::medium, CostPart::Medium},
    PartOfTray{&TrayCost::seed, CostPart::Seed},
    PartOfTray{&TrayCost::light, CostPart::Light},
    PartOfTray{&TrayCost::packaging, CostPart::Packaging},
    PartOfTray{&TrayCost::water, CostPart::Water},
    PartOfTray{&TrayCost::nutrient, CostPart::Water},
    PartOfTray{&TrayCost::washing, CostPart::Washing},
    PartOfTray{&TrayCost::waste, CostPart::Waste},
};

bool isUnpriced(CostPart part, const std::vector<PriceItem>& unpriced)
{
    return std::any_of(unpriced.begin(), unpriced.end(), [part](PriceItem item) {
        return partOf(item) == part || (item == PriceItem::Labour && part == CostPart::Washing);
    });
}

} // namespace

const char* toText(CostPart part)
{
    switch (part) {
    case CostPart::Labour:
        return "labour";
    case CostPart::Medium:
        return "medium";
    case CostPart::Seed:
        return "seed";
    case CostPart::Light:
        return "light";
    case CostPart::Packaging:
        return "packaging";
    case CostPart::Water:
        return "nutrient_water";
    case CostPart::Washing:
        return "washing";
    case CostPart::Failed:
        return "failed";
    case CostPart::Waste:
        return "waste";
    }
    assert(false);
    return "";
}

CostPart partOf(PriceItem item)
{
    switch (item) {
    case PriceItem::Medium:
        return CostPart::Medium;
    case PriceItem::Concentrate:
    case PriceItem::Water:
        return CostPart::Water;
    case PriceItem::Electricity:
        return CostPart::Light;
    case PriceItem::Labour:
        return CostPart::Labour;
    case PriceItem::Packaging:
        return CostPart::Packaging;
    case PriceItem::Washing:
        return CostPart::Washing;
    case PriceItem::Waste:
        return CostPart::Waste;
    }
    assert(false);
    return CostPart::Labour;
}

std::optional<double> CostBreakdown::perGram() const
{
    double sum = 0;
    for (const CostShare& share : shares) {
        sum += share.perGram;
    }
    return sum > 0 ? std::optional(sum) : std::nullopt;
}

const CostShare* CostBreakdown::share(CostPart part) const
{
    const auto found = std::find_if(shares.begin(), shares.end(),
                                    [part](const CostShare& each) { return each.part == part; });
    return found == shares.end() ? nullptr : &*found;
}

void CostSums::addHarvested(const TrayCost& cost, double grams,
                            const std::vector<PriceItem>& unpriced)
{
    ++m_harvested;
    // Without a single price there is no cost, not a cost of 0.
    if (!(cost.total() > 0)) {
        return;
    }
    m_grams += grams;
    std::array<bool, kPartsOfCost.size()> isLacking = {};
    for (const auto& [field, part] : kPartsOfTray) {
        of(part).cost += (cost.*field).value_or(0);
        isLacking[static_cast<std::size_t>(part)] |= !(cost.*field);
    }
    for (const CostPart part : kPartsOfCost) {
        if (isLacking[static_cast<std::size_t>(part)]) {
            ++of(part).lacking;
            of(part).unpriced += isUnpriced(part, unpriced) ? 1 : 0;
        }
    }
}

void CostSums::addFailed(const TrayCost& cost, const std::vector<PriceItem>& unpriced)
{
    ++m_failed;
    Part& failed = of(CostPart::Failed);
    failed.cost += cost.total();
    failed.lacking += cost.unknownParts() > 0 ? 1 : 0;
    failed.unpriced += unpriced.empty() ? 0 : 1;
}

CostBreakdown CostSums::breakdown() const
{
    CostBreakdown answer;
    answer.harvested = m_harvested;
    answer.failed = m_failed;
    answer.grams = m_grams;
    answer.failedCost = m_parts[static_cast<std::size_t>(CostPart::Failed)].cost;
    if (m_grams > 0) {
        for (const CostPart part : kPartsOfCost) {
            const Part& sum = m_parts[static_cast<std::size_t>(part)];
            answer.shares.push_back({part, sum.cost / m_grams, sum.lacking, sum.unpriced});
        }
    }
    return answer;
}

std::vector<std::int64_t> roundedToSum(std::span<const double> values, double unit)
{
    std::vector<std::int64_t> rounded;
    std::vector<std::pair<double, std::size_t>> remainders;
    double sum = 0;
    for (const double value : values) {
        const double whole = std::floor(value / unit);
        remainders.emplace_back(value / unit - whole, rounded.size());
        rounded.push_back(static_cast<std::int64_t>(whole));
        sum += value / unit;
    }
    std::stable_sort(remainders.begin(), remainders.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::int64_t left =
        std::llround(sum) - std::accumulate(rounded.begin(), rounded.end(), std::int64_t{0});
    for (auto each = remainders.begin(); left > 0 && each != remainders.end(); ++each, --left) {
        ++rounded[each->second];
    }
    return rounded;
}

} // namespace plumule
