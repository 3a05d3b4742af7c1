// Part of core/review/facts/season_facts.h: cost per gram over the uses of a piece.
#include "core/review/facts/season_facts.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr int kLeastUses = 20;
constexpr int kMostUses = 500;

// What a use of a piece adds, in currency units a tray.
struct PieceCosts
{
    double price = 0;
    double washing = 0;
    double other = 0; // seed, water, light, labour …
    double grams = 0; // per tray sown

    [[nodiscard]] double perGram(int uses) const
    {
        return (price + (washing + other) * uses) / (grams * uses);
    }
};

std::optional<PieceCosts> pieceCosts(const MediumSeason& season, const std::vector<Price>& prices,
                                     Date day)
{
    const auto price = priceOn(prices, PriceItem::Medium, day, season.medium.id);
    const TrayCost& mean = season.meanCost;
    // A curve that forgets the washing flatters the piece: then there is none.
    if (!season.medium.isReusable || !price || !mean.washing || season.yield.mean <= 0) {
        return std::nullopt;
    }
    PieceCosts costs;
    costs.price = *price;
    costs.washing = *mean.washing;
    costs.other = mean.total() - mean.medium.value_or(0) - costs.washing;
    costs.grams = season.yield.mean * season.yield.n / (season.yield.n + season.failed);
    return costs;
}

// What a single-use medium's gram costs; none where its own price is not known.
std::optional<double> flatLine(const MediumSeason& season)
{
    return season.medium.isReusable || !season.meanCost.medium ? std::nullopt : season.costPerGram;
}

std::optional<double> lowestFlatLine(const std::vector<MediumSeason>& media)
{
    std::optional<double> lowest;
    for (const MediumSeason& season : media) {
        const auto line = flatLine(season);
        if (line && (!lowest || *line < *lowest)) {
            lowest = line;
        }
    }
    return lowest;
}

void drawCurve(MediumSeason& season, const std::optional<PieceCosts>& piece, int uses)
{
    const auto line = flatLine(season);
    for (int n = 1; n <= uses; ++n) {
        if (piece) {
            season.costCurve.push_back({n, piece->perGram(n)});
        } else if (line) {
            season.costCurve.push_back({n, *line});
        }
    }
}

} // namespace

void addCostCurves(std::vector<MediumSeason>& media, const std::vector<Price>& prices, Date day)
{
    const auto line = lowestFlatLine(media);
    int uses = kLeastUses;
    std::vector<std::optional<PieceCosts>> pieces;
    for (MediumSeason& season : media) {
        const auto piece = pieceCosts(season, prices, day);
        if (piece && line) {
            season.paysBackAt =
                paybackUse(piece->price, *line * piece->grams - piece->other, piece->washing);
        }
        if (season.medium.isReusable) {
            uses = std::max(
                {uses, season.medium.plannedUses.value_or(0), season.paysBackAt.value_or(0)});
        }
        pieces.push_back(piece);
    }
    uses = std::min(uses, kMostUses);
    for (std::size_t i = 0; i < media.size(); ++i) {
        drawCurve(media[i], pieces[i], uses);
    }
}

} // namespace plumule
