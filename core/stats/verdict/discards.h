#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace plumule::stats {

struct SownAndDiscarded
{
    std::size_t sowing = 0;
    std::size_t medium = 0;
    int sown = 0;
    int discarded = 0;
};

struct MediumDiscards
{
    std::size_t medium = 0;
    int sown = 0;
    int discarded = 0;
    double p = 1; // this medium against all others together
    // p is at or under 5 %/media: its survivors' mean is no verdict; yield per tray sown answers.
    bool differs = false;
    // All its losses in one sowing: losses come in clusters, and the test takes them one by one.
    bool isInOneSowing = false;
};

// Fisher's exact test, mid-p: tables less likely than the one seen, and half of those as likely. By
// medium; empty counts are skipped.
[[nodiscard]] std::vector<MediumDiscards> discardsOf(std::span<const SownAndDiscarded> counts);

// P of a of n1 and b of n2, both tails. Counts ≥ 0 with a ≤ n1, b ≤ n2.
[[nodiscard]] double fisherMidP(int a, int n1, int b, int n2);

} // namespace plumule::stats
