// Part of core/stats/verdict/media_answer.h: the verdict that holds in the next sowing.
#include "core/stats/verdict/answer_frame.h"
#include "core/stats/verdict/by_variety.h"
#include "core/stats/verdict/unlike_spread.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {
namespace {

constexpr int kFewestSowings = 3;

class SeriesSums
{
public:
    SeriesSums(std::span<const SownTray> trays, const VerdictAsk& ask)
        : m_ask(ask)
        , m_varietyCells(varietyCellsOf(trays, ask.scale))
        , m_cells(mediumCells(m_varietyCells.cells))
        , m_fit(m_cells)
        , m_residuals(trayResidualsOf(trays, ask.scale))
        , m_answer(frameOf(trays, ask))
    {}

    [[nodiscard]] MediaAnswer answer()
    {
        m_answer.scope = AnswerScope::NextSowing;
        m_answer.sowings = m_fit.sowings();
        m_answer.empty = m_varietyCells.empty;
        takeSpread();
        takeMeans();
        if (m_fit.sowings() > 0) {
            const double risk =
                m_ask.series == Series::Open ? kOpenRisk / m_fit.sowings() : kSingleRisk;
            m_answer.level = sharedRisk(risk, m_ask);
        }
        for (PairAnswer& pair : m_answer.pairs) {
            takeNumbers(pair);
            if (!refusedBeforehand(pair, m_answer, m_ask)) {
                judgePair(pair);
            }
        }
        if (m_answer.level) {
            answerByVariety(m_answer, m_varietyCells.cells, m_ask);
        }
        return std::move(m_answer);
    }

private:
    void takeSpread()
    {
        m_answer.variance = m_fit.variance();
        m_answer.df = m_fit.df();
        m_answer.spread = unlikeSpreadOf(m_fit, m_residuals);
        m_answer.trayVariance = m_residuals.variance();
        double inverse = 0;
        double cells = 0;
        double sum = 0;
        for (const Cell& cell : m_cells) {
            if (m_fit.holds(cell.medium)) {
                inverse += 1.0 / cell.trays;
                sum += cell.value;
                ++cells;
            }
        }
        m_answer.harmonicTrays = cells > 0 ? cells / inverse : 0;
        m_cellMean = cells > 0 ? sum / cells : 0;
        if (m_answer.variance && m_answer.trayVariance) {
            m_answer.trialVariance =
                std::max(0.0, *m_answer.variance - *m_answer.trayVariance * inverse / cells);
        }
    }

    void takeMeans()
    {
        for (MediumMean& mean : m_answer.means) {
            mean.onScale =
                m_fit.holds(mean.medium) ? m_fit.mean(mean.medium) : plainMean(mean.medium);
            if (mean.onScale) {
                mean.value = isLog(m_ask.scale) ? std::exp(*mean.onScale) : *mean.onScale;
            }
        }
    }

    [[nodiscard]] std::optional<double> plainMean(std::size_t medium) const
    {
        double sum = 0;
        int cells = 0;
        for (const Cell& cell : m_cells) {
            if (cell.medium == medium) {
                sum += cell.value;
                ++cells;
            }
        }
        return cells > 0 ? std::optional(sum / cells) : std::nullopt;
    }

    void takeNumbers(PairAnswer& pair) const
    {
        pair.sowingsShared = static_cast<int>(m_fit.sharedDifferences(pair.a, pair.b).size());
        pair.difference = m_fit.difference(pair.a, pair.b);
        if (!pair.difference || !m_answer.variance) {
            return;
        }
        PairGround ground{m_fit.media().size(), m_fit.df(), *m_answer.level, *m_answer.variance,
                          m_fit.relativeVariance(pair.a, pair.b)};
        if (m_answer.spread.isUnlike) {
            ground.level /= 2;
            const std::optional<double> own = pairVariance(m_fit, pair.a, pair.b);
            if (own && *own > ground.variance) {
                ground.df = std::max(pair.sowingsShared - 1.0, ground.df * ground.variance / *own);
                ground.variance = *own;
            }
        }
        takeInterval(pair, ground);
    }

    void judgePair(PairAnswer& pair) const
    {
        if (pair.sowingsShared < kFewestSowings) {
            refuse(pair, Verdict::NoVerdict, NoVerdictReason::FewSowings);
        } else if (m_fit.df() < kFewestDegrees) {
            refuse(pair, Verdict::NoVerdict, NoVerdictReason::FewDegrees);
        } else if (hasNoSpread(*m_answer.variance, m_ask.scale, m_cellMean)) {
            refuse(pair, Verdict::NoVerdict, NoVerdictReason::NoSpread);
        } else {
            judge(pair, m_ask.margin);
        }
    }

    const VerdictAsk& m_ask;
    VarietyCells m_varietyCells;
    std::vector<Cell> m_cells;
    CellFit m_fit;
    TrayResiduals m_residuals;
    MediaAnswer m_answer;
    double m_cellMean = 0;
};

} // namespace

MediaAnswer answerOfSeries(std::span<const SownTray> trays, const VerdictAsk& ask)
{
    return SeriesSums(trays, ask).answer();
}

} // namespace plumule::stats
