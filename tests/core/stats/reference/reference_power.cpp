#include "core/stats/planning/power.h"
#include "core/stats/probability/distributions.h"
#include "core/stats/probability/studentized_range.h"
#include "core/stats/samples/samples.h"
#include "tests/core/stats/reference/reference_cases.h"

#include <cmath>
#include <fmt/format.h>
#include <sstream>

// Power and the bare distributions.
namespace plumule::stats::reference {

namespace {

void givenAll(CaseCheck& check, const std::string& under, std::initializer_list<const char*> names)
{
    for (const char* name : names) {
        check.given(under + "/" + name);
    }
}

// Rows of a two-sided test are the program's, of two media or, by the shift that is told, of pairs;
// the one-sided test is left to nobody.
struct TRow
{
    bool isOurs = false;
    bool isPaired = false;
    TPlan plan;
};

std::vector<TRow> tRows(CaseCheck& check, const std::string& under)
{
    const auto types = check.textsAt(under + "/type");
    const auto alternatives = check.textsAt(under + "/alternative");
    const auto sds = check.numbersAt(under + "/sd");
    const auto alphas = check.numbersAt(under + "/alpha");
    givenAll(check, under, {"type", "alternative", "sd", "alpha"});
    std::vector<TRow> rows;
    for (std::size_t r = 0; r < types.size(); ++r) {
        rows.push_back({alternatives[r] == "two.sided", types[r] == "paired", {sds[r], alphas[r]}});
    }
    return rows;
}

// The rows that `get` answers.
template <class Get>
void coverRowsOf(CaseCheck& check, const std::string& pointer, std::size_t rows,
                 Tolerance tolerance, const Get& get)
{
    check.given(pointer);
    for (std::size_t r = 0; r < rows; ++r) {
        if (const std::optional<double> got = get(r)) {
            check.number(pointer + "/" + std::to_string(r), got, tolerance);
        }
    }
}

void coverTPower(CaseCheck& check)
{
    const std::vector<TRow> rows = tRows(check, "/t_power");
    const auto n = check.numbersAt("/t_power/n");
    const auto delta = check.numbersAt("/t_power/delta");
    givenAll(check, "/t_power", {"n", "delta"});
    const auto powerOf = [&](std::size_t r) -> std::optional<double> {
        const TPlan& plan = rows[r].plan;
        if (!rows[r].isOurs) {
            return std::nullopt;
        }
        return rows[r].isPaired
                   ? tPowerOfShift(delta[r] / plan.sd * std::sqrt(n[r]), n[r] - 1, plan.alpha)
                         .value()
                   : tPower(plan, n[r], delta[r]).value();
    };
    coverRowsOf(check, "/t_power/power_strict_both_tails", rows.size(), check.tolerance(), powerOf);
    check.notOurs("/t_power/power_non_strict", "one tail only: less than the honest power");
}

void coverTCounts(CaseCheck& check)
{
    const std::vector<TRow> rows = tRows(check, "/t_sample_size");
    const auto delta = check.numbersAt("/t_sample_size/delta");
    const auto power = check.numbersAt("/t_sample_size/power");
    givenAll(check, "/t_sample_size", {"delta", "power"});
    // Counts are of trays of two media, never of pairs.
    const auto isCounted = [&](std::size_t r) { return rows[r].isOurs && !rows[r].isPaired; };
    coverRowsOf(check, "/t_sample_size/n_exact_per_group", rows.size(),
                check.tolerance("n_exact_per_group"), [&](std::size_t r) {
                    return isCounted(r)
                               ? std::optional(tCountFor(rows[r].plan, delta[r], power[r]).value())
                               : std::nullopt;
                });
    coverRowsOf(check, "/t_sample_size/n_ceiling", rows.size(), {}, [&](std::size_t r) {
        return isCounted(r)
                   ? std::optional<double>(tWholeCountFor(rows[r].plan, delta[r], power[r]).value())
                   : std::nullopt;
    });
}

void coverTDifferences(CaseCheck& check)
{
    const std::string under = "/t_min_detectable_difference";
    const std::vector<TRow> rows = tRows(check, under);
    const auto n = check.numbersAt(under + "/n");
    const auto power = check.numbersAt(under + "/power");
    givenAll(check, under, {"n", "power"});
    const auto smallestOf = [&](std::size_t r) -> std::optional<double> {
        const TPlan& plan = rows[r].plan;
        if (!rows[r].isOurs) {
            return std::nullopt;
        }
        return rows[r].isPaired
                   ? tShiftFor(power[r], n[r] - 1, plan.alpha).value() * plan.sd / std::sqrt(n[r])
                   : tSmallestDifference(plan, n[r], power[r]).value();
    };
    coverRowsOf(check, under + "/delta", rows.size(), check.tolerance("delta"), smallestOf);
}

void coverUnequal(CaseCheck& check)
{
    const std::string under = "/t_unequal_n";
    const auto n1 = check.numbersAt(under + "/n1");
    const auto n2 = check.numbersAt(under + "/n2");
    const auto delta = check.numbersAt(under + "/delta");
    const auto sd = check.numbersAt(under + "/sd");
    const auto alpha = check.numbersAt(under + "/alpha");
    givenAll(check, under, {"n1", "n2", "delta", "sd", "alpha"});
    std::vector<double> power;
    for (std::size_t r = 0; r < n1.size(); ++r) {
        const double shift = delta[r] / (sd[r] * std::sqrt(1 / n1[r] + 1 / n2[r]));
        power.push_back(tPowerOfShift(shift, n1[r] + n2[r] - 2, alpha[r]).value());
    }
    check.column(under + "/power_both_tails", power, check.tolerance());
}

void coverAnovaPower(CaseCheck& check)
{
    const std::string under = "/anova";
    const auto groups = check.numbersAt(under + "/groups");
    const auto n = check.numbersAt(under + "/n_per_group");
    const auto between = check.numbersAt(under + "/between_var");
    const auto within = check.numbersAt(under + "/within_var");
    const auto alpha = check.numbersAt(under + "/alpha");
    const auto target = check.numbersAt(under + "/target_power");
    givenAll(check, under,
             {"groups", "n_per_group", "between_var", "within_var", "alpha", "target_power"});
    std::vector<double> power;
    std::vector<double> exact;
    std::vector<double> whole;
    std::vector<double> smallest;
    for (std::size_t r = 0; r < groups.size(); ++r) {
        const FPlan plan{static_cast<int>(groups[r]), std::sqrt(within[r]), alpha[r],
                         FDesign::CompletelyRandom};
        power.push_back(fPowerForVariance(plan, n[r], between[r]).value());
        exact.push_back(fCountForVariance(plan, between[r], target[r]).value());
        whole.push_back(fWholeCountForVariance(plan, between[r], target[r]).value());
        smallest.push_back(fSmallestDifference(plan, n[r], target[r]).value());
    }
    check.column(under + "/power", power, check.tolerance());
    check.column(under + "/n_exact_for_target", exact, check.tolerance());
    check.column(under + "/n_ceiling", whole, {});
    check.column(under + "/min_detectable_max_difference", smallest, check.tolerance());
}

double varianceOf(const std::vector<double>& values)
{
    const double sd = *summarize(values).value().sd;
    return sd * sd;
}

void coverBlocks(CaseCheck& check)
{
    const std::string under = "/rcbd_anova";
    const auto treatments = check.numbersAt(under + "/treatments");
    const auto blocks = check.numbersAt(under + "/blocks");
    const auto effects = check.textsAt(under + "/treatment_effects");
    const auto sd = check.numbersAt(under + "/sd");
    const auto alpha = check.numbersAt(under + "/alpha");
    givenAll(check, under, {"treatments", "blocks", "treatment_effects", "sd", "alpha"});
    std::vector<double> power;
    for (std::size_t r = 0; r < treatments.size(); ++r) {
        std::vector<double> shifts;
        std::istringstream list(effects[r]);
        for (std::string one; std::getline(list, one, ';');) {
            shifts.push_back(std::stod(one));
        }
        const FPlan plan{static_cast<int>(treatments[r]), sd[r], alpha[r],
                         FDesign::RandomizedBlocks};
        power.push_back(fPowerForVariance(plan, blocks[r], varianceOf(shifts)).value());
    }
    check.column(under + "/power", power, check.tolerance());
}

void coverPower(CaseCheck& check)
{
    coverTPower(check);
    coverTCounts(check);
    coverTDifferences(check);
    coverUnequal(check);
    coverAnovaPower(check);
    coverBlocks(check);
}

template <class Function>
void coverRows(CaseCheck& check, const std::string& under,
               const std::vector<std::string>& arguments, const std::string& result,
               Tolerance tolerance, Function function)
{
    std::vector<std::vector<double>> columns;
    for (const std::string& name : arguments) {
        columns.push_back(check.numbersAt(under + "/" + name));
        check.given(under + "/" + name);
    }
    std::vector<double> got;
    for (std::size_t r = 0; r < columns.front().size(); ++r) {
        std::vector<double> row;
        for (const auto& column : columns) {
            row.push_back(column[r]);
        }
        got.push_back(function(row));
    }
    check.column(under + "/" + result, got, tolerance);
}

double dfCell(const std::string& cell)
{
    return cell == "Inf" ? kInfiniteDf : std::stod(cell);
}

// The tables beside the case: columns k, df, then q or p.
void coverRangeTable(CaseCheck& check, const std::string& name, const std::string& argument,
                     const std::string& result, Tolerance tolerance, bool quantile)
{
    const Table table(check.data().at(name));
    const auto groups = table.numbers("k");
    const auto dfs = table.texts("df");
    const auto arguments = table.numbers(argument);
    const auto expected = table.numbers(result);
    if (expected.size() < 100) {
        check.fault(name + ": the table is short");
    }
    for (std::size_t r = 0; r < expected.size(); ++r) {
        const int k = static_cast<int>(groups[r]);
        const double df = dfCell(dfs[r]);
        const double got = quantile ? studentizedRangeQuantile(arguments[r], k, df).value()
                                    : 1 - studentizedRangeUpper(arguments[r], k, df).value();
        if (!(std::abs(got - expected[r]) <=
              std::max(tolerance.abs, tolerance.rel * std::abs(expected[r])))) {
            check.fault(fmt::format("{} row {}: got {:.15g}, expected {:.15g}", name, r + 1, got,
                                    expected[r]));
        }
    }
}

void coverDistributions(CaseCheck& check)
{
    using Row = std::vector<double>;
    const Tolerance exact = check.tolerance();
    coverRows(check, "/t_quantiles", {"p", "df"}, "t", exact,
              [](const Row& a) { return tQuantile(a[0], a[1]); });
    coverRows(check, "/f_quantiles", {"p", "df1", "df2"}, "f", exact,
              [](const Row& a) { return fQuantile(a[0], a[1], a[2]); });
    coverRows(check, "/chisq_quantiles", {"p", "df"}, "chisq", exact,
              [](const Row& a) { return chiSquareQuantile(a[0], a[1]); });
    coverRows(check, "/normal_quantiles", {"p"}, "z", exact,
              [](const Row& a) { return normalQuantile(a[0]); });
    coverRows(check, "/noncentral_t_cdf", {"t", "df", "ncp"}, "cdf",
              check.tolerance("noncentral_t_cdf"),
              [](const Row& a) { return noncentralTCdf(a[0], a[1], a[2]); });
    // Tails are held to the relative tolerance alone: an absolute one would let any far tail pass.
    const Tolerance relative{exact.rel, 0};
    coverRows(check, "/t_upper_tails", {"t", "df"}, "p_upper", relative,
              [](const Row& a) { return tUpper(a[0], a[1]); });
    coverRows(check, "/f_upper_tails", {"f", "df1", "df2"}, "p_upper", relative,
              [](const Row& a) { return fUpper(a[0], a[1], a[2]); });
    check.notOurs("/f_upper_tails/log10_p_upper", "no p is told as its logarithm");
    coverRangeTable(check, "ptukey", "q", "cdf", check.tolerance("ptukey"), false);
    coverRangeTable(check, "qtukey", "p", "q", check.tolerance("qtukey"), true);
}

const Registered kPowerHandler{"power and sample size", coverPower};
const Registered kDistributionsHandler{"distribution functions", coverDistributions};

} // namespace

} // namespace plumule::stats::reference
