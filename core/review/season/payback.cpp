#include "core/review/season/payback.h"

#include "core/stats/samples/bootstrap.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace plumule {
namespace {

constexpr std::size_t kPaybackResamples = 2000;
constexpr double kPaybackTail = 0.025;

// The parts of a cost that a use of a piece adds, besides its washing.
constexpr std::array kUseParts = {&TrayCost::seed,  &TrayCost::nutrient, &TrayCost::water,
                                  &TrayCost::light, &TrayCost::labour,   &TrayCost::packaging,
                                  &TrayCost::waste};

// What a use of a piece costs and gives, in one resample.
struct PieceUse
{
    double perUse = 0; // washing and all else but the piece
    double washing = 0;
    double grams = 0;

    [[nodiscard]] double perGram(double price, int uses) const
    {
        return (price / uses + perUse) / grams;
    }
};

// A medium's trays as columns of numbers, so that sums over drawn trays give its costs. A part of
// the cost is the mean over the trays of which it is known: a column of its amounts and one of ones
// and zeros; parts known of all trays are one column.
class TrayColumns
{
public:
    TrayColumns(const SeasonFacts& facts, const SeasonFilter& filter, MediumId medium)
    {
        std::vector<TrayCost> costs;
        m_columns.resize(kFirstPart);
        for (const SeasonRecord& record : facts.cut) {
            if (record.tray.medium != medium || !isCounted(record, filter)) {
                continue;
            }
            costs.push_back(record.cost);
            const double grams = inGrams(record.yield);
            const double total = costs.back().total();
            m_columns[kGrams].push_back(grams);
            m_columns[kTotal].push_back(total);
            m_columns[kPaidGrams].push_back(total > 0 ? grams : 0);
        }
        addPart(costs, {&TrayCost::washing});
        splitParts(costs);
    }

    [[nodiscard]] std::size_t trays() const { return m_columns[kGrams].size(); }
    [[nodiscard]] const std::vector<std::vector<double>>& columns() const { return m_columns; }

    [[nodiscard]] PieceUse pieceUse(const std::vector<double>& sums) const
    {
        PieceUse use;
        use.grams = sums[kGrams] / static_cast<double>(trays());
        for (std::size_t part = kFirstPart; part < sums.size(); part += 2) {
            const double mean = sums[part + 1] > 0 ? sums[part] / sums[part + 1] : 0;
            use.perUse += mean;
            use.washing += part == kFirstPart ? mean : 0;
        }
        return use;
    }
    static double costPerGram(const std::vector<double>& sums)
    {
        return sums[kTotal] / sums[kPaidGrams];
    }

private:
    static constexpr std::size_t kGrams = 0;
    static constexpr std::size_t kTotal = 1;
    static constexpr std::size_t kPaidGrams = 2;
    static constexpr std::size_t kFirstPart = 3; // the washing, then the others

    using PartOfCost = std::optional<double> TrayCost::*;

    void splitParts(const std::vector<TrayCost>& costs)
    {
        std::vector<PartOfCost> knownOfAll;
        for (const PartOfCost part : kUseParts) {
            const bool isOfAll = std::all_of(costs.begin(), costs.end(), [&](const TrayCost& cost) {
                return (cost.*part).has_value();
            });
            if (isOfAll) {
                knownOfAll.push_back(part);
            } else {
                addPart(costs, {part});
            }
        }
        addPart(costs, knownOfAll);
    }

    void addPart(const std::vector<TrayCost>& costs, const std::vector<PartOfCost>& parts)
    {
        std::vector<double>& amounts = m_columns.emplace_back();
        std::vector<double> known;
        for (const TrayCost& cost : costs) {
            double sum = 0;
            bool isKnown = false;
            for (const PartOfCost part : parts) {
                sum += (cost.*part).value_or(0);
                isKnown = isKnown || (cost.*part).has_value();
            }
            amounts.push_back(sum);
            known.push_back(isKnown ? 1 : 0);
        }
        m_columns.push_back(std::move(known));
    }

    std::vector<std::vector<double>> m_columns;
};

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

// The crossing uses of all resamples, "never" beyond them all.
void takeCrossings(Payback& payback, std::vector<std::optional<int>> uses)
{
    const auto isEarlier = [](const std::optional<int>& a, const std::optional<int>& b) {
        return a && (!b || *a < *b);
    };
    std::sort(uses.begin(), uses.end(), isEarlier);
    const double n = static_cast<double>(uses.size());
    const auto never = std::count(uses.begin(), uses.end(), std::nullopt);
    payback.neverShare = static_cast<double>(never) / n;
    payback.low = uses[static_cast<std::size_t>(std::floor(kPaybackTail * n))];
    payback.high = uses[static_cast<std::size_t>(std::ceil((1 - kPaybackTail) * n)) - 1];
}

CostBand bandAt(int uses, double cost, double price, const std::vector<PieceUse>& drawn)
{
    std::vector<double> costs;
    costs.reserve(drawn.size());
    for (const PieceUse& use : drawn) {
        costs.push_back(use.perGram(price, uses));
    }
    std::sort(costs.begin(), costs.end());
    return {uses, cost, stats::quantileOfSorted(costs, kPaybackTail),
            stats::quantileOfSorted(costs, 1 - kPaybackTail)};
}

class PaybackSums
{
public:
    PaybackSums(const SeasonFacts& facts, const SeasonReview& review, const Progress& progress)
        : m_facts(facts)
        , m_review(review)
        , m_progress(progress)
        , m_draw(kPaybackSeed)
    {}

    [[nodiscard]] Result<std::vector<Payback>> paybacks()
    {
        std::vector<Payback> answer;
        const MediumSeason* against = cheapestSingleUse(m_review);
        if (against == nullptr) {
            return answer;
        }
        std::vector<const MediumSeason*> pieces;
        for (const MediumSeason& season : m_review.media) {
            if (season.medium.isReusable && !season.costCurve.empty()) {
                pieces.push_back(&season);
            }
        }
        const double parts = 1 + static_cast<double>(pieces.size());
        if (const Done drawn = drawLine(*against, m_progress.part(0, 1 / parts)); !drawn) {
            return passOn(drawn);
        }
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            const double done = 1 + static_cast<double>(i);
            auto payback =
                paybackOfPiece(*pieces[i], m_progress.part(done / parts, (done + 1) / parts));
            if (!payback) {
                return passOn(payback);
            }
            payback->against = against->medium;
            answer.push_back(std::move(*payback));
        }
        return answer;
    }

private:
    // Cost per gram of the single-use medium, of each resample.
    [[nodiscard]] Done drawLine(const MediumSeason& against, const Progress& progress)
    {
        const TrayColumns columns(m_facts, m_review.filter, against.medium.id);
        const auto sums =
            stats::resampledSums(columns.columns(), kPaybackResamples, m_draw, progress);
        if (!sums) {
            return passOn(sums);
        }
        for (const auto& row : *sums) {
            m_lines.push_back(TrayColumns::costPerGram(row));
        }
        return {};
    }

    [[nodiscard]] Result<Payback> paybackOfPiece(const MediumSeason& season,
                                                 const Progress& progress)
    {
        const TrayColumns columns(m_facts, m_review.filter, season.medium.id);
        const auto sums =
            stats::resampledSums(columns.columns(), kPaybackResamples, m_draw, progress);
        if (!sums) {
            return passOn(sums);
        }
        const double price =
            *priceOn(m_facts.cost.prices, PriceItem::Medium, m_review.filter.to, season.medium.id);
        std::vector<PieceUse> drawn;
        std::vector<std::optional<int>> uses;
        for (std::size_t i = 0; i < sums->size(); ++i) {
            drawn.push_back(columns.pieceUse((*sums)[i]));
            const PieceUse& use = drawn.back();
            const double other = use.perUse - use.washing;
            // Trays without a yield, or a line without a price, are no way to pay anything back.
            uses.push_back(std::isfinite(m_lines[i])
                               ? paybackUse(price, m_lines[i] * use.grams - other, use.washing)
                               : std::nullopt);
        }
        Payback payback;
        payback.medium = season.medium;
        payback.at = season.paysBackAt;
        takeCrossings(payback, std::move(uses));
        std::erase_if(drawn, [](const PieceUse& use) { return use.grams <= 0; });
        for (const CostPoint& point : season.costCurve) {
            payback.curve.push_back(bandAt(point.uses, point.costPerGram, price, drawn));
        }
        return payback;
    }

    const SeasonFacts& m_facts;
    const SeasonReview& m_review;
    const Progress& m_progress;
    stats::SteadyDraw m_draw;
    std::vector<double> m_lines;
};

} // namespace

Result<std::vector<Payback>> paybackOf(const SeasonFacts& facts, const SeasonReview& review,
                                       const Progress& progress)
{
    return PaybackSums(facts, review, progress).paybacks();
}

} // namespace plumule
