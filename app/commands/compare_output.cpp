#include "app/commands/compare_output.h"

#include "app/commands/compare_verdict.h"
#include "app/commands/table_input.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;
using stats::CompareNote;
using stats::CompareRequest;
using stats::TableComparison;

ordered_json jsonRow(const stats::AnovaRow& row)
{
    return {{"term", row.term},         {"df", jsonNumber(row.df)}, {"ss", jsonNumber(row.ss)},
            {"ms", jsonNumber(row.ms)}, {"f", jsonNumber(row.f)},   {"p", jsonNumber(row.p)}};
}

ordered_json jsonMeans(const TableComparison& comparison)
{
    ordered_json list = ordered_json::array();
    for (std::size_t i = 0; i < comparison.means.size(); ++i) {
        const stats::MarginalMean& mean = comparison.means[i];
        list.push_back(
            {{"level", mean.level},
             {"n", mean.n},
             {"mean", jsonNumber(mean.mean)},
             {"se", jsonNumber(mean.se)},
             {"df", jsonNumber(mean.df)},
             {"lower", jsonNumber(mean.lower)},
             {"upper", jsonNumber(mean.upper)},
             {"estimable", mean.estimable},
             {"letters", comparison.letters.empty() ? ordered_json(nullptr)
                                                    : ordered_json(comparison.letters[i])}});
    }
    return list;
}

ordered_json jsonRow(const stats::ComparedToControl& one)
{
    return {{"level", one.level},
            {"difference", jsonNumber(one.numbers.raw.estimate)},
            {"se", jsonNumber(one.numbers.raw.se)},
            {"t", jsonNumber(one.numbers.raw.t)},
            {"p_dunnett", jsonNumber(one.numbers.pDunnett)},
            {"lower", jsonNumber(one.numbers.lowerDunnett)},
            {"upper", jsonNumber(one.numbers.upperDunnett)}};
}

ordered_json jsonRow(const stats::ContrastTest& test)
{
    return {{"estimate", jsonNumber(test.estimate)},
            {"se", jsonNumber(test.se)},
            {"df", jsonNumber(test.df)},
            {"t", jsonNumber(test.t)},
            {"p", jsonNumber(test.p)},
            {"lower", jsonNumber(test.lower)},
            {"upper", jsonNumber(test.upper)}};
}

template <class Rows>
ordered_json jsonRows(const Rows& rows)
{
    ordered_json list = ordered_json::array();
    for (const auto& row : rows) {
        list.push_back(jsonRow(row));
    }
    return list;
}

ordered_json jsonPairs(const TableComparison& comparison, double level)
{
    ordered_json list = ordered_json::array();
    for (const stats::ComparedPair& pair : comparison.pairs) {
        const stats::ContrastTest& raw = pair.numbers.raw;
        list.push_back({{"a", pair.a},
                        {"b", pair.b},
                        {"difference", jsonNumber(raw.estimate)},
                        {"se", jsonNumber(raw.se)},
                        {"df", jsonNumber(raw.df)},
                        {"t", jsonNumber(raw.t)},
                        {"p", jsonNumber(raw.p)},
                        {"p_tukey", jsonNumber(pair.numbers.pTukey)},
                        {"p_holm", jsonNumber(pair.numbers.pHolm)},
                        {"lower", jsonNumber(pair.numbers.lowerTukey)},
                        {"upper", jsonNumber(pair.numbers.upperTukey)},
                        {"estimable", raw.estimable},
                        {"verdict", verdictKey(tableVerdict(pair, comparison, level))}});
    }
    return list;
}

ordered_json jsonRatio(const std::optional<stats::VarianceRatio>& test)
{
    if (!test) {
        return nullptr;
    }
    return {{"f", jsonNumber(test->f)},
            {"df1", jsonNumber(test->df1)},
            {"df2", jsonNumber(test->df2)},
            {"p", jsonNumber(test->p)}};
}

void putChecks(ordered_json& json, const TableComparison& comparison)
{
    json["welch"] = jsonRatio(comparison.welch);
    json["kruskal"] = comparison.kruskal ? ordered_json{{"h", jsonNumber(comparison.kruskal->h)},
                                                        {"df", comparison.kruskal->df},
                                                        {"p", jsonNumber(comparison.kruskal->p)}}
                                         : ordered_json(nullptr);
    json["spread_check"] = jsonRatio(comparison.spreadCheck);
    json["normality"] = comparison.normality
                            ? ordered_json{{"w", jsonNumber(comparison.normality->w)},
                                           {"p", jsonNumber(comparison.normality->p)}}
                            : ordered_json(nullptr);
}

void putRandom(ordered_json& json, const TableComparison& comparison)
{
    if (!comparison.random) {
        return;
    }
    json["random"] = {{"variance_group", jsonNumber(comparison.random->groups.front().variance)},
                      {"variance_residual", jsonNumber(comparison.random->varianceResidual)},
                      {"reml", jsonNumber(comparison.random->reml)},
                      {"singular", comparison.random->singular}};
    const auto& test = comparison.kenwardRoger;
    json["kenward_roger"] = test ? ordered_json{{"f", jsonNumber(test->f)},
                                                {"df1", jsonNumber(test->df1)},
                                                {"df2", jsonNumber(test->df2)},
                                                {"p", jsonNumber(test->p)}}
                                 : ordered_json(nullptr);
}

QString warningText(const stats::CompareWarning& warning)
{
    const QString subject = QString::fromStdString(warning.subject);
    const auto with = [&](const char* text) {
        return QString::fromLatin1(text)
            .replace("%1", QString::number(warning.count))
            .replace("%2", subject);
    };
    switch (warning.note) {
    case CompareNote::RowsWithoutResponse:
        return with("Rows without %2, left out: %1.");
    case CompareNote::RowsWithGaps:
        return with("Rows with an empty factor or covariate, left out: %1.");
    case CompareNote::MeanNotEstimable:
        return with("The mean of \"%2\" can't be told from these rows.");
    case CompareNote::PairNotEstimable:
        return with("\"%2\" can't be told from these rows: they never met under like conditions.");
    case CompareNote::ContrastNotEstimable:
        return with("Contrast %2 can't be told from these rows.");
    case CompareNote::TermWithoutDf:
        return with("Nothing of \"%2\" can be told apart from the other terms.");
    case CompareNote::TermPartlyEstimable:
        return with("\"%2\" is partly mixed up with the other terms (%1 df lost).");
    case CompareNote::RandomSingular:
        return with("The variance of \"%2\" came out as 0: its %1 levels differ no more than rows "
                    "of one level do.");
    case CompareNote::NoSpread:
        return with("The model fits \"%2\" without rest: there is no spread to test against.");
    case CompareNote::SingleRowLevels:
        return with("\"%2\" has one row only.");
    }
    return subject;
}

void printTerms(const TableComparison& comparison)
{
    print(comparison.random ? QStringLiteral("Terms, by Kenward and Roger:")
                            : QStringLiteral("Terms, each after all others (type III):"));
    for (const stats::AnovaRow& row : comparison.termsType3) {
        print(QStringLiteral("  %1: F %2 on %3 df, %4")
                  .arg(QString::fromStdString(row.term), shortNumber(row.f), shortNumber(row.df),
                       pText(row.p)));
    }
    print(QStringLiteral("  spread left over (sd) %1%2")
              .arg(shortNumber(comparison.residual.sd),
                   comparison.residual.df
                       ? QStringLiteral(" on %1 df").arg(shortNumber(comparison.residual.df))
                       : QString()));
}

void printMeans(const TableComparison& comparison, double level)
{
    print(QStringLiteral("Means, alike for all other terms (%1% interval)%2:")
              .arg(shortNumber(100 * level),
                   comparison.letters.empty()
                       ? QString()
                       : QStringLiteral("; those with a letter in common can't be told apart")));
    for (std::size_t i = 0; i < comparison.means.size(); ++i) {
        const stats::MarginalMean& mean = comparison.means[i];
        const QString name = QString::fromStdString(mean.level);
        if (!mean.estimable) {
            print(QStringLiteral("  %1: can't be told from these rows (%2)").arg(name).arg(mean.n));
            continue;
        }
        const QString letters = comparison.letters.empty()
                                    ? QString()
                                    : " " + QString::fromStdString(comparison.letters[i]);
        print(QStringLiteral("  %1: %2 (%3 to %4; %5 rows)%6")
                  .arg(name, shortNumber(mean.mean), shortNumber(mean.lower),
                       shortNumber(mean.upper), QString::number(mean.n), letters));
    }
}

void printPairs(const TableComparison& comparison, double level)
{
    print(QStringLiteral("Pairs (interval and p of all pairs together, Tukey):"));
    for (const stats::ComparedPair& pair : comparison.pairs) {
        const QString verdict = verdictWords(tableVerdict(pair, comparison, level));
        if (!pair.numbers.raw.estimable) {
            print(
                QStringLiteral("  %1 - %2: %3")
                    .arg(QString::fromStdString(pair.a), QString::fromStdString(pair.b), verdict));
            continue;
        }
        print(QStringLiteral("  %1 - %2: %3 (%4 to %5), %6: %7")
                  .arg(QString::fromStdString(pair.a), QString::fromStdString(pair.b),
                       shortNumber(pair.numbers.raw.estimate), shortNumber(pair.numbers.lowerTukey),
                       shortNumber(pair.numbers.upperTukey), pText(pair.numbers.pTukey), verdict));
    }
}

void printAsked(const TableComparison& comparison, const CompareRequest& request)
{
    for (const stats::ComparedToControl& one : comparison.againstControl) {
        print(QStringLiteral("Against %1: %2 %3 (%4 to %5), Dunnett %6")
                  .arg(QString::fromStdString(*request.control), QString::fromStdString(one.level),
                       shortNumber(one.numbers.raw.estimate), shortNumber(one.numbers.lowerDunnett),
                       shortNumber(one.numbers.upperDunnett), pText(one.numbers.pDunnett)));
    }
    int number = 0;
    for (const stats::ContrastTest& test : comparison.contrasts) {
        print(QStringLiteral("Contrast %1: %2 (%3 to %4), %5")
                  .arg(++number)
                  .arg(shortNumber(test.estimate), shortNumber(test.lower), shortNumber(test.upper),
                       pText(test.p)));
    }
}

void printChecks(const TableComparison& comparison)
{
    if (comparison.random) {
        print(QStringLiteral("Variance: %1 between groups, %2 left over")
                  .arg(shortNumber(comparison.random->groups.front().variance),
                       shortNumber(comparison.random->varianceResidual)));
    }
    if (comparison.spreadCheck) {
        print(QStringLiteral("Spreads alike? Brown-Forsythe %1")
                  .arg(pText(comparison.spreadCheck->p)));
    }
    if (comparison.normality) {
        print(QStringLiteral("Residuals odd? Shapiro-Wilk %1").arg(pText(comparison.normality->p)));
    }
    if (comparison.welch) {
        print(QStringLiteral("With unlike spreads, medium alone: Welch %1")
                  .arg(pText(comparison.welch->p)));
    }
    if (comparison.kruskal) {
        print(QStringLiteral("By ranks, medium alone: Kruskal-Wallis %1")
                  .arg(pText(comparison.kruskal->p)));
    }
}

} // namespace

ordered_json jsonOf(const TableComparison& comparison, const CompareRequest& request)
{
    ordered_json json;
    json["n"] = comparison.n;
    json["response"] = request.response;
    json["terms_type1"] = jsonRows(comparison.termsType1);
    json["terms_type2"] = jsonRows(comparison.termsType2);
    json["terms_type3"] = jsonRows(comparison.termsType3);
    json["residual"] = {{"df", jsonNumber(comparison.residual.df)},
                        {"ss", jsonNumber(comparison.residual.ss)},
                        {"sd", jsonNumber(comparison.residual.sd)}};
    json["r_squared"] = jsonNumber(comparison.rSquared);
    json["means"] = jsonMeans(comparison);
    json["pairs"] = jsonPairs(comparison, request.level);
    json["against_control"] = jsonRows(comparison.againstControl);
    json["contrasts"] = jsonRows(comparison.contrasts);
    putChecks(json, comparison);
    putRandom(json, comparison);
    json["warnings"] = ordered_json::array();
    for (const stats::CompareWarning& warning : comparison.warnings) {
        json["warnings"].push_back(warningText(warning).toStdString());
    }
    return json;
}

void printComparison(const TableComparison& comparison, const CompareRequest& request)
{
    print(QStringLiteral("%1 by %2: %3 rows")
              .arg(QString::fromStdString(request.response), QString::fromStdString(request.medium))
              .arg(comparison.n));
    printTerms(comparison);
    printMeans(comparison, request.level);
    printPairs(comparison, request.level);
    printAsked(comparison, request);
    printChecks(comparison);
    for (const stats::CompareWarning& warning : comparison.warnings) {
        // The lines above say these already.
        if (warning.note != CompareNote::MeanNotEstimable &&
            warning.note != CompareNote::PairNotEstimable) {
            print(QStringLiteral("Mind: ") + warningText(warning));
        }
    }
}

} // namespace plumule::app
