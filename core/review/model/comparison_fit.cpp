#include "core/review/model/comparison_fit.h"

#include "core/review/facts/review_reason.h"
#include "core/review/model/model_plan.h"
#include "core/stats/model/linear_model.h"
#include "core/stats/model/mixed_model.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <functional>
#include <numeric>

namespace plumule {
namespace {

bool hasRandom(const ModelPlan& plan)
{
    return std::any_of(plan.begin(), plan.end(),
                       [](const auto& entry) { return entry.second == TermPlace::Random; });
}

ModelPlan allFixed(ModelPlan plan)
{
    for (auto& [part, place] : plan) {
        place = place == TermPlace::Random ? TermPlace::Fixed : place;
    }
    return plan;
}

// A plan and what became of it.
struct Attempt
{
    ModelPlan plan;
    std::optional<stats::LinearModel> fixed;
    std::optional<stats::MixedModel> mixed;
    std::shared_ptr<const stats::Estimator> estimator;
    std::vector<stats::MarginalMean> means;
    // Pairs and means that can be told; pairs count more.
    std::pair<std::size_t, std::size_t> told;
};

std::size_t estimablePairs(const Attempt& attempt)
{
    std::size_t pairs = 0;
    for (std::size_t a = 0; a < attempt.means.size(); ++a) {
        for (std::size_t b = 0; b < a; ++b) {
            std::vector<double> weights = attempt.means[a].weights;
            std::transform(weights.begin(), weights.end(), attempt.means[b].weights.begin(),
                           weights.begin(), std::minus<>());
            pairs += attempt.estimator->isEstimable(weights) ? 1 : 0;
        }
    }
    return pairs;
}

Result<Attempt> finished(Attempt attempt)
{
    auto means = stats::marginalMeans(*attempt.estimator, column::kMedium);
    if (!means) {
        return passOn(means);
    }
    attempt.means = std::move(*means);
    const auto meansTold = std::count_if(attempt.means.begin(), attempt.means.end(),
                                         [](const auto& mean) { return mean.estimable; });
    attempt.told = {estimablePairs(attempt), static_cast<std::size_t>(meansTold)};
    return attempt;
}

Result<Attempt> tryFixed(const ComparisonColumns& columns, const ModelPlan& plan)
{
    const auto fit = stats::LinearModel::fit(columns.table, describe(plan));
    if (!fit) {
        return passOn(fit);
    }
    Attempt attempt;
    attempt.plan = plan;
    attempt.fixed = *fit;
    attempt.estimator = std::make_shared<stats::LinearModel>(*fit);
    return finished(std::move(attempt));
}

// Where the trials' spread can't be told from the rest, they are taken as fixed.
Result<Attempt> tryPlan(const ComparisonColumns& columns, const ModelPlan& plan)
{
    if (!hasRandom(plan)) {
        return tryFixed(columns, plan);
    }
    const auto fit = stats::MixedModel::fit(columns.table, describe(plan));
    if (!fit) {
        return tryFixed(columns, allFixed(plan));
    }
    Attempt attempt;
    attempt.plan = plan;
    attempt.mixed = *fit;
    attempt.estimator = fit->estimator();
    return finished(std::move(attempt));
}

// The parts that may be given up, in the order in which they are; fewer before more.
std::vector<ModelPlan> fallbacks(const ModelPlan& plan)
{
    constexpr std::array kGivenUp = {ModelPart::SeedDensity, ModelPart::Column, ModelPart::Feeding,
                                     ModelPart::Block};
    std::vector<ModelPart> parts;
    for (const ModelPart part : kGivenUp) {
        const auto found = plan.find(part);
        if (found != plan.end() && found->second != TermPlace::LeftOut) {
            parts.push_back(part);
        }
    }
    std::vector<unsigned> choices(std::size_t{1} << parts.size());
    std::iota(choices.begin(), choices.end(), 0U);
    std::stable_sort(choices.begin(), choices.end(),
                     [](unsigned a, unsigned b) { return std::popcount(a) < std::popcount(b); });
    std::vector<ModelPlan> plans;
    for (const unsigned choice : choices) {
        plans.push_back(plan);
        for (std::size_t i = 0; i < parts.size(); ++i) {
            if ((choice >> i & 1U) != 0) {
                plans.back()[parts[i]] = TermPlace::LeftOut;
            }
        }
    }
    return plans;
}

// The fullest plan under which the most pairs and means can be told.
Result<Attempt> bestAttempt(const ComparisonColumns& columns, const ModelPlan& plan)
{
    const auto media = static_cast<std::size_t>(levelsOf(columns, ModelPart::Medium));
    const std::pair all(media * (media - 1) / 2, media);
    Result<Attempt> best = fail(ErrorKind::TooFew, ReviewReason::TooFewTrays);
    for (const ModelPlan& candidate : fallbacks(plan)) {
        auto attempt = tryPlan(columns, candidate);
        if (attempt && (!best || attempt->told > best->told)) {
            best = std::move(attempt);
        }
        if (best && best->told == all) {
            break;
        }
    }
    return best;
}

void addFixedTests(std::vector<ModelTerm>& terms, const stats::LinearModel& fit)
{
    const auto rows = fit.anova(stats::SumOfSquares::TypeII);
    for (ModelTerm& term : terms) {
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const stats::AnovaRow& one) {
            return one.term == columnOf(term.part);
        });
        if (row != rows.end() && row->f) {
            term.f = row->f;
            term.p = row->p;
            term.df1 = row->df;
            term.df2 = fit.residualDf();
        }
    }
}

void addMixedTests(std::vector<ModelTerm>& terms, const stats::MixedModel& fit)
{
    for (ModelTerm& term : terms) {
        if (term.place != TermPlace::Fixed) {
            continue;
        }
        if (const auto test = fit.termTest(columnOf(term.part))) {
            term.f = test->f;
            term.p = test->p;
            term.df1 = test->df1;
            term.df2 = test->df2;
        }
    }
}

std::vector<ModelTerm> termsOf(const ComparisonColumns& columns, const ModelPlan& plan,
                               const std::map<ModelPart, WhyLeftOut>& leftOut)
{
    std::vector<ModelTerm> terms;
    for (const auto& [part, place] : plan) {
        ModelTerm term;
        term.part = part;
        term.place = place;
        term.levels = levelsOf(columns, part);
        if (place == TermPlace::LeftOut) {
            const auto why = leftOut.find(part);
            term.why = why == leftOut.end() ? WhyLeftOut::Confounded : why->second;
        }
        terms.push_back(term);
    }
    return terms;
}

void takeFixed(ComparisonFit& result, const stats::LinearModel& fit)
{
    addFixedTests(result.model.terms, fit);
    result.model.rSquared = fit.rSquared();
    result.sd = fit.residualSd();
    result.residualDf = fit.residualDf();
    result.hasNoSpread = fit.isPerfect();
    for (const stats::Influence& row : fit.influence()) {
        result.residuals.push_back(row.residual);
        result.studentized.push_back(row.external);
    }
}

void takeMixed(ComparisonFit& result, const stats::MixedModel& fit)
{
    addMixedTests(result.model.terms, fit);
    for (const stats::VarianceComponent& component : fit.components()) {
        if (component.group == column::kTrial) {
            result.model.trialSd = std::sqrt(component.variance);
            result.model.isTrialSpreadZero = component.singular;
        }
    }
    result.sd = std::sqrt(fit.residualVariance());
    result.hasNoSpread = result.sd <= 0;
    result.residuals = fit.residuals();
}

} // namespace

Result<ComparisonFit> fitComparison(const ComparisonColumns& columns)
{
    if (levelsOf(columns, ModelPart::Medium) < 2) {
        return fail(ErrorKind::TooFew, ReviewReason::TooFewMedia);
    }
    const PlannedModel planned = planModel(columns);
    auto attempt = bestAttempt(columns, planned.plan);
    if (!attempt) {
        return passOn(attempt);
    }
    ComparisonFit result;
    result.model.terms = termsOf(columns, attempt->plan, planned.leftOut);
    result.model.block = columns.blockKind;
    result.model.trials = columns.trials;
    result.estimator = attempt->estimator;
    result.means = std::move(attempt->means);
    if (attempt->fixed) {
        takeFixed(result, *attempt->fixed);
    } else {
        takeMixed(result, *attempt->mixed);
    }
    return result;
}

} // namespace plumule
