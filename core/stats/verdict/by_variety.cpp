#include "core/stats/verdict/by_variety.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/verdict/answer_frame.h"
#include "core/stats/verdict/cell_fit.h"

namespace plumule::stats {
namespace {

constexpr int kFewestOfVariety = 2;
constexpr int kFewestForVerdict = 3;

struct VarietyFit
{
    std::size_t variety = 0;
    std::vector<Cell> cells;
    CellFit fit;
};

// Sowing by sowing within each variety; of varieties with enough of them.
std::vector<VarietyFit> fitsByVariety(std::span<const VarietyCell> cells)
{
    std::map<std::size_t, std::vector<Cell>> byVariety;
    for (const VarietyCell& cell : cells) {
        byVariety[cell.variety].push_back(
            {cell.sowing, cell.sowing, cell.medium, cell.value, cell.trays});
    }
    std::vector<VarietyFit> fits;
    for (auto& [variety, held] : byVariety) {
        CellFit fit(held);
        if (fit.sowings() >= kFewestOfVariety) {
            fits.push_back({variety, std::move(held), std::move(fit)});
        }
    }
    return fits;
}

// Media that differ alike in all varieties.
CellFit fitOfAll(const std::vector<VarietyFit>& fits)
{
    std::vector<Cell> cells;
    std::size_t firstPart = 0;
    for (const VarietyFit& one : fits) {
        std::size_t last = 0;
        for (Cell cell : one.cells) {
            last = std::max(last, cell.part);
            cell.part += firstPart;
            cells.push_back(cell);
        }
        firstPart += last + 1;
    }
    return CellFit(cells);
}

std::optional<VarietyGate> gateOf(const std::vector<VarietyFit>& fits, double level)
{
    VarietyGate gate;
    gate.level = level;
    double ss = 0;
    for (const VarietyFit& one : fits) {
        ss += one.fit.residualSs();
        gate.df2 += one.fit.df();
    }
    const CellFit together = fitOfAll(fits);
    gate.df1 = together.df() - gate.df2;
    if (gate.df1 <= 0 || gate.df2 < kFewestDegrees || ss <= 0) {
        return std::nullopt;
    }
    gate.variance = ss / gate.df2;
    gate.f = (together.residualSs() - ss) / gate.df1 / gate.variance;
    gate.p = fUpper(gate.f, gate.df1, gate.df2);
    gate.isOpen = gate.p <= level;
    return gate;
}

class VarietyPairs
{
public:
    VarietyPairs(MediaAnswer& answer, const VerdictAsk& ask, std::size_t varieties)
        : m_answer(answer)
        , m_ask(ask)
        , m_media(0)
        , m_level(answer.gate->level / (2 * (static_cast<double>(varieties) + 1)))
    {
        for (const MediumMean& mean : answer.means) {
            m_media += mean.trays > 0 ? 1 : 0;
        }
    }

    [[nodiscard]] VarietyAnswer of(const VarietyFit& one) const
    {
        VarietyAnswer answer;
        answer.variety = one.variety;
        answer.sowings = one.fit.sowings();
        for (const PairAnswer& overall : m_answer.pairs) {
            if (one.fit.holds(overall.a) && one.fit.holds(overall.b)) {
                answer.pairs.push_back(pairOf(one.fit, overall.a, overall.b));
            }
        }
        return answer;
    }

private:
    [[nodiscard]] PairAnswer pairOf(const CellFit& fit, std::size_t a, std::size_t b) const
    {
        PairAnswer pair;
        pair.a = a;
        pair.b = b;
        pair.sowingsShared = static_cast<int>(fit.sharedDifferences(a, b).size());
        pair.difference = fit.difference(a, b);
        if (pair.difference) {
            takeInterval(pair, {m_media, m_answer.gate->df2, m_level, m_answer.gate->variance,
                                fit.relativeVariance(a, b)});
        }
        if (!refusedBeforehand(pair, m_answer, m_ask)) {
            judgeWithin(pair);
        }
        return pair;
    }

    void judgeWithin(PairAnswer& pair) const
    {
        if (!m_answer.gate->isOpen) {
            refuse(pair, Verdict::NoVerdict, NoVerdictReason::VarietiesAlike);
        } else if (pair.sowingsShared < kFewestForVerdict) {
            refuse(pair, Verdict::NoVerdict, NoVerdictReason::FewSowings);
        } else {
            judge(pair, m_ask.margin);
        }
    }

    const MediaAnswer& m_answer;
    const VerdictAsk& m_ask;
    std::size_t m_media;
    double m_level;
};

} // namespace

void answerByVariety(MediaAnswer& answer, std::span<const VarietyCell> cells, const VerdictAsk& ask)
{
    const std::vector<VarietyFit> fits = fitsByVariety(cells);
    if (fits.size() < 2) {
        return;
    }
    answer.gate = gateOf(fits, *answer.level);
    if (!answer.gate) {
        return;
    }
    const VarietyPairs pairs(answer, ask, fits.size());
    for (const VarietyFit& one : fits) {
        answer.byVariety.push_back(pairs.of(one));
    }
}

} // namespace plumule::stats
