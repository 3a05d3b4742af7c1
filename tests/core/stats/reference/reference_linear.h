#pragma once

#include "core/stats/model/comparisons.h"
#include "tests/core/stats/reference/reference_cases.h"
#include "tests/support/told.h"

// What the handlers of linear and mixed models share.
namespace plumule::stats::reference {

// Response, fixed and random terms as a case's formula and R call write them.
struct Formula
{
    std::string response;
    bool logarithm = false;
    ModelDescription model;
};
[[nodiscard]] Formula formulaOf(const CaseCheck& check);

// The columns of the model from the case's file, factors unless listed as covariates; the response
// as its logarithm where the call says so.
[[nodiscard]] DataTable tableOf(const CaseCheck& check, const Formula& formula);

// Columns level, emmean, se, df, ci_lo, ci_hi under the pointer.
void checkMeans(CaseCheck& check, const std::string& pointer, const Estimator& fit,
                const std::string& focal, Tolerance tolerance);
// Columns i, j, diff, se, df, t, p_raw, p_tukey and whatever else of the known ones is there.
void checkPairs(CaseCheck& check, const std::string& pointer, const Estimator& fit,
                const std::string& focal, Tolerance tolerance, Tolerance adjusted);
// Fields weights, estimate, se, df, t, p, ci_lo, ci_hi.
void checkContrast(CaseCheck& check, const std::string& pointer, const Estimator& fit,
                   const std::string& focal, Tolerance tolerance);

template <class T>
[[nodiscard]] T granted(Result<T> result)
{
    if (!result) {
        throw std::runtime_error("refused: " + told(result.error()));
    }
    return std::move(*result);
}

} // namespace plumule::stats::reference
