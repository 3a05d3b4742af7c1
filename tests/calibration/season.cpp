#include "season.h"

#include "core/stats/verdict/discards.h"
#include "core/stats/verdict/group_contrast.h"
#include "trays_as_replicates.h"

#include <cmath>

namespace plumule::calibration {
namespace {

constexpr std::size_t kFirstLook = 3;
constexpr double kEqualTruth = 1e-9;

// "Too small" tells that there is a difference, and its sign.
bool isTruth(const stats::PairAnswer& pair, double truth)
{
    if (std::abs(truth) < kEqualTruth) {
        return pair.verdict == stats::Verdict::SameWithinMargin;
    }
    if (pair.verdict == stats::Verdict::RealButTooSmall) {
        return pair.difference.value() * truth > 0;
    }
    return pair.verdict == (truth > 0 ? stats::Verdict::More : stats::Verdict::Less);
}

void judgePair(Outcome& outcome, const stats::PairAnswer& pair, double truth,
               const Looking& looking, bool isLast)
{
    if (!looking.counts || looking.counts(pair.a, pair.b)) {
        outcome.isFalse |= isFalseDifference(pair.verdict, pair.difference, truth);
        outcome.isFalse |=
            looking.countsSame && isFalseSame(pair.verdict, truth, looking.ask.margin);
        if (isLast && pair.halfWidth) {
            ++outcome.intervals;
            outcome.covering += isCovered(pair.interval(), truth) ? 1 : 0;
        }
    }
    if (looking.sought && *looking.sought == std::pair(pair.a, pair.b)) {
        outcome.isFound = outcome.isFound.value_or(false) || isTruth(pair, truth);
    }
}

void judgeGroups(Outcome& outcome, const stats::MediaAnswer& answer, const Room& room,
                 const Looking& looking)
{
    const auto effectOf = [&](std::size_t group) {
        double sum = 0;
        for (const std::size_t medium : looking.groups[group]) {
            sum += room.effect(medium) / static_cast<double>(looking.groups[group].size());
        }
        return sum;
    };
    const auto groups = stats::groupsOf(answer, looking.groups, looking.ask.margin);
    for (const stats::GroupContrast& pair : groups.pairs) {
        const double truth = effectOf(pair.a) - effectOf(pair.b);
        outcome.isFalse |= isFalseDifference(pair.verdict, pair.difference, truth);
    }
}

// What the sowings would have said without chance.
std::vector<stats::PairAnswer> truthsAsGrown(std::vector<SownTray> trays, const Room& room)
{
    for (SownTray& tray : trays) {
        tray.value = std::exp(room.effect(tray.medium, tray.variety));
    }
    return stats::answerOfSeries(trays, {}).pairs;
}

void judge(Outcome& outcome, const stats::MediaAnswer& answer, const Room& room,
           const std::vector<SownTray>& trays, const Looking& looking, bool isLast)
{
    const auto asGrown =
        looking.isAsGrown ? truthsAsGrown(trays, room) : std::vector<stats::PairAnswer>();
    for (std::size_t i = 0; i < answer.pairs.size(); ++i) {
        const stats::PairAnswer& pair = answer.pairs[i];
        const double truth = looking.isAsGrown ? asGrown[i].difference.value_or(0)
                             : looking.isOfNewVariety
                                 ? room.effectInNewVariety(pair.a) - room.effectInNewVariety(pair.b)
                                 : room.effect(pair.a) - room.effect(pair.b);
        judgePair(outcome, pair, truth, looking, isLast);
    }
    if (!looking.groups.empty()) {
        judgeGroups(outcome, answer, room, looking);
    }
    if (!looking.asksVarieties) {
        return;
    }
    for (const stats::VarietyAnswer& variety : answer.byVariety) {
        for (const stats::PairAnswer& pair : variety.pairs) {
            const double truth =
                room.effect(pair.a, variety.variety) - room.effect(pair.b, variety.variety);
            outcome.isFalse |= isFalseDifference(pair.verdict, pair.difference, truth);
        }
    }
}

std::vector<std::size_t> mediaThatDifferInDiscards(const std::vector<SownTray>& trays)
{
    std::vector<stats::SownAndDiscarded> counts;
    for (const SownTray& tray : trays) {
        counts.push_back({tray.sowing, tray.medium, 1, tray.value ? 0 : 1});
    }
    std::vector<std::size_t> media;
    for (const stats::MediumDiscards& medium : stats::discardsOf(counts)) {
        if (medium.differs) {
            media.push_back(medium.medium);
        }
    }
    return media;
}

// A set under way: what was sown and cut, and what was said of it.
class Story
{
public:
    Story(const Rules& rules, const Looking& looking, Draw& draw)
        : m_rules(rules)
        , m_looking(looking)
        , m_draw(draw)
        , m_room(rules, draw)
        , m_ask(looking.ask)
    {}

    // False when the grower stops.
    bool sow(const Grower& grower, const Harvest& harvest)
    {
        std::optional<SowingPlan> plan =
            grower ? grower({m_room, m_trays, m_answer ? &*m_answer : nullptr, m_draw})
                   : m_room.fullPlan();
        if (!plan) {
            return false;
        }
        std::vector<SownTray> cut = m_room.sow(*plan);
        if (harvest) {
            harvest(cut, m_draw);
        }
        m_trays.insert(m_trays.end(), cut.begin(), cut.end());
        return true;
    }

    void look(bool isSeries)
    {
        const bool isLast = m_room.sowings() == m_rules.sowings;
        if (m_looking.asksDiscards) {
            m_ask.survivors = mediaThatDifferInDiscards(m_trays);
        }
        m_answer = m_looking.pages ? pagesAnswer(m_trays, *m_looking.pages)
                   : isSeries      ? stats::answerOfSeries(m_trays, m_ask)
                                   : stats::answerOfSowings(m_trays, m_ask);
        judge(m_outcome, *m_answer, m_room, m_trays, m_looking, isLast);
        if (m_looking.old == AsksOld::Always || (m_looking.old == AsksOld::Last && isLast)) {
            m_outcome.isOldFalse =
                m_outcome.isOldFalse.value_or(false) || saysFalseByTrays(m_trays, m_rules);
        }
    }

    [[nodiscard]] bool isOver() const { return m_room.sowings() >= m_rules.sowings; }
    [[nodiscard]] bool isDue() const
    {
        if (m_looking.isPlanned) {
            return isOver();
        }
        return m_looking.isLookedAt ? m_looking.isLookedAt(m_room.sowings())
                                    : m_room.sowings() >= kFirstLook;
    }
    [[nodiscard]] stats::VerdictAsk& ask() { return m_ask; }
    [[nodiscard]] const Outcome& outcome() const { return m_outcome; }

private:
    const Rules& m_rules;
    const Looking& m_looking;
    Draw& m_draw;
    Room m_room;
    stats::VerdictAsk m_ask;
    std::vector<SownTray> m_trays;
    std::optional<stats::MediaAnswer> m_answer;
    Outcome m_outcome;
};

} // namespace

Outcome season(const Rules& rules, const Looking& looking, Draw& draw, const Grower& grower,
               const Harvest& harvest)
{
    Story story(rules, looking, draw);
    story.ask().series = looking.isPlanned ? stats::Series::PlanDone : stats::Series::Open;
    while (!story.isOver() && story.sow(grower, harvest)) {
        if (story.isDue()) {
            story.look(true);
        }
    }
    return story.outcome();
}

Outcome fewSowings(const Rules& rules, const Looking& looking, Draw& draw, const Grower& grower,
                   const Harvest& harvest)
{
    Story story(rules, looking, draw);
    while (!story.isOver() && story.sow(grower, harvest)) {
    }
    story.look(false);
    return story.outcome();
}

} // namespace plumule::calibration
