#include "core/stats/probability/normal_rectangle.h"

#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <boost/math/special_functions/legendre.hpp>
#include <cmath>
#include <numbers>

namespace plumule::stats {

namespace {

constexpr double kExactEnough = 1e-13;
constexpr double kCoarse = 1.2;
constexpr double kFar = 0.1;

struct GaussNode
{
    double at;
    double weight;
};

// Gauss-Legendre on [0, 1].
std::vector<GaussNode> gaussNodes(int count)
{
    std::vector<GaussNode> nodes;
    const auto add = [&](double x) {
        const double slope = boost::math::legendre_p_prime(count, x);
        nodes.push_back({(1 - x) / 2, 1 / ((1 - x * x) * slope * slope)});
    };
    // The zeros at and above 0; the others are their negatives.
    const std::vector<double> zeros = boost::math::legendre_p_zeros<double>(count);
    for (const double zero : zeros) {
        add(zero);
        if (zero > 0) {
            add(-zero);
        }
    }
    return nodes;
}

// As many nodes as a correction of this size needs for ten decimals of the whole; none when it is
// below them. The error of n nodes falls like distance^(2n).
const std::vector<GaussNode>& gaussNodesFor(double distance, double weight)
{
    static const std::vector<std::vector<GaussNode>> kSets = [] {
        std::vector<std::vector<GaussNode>> sets(1);
        for (int count = 1; count <= 16; ++count) {
            sets.push_back(gaussNodes(count));
        }
        return sets;
    }();
    std::size_t count = 0;
    for (double left = weight * distance; left > 1e-11 && count < 16; ++count) {
        left *= distance * distance;
    }
    return kSets[count];
}

double largestResidual(const Correlation& correlation, std::span<const double> loadings)
{
    double largest = 0;
    for (std::size_t i = 0; i < correlation.size; ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            largest = std::max(largest, std::abs(correlation.at(i, j) - loadings[i] * loadings[j]));
        }
    }
    return largest;
}

double insideOf(const Correlation& correlation, const Box& box, double weight)
{
    if (correlation.size == 0) {
        return 1;
    }
    if (correlation.size == 1) {
        return std::max(0.0, normalCdf(box.upper[0]) - normalCdf(box.lower[0]));
    }
    const std::vector<double> loadings = nearestLoadings(correlation);
    return 1 - outsideOfProduct(loadings, box, kCoarse) +
           beyondProduct(correlation, loadings, box, weight);
}

// The box and correlation of the other variables when variables i and j are known.
struct Conditional
{
    Correlation correlation;
    std::vector<std::size_t> rest;
    std::vector<double> onI;
    std::vector<double> onJ;
    std::vector<double> spread;
};

Conditional conditionalOn(const Correlation& whole, std::size_t i, std::size_t j)
{
    Conditional given;
    const double r = whole.at(i, j);
    for (std::size_t k = 0; k < whole.size; ++k) {
        if (k == i || k == j) {
            continue;
        }
        given.rest.push_back(k);
        given.onI.push_back((whole.at(k, i) - r * whole.at(k, j)) / (1 - r * r));
        given.onJ.push_back((whole.at(k, j) - r * whole.at(k, i)) / (1 - r * r));
        given.spread.push_back(std::sqrt(std::max(1e-14, 1 - given.onI.back() * whole.at(k, i) -
                                                             given.onJ.back() * whole.at(k, j))));
    }
    const std::size_t size = given.rest.size();
    given.correlation = {size, std::vector<double>(size * size, 1)};
    for (std::size_t a = 0; a < size; ++a) {
        for (std::size_t b = 0; b < size; ++b) {
            const double covariance = whole.at(given.rest[a], given.rest[b]) -
                                      given.onI[a] * whole.at(given.rest[b], i) -
                                      given.onJ[a] * whole.at(given.rest[b], j);
            if (a != b) {
                given.correlation.values[a * size + b] =
                    std::clamp(covariance / (given.spread[a] * given.spread[b]), -1.0, 1.0);
            }
        }
    }
    return given;
}

double densityAtCorner(const Conditional& given, double r, const Box& box, double x, double y,
                       double weight)
{
    if (std::isinf(x) || std::isinf(y)) {
        return 0;
    }
    Box rest;
    for (std::size_t a = 0; a < given.rest.size(); ++a) {
        const double mean = given.onI[a] * x + given.onJ[a] * y;
        rest.lower.push_back((box.lower[given.rest[a]] - mean) / given.spread[a]);
        rest.upper.push_back((box.upper[given.rest[a]] - mean) / given.spread[a]);
    }
    const double density = std::exp(-(x * x - 2 * r * x * y + y * y) / (2 * (1 - r * r))) /
                           (2 * std::numbers::pi * std::sqrt(1 - r * r));
    return density < 1e-300 ? 0 : density * insideOf(given.correlation, rest, weight);
}

// The slope of P(inside) in correlation (i, j), by its four corners.
double slopeOfInside(const Correlation& correlation, const Box& box, std::size_t i, std::size_t j,
                     double weight)
{
    const Conditional given = conditionalOn(correlation, i, j);
    const double r = correlation.at(i, j);
    const auto corner = [&](double x, double y) {
        return densityAtCorner(given, r, box, x, y, weight);
    };
    const double upper = corner(box.upper[i], box.upper[j]) - corner(box.lower[i], box.upper[j]);
    bool symmetric = true;
    for (std::size_t k = 0; k < correlation.size; ++k) {
        symmetric = symmetric && box.lower[k] == -box.upper[k];
    }
    if (symmetric) {
        return 2 * upper;
    }
    return upper + corner(box.lower[i], box.lower[j]) - corner(box.upper[i], box.lower[j]);
}

void sweepLoadings(const Correlation& correlation, std::vector<double>& loadings)
{
    for (int round = 0; round < 500; ++round) {
        double change = 0;
        for (std::size_t i = 0; i < correlation.size; ++i) {
            double together = 0;
            double squares = 0;
            for (std::size_t j = 0; j < correlation.size; ++j) {
                if (j != i) {
                    together += correlation.at(i, j) * loadings[j];
                    squares += loadings[j] * loadings[j];
                }
            }
            const double next = squares > 0 ? std::clamp(together / squares, -0.98, 0.98) : 0;
            change = std::max(change, std::abs(next - loadings[i]));
            loadings[i] = next;
        }
        if (change < 1e-14) {
            return;
        }
    }
}

// Loadings by the triads r(i,j) r(i,k) / r(j,k), all equal where the product is exact.
std::vector<double> loadingsByTriads(const Correlation& r)
{
    std::vector<double> loadings(r.size, 0.5);
    for (std::size_t i = 0; i < r.size; ++i) {
        double sum = 0;
        int count = 0;
        for (std::size_t j = 0; j < r.size; ++j) {
            for (std::size_t k = j + 1; k < r.size; ++k) {
                if (j != i && k != i && std::abs(r.at(j, k)) > 1e-8) {
                    sum += r.at(i, j) * r.at(i, k) / r.at(j, k);
                    ++count;
                }
            }
        }
        if (count > 0) {
            loadings[i] = std::sqrt(std::clamp(sum / count, 0.0, 0.9999));
        }
        if (i > 0 && r.at(0, i) < 0) {
            loadings[i] = -loadings[i];
        }
    }
    return loadings;
}

} // namespace

double outsideOfProduct(std::span<const double> loadings, const Box& box, double widen)
{
    const std::size_t size = loadings.size();
    std::vector<double> own(size);
    double swing = 1;
    double reach = 0;
    for (std::size_t i = 0; i < size; ++i) {
        const double own2 = 1 - loadings[i] * loadings[i];
        own[i] = std::sqrt(own2);
        swing += loadings[i] * loadings[i] / own2;
        for (const double side : {box.lower[i], box.upper[i]}) {
            if (std::isfinite(side)) {
                reach = std::max(reach, std::abs(loadings[i] * side));
            }
        }
    }
    const double step = widen * 0.7 / std::sqrt(swing);
    const int last = static_cast<int>(std::min(38.0, 9 + reach) / step);
    double sum = 0;
    for (int n = -last; n <= last; ++n) {
        const double z = n * step;
        double outside = 0;
        double out = 0;
        for (std::size_t i = 0; i < size; ++i) {
            if (i == 0 || loadings[i] != loadings[i - 1] || box.lower[i] != box.lower[i - 1] ||
                box.upper[i] != box.upper[i - 1]) {
                out = normalCdf((box.lower[i] - loadings[i] * z) / own[i]) +
                      normalUpper((box.upper[i] - loadings[i] * z) / own[i]);
            }
            outside += out * (1 - outside);
        }
        sum += normalDensity(z) * outside;
    }
    return sum * step;
}

std::vector<double> nearestLoadings(const Correlation& correlation)
{
    if (correlation.size == 2) {
        const double r = correlation.at(0, 1);
        const double root = std::sqrt(std::min(std::abs(r), 0.99999));
        return {root, r < 0 ? -root : root};
    }
    std::vector<double> loadings = loadingsByTriads(correlation);
    if (largestResidual(correlation, loadings) > kExactEnough) {
        sweepLoadings(correlation, loadings);
    }
    return loadings;
}

bool isProduct(const Correlation& correlation, std::span<const double> loadings)
{
    return largestResidual(correlation, loadings) <= kExactEnough;
}

double beyondProduct(const Correlation& correlation, std::span<const double> loadings,
                     const Box& box, double weight)
{
    const double distance = largestResidual(correlation, loadings);
    if (distance <= kExactEnough) {
        return 0;
    }
    const std::size_t size = correlation.size;
    double sum = 0;
    for (const GaussNode& even : gaussNodesFor(distance, weight)) {
        // A far, perhaps singular, matrix is neared like a square root: nodes crowd there.
        const double left = 1 - even.at;
        const GaussNode node =
            distance < kFar ? even : GaussNode{1 - left * left, 2 * left * even.weight};
        Correlation here = correlation;
        for (std::size_t i = 0; i < size; ++i) {
            for (std::size_t j = 0; j < size; ++j) {
                if (i != j) {
                    here.values[i * size + j] =
                        (1 - node.at) * loadings[i] * loadings[j] + node.at * correlation.at(i, j);
                }
            }
        }
        for (std::size_t i = 0; i < size; ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                const double gap = correlation.at(i, j) - loadings[i] * loadings[j];
                if (std::abs(gap) > kExactEnough / 10) {
                    sum += node.weight * gap * slopeOfInside(here, box, i, j, weight * distance);
                }
            }
        }
    }
    return sum;
}

} // namespace plumule::stats
