#include "core/review/answer/season_answer.h"

#include "core/base/work_reason.h"
#include "core/medium/medium_reason.h"

#include <algorithm>
#include <cassert>

namespace plumule {
namespace {

template <class Key>
bool isListed(const std::vector<Key>& keys, Key key)
{
    return std::find(keys.begin(), keys.end(), key) != keys.end();
}

template <class Key>
void addNames(std::vector<std::string>& names, const std::vector<Key>& chosen,
              const std::map<Key, std::string>& known)
{
    for (const auto& [id, name] : known) {
        if (isListed(chosen, id)) {
            names.push_back(name);
        }
    }
}

std::vector<std::string> namesChosen(const SeasonFacts& facts, const SeasonFilter& filter)
{
    std::vector<std::string> names;
    addNames(names, filter.varieties, facts.varieties);
    addNames(names, filter.trials, facts.trials);
    const RoomLayout& layout = facts.cost.layout;
    for (const Shelf& shelf : layout.shelves) {
        if (!isListed(filter.shelves, shelf.id)) {
            continue;
        }
        const auto rack = std::find_if(layout.racks.begin(), layout.racks.end(),
                                       [&](const Rack& one) { return one.id == shelf.rack; });
        names.push_back((rack == layout.racks.end() ? "" : rack->name) + shelf.name);
    }
    return names;
}

TastingsOfSpan tastingsOf(const std::vector<PanelRecord>& panels,
                          const std::map<MediumId, Medium>& known)
{
    TastingsOfSpan tastings;
    for (const PanelRecord& record : panels) {
        if (record.panel.isOpen()) {
            ++tastings.open;
            continue;
        }
        std::vector<Medium> media;
        for (const PanelSample& sample : record.samples) {
            const auto medium = known.find(sample.medium);
            if (medium != known.end()) {
                media.push_back(medium->second);
            }
        }
        tastings.closed.push_back(
            {record.panel, media.size() == record.samples.size()
                               ? tastingResult(record, media)
                               : fail(ErrorKind::NotFound, MediumReason::Unknown)});
    }
    return tastings;
}

// Works one part out after another, and says how far it is.
class Answerer
{
public:
    Answerer(const SeasonQuestion& question, AnswerFacts facts, const Progress& progress)
        : m_question(question)
        , m_facts(std::move(facts))
        , m_progress(progress)
        , m_steps(1 + static_cast<double>(question.asks.size() + question.parts.size()))
    {}

    [[nodiscard]] Result<SeasonAnswer> answer()
    {
        prepare();
        for (const ComparisonAsk& ask : m_question.asks) {
            m_answer.comparisons.push_back(comparisonOf(m_facts.season, m_question.filter,
                                                        m_question.series, ask, m_progress));
            m_progress.report(++m_done / m_steps);
            if (m_progress.isStopped()) {
                return fail(ErrorKind::Cancelled, WorkReason::Stopped);
            }
        }
        addParts();
        if (m_progress.isStopped()) {
            return fail(ErrorKind::Cancelled, WorkReason::Stopped);
        }
        m_progress.report(1);
        return std::move(m_answer);
    }

private:
    void prepare()
    {
        const SeasonFilter& filter = m_question.filter;
        apply(m_question.whatIf, m_facts.season);
        priceTrays(m_facts.season, m_progress);
        m_answer.room = m_facts.season.cost.layout.room.name;
        m_answer.units = m_facts.season.cost.layout.room.units;
        m_answer.madeOn = m_facts.today;
        m_answer.series = m_question.series;
        m_answer.chosen = namesChosen(m_facts.season, filter);
        m_answer.review = reviewOf(m_facts.season, filter);
        for (const SeasonFilter& other : m_question.beside) {
            m_answer.beside.push_back({other, reviewOf(m_facts.season, other)});
        }
        m_progress.report(++m_done / m_steps);
    }

    void addParts()
    {
        if (isAsked(SeasonPart::HeightFits)) {
            m_answer.heights = heightFits(m_facts.season, m_question.filter);
            m_progress.report(++m_done / m_steps);
        }
        if (isAsked(SeasonPart::Paybacks)) {
            m_answer.paybacks = paybackOf(m_facts.season, m_answer.review);
            m_answer.curveLacks = curveLacks(m_facts.season, m_answer.review);
            m_progress.report(++m_done / m_steps);
        }
        if (isAsked(SeasonPart::Ageing)) {
            m_answer.ageing = pieceAgeing(m_facts.season, m_question.filter);
            m_progress.report(++m_done / m_steps);
        }
        if (isAsked(SeasonPart::Tastings)) {
            m_answer.tastings = m_facts.panels.map([&](const std::vector<PanelRecord>& panels) {
                return tastingsOf(panels, m_facts.season.media);
            });
        }
        if (isAsked(SeasonPart::Protocols)) {
            m_answer.protocols = std::move(m_facts.protocols);
        }
    }

    [[nodiscard]] bool isAsked(SeasonPart part) const { return m_question.parts.count(part) > 0; }

    const SeasonQuestion& m_question;
    AnswerFacts m_facts;
    const Progress& m_progress;
    const double m_steps;
    double m_done = 0;
    SeasonAnswer m_answer;
};

} // namespace

const SeasonComparison& SeasonAnswer::comparison(Response response) const
{
    const auto found =
        std::find_if(comparisons.begin(), comparisons.end(),
                     [&](const SeasonComparison& each) { return each.ask.response == response; });
    assert(found != comparisons.end());
    return *found;
}

Result<SeasonAnswer> answerOf(const SeasonQuestion& question, AnswerFacts facts,
                              const Progress& progress)
{
    return Answerer(question, std::move(facts), progress).answer();
}

bool isOfSpan(const Panel& panel, const SeasonFilter& filter)
{
    const bool isOfTrial =
        filter.trials.empty() || (panel.trial && isListed(filter.trials, *panel.trial));
    return isOfTrial && !(panel.on < filter.from) && !(filter.to < panel.on);
}

} // namespace plumule
