#include "room.h"

#include <cmath>

namespace plumule::calibration {
namespace {

constexpr double kEqual = 1e-9;
constexpr double kBadShare = 0.05;
constexpr double kBadLoss = 0.4;

} // namespace

Room::Room(const Rules& rules, Draw& draw)
    : m_rules(rules)
    , m_draw(draw)
    , m_ofMedium(rules.media, 0)
    , m_shift(rules.media, 0)
    , m_ofVariety(rules.varieties, std::vector<double>(rules.media, 0))
{
    // Over all varieties that are grown media are as their effects say.
    for (std::size_t medium = 0; medium < rules.media; ++medium) {
        double mean = 0;
        for (auto& variety : m_ofVariety) {
            variety[medium] = draw.normal(rules.mediumVariety * rules.traySd);
            mean += variety[medium] / static_cast<double>(rules.varieties);
        }
        for (auto& variety : m_ofVariety) {
            variety[medium] -= mean;
        }
        m_ofNewVariety.push_back(draw.normal(rules.mediumVariety * rules.traySd) - mean);
    }
}

SowingPlan Room::fullPlan() const
{
    SowingPlan plan;
    for (std::size_t i = 0; i < m_rules.varietiesEach; ++i) {
        const std::size_t variety = (m_sowings * m_rules.varietiesEach + i) % m_rules.varieties;
        for (std::size_t medium = 0; medium < m_rules.media; ++medium) {
            plan.push_back({medium, variety, m_rules.trays});
        }
    }
    return plan;
}

void Room::drawSowing()
{
    const auto next = [&](double before, double memory, double sd) {
        return m_sowings == 0
                   ? m_draw.normal(sd)
                   : memory * before + m_draw.normal(sd * std::sqrt(1 - memory * memory));
    };
    m_level = next(m_level, m_rules.sowingMemory, m_rules.sowingSd);
    for (std::size_t medium = 0; medium < m_ofMedium.size(); ++medium) {
        const double times = m_rules.unsteady.empty() ? 1 : m_rules.unsteady[medium];
        m_ofMedium[medium] = next(m_ofMedium[medium], m_rules.mediumMemory,
                                  times * m_rules.mediumSowing * m_rules.traySd);
    }
}

double Room::error(std::size_t medium)
{
    const double sd = m_rules.spreads.empty() ? m_rules.traySd : m_rules.spreads[medium];
    switch (m_rules.errors) {
    case Errors::StudentT:
        return sd * m_draw.studentT(3) / std::sqrt(3.0);
    case Errors::BadTray:
        return m_draw.normal(sd) + (m_draw.uniform() < kBadShare ? std::log(1 - kBadLoss) : 0);
    default:
        return m_draw.normal(sd);
    }
}

std::vector<SownTray> Room::sow(const SowingPlan& plan)
{
    drawSowing();
    std::vector<double> blocks;
    std::vector<double> columns;
    for (std::size_t place = 0; place < m_rules.media && m_rules.columnSd > 0; ++place) {
        columns.push_back(m_draw.normal(m_rules.columnSd));
    }
    std::vector<SownTray> trays;
    const double drift = m_rules.sowingDrift * static_cast<double>(m_sowings);
    for (const PlannedCell& cell : plan) {
        const double grams = m_rules.varietyGrams[cell.variety % m_rules.varietyGrams.size()];
        for (std::size_t replicate = 0; replicate < cell.trays; ++replicate) {
            if (replicate >= blocks.size()) {
                blocks.push_back(m_draw.normal(m_rules.blockSd));
            }
            const std::size_t place = (cell.medium + replicate) % m_rules.media;
            const double log = effect(cell.medium, cell.variety) + m_shift[cell.medium] + m_level +
                               drift + m_ofMedium[cell.medium] +
                               (m_rules.hasBlocks ? blocks[replicate] : 0.0) +
                               (columns.empty() ? 0.0 : columns[place]) + error(cell.medium);
            SownTray tray;
            tray.sowing = m_sowings;
            tray.medium = cell.medium;
            tray.variety = cell.variety;
            if (m_rules.hasBlocks) {
                tray.block = replicate;
            }
            if (!columns.empty()) {
                tray.column = place;
            }
            tray.value = grams * (m_rules.errors == Errors::Additive ? 1 + log : std::exp(log));
            trays.push_back(tray);
        }
    }
    ++m_sowings;
    return trays;
}

double Room::effect(std::size_t medium, std::size_t variety) const
{
    return effect(medium) + m_ofVariety[variety][medium];
}

double Room::effectInNewVariety(std::size_t medium) const
{
    return effect(medium) + m_ofNewVariety[medium];
}

double Room::effect(std::size_t medium) const
{
    return m_rules.effects.empty() ? 0 : m_rules.effects[medium];
}

bool isFalseDifference(stats::Verdict verdict, std::optional<double> difference, double truth)
{
    switch (verdict) {
    case stats::Verdict::More:
        return truth < kEqual;
    case stats::Verdict::Less:
        return truth > -kEqual;
    case stats::Verdict::RealButTooSmall:
        return difference.value() > 0 ? truth < kEqual : truth > -kEqual;
    default:
        return false;
    }
}

bool isFalseSame(stats::Verdict verdict, double truth, double margin)
{
    return (verdict == stats::Verdict::SameWithinMargin ||
            verdict == stats::Verdict::RealButTooSmall) &&
           std::abs(truth) >= margin - kEqual;
}

bool isCovered(std::optional<stats::Interval> interval, double truth)
{
    return interval && interval->lower() <= truth && truth <= interval->upper();
}

} // namespace plumule::calibration
