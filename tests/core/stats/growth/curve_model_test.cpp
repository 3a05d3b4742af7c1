#include "core/stats/growth/curve_model.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule::stats;

namespace {

struct Shape
{
    CurveModelPtr model;
    std::vector<double> parameters;
    std::vector<double> places;
};

std::vector<Shape> shapes()
{
    return {
        {logisticCurve(), {70, 6, 1.3}, {-3, 2, 6, 9, 20}},
        {gompertzCurve(), {70, 5, 2.1}, {-3, 2, 6, 9, 20}},
        {richardsCurve(), {70, 4.2, 0.9, 1.7}, {-3, 2, 6, 9, 20}},
        {richardsCurve(), {70, 1.2, 0.5, 0.3}, {-3, 2, 6, 9, 20}},
    };
}

// The derivative of f by each parameter, from two points close by.
template <class Function>
std::vector<double> numericGradient(std::vector<double> p, Function f)
{
    std::vector<double> gradient;
    for (double& parameter : p) {
        const double kept = parameter;
        const double step = 1e-6 * std::max(std::abs(kept), 1e-3);
        parameter = kept + step;
        const double above = f(p);
        parameter = kept - step;
        const double below = f(p);
        parameter = kept;
        gradient.push_back((above - below) / (2 * step));
    }
    return gradient;
}

void expectAlike(const std::vector<double>& got, const std::vector<double>& expected,
                 const std::string& what)
{
    ASSERT_EQ(got.size(), expected.size());
    for (std::size_t i = 0; i < got.size(); ++i) {
        EXPECT_NEAR(got[i], expected[i], 1e-6 * std::max(1.0, std::abs(expected[i])))
            << what << ", parameter " << i;
    }
}

} // namespace

TEST(CurveModel, GivesDerivativesThatAgreeWithDifferences)
{
    for (const Shape& shape : shapes()) {
        std::vector<double> gradient(shape.parameters.size());
        for (const double x : shape.places) {
            shape.model->value(x, shape.parameters, gradient);
            expectAlike(
                gradient,
                numericGradient(shape.parameters,
                                [&](const auto& p) { return shape.model->value(x, p, {}); }),
                shape.model->name + " at " + std::to_string(x));
            const double slope = (shape.model->value(x + 1e-5, shape.parameters, {}) -
                                  shape.model->value(x - 1e-5, shape.parameters, {})) /
                                 2e-5;
            EXPECT_NEAR(shape.model->slope(x, shape.parameters), slope,
                        1e-6 * std::max(1.0, std::abs(slope)))
                << shape.model->name;
        }
    }
}

TEST(CurveModel, FindsTheSteepestSlopeOfTheWholeCurve)
{
    for (const Shape& shape : shapes()) {
        std::vector<double> gradient(shape.parameters.size());
        const double rate = shape.model->topRate(shape.parameters, gradient);
        double steepest = 0;
        const double from = shape.model->xAtFraction(0.001, shape.parameters, {});
        const double to = shape.model->xAtFraction(0.999, shape.parameters, {});
        for (int i = 0; i <= 20000; ++i) {
            steepest = std::max(
                steepest, shape.model->slope(from + (to - from) * i / 20000, shape.parameters));
        }
        EXPECT_NEAR(rate, steepest, 1e-6 * steepest) << shape.model->name;
        expectAlike(gradient,
                    numericGradient(shape.parameters,
                                    [&](const auto& p) { return shape.model->topRate(p, {}); }),
                    shape.model->name + " top rate");
    }
}

TEST(CurveModel, FindsWhereAShareOfTheHeightIsReached)
{
    for (const Shape& shape : shapes()) {
        for (const double fraction : {0.1, 0.5, 0.9}) {
            const auto& p = shape.parameters;
            std::vector<double> gradient(p.size());
            const double x = shape.model->xAtFraction(fraction, p, gradient);
            const double wanted = fraction * p[0];
            EXPECT_NEAR(shape.model->value(x, p, {}), wanted, 1e-9 * std::abs(wanted))
                << shape.model->name;
            expectAlike(
                gradient,
                numericGradient(
                    p, [&](const auto& q) { return shape.model->xAtFraction(fraction, q, {}); }),
                shape.model->name + " share");
        }
    }
}

TEST(CurveModel, StaysFiniteFarOutsideTheReadings)
{
    for (const Shape& shape : shapes()) {
        for (const double x : {-1e5, 1e5}) {
            std::vector<double> gradient(shape.parameters.size());
            EXPECT_TRUE(std::isfinite(shape.model->value(x, shape.parameters, gradient)));
            for (const double derivative : gradient) {
                EXPECT_TRUE(std::isfinite(derivative)) << shape.model->name << " at " << x;
            }
        }
    }
}

TEST(CurveModel, HasNoValueOutsideItsParameters)
{
    EXPECT_TRUE(std::isnan(richardsCurve()->value(1, std::vector<double>{70, 1, 1, -0.5}, {})));
}
