#include "lines.h"
#include "rules.h"

#include "core/stats/verdict/discards.h"
#include "core/stats/verdict/payback_interval.h"

#include <algorithm>
#include <cmath>

namespace plumule::calibration {
namespace {

// Unlike metrics of the same trays, each by chance alone: the main one and seven others.
Line metrics(const std::string& room, bool countsMain, bool countsOthers)
{
    return {room, kFewerSets, [=](Draw& draw) {
                Outcome outcome;
                const Rules rules = rulesOf(8);
                for (int metric = 0; metric < 8; ++metric) {
                    Looking looking;
                    looking.ask.sideMetrics = metric == 0 ? 0 : 7;
                    const bool isFalse = season(rules, looking, draw).isFalse;
                    outcome.isFalse |= isFalse && (metric == 0 ? countsMain : countsOthers);
                }
                return outcome;
            }};
}

// Trays lost by chance, or a sowing's trays of a medium together: a medium that is said to differ.
Line discards(const std::string& room, double ofTrays, double ofCells)
{
    return {room, kSets, [=](Draw& draw) {
                std::vector<stats::SownAndDiscarded> counts;
                for (std::size_t sowing = 0; sowing < 8; ++sowing) {
                    for (std::size_t medium = 0; medium < 4; ++medium) {
                        const bool isLost = draw.uniform() < ofCells;
                        int lost = isLost ? 3 : 0;
                        for (int tray = 0; tray < 3 && !isLost; ++tray) {
                            lost += draw.uniform() < ofTrays ? 1 : 0;
                        }
                        counts.push_back({sowing, medium, 3, lost});
                    }
                }
                const auto found = stats::discardsOf(counts);
                Outcome outcome;
                outcome.isFalse = std::any_of(found.begin(), found.end(), [](const auto& medium) {
                    return medium.differs && !medium.isInOneSowing;
                });
                return outcome;
            }};
}

Line payback(std::size_t trays, double cv, double failing)
{
    char room[80];
    std::snprintf(room, sizeof room, "payback, %zu trays of each, CV %.0f %%%s", trays, 100 * cv,
                  failing > 0 ? ", 10 % failing" : "");
    return {room, kSets, [=](Draw& draw) {
                const double price = 18;
                const double washing = 0.2;
                const double cost = 0.9;
                std::vector<double> reusable;
                std::vector<double> single;
                for (std::size_t tray = 0; tray < trays; ++tray) {
                    const auto grams = [&](double mean) {
                        return draw.uniform() < failing ? 0 : mean * (1 + draw.normal(cv));
                    };
                    reusable.push_back(grams(210));
                    single.push_back(grams(200));
                }
                const auto interval =
                    stats::paybackIntervalOf({price, washing, cost, reusable, single});
                const double truth = price / (cost * 210 / 200 - washing);
                Outcome outcome;
                outcome.intervals = 1;
                const bool isReached = interval.lower && *interval.lower <= truth;
                outcome.covering =
                    interval.hasBand && isReached && (!interval.upper || truth <= *interval.upper)
                        ? 1
                        : 0;
                return outcome;
            }};
}

} // namespace

Section otherQuestions()
{
    Section section{"Other questions", {}};
    std::vector<Line>& lines = section.lines;
    Looking grouped;
    grouped.groups = {{0, 1}, {2, 3}};
    lines.push_back(seasonLine("two groups of two media, pairs and groups together, 20 trials",
                               rulesOf(20), grouped)
                        .atMost(5));
    grouped.groups = {{0, 1, 2}, {3, 4}, {5}};
    lines.push_back(seasonLine("groups of three, two and one, pairs and groups, 8 trials",
                               rulesOf(8, 6), grouped)
                        .atMost(5));
    lines.push_back(metrics("the main of eight metrics, 8 trials", true, false).atMost(5));
    lines.push_back(metrics("the seven others", false, true).atMost(5));
    lines.push_back(metrics("either", true, true));
    lines.push_back(discards("discards of one tray in ten, any medium", 0.1, 0).atMost(5));
    lines.push_back(discards("discards of one tray in fifty", 0.02, 0).atMost(5));
    lines.push_back(
        discards("a medium's trays of a trial lost together, one time in twenty", 0, 0.05));
    for (const double failing : {0.0, 0.1}) {
        for (const std::size_t trays : {3U, 4U, 6U}) {
            for (const double cv : {0.07, 0.2}) {
                lines.push_back(payback(trays, cv, failing).covers(93).inShort(2000));
            }
        }
    }
    return section;
}

} // namespace plumule::calibration
