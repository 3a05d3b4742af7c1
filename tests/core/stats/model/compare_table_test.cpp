#include "core/stats/model/compare_table.h"

#include "tests/core/stats/reference/reference_linear.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule::stats {

namespace {

using reference::granted;
using reference::references;
using testing::Contains;

DataTable tableFor(const std::string& file, const CompareRequest& request)
{
    const reference::Table read(file);
    std::vector<std::string> header{request.response, request.medium};
    header.insert(header.end(), request.factors.begin(), request.factors.end());
    header.insert(header.end(), request.covariates.begin(), request.covariates.end());
    for (const TermColumns& columns : request.random) {
        header.insert(header.end(), columns.begin(), columns.end());
    }
    std::vector<std::vector<std::string>> rows(read.rows());
    for (const std::string& name : header) {
        const auto cells = read.texts(name);
        for (std::size_t row = 0; row < rows.size(); ++row) {
            rows[row].push_back(cells[row]);
        }
    }
    return granted(tableForRequest(header, rows, request));
}

TableComparison compared(const std::string& file, const CompareRequest& request)
{
    return granted(compareTable(tableFor(file, request), request));
}

const nlohmann::json& expectedOf(const std::string& id)
{
    for (const auto& testCase : references().at("cases")) {
        if (testCase.at("id") == id) {
            return testCase.at("expected");
        }
    }
    throw std::runtime_error("no case " + id);
}

CompareRequest plantWeights()
{
    CompareRequest request;
    request.response = "weight";
    request.medium = "group";
    return request;
}

DataTable smallTable(const std::vector<std::optional<double>>& y)
{
    DataTable table;
    EXPECT_TRUE(table.addFactor("medium", {"mat", "mat", "mix", "mix", "jute", "jute"}));
    EXPECT_TRUE(table.addFactor("shelf", {"1", "2", "1", "2", "1", ""}));
    EXPECT_TRUE(table.addNumbers("y", y));
    return table;
}

CompareRequest smallRequest()
{
    CompareRequest request;
    request.response = "y";
    request.medium = "medium";
    return request;
}

} // namespace

// Plant weights of Dobson 1983, table 7.1: F 4.846, p 0.0159; trt2 - trt1 0.865, Tukey p 0.0120.
TEST(CompareTable, AgreesWithThePlantWeights)
{
    CompareRequest request = plantWeights();
    request.control = "ctrl";
    request.margin = 1.0;
    request.contrasts = {{{"trt1", 0.5}, {"trt2", 0.5}, {"ctrl", -1}}};
    const TableComparison result = compared("plantgrowth.csv", request);
    EXPECT_EQ(result.n, 30U);
    EXPECT_NEAR(*result.termsType1[0].f, 4.846, 0.0005);
    EXPECT_NEAR(*result.termsType3[0].p, 0.0159, 0.00005);
    const ComparedPair& last = result.pairs.back();
    EXPECT_EQ(last.a + " - " + last.b, "trt2 - trt1");
    EXPECT_NEAR(*last.numbers.raw.estimate, 0.865, 1e-9);
    EXPECT_NEAR(*last.numbers.pTukey, 0.0120, 0.00005);
    EXPECT_TRUE(last.pEquivalence.has_value());
    ASSERT_EQ(result.againstControl.size(), 2U);
    EXPECT_EQ(result.againstControl[1].level, "trt2");
    EXPECT_NEAR(*result.contrasts[0].estimate, 0.0615, 1e-9);
    EXPECT_TRUE(result.warnings.empty());
    // Only trt1 and trt2 differ.
    EXPECT_EQ(result.letters, (std::vector<std::string>{"ab", "b", "a"}));
}

TEST(CompareTable, LooksAtTheGroupsAndTheResiduals)
{
    const TableComparison result = compared("plantgrowth.csv", plantWeights());
    const auto& expected = expectedOf("plantgrowth_oneway");
    ASSERT_TRUE(result.welch && result.kruskal && result.spreadCheck && result.normality);
    EXPECT_NEAR(result.welch->p, expected.at("welch_anova").at("p").get<double>(), 1e-9);
    EXPECT_NEAR(result.kruskal->p, expected.at("kruskal").at("p").get<double>(), 1e-9);
    EXPECT_NEAR(result.spreadCheck->p, expected.at("brown_forsythe_median").at("p").get<double>(),
                1e-9);
    EXPECT_NEAR(result.normality->w, expected.at("shapiro_residuals").at("W").get<double>(), 1e-6);
}

TEST(CompareTable, TakesTheMediumWhereItStandsAmongTheFactors)
{
    CompareRequest request;
    request.response = "yield";
    request.medium = "N";
    request.factors = {"block", "N", "P", "K"};
    const auto& expected = expectedOf("npk_unbal").at("anova_type1").at("ss");
    const TableComparison placed = compared("npk_unbal.csv", request);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(*placed.termsType1[i].ss, expected[i].get<double>(), 1e-6);
    }
    request.factors = {"block", "P", "K"};
    const TableComparison first = compared("npk_unbal.csv", request);
    EXPECT_EQ(first.termsType1[0].term, "N");
    EXPECT_NE(*first.termsType1[0].ss, *placed.termsType1[1].ss);
    EXPECT_NEAR(*first.termsType2[0].ss, *placed.termsType2[1].ss, 1e-9);
}

TEST(CompareTable, TakesTheTermsInTheOrderAskedFor)
{
    CompareRequest request;
    request.response = "yield";
    request.medium = "N";
    request.factors = {"P", "K", "block"};
    request.order = {"block", "N", "P", "K"};
    const auto& expected = expectedOf("npk_unbal").at("anova_type1").at("ss");
    const TableComparison result = compared("npk_unbal.csv", request);
    ASSERT_EQ(result.termsType1.size(), 4U);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_EQ(result.termsType1[i].term, request.order[i]);
        EXPECT_NEAR(*result.termsType1[i].ss, expected[i].get<double>(), 1e-6);
    }
}

TEST(CompareTable, TestsByKenwardRogerWithARandomColumn)
{
    CompareRequest request;
    request.response = "yield_g";
    request.medium = "medium";
    request.factors = {"variety"};
    request.random = {{"trial"}};
    const TableComparison result = compared("sim_trials_a.csv", request);
    const auto& expected = expectedOf("sim_a_lmm_variety");
    const auto& test = expected.at("F_focal_kenward_roger");
    EXPECT_NEAR(result.kenwardRoger->f, test.at("F").get<double>(), 1e-4);
    EXPECT_NEAR(result.kenwardRoger->df2, test.at("df2").get<double>(), 1e-3);
    EXPECT_EQ(*result.termsType3[0].f, result.kenwardRoger->f);
    EXPECT_FALSE(result.termsType3[0].ss.has_value());
    EXPECT_TRUE(result.termsType1.empty());
    EXPECT_NEAR(result.random->groups[0].variance, expected.at("var_group").get<double>(), 1e-4);
    EXPECT_FALSE(result.random->singular);
    EXPECT_TRUE(result.normality.has_value());
    EXPECT_FALSE(result.residual.df.has_value());
}

TEST(CompareTable, WarnsOfATrialVarianceOfZero)
{
    CompareRequest request;
    request.response = "yield_g";
    request.medium = "medium";
    request.random = {{"trial"}};
    const TableComparison result = compared("sim_singular_a.csv", request);
    EXPECT_TRUE(result.random->singular);
    EXPECT_THAT(result.warnings, Contains(CompareWarning{CompareNote::RandomSingular, "trial", 5}));
    EXPECT_NEAR(*result.means[0].se, 3.63053511003, 1e-9);
}

TEST(CompareTable, NamesEveryPairThatCannotBeTold)
{
    CompareRequest request;
    request.response = "yield_g";
    request.medium = "medium";
    request.factors = {"trial"};
    request.control = "D";
    request.contrasts = {{{"A", 1}, {"B", -1}}, {{"A", 1}, {"D", -1}}};
    const TableComparison result = compared("sim_confounded_a.csv", request);
    EXPECT_THAT(result.warnings,
                Contains(CompareWarning{CompareNote::PairNotEstimable, "D - A", 1}));
    EXPECT_THAT(result.warnings, Contains(CompareWarning{CompareNote::MeanNotEstimable, "B", 1}));
    EXPECT_THAT(result.warnings,
                Contains(CompareWarning{CompareNote::ContrastNotEstimable, "2", 1}));
    EXPECT_THAT(result.warnings,
                Contains(CompareWarning{CompareNote::TermPartlyEstimable, "medium", 1}));
    EXPECT_NEAR(*result.contrasts[0].estimate, 1.1, 1e-9);
    for (const ComparedToControl& one : result.againstControl) {
        EXPECT_FALSE(one.numbers.pDunnett.has_value());
    }
    EXPECT_TRUE(result.letters.empty());
}

TEST(CompareTable, CountsTheRowsItLeavesOut)
{
    DataTable table;
    ASSERT_TRUE(table.addFactor("medium", {"mat", "mat", "mix", "mix", "jute", "jute", "mat"}));
    ASSERT_TRUE(table.addFactor("shelf", {"1", "2", "1", "2", "1", "", "1"}));
    ASSERT_TRUE(table.addNumbers("y", {1.0, 2.5, 3.0, std::nullopt, 5.5, 6.0, 1.4}));
    CompareRequest request = smallRequest();
    request.factors = {"shelf"};
    const TableComparison result = granted(compareTable(table, request));
    EXPECT_EQ(result.n, 5U);
    EXPECT_THAT(result.warnings,
                Contains(CompareWarning{CompareNote::RowsWithoutResponse, "y", 1}));
    EXPECT_THAT(result.warnings, Contains(CompareWarning{CompareNote::RowsWithGaps, "", 1}));
    EXPECT_THAT(result.warnings, Contains(CompareWarning{CompareNote::SingleRowLevels, "jute", 1}));
    EXPECT_FALSE(result.welch.has_value());
}

TEST(CompareTable, MakesNoTestWithoutSpread)
{
    const TableComparison result =
        granted(compareTable(smallTable({1.0, 1.0, 2.0, 2.0, 4.0, 4.0}), smallRequest()));
    EXPECT_THAT(result.warnings, Contains(CompareWarning{CompareNote::NoSpread, "y", 1}));
    EXPECT_FALSE(result.termsType1[0].p.has_value());
    EXPECT_FALSE(result.pairs[0].numbers.pTukey.has_value());
    EXPECT_TRUE(result.letters.empty());
    EXPECT_FALSE(result.normality.has_value());
    EXPECT_NEAR(*result.means[2].mean, 4, 1e-12);
}

TEST(CompareTable, RefusesWhatTheTableDoesNotHold)
{
    const DataTable table = smallTable({1.0, 1.5, 2.0, 2.5, 4.0, 4.2});
    const auto errorOf = [&](auto change) {
        CompareRequest request = smallRequest();
        change(request);
        return compareTable(table, request).error();
    };
    EXPECT_EQ(errorOf([](auto& r) { r.response = "z"; }),
              fail(ErrorKind::NotFound, ModelReason::ColumnUnknown, "z").value());
    EXPECT_EQ(errorOf([](auto& r) { r.medium = "y"; }),
              fail(ErrorKind::NotFound, ModelReason::ColumnUnknown, "y").value());
    EXPECT_EQ(errorOf([](auto& r) { r.control = "peat"; }),
              fail(ErrorKind::NotFound, ModelReason::LevelUnknown, "peat", "medium").value());
    EXPECT_EQ(errorOf([](auto& r) {
                  r.contrasts = {{{"peat", 1}}};
              }),
              fail(ErrorKind::NotFound, ModelReason::LevelUnknown, "peat", "medium").value());
    EXPECT_EQ(errorOf([](auto& r) { r.contrasts = {{{"mat", 1}}}; }).kind, ErrorKind::Invalid);
    EXPECT_TRUE(errorOf([](auto& r) { r.level = 95; }).is(ModelReason::ConfidenceLevel));
    EXPECT_TRUE(errorOf([](auto& r) { r.margin = -1; }).is(ModelReason::Margin));
    EXPECT_EQ(errorOf([](auto& r) { r.random = {{"medium"}}; }).kind, ErrorKind::Duplicate);
    EXPECT_EQ(errorOf([](auto& r) { r.factors = {"shelf", "shelf"}; }).kind, ErrorKind::Duplicate);
    EXPECT_EQ(compareTable(table.withRows({0, 1}), smallRequest()).error(),
              fail(ErrorKind::TooFew, ModelReason::OneLevel, "medium").value());
}

TEST(TableForRequest, ReadsOnlyWhatIsAskedFor)
{
    CompareRequest request = smallRequest();
    request.covariates = {"seed"};
    const std::vector<std::string> header{"note", "y", "medium", "seed"};
    const auto table =
        tableForRequest(header, {{"damp", "1.5", "7", "20"}, {"", "", "8", "21"}}, request);
    ASSERT_TRUE(table);
    EXPECT_EQ(table->factor("medium")->levels, (std::vector<std::string>{"7", "8"}));
    EXPECT_FALSE(table->numbers("y")->values[1].has_value());
    EXPECT_EQ(table->numbers("note"), nullptr);
}

TEST(TableForRequest, NamesTheRowAtFault)
{
    const auto inRow = [](int row, Error error) {
        error.row = RowAt{"", row};
        return error;
    };
    const CompareRequest request = smallRequest();
    const std::vector<std::string> header{"y", "medium"};
    EXPECT_EQ(tableForRequest(header, {}, request).error(),
              fail(ErrorKind::TooFew, ModelReason::TooFewRows).value());
    EXPECT_EQ(tableForRequest(header, {{"1", "a"}, {"2"}}, request).error(),
              inRow(2, fail(ErrorKind::Invalid, ModelReason::RowLength, 1, 2).value()));
    EXPECT_EQ(tableForRequest(header, {{"1", "a"}, {"NaN", "b"}}, request).error(),
              inRow(2, fail(ErrorKind::Invalid, ModelReason::NotANumber, "y", "NaN").value()));
    EXPECT_EQ(tableForRequest({"y"}, {{"1"}}, request).error(),
              fail(ErrorKind::NotFound, ModelReason::ColumnUnknown, "medium").value());
}

} // namespace plumule::stats
