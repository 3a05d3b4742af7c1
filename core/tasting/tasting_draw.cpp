#include "core/tasting/tasting_draw.h"

#include "core/stats/probability/steady_draw.h"
#include "core/tasting/tasting_rules.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <numeric>

namespace plumule {
namespace {

constexpr std::size_t kFirstDigits = 9; // 1 to 9
constexpr int kCodesADigit = 100;

std::vector<std::vector<int>> servingOrders(TastingMethod method, int samples)
{
    return method == TastingMethod::Triangle ? triangleOrders() : williamsSquare(samples);
}

// All three-digit codes, by first digit, each heap shuffled.
class CodeHeaps
{
public:
    explicit CodeHeaps(stats::SteadyDraw& draw)
        : m_draw(draw)
    {
        for (std::size_t digit = 0; digit < kFirstDigits; ++digit) {
            m_heaps[digit].resize(kCodesADigit);
            std::iota(m_heaps[digit].begin(), m_heaps[digit].end(),
                      static_cast<int>(digit + 1) * kCodesADigit);
            m_draw.shuffle(m_heaps[digit]);
        }
    }

    // From as many heaps, the fullest ones, so that the last taster can still be served.
    std::vector<std::string> take(std::size_t count)
    {
        std::vector<std::size_t> digits(kFirstDigits);
        std::iota(digits.begin(), digits.end(), std::size_t{0});
        m_draw.shuffle(digits);
        std::stable_sort(digits.begin(), digits.end(), [this](std::size_t a, std::size_t b) {
            return m_heaps[a].size() > m_heaps[b].size();
        });
        digits.resize(count);
        m_draw.shuffle(digits);
        std::vector<std::string> codes;
        for (const std::size_t digit : digits) {
            assert(!m_heaps[digit].empty());
            codes.push_back(std::to_string(m_heaps[digit].back()));
            m_heaps[digit].pop_back();
        }
        return codes;
    }

private:
    stats::SteadyDraw& m_draw;
    std::array<std::vector<int>, kFirstDigits> m_heaps;
};

} // namespace

std::vector<std::vector<int>> williamsSquare(int samples)
{
    assert(samples >= 2);
    // 0, 1, k−1, 2, k−2 …: the steps between neighbours are all different.
    std::vector<int> first{0};
    for (int step = 1; static_cast<int>(first.size()) < samples; ++step) {
        first.push_back(step);
        if (static_cast<int>(first.size()) < samples) {
            first.push_back(samples - step);
        }
    }
    std::vector<std::vector<int>> rows;
    for (int shift = 0; shift < samples; ++shift) {
        std::vector<int> row;
        row.reserve(first.size());
        for (const int sample : first) {
            row.push_back((sample + shift) % samples);
        }
        rows.push_back(row);
    }
    if (samples % 2 == 1) {
        // One square of odd size can't balance who follows whom: its mirror makes up for it.
        for (int shift = 0; shift < samples; ++shift) {
            const auto& row = rows[static_cast<std::size_t>(shift)];
            rows.emplace_back(row.rbegin(), row.rend());
        }
    }
    return rows;
}

std::vector<std::vector<int>> triangleOrders()
{
    return {{0, 0, 1}, {0, 1, 0}, {1, 0, 0}, {1, 1, 0}, {1, 0, 1}, {0, 1, 1}};
}

int balancedTasters(TastingMethod method, int samples)
{
    return static_cast<int>(servingOrders(method, samples).size());
}

std::vector<DrawnServing> drawServings(TastingMethod method, int samples, int tasters,
                                       std::int64_t drawNumber)
{
    stats::SteadyDraw draw(static_cast<std::uint64_t>(drawNumber));
    std::vector<std::vector<int>> rows = servingOrders(method, samples);
    std::vector<int> labels(static_cast<std::size_t>(samples));
    std::iota(labels.begin(), labels.end(), 0);
    draw.shuffle(labels);
    CodeHeaps heaps(draw);
    std::vector<DrawnServing> servings;
    for (int taster = 0; taster < tasters; ++taster) {
        const std::size_t at = static_cast<std::size_t>(taster) % rows.size();
        if (at == 0) {
            draw.shuffle(rows);
        }
        const std::vector<std::string> codes = heaps.take(rows[at].size());
        for (std::size_t turn = 0; turn < codes.size(); ++turn) {
            const int sample = labels[static_cast<std::size_t>(rows[at][turn])];
            servings.push_back({taster, static_cast<int>(turn) + 1, sample, codes[turn]});
        }
    }
    return servings;
}

} // namespace plumule
