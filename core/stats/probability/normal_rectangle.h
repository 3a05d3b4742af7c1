#pragma once

#include <span>
#include <vector>

// Probabilities of boxes under correlated standard normals, by quadrature and never by chance.
namespace plumule::stats {

// A small square matrix, row by row.
struct Correlation
{
    std::size_t size = 0;
    std::vector<double> values;

    [[nodiscard]] double at(std::size_t i, std::size_t j) const { return values[i * size + j]; }
};

// Sides of a box, possibly infinite.
struct Box
{
    std::vector<double> lower;
    std::vector<double> upper;
};

// P(some variable lies outside its side) where correlation(i, j) = loading i * loading j, all
// |loadings| < 1: one integral over the common factor, with relative accuracy. Step widths above 1
// trade digits for time (1.5 leaves about 8).
[[nodiscard]] double outsideOfProduct(std::span<const double> loadings, const Box& box,
                                      double widen = 1);

// Loadings whose products come nearest to the correlations (exact where that is possible).
[[nodiscard]] std::vector<double> nearestLoadings(const Correlation& correlation);

// True when the products are the correlations, to rounding.
[[nodiscard]] bool isProduct(const Correlation& correlation, std::span<const double> loadings);

// What is to be taken from outsideOfProduct(nearestLoadings) to have P(outside) under any
// correlation: Plackett's identity (1954, Biometrika 41:351) followed along the straight way from
// the product to the correlation itself; the conditional boxes are found the same way. `weight` is
// what the answer is to be multiplied by: small weights need fewer digits.
[[nodiscard]] double beyondProduct(const Correlation& correlation, std::span<const double> loadings,
                                   const Box& box, double weight = 1);

} // namespace plumule::stats
