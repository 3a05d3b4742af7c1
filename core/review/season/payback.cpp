#include "core/review/season/payback.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/verdict/payback_interval.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

constexpr double kUpperTail = 0.975;

const MediumSeason* cheapestSingleUse(const SeasonReview& review)
{
    const MediumSeason* cheapest = nullptr;
    for (const MediumSeason& season : review.media) {
        const bool hasLine =
            !season.medium.isReusable && season.meanCost.medium && season.costPerGram;
        if (hasLine && (cheapest == nullptr || *season.costPerGram < *cheapest->costPerGram)) {
            cheapest = &season;
        }
    }
    return cheapest;
}

// Of every tray sown, 0 for one that failed.
std::vector<double> gramsOf(const SeasonFacts& facts, const SeasonFilter& filter, MediumId medium)
{
    std::vector<double> grams;
    for (const SeasonRecord& record : facts.trays) {
        if (record.tray.medium != medium) {
            continue;
        }
        if (isCounted(record, filter)) {
            grams.push_back(inGrams(record.yield));
        } else if (hasFailed(record, filter)) {
            grams.push_back(0);
        }
    }
    return grams;
}

double meanOf(const std::vector<double>& values)
{
    return meanInterval(values).mean;
}

std::optional<int> wholeUse(std::optional<double> uses)
{
    return uses && *uses < 1e6
               ? std::optional(std::max(1, static_cast<int>(std::ceil(*uses * (1 - 1e-12)))))
               : std::nullopt;
}

// The bounds of 1/grams as factors, by the delta method on the log of the mean.
double spreadFactor(const std::vector<double>& grams)
{
    const MeanInterval mean = meanInterval(grams);
    if (!mean.sd || mean.mean <= 0) {
        return 1;
    }
    const double n = static_cast<double>(grams.size());
    return std::exp(stats::tQuantile(kUpperTail, n - 1) * *mean.sd / (std::sqrt(n) * mean.mean));
}

Payback paybackOfPiece(const SeasonFacts& facts, const SeasonReview& review,
                       const MediumSeason& season, const MediumSeason& against)
{
    const std::vector<double> reusable = gramsOf(facts, review.filter, season.medium.id);
    const std::vector<double> single = gramsOf(facts, review.filter, against.medium.id);
    stats::PaybackGround ground;
    ground.price =
        *priceOn(facts.cost.prices, PriceItem::Medium, review.filter.to, season.medium.id);
    // All that a use costs besides the piece.
    ground.washing = season.meanCost.total() - season.meanCost.medium.value_or(0);
    ground.singleUseCost = *against.costPerGram * meanOf(single);
    ground.reusableGrams = reusable;
    ground.singleUseGrams = single;
    const stats::PaybackInterval uses = stats::paybackIntervalOf(ground);
    Payback payback;
    payback.medium = season.medium;
    payback.against = against.medium;
    payback.at = season.paysBackAt;
    payback.hasBand = uses.hasBand;
    payback.low = wholeUse(uses.lower);
    payback.high = wholeUse(uses.upper);
    const double factor = uses.hasBand ? spreadFactor(reusable) : 1;
    for (const CostPoint& point : season.costCurve) {
        payback.curve.push_back({point.uses, point.costPerGram, point.costPerGram / factor,
                                 point.costPerGram * factor});
    }
    return payback;
}

// What the washing of its pieces lacks: its own price, or that of the work.
std::vector<MissingPrice> washingLacks(const SeasonFacts& facts, MediumId medium)
{
    const auto unpriced =
        std::find_if(facts.trays.begin(), facts.trays.end(), [&](const SeasonRecord& record) {
            return record.tray.medium == medium && !record.cost.washing;
        });
    if (unpriced == facts.trays.end()) {
        return {};
    }
    auto missing = missingPrices(unpriced->use, facts.cost);
    std::erase_if(missing, [](const MissingPrice& each) {
        return each.item != PriceItem::Washing && each.item != PriceItem::Labour;
    });
    // Where the minutes of it are not known either, no price alone would bring the cost about.
    const auto first = firstPriceDay(facts.cost.prices, PriceItem::Washing);
    if (missing.empty() && !first) {
        missing.push_back({PriceItem::Washing, first});
    }
    return missing;
}

std::vector<MissingPrice> pricesLacking(const SeasonFacts& facts, const MediumSeason& season,
                                        Date day)
{
    const std::vector<Price>& prices = facts.cost.prices;
    const MediumId id = season.medium.id;
    std::vector<MissingPrice> lacking;
    const bool isPriced = season.medium.isReusable
                              ? priceOn(prices, PriceItem::Medium, day, id).has_value()
                              : season.meanCost.medium.has_value();
    if (!isPriced) {
        lacking.push_back({PriceItem::Medium, firstPriceDay(prices, PriceItem::Medium, id)});
    }
    if (season.medium.isReusable && !season.meanCost.washing) {
        const auto washing = washingLacks(facts, id);
        lacking.insert(lacking.end(), washing.begin(), washing.end());
    }
    return lacking;
}

} // namespace

std::vector<Payback> paybackOf(const SeasonFacts& facts, const SeasonReview& review)
{
    std::vector<Payback> paybacks;
    const MediumSeason* against = cheapestSingleUse(review);
    for (const MediumSeason& season : review.media) {
        if (against != nullptr && season.medium.isReusable && !season.costCurve.empty()) {
            paybacks.push_back(paybackOfPiece(facts, review, season, *against));
        }
    }
    return paybacks;
}

std::vector<CurveLack> curveLacks(const SeasonFacts& facts, const SeasonReview& review)
{
    const bool canPayBack =
        std::any_of(review.media.begin(), review.media.end(), [](const MediumSeason& season) {
            return season.medium.isReusable && !season.trays.empty();
        });
    std::vector<CurveLack> lacks;
    for (const MediumSeason& season : review.media) {
        if (!canPayBack || season.trays.empty() || !season.costCurve.empty()) {
            continue;
        }
        CurveLack lack{season.medium, pricesLacking(facts, season, review.filter.to)};
        if (!lack.prices.empty()) {
            lacks.push_back(std::move(lack));
        }
    }
    return lacks;
}

} // namespace plumule
