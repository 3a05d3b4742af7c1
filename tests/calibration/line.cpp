#include "line.h"

#include <cmath>
#include <thread>

namespace plumule::calibration {
namespace {

constexpr int kThreads = 2;

std::optional<double> percentOf(double part, double whole)
{
    return whole > 0 ? std::optional(100 * part / whole) : std::nullopt;
}

} // namespace

Line Line::atMost(double percent) const
{
    Line line = *this;
    line.falseAtMost = percent;
    return line;
}

Line Line::exactly(double percent) const
{
    Line line = *this;
    line.falseExactly = percent;
    return line;
}

Line Line::finds(double percent) const
{
    Line line = *this;
    line.foundAtLeast = percent;
    return line;
}

Line Line::covers(double percent) const
{
    Line line = *this;
    line.coverageAtLeast = percent;
    return line;
}

Line Line::coversAtMost(double percent) const
{
    Line line = *this;
    line.coverageAtMost = percent;
    return line;
}

Line Line::inShort(int setsThere) const
{
    Line line = *this;
    line.shortSets = setsThere;
    return line;
}

void Tally::add(const Outcome& outcome)
{
    ++sets;
    isFalse += outcome.isFalse ? 1 : 0;
    askedFound += outcome.isFound ? 1 : 0;
    found += outcome.isFound.value_or(false) ? 1 : 0;
    intervals += outcome.intervals;
    covering += outcome.covering;
    askedOld += outcome.isOldFalse ? 1 : 0;
    oldFalse += outcome.isOldFalse.value_or(false) ? 1 : 0;
}

void Tally::add(const Tally& other)
{
    sets += other.sets;
    isFalse += other.isFalse;
    askedFound += other.askedFound;
    found += other.found;
    intervals += other.intervals;
    covering += other.covering;
    askedOld += other.askedOld;
    oldFalse += other.oldFalse;
}

double Tally::falsePercent() const
{
    return percentOf(isFalse, sets).value_or(0);
}

double Tally::errorOf(double percent, double sets)
{
    // One more of each keeps 0 from looking certain.
    const double share = (percent / 100 * sets + 1) / (sets + 2);
    return 100 * std::sqrt(share * (1 - share) / sets);
}

double Tally::falseError() const
{
    return errorOf(falsePercent(), sets);
}

std::optional<double> Tally::foundPercent() const
{
    return percentOf(found, askedFound);
}

std::optional<double> Tally::coveragePercent() const
{
    return percentOf(static_cast<double>(covering), static_cast<double>(intervals));
}

std::optional<double> Tally::oldFalsePercent() const
{
    return percentOf(oldFalse, askedOld);
}

Tally run(const Line& line, int sets, std::uint64_t seed)
{
    std::vector<Tally> tallies(kThreads);
    std::vector<std::thread> threads;
    for (int thread = 0; thread < kThreads; ++thread) {
        threads.emplace_back([&, thread] {
            for (int set = thread; set < sets; set += kThreads) {
                Draw draw(seed + static_cast<std::uint64_t>(set));
                tallies[static_cast<std::size_t>(thread)].add(line.make(draw));
            }
        });
    }
    for (std::thread& thread : threads) {
        thread.join();
    }
    Tally sum;
    for (const Tally& tally : tallies) {
        sum.add(tally);
    }
    return sum;
}

} // namespace plumule::calibration
