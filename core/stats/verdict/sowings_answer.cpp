// Part of core/stats/verdict/media_answer.h: what media gave within one or two sowings.
#include "core/stats/verdict/answer_frame.h"
#include "core/stats/verdict/cell_fit.h"
#include "core/stats/verdict/sowing_fit.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {
namespace {

class SowingsSums
{
public:
    SowingsSums(std::span<const SownTray> trays, const VerdictAsk& ask)
        : m_ask(ask)
        , m_answer(frameOf(trays, ask))
    {
        m_answer.empty = varietyCellsOf(trays, ask.scale).empty;
        std::map<std::size_t, std::vector<SownTray>> sowings;
        for (const SownTray& tray : trays) {
            sowings[tray.sowing].push_back(tray);
        }
        for (auto& [sowing, held] : sowings) {
            m_fits.emplace_back(std::move(held), ask.scale);
        }
    }

    [[nodiscard]] MediaAnswer answer()
    {
        m_answer.scope = AnswerScope::TheseSowings;
        m_answer.sowings = static_cast<int>(m_fits.size());
        m_answer.level = sharedRisk(kSingleRisk, m_ask);
        takeSpread();
        takeMeans();
        for (PairAnswer& pair : m_answer.pairs) {
            takeNumbers(pair);
            if (!refusedBeforehand(pair, m_answer, m_ask)) {
                judgePair(pair);
            }
        }
        return std::move(m_answer);
    }

private:
    void takeSpread()
    {
        double ss = 0;
        for (const SowingFit& fit : m_fits) {
            ss += fit.residualSs();
            m_answer.df += fit.df();
        }
        if (m_answer.df > 0) {
            m_answer.variance = ss / m_answer.df;
            m_answer.trayVariance = m_answer.variance;
        }
        m_media = static_cast<std::size_t>(
            std::count_if(m_answer.means.begin(), m_answer.means.end(),
                          [](const MediumMean& mean) { return mean.trays > 0; }));
    }

    void takeMeans()
    {
        std::vector<Cell> cells;
        for (const SowingFit& fit : m_fits) {
            const std::vector<Cell> more = fit.cells(cells.size());
            cells.insert(cells.end(), more.begin(), more.end());
        }
        const CellFit together(cells);
        double inverse = 0;
        for (const Cell& cell : cells) {
            inverse += 1.0 / cell.trays;
            m_cellMean += cell.value / static_cast<double>(cells.size());
        }
        m_answer.harmonicTrays = cells.empty() ? 0 : static_cast<double>(cells.size()) / inverse;
        for (MediumMean& mean : m_answer.means) {
            mean.onScale = together.mean(mean.medium);
            for (const Cell& cell : cells) {
                if (!mean.onScale && cell.medium == mean.medium) {
                    mean.onScale = cell.value;
                }
            }
            if (mean.onScale) {
                mean.value = isLog(m_ask.scale) ? std::exp(*mean.onScale) : *mean.onScale;
            }
        }
    }

    void takeNumbers(PairAnswer& pair)
    {
        PairGround ground{m_media, m_answer.df, *m_answer.level, m_answer.variance.value_or(0), 0};
        std::vector<OwnVariance> own;
        double difference = 0;
        for (const SowingFit& fit : m_fits) {
            const auto found = fit.difference(pair.a, pair.b);
            if (!found) {
                continue;
            }
            ++pair.sowingsShared;
            difference += found->value;
            ground.relativeVariance += found->relativeVariance;
            if (const auto variance = fit.ownVariance(pair.a, pair.b)) {
                own.push_back(*variance);
            }
        }
        if (pair.sowingsShared == 0) {
            return;
        }
        pair.difference = difference / pair.sowingsShared;
        ground.relativeVariance /= pair.sowingsShared * pair.sowingsShared;
        if (!m_answer.variance) {
            return;
        }
        takeOwnVariance(ground, pooled(own));
        takeInterval(pair, ground);
    }

    static void takeOwnVariance(PairGround& ground, const std::optional<OwnVariance>& own)
    {
        if (own && own->variance > ground.variance) {
            ground.df = std::max(own->df, ground.df * ground.variance / own->variance);
            ground.variance = own->variance;
        }
    }

    void judgePair(PairAnswer& pair) const
    {
        const bool hasTwoEach =
            std::any_of(m_fits.begin(), m_fits.end(), [&](const SowingFit& fit) {
                return fit.countOf(pair.a) > 1 && fit.countOf(pair.b) > 1;
            });
        if (!hasTwoEach) {
            refuse(pair, Verdict::NoVerdict, NoVerdictReason::OneTrayEach);
        } else if (m_answer.df < kFewestDegrees) {
            refuse(pair, Verdict::NoVerdict, NoVerdictReason::FewDegrees);
        } else if (hasNoSpread(*m_answer.variance, m_ask.scale, m_cellMean)) {
            refuse(pair, Verdict::NoVerdict, NoVerdictReason::NoSpread);
        } else {
            judge(pair, m_ask.margin);
        }
    }

    const VerdictAsk& m_ask;
    MediaAnswer m_answer;
    std::vector<SowingFit> m_fits;
    std::size_t m_media = 0;
    double m_cellMean = 0;
};

} // namespace

MediaAnswer answerOfSowings(std::span<const SownTray> trays, const VerdictAsk& ask)
{
    return SowingsSums(trays, ask).answer();
}

} // namespace plumule::stats
