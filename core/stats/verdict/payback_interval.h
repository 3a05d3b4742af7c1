#pragma once

#include <optional>
#include <span>

namespace plumule::stats {

struct PaybackGround
{
    double price = 0;                       // of a piece
    double washing = 0;                     // of a use
    double singleUseCost = 0;               // of a tray of the single-use medium, the medium alone
    std::span<const double> reusableGrams;  // by tray sown, 0 for a failed one
    std::span<const double> singleUseGrams; // likewise
};

// Uses after which a piece has paid for itself: price/(cost·ρ − washing), ρ the grams per tray
// sown, reusable over single-use. None: never.
struct PaybackInterval
{
    std::optional<double> uses;
    bool hasBand = false; // from three trays of each on
    std::optional<double> lower;
    std::optional<double> upper;
};

// 95 % interval from log ρ ± t(0.975; n₁+n₂−2)·√(s₁²/(n₁ḡ₁²) + s₂²/(n₂ḡ₂²)) (delta method, as in
// Fieller 1954); prices are taken as sure.
[[nodiscard]] PaybackInterval paybackIntervalOf(const PaybackGround& ground);

} // namespace plumule::stats
