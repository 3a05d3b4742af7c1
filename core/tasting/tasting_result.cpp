#include "core/tasting/tasting_result.h"

#include "core/stats/probability/distributions.h"
#include "core/tasting/tasting_draw.h"
#include "core/tasting/tasting_reason.h"
#include "core/tasting/tasting_rules.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace plumule {
namespace {

constexpr double kTastingAlpha = 0.05;
constexpr double kTastingPower = 0.8;
constexpr int kMostTastersWanted = 500;
constexpr double kByGuess = 1.0 / 3.0;
// What a household has (common practice, no source).
constexpr int kFewTasters = 8;
// Claims about consumers want 50 to 100 tasters (Mammasse and Schlich 2014, Food Quality and
// Preference; read in its abstract).
constexpr int kTastersForBuyers = 50;

// What each taster gave the samples by position, none where a score is missing.
std::vector<std::vector<std::optional<int>>> valuesBySample(const PanelRecord& record,
                                                            PanelAttributeId attribute)
{
    std::vector<std::vector<std::optional<int>>> rows;
    for (const Taster& taster : record.tasters) {
        std::vector<std::optional<int>> row(record.samples.size());
        for (const Serving& serving : servingsOf(record, taster.id)) {
            const Score* score = scoreOf(record, serving.id, attribute);
            for (std::size_t sample = 0; sample < record.samples.size(); ++sample) {
                if (score != nullptr && record.samples[sample].id == serving.sample) {
                    row[sample] = score->value;
                }
            }
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<std::vector<double>>
completeBlocks(const std::vector<std::vector<std::optional<int>>>& rows)
{
    std::vector<std::vector<double>> blocks;
    for (const auto& row : rows) {
        if (std::all_of(row.begin(), row.end(), [](const auto& value) { return value; })) {
            std::vector<double> block;
            std::transform(row.begin(), row.end(), std::back_inserter(block),
                           [](const auto& value) { return double(*value); });
            blocks.push_back(std::move(block));
        }
    }
    return blocks;
}

double medianOf(std::vector<double> values)
{
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

SampleScores scoresOf(const Medium& medium, const std::vector<std::vector<double>>& blocks,
                      std::size_t sample)
{
    std::vector<double> values;
    values.reserve(blocks.size());
    for (const auto& block : blocks) {
        values.push_back(block[sample]);
    }
    const double sum = std::accumulate(values.begin(), values.end(), 0.0);
    return {medium, sum / static_cast<double>(values.size()), medianOf(values), 0};
}

std::optional<int> tastersToShow(const stats::Friedman& friedman, int tasters)
{
    const double n = tasters;
    const double correlation = (n * friedman.kendallW - 1) / (n - 1);
    if (correlation <= 0) {
        return std::nullopt;
    }
    const double needed = stats::chiSquareQuantile(1 - kTastingAlpha, friedman.df) / friedman.df;
    const double wanted = std::max(n + 1, std::ceil(1 + (needed - 1) / correlation));
    return wanted <= kMostTastersWanted ? std::optional(static_cast<int>(wanted)) : std::nullopt;
}

AttributeResult resultOf(const PanelAttribute& attribute, const std::vector<Medium>& media,
                         const std::vector<std::vector<double>>& blocks)
{
    AttributeResult result;
    result.attribute = attribute;
    result.tasters = static_cast<int>(blocks.size());
    for (std::size_t sample = 0; !blocks.empty() && sample < media.size(); ++sample) {
        result.samples.push_back(scoresOf(media[sample], blocks, sample));
    }
    const auto friedman = stats::friedman(blocks);
    if (!friedman) {
        result.noTest = friedman.error();
        return result;
    }
    result.friedman = *friedman;
    for (std::size_t sample = 0; sample < media.size(); ++sample) {
        result.samples[sample].rankSum = friedman->rankSums[sample];
    }
    result.pairs = stats::nemenyi(blocks).value_or(std::vector<stats::NemenyiPair>());
    if (const auto least = stats::rankSumCriticalDifference(
            result.tasters, static_cast<int>(media.size()), kTastingAlpha)) {
        result.criticalDifference = *least;
    }
    if (!result.isShown()) {
        result.tastersWanted = tastersToShow(*friedman, result.tasters);
    }
    return result;
}

ChartSeries markedSeries(const Medium& medium, SeriesForm form)
{
    ChartSeries series;
    series.name = medium.name;
    series.marker = medium.marker;
    series.form = form;
    return series;
}

ChartSpec ratingsChart(const PanelRecord& record, const AttributeResult& result,
                       const std::vector<Medium>& media,
                       const std::vector<std::vector<std::optional<int>>>& rows)
{
    const bool isRanking = record.panel.method == TastingMethod::Ranking;
    ChartSpec spec;
    spec.key = "ratings_by_medium";
    spec.form = ChartForm::DotRows;
    spec.x.key = isRanking ? "rank" : "score";
    spec.x.low = 1.0;
    spec.x.high = isRanking ? static_cast<double>(media.size()) : 9.0;
    spec.x.isWhole = true;
    for (const std::size_t sample : bestFirst(result, record.panel.method)) {
        const double row = static_cast<double>(spec.rows.size());
        spec.rows.push_back(media[sample].name);
        ChartSeries dots = markedSeries(media[sample], SeriesForm::Dots);
        for (std::size_t taster = 0; taster < rows.size(); ++taster) {
            if (const auto& value = rows[taster][sample]) {
                const bool isCounted = std::all_of(rows[taster].begin(), rows[taster].end(),
                                                   [](const auto& each) { return each; });
                dots.points.push_back(
                    {row, double(*value), record.tasters[taster].name, std::nullopt, !isCounted});
            }
        }
        spec.series.push_back(std::move(dots));
        ChartSeries mean = markedSeries(media[sample], SeriesForm::Intervals);
        const double mid = result.samples[sample].mean;
        mean.intervals.push_back({row, mid, mid, mid});
        spec.series.push_back(std::move(mean));
    }
    return spec;
}

Result<TriangleResult> triangleResult(const PanelRecord& record)
{
    int answered = 0;
    int right = 0;
    for (const Taster& taster : record.tasters) {
        const auto servings = servingsOf(record, taster.id);
        for (const Serving& serving : servings) {
            if (scoreOf(record, serving.id, record.attributes.front().id) == nullptr) {
                continue;
            }
            const auto alike =
                std::count_if(servings.begin(), servings.end(),
                              [&](const Serving& each) { return each.sample == serving.sample; });
            ++answered;
            right += alike == 1 ? 1 : 0;
        }
    }
    const auto test = stats::triangleTest(answered, right);
    if (!test) {
        return fail(ErrorKind::TooFew, TastingReason::NoScores);
    }
    TriangleResult result;
    result.test = *test;
    result.fewestRight = stats::fewestRight(answered, kByGuess, kTastingAlpha);
    if (!result.isShown()) {
        result.tastersWanted = triangleTastersFor(test->discriminators);
    }
    return result;
}

TastingCaveat caveat(TastingCaveatKind kind, int count, int limit = 0)
{
    TastingCaveat made;
    made.kind = kind;
    made.count = count;
    made.limit = limit;
    return made;
}

TastingCaveat fewCaveat(const TastingResult& result, int counted)
{
    TastingCaveat few = caveat(TastingCaveatKind::FewTasters, counted);
    if (result.triangle) {
        few.limit = result.triangle->fewestRight.value_or(0);
        few.most = counted;
        return few;
    }
    const int samples = static_cast<int>(result.media.size());
    few.most = counted * (samples - 1);
    const auto least = stats::rankSumCriticalDifference(counted, samples, kTastingAlpha);
    few.limit = least && *least <= few.most ? *least : 0;
    return few;
}

std::vector<std::string> incompleteTasters(const PanelRecord& record)
{
    std::vector<std::string> names;
    for (const MissingScores& missing : missingScores(record)) {
        if (names.empty() || names.back() != missing.taster.name) {
            names.push_back(missing.taster.name);
        }
    }
    return names;
}

int tastersCounted(const TastingResult& result)
{
    if (result.triangle) {
        return result.triangle->test.n;
    }
    int counted = result.tasters;
    for (const AttributeResult& attribute : result.attributes) {
        counted = std::min(counted, attribute.tasters);
    }
    return counted;
}

std::vector<TastingCaveat> caveatsOf(const PanelRecord& record, const TastingResult& result)
{
    std::vector<TastingCaveat> caveats;
    if (auto names = incompleteTasters(record); !names.empty()) {
        caveats.push_back(caveat(TastingCaveatKind::Incomplete, static_cast<int>(names.size())));
        caveats.back().names = std::move(names);
    }
    const int counted = tastersCounted(result);
    if (counted <= kFewTasters && counted > 0) {
        caveats.push_back(fewCaveat(result, counted));
    }
    const auto tested =
        std::count_if(result.attributes.begin(), result.attributes.end(),
                      [](const AttributeResult& each) { return each.friedman.has_value(); });
    if (tested > 1) {
        caveats.push_back(caveat(TastingCaveatKind::ManyAttributes, static_cast<int>(tested)));
        caveats.back().level = kTastingAlpha / static_cast<double>(tested);
    }
    const int rows = balancedTasters(record.panel.method, static_cast<int>(record.samples.size()));
    if (counted % rows != 0) {
        caveats.push_back(caveat(TastingCaveatKind::OrderUnbalanced, counted, rows));
    }
    caveats.push_back(caveat(TastingCaveatKind::OneSampleEach, 0));
    if (counted < kTastersForBuyers) {
        caveats.push_back(caveat(TastingCaveatKind::NotBuyers, counted, kTastersForBuyers));
    }
    return caveats;
}

} // namespace

double AttributeResult::p() const
{
    return friedman ? friedman->pExact.value_or(friedman->p) : 1;
}

std::optional<int> triangleTastersFor(double discriminators)
{
    const double right = kByGuess + (1 - kByGuess) * discriminators;
    if (discriminators <= 0 || right >= 1) {
        // Where all tell, the fewest with whom guessing is ruled out.
        return discriminators <= 0 ? std::nullopt : std::optional(3);
    }
    for (int tasters = 1; tasters <= kMostTastersWanted; ++tasters) {
        const auto fewest = stats::fewestRight(tasters, kByGuess, kTastingAlpha);
        if (fewest && stats::atLeastByChance(tasters, *fewest, right) >= kTastingPower) {
            return tasters;
        }
    }
    return std::nullopt;
}

std::vector<std::size_t> bestFirst(const AttributeResult& result, TastingMethod method)
{
    std::vector<std::size_t> order(result.samples.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const double sign = method == TastingMethod::Ranking ? 1 : -1;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const SampleScores& left = result.samples[a];
        const SampleScores& right = result.samples[b];
        return std::pair(sign * left.mean, sign * left.rankSum) <
               std::pair(sign * right.mean, sign * right.rankSum);
    });
    return order;
}

Result<TastingResult> tastingResult(const PanelRecord& record, const std::vector<Medium>& media)
{
    if (record.panel.isOpen()) {
        return fail(ErrorKind::Conflict, TastingReason::Open, record.panel.name);
    }
    TastingResult result;
    result.panel = record.panel;
    result.media = media;
    result.tasters = static_cast<int>(record.tasters.size());
    if (record.panel.method == TastingMethod::Triangle) {
        const auto triangle = triangleResult(record);
        if (!triangle) {
            return passOn(triangle);
        }
        result.triangle = *triangle;
    } else {
        for (const PanelAttribute& attribute : record.attributes) {
            const auto rows = valuesBySample(record, attribute.id);
            result.attributes.push_back(resultOf(attribute, media, completeBlocks(rows)));
            result.charts.push_back(ratingsChart(record, result.attributes.back(), media, rows));
        }
    }
    result.caveats = caveatsOf(record, result);
    return result;
}

} // namespace plumule
