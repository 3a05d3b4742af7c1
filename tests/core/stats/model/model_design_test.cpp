#include "core/stats/model/model_design.h"

#include <gtest/gtest.h>
#include <numeric>

namespace plumule::stats {

namespace {

DataTable twoFactors()
{
    DataTable table;
    EXPECT_TRUE(table.addFactor("a", {"x", "y", "x", "y", "z", "z", "x"}));
    EXPECT_TRUE(table.addFactor("b", {"p", "p", "q", "q", "p", "q", "p"}));
    EXPECT_TRUE(table.addNumbers("c", {1.0, 2.0, 3.0, 4.0, 5.0, 9.0, std::nullopt}));
    EXPECT_TRUE(table.addNumbers("y", {10.0, 12.0, 11.0, 15.0, 20.0, 28.0, 3.0}));
    return table;
}

double cell(const ModelDesign& design, std::size_t row, std::size_t column)
{
    return design.matrix()[column * design.rows() + row];
}

double cellOf(const std::vector<double>& square, std::size_t size, std::size_t row,
              std::size_t column)
{
    return square[column * size + row];
}

} // namespace

TEST(ModelDesign, CodesLevelsAgainstTheFirst)
{
    const auto design = ModelDesign::make(twoFactors(), {"y", {{"a"}, {"b"}}, {}});
    ASSERT_TRUE(design);
    EXPECT_EQ(design->columns(), 4U);
    EXPECT_EQ(design->rows(), 7U);
    EXPECT_EQ(cell(*design, 0, 1), 0);
    EXPECT_EQ(cell(*design, 3, 1), 1);
    EXPECT_EQ(cell(*design, 3, 3), 1);
    EXPECT_EQ(cell(*design, 5, 2), 1);
}

TEST(ModelDesign, LeavesOutRowsWithGaps)
{
    const auto design = ModelDesign::make(twoFactors(), {"y", {{"a"}, {"c"}}, {}});
    ASSERT_TRUE(design);
    EXPECT_EQ(design->usedRows(), (std::vector<std::size_t>{0, 1, 2, 3, 4, 5}));
}

TEST(ModelDesign, PutsTheFirstPartOfAnInteractionFastest)
{
    const auto design = ModelDesign::make(twoFactors(), {"y", {{"a"}, {"b"}, {"a", "b"}}, {}});
    ASSERT_TRUE(design);
    EXPECT_EQ(cell(*design, 5, 5), 1);
    EXPECT_EQ(cell(*design, 5, 4), 0);
    EXPECT_TRUE(ModelDesign::contains(design->terms()[2], design->terms()[0]));
    EXPECT_FALSE(ModelDesign::contains(design->terms()[0], design->terms()[1]));
}

// The defining property: in sum-to-zero coding a row's value is 1 at its own level, -1 at the base,
// 0 elsewhere, and products of these for an interaction.
TEST(ModelDesign, TurnsDummiesIntoSumToZeroColumns)
{
    const auto design = ModelDesign::make(twoFactors(), {"y", {{"a"}, {"b"}, {"a", "b"}}, {}});
    ASSERT_TRUE(design);
    const auto transform = design->toSumToZero();
    const std::size_t size = design->columns();
    const auto sumCell = [&](std::size_t row, std::size_t column) {
        double value = 0;
        for (std::size_t k = 0; k < size; ++k) {
            value += cell(*design, row, k) * cellOf(transform, size, k, column);
        }
        return value;
    };
    const auto a = [&](std::size_t row, std::size_t level) {
        const std::size_t code = design->factor("a")->codes[row];
        return code == 0 ? -1.0 : code == level ? 1.0 : 0.0;
    };
    const auto b = [&](std::size_t row) {
        return design->factor("b")->codes[row] == 0 ? -1.0 : 1.0;
    };
    for (std::size_t row = 0; row < design->rows(); ++row) {
        EXPECT_EQ(sumCell(row, 0), 1);
        EXPECT_EQ(sumCell(row, 1), a(row, 1));
        EXPECT_EQ(sumCell(row, 2), a(row, 2));
        EXPECT_EQ(sumCell(row, 3), b(row));
        EXPECT_EQ(sumCell(row, 4), a(row, 1) * b(row));
        EXPECT_EQ(sumCell(row, 5), a(row, 2) * b(row));
    }
}

TEST(ModelDesign, WeighsOtherFactorsEquallyInAMean)
{
    const auto design = ModelDesign::make(twoFactors(), {"y", {{"a"}, {"b"}, {"a", "b"}}, {}});
    ASSERT_TRUE(design);
    EXPECT_EQ(design->meanWeights(*design->factor("a"), 1),
              (std::vector<double>{1, 1, 0, 0.5, 0.5, 0}));
    const auto weights = design->meanWeights(*design->factor("b"), 1);
    EXPECT_DOUBLE_EQ(weights[1], 1.0 / 3);
    EXPECT_DOUBLE_EQ(weights[4], 1.0 / 3);
    EXPECT_EQ(weights[3], 1);
}

TEST(ModelDesign, TakesTheMeanOffTheResponseAndTheCovariates)
{
    const auto design = ModelDesign::make(twoFactors(), {"y", {{"a"}, {"c"}}, {}});
    ASSERT_TRUE(design);
    EXPECT_DOUBLE_EQ(design->responseShift(), 16);
    EXPECT_NEAR(std::accumulate(design->response().begin(), design->response().end(), 0.0), 0,
                1e-12);
    EXPECT_DOUBLE_EQ(design->covariates()[0].mean, 4);
    EXPECT_EQ(design->meanWeights(*design->factor("a"), 0)[3], 0);
}

TEST(ModelDesign, LeavesACovariateUnshiftedWhereASlopeDependsOnALevel)
{
    const auto design = ModelDesign::make(twoFactors(), {"y", {{"a"}, {"c"}, {"a", "c"}}, {}});
    ASSERT_TRUE(design);
    EXPECT_EQ(design->covariates()[0].shift, 0);
    const auto weights = design->meanWeights(*design->factor("a"), 1);
    EXPECT_DOUBLE_EQ(weights[3] * design->covariates()[0].scale, 4);
    EXPECT_DOUBLE_EQ(weights[4] * design->covariates()[0].scale, 4);
}

TEST(ModelDesign, NamesWhatIsWrongWithAModel)
{
    const DataTable table = twoFactors();
    const auto errorOf = [&](const ModelDescription& model) {
        return ModelDesign::make(table, model).error();
    };
    EXPECT_EQ(errorOf({"z", {{"a"}}, {}}),
              fail(ErrorKind::NotFound, ModelReason::ColumnUnknown, "z").value());
    EXPECT_EQ(errorOf({"y", {{"nothing"}}, {}}).values.at(0), "nothing");
    EXPECT_EQ(errorOf({"a", {{"b"}}, {}}).kind, ErrorKind::NotFound);
    EXPECT_EQ(errorOf({"y", {{"a"}, {"a"}}, {}}).kind, ErrorKind::Duplicate);
    EXPECT_EQ(errorOf({"y", {{"a"}, {"b"}, {"a", "b"}, {"b", "a"}}, {}}).kind,
              ErrorKind::Duplicate);
    EXPECT_EQ(errorOf({"y", {{"a"}, {"a", "b"}}, {}}),
              fail(ErrorKind::Invalid, ModelReason::TermPartMissing, "a:b", "b").value());
    EXPECT_EQ(errorOf({"y", {{"a"}}, {{"c"}}}),
              fail(ErrorKind::Invalid, ModelReason::NotCategories, "c").value());
}

TEST(ModelDesign, RefusesAFactorWithOneLevel)
{
    const DataTable table = twoFactors().withRows({0, 2, 6});
    EXPECT_EQ(ModelDesign::make(table, {"y", {{"a"}}, {}}).error(),
              fail(ErrorKind::TooFew, ModelReason::OneLevel, "a").value());
    EXPECT_EQ(ModelDesign::make(table, {"y", {{"b"}}, {{"a"}}}).error().values.at(0), "a");
    EXPECT_EQ(ModelDesign::make(DataTable(), {"y", {}, {}}).error().kind, ErrorKind::NotFound);
}

} // namespace plumule::stats
