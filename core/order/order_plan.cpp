#include "core/order/order_plan.h"

#include "core/forecast/forecast_total.h"
#include "core/order/order_needs.h"

#include <algorithm>
#include <set>

namespace plumule {
namespace {

constexpr int kFewerShown = 3;
constexpr int kMoreShown = 2;
constexpr double kLowTail = (1 - kForecastLevel) / 2;
constexpr Date kNotSownYet{}; // shares the luck of nothing that grows

class Planner
{
public:
    explicit Planner(const OrderFacts& facts)
        : m_facts(facts)
        , m_models(facts.forecast, facts.report)
    {}

    OrderLine lineOf(const Promise& promise)
    {
        OrderLine line;
        line.promise = promise;
        const auto protocol = m_facts.protocols.find(promise.order.variety);
        line.variety =
            protocol == m_facts.protocols.end() ? std::string() : protocol->second.variety.name;
        if (const auto found = m_facts.cuts.find(promise.key()); found != m_facts.cuts.end()) {
            line.cut = found->second;
        }
        takeGrowing(line);
        line.planned = chanceOf(line, nullptr, 0);
        if (protocol != m_facts.protocols.end() && line.planned.chance < kChanceWanted) {
            proposeSowing(line, protocol->second);
        }
        return line;
    }

private:
    void takeGrowing(OrderLine& line)
    {
        const Promise& promise = line.promise;
        for (const TrayForecast& tray : m_facts.report.growing) {
            if (isMet(line, nullptr, 0)) {
                return;
            }
            if (!tray.day || tray.variety != promise.order.variety) {
                continue;
            }
            const Date due = std::max(tray.day->middle, m_facts.now.date);
            const bool fits = due <= promise.day && promise.day <= due + kDaysKept;
            if (fits && m_taken.insert(tray.tray).second) {
                line.growing.push_back({tray.tray, tray.code, tray.medium, due, tray.yield.middle});
                m_sownOn[tray.tray] = tray.sownOn;
            }
        }
    }

    // Trays that were sown together share the luck of their sowing.
    std::vector<SumPart> growingParts(const OrderLine& line)
    {
        std::map<std::pair<MediumId, Date>, int> sowings;
        for (const GrowingFor& tray : line.growing) {
            ++sowings[{tray.medium, m_sownOn[tray.tray]}];
        }
        std::vector<SumPart> parts;
        parts.reserve(sowings.size() + 1);
        for (const auto& [sowing, trays] : sowings) {
            parts.push_back(
                {m_models.of(line.promise.order.variety, sowing.first), trays, sowing.second});
        }
        return parts;
    }

    // What grows for it, and so many trays more of that model.
    ForecastTotal totalOf(const OrderLine& line, const YieldModel* model, int trays)
    {
        std::vector<SumPart> parts = growingParts(line);
        if (model != nullptr && trays > 0) {
            parts.push_back({*model, trays, kNotSownYet});
        }
        return ForecastTotal(parts);
    }

    bool isMet(const OrderLine& line, const YieldModel* model, int trays)
    {
        return totalOf(line, model, trays).chanceOf(line.promise.order.amount - sumOf(line.cut)) >=
               kChanceWanted;
    }

    ChanceOfTrays chanceOf(const OrderLine& line, const YieldModel* model, int trays)
    {
        const ForecastTotal total = totalOf(line, model, trays);
        const Mass cut = sumOf(line.cut);
        return {trays, total.chanceOf(line.promise.order.amount - cut),
                cut + total.quantile(kLowTail), cut + total.mean(),
                cut + total.quantile(1 - kLowTail)};
    }

    std::optional<Medium> mediumOf(const Order& order) const
    {
        const auto usual = m_facts.usualMedia.find(order.variety);
        const std::optional<MediumId> wanted = order.medium ? order.medium
                                               : usual != m_facts.usualMedia.end()
                                                   ? std::optional(usual->second)
                                                   : std::nullopt;
        const auto found =
            wanted ? m_facts.media.find(*wanted)
                   : std::find_if(m_facts.media.begin(), m_facts.media.end(),
                                  [](const auto& each) { return !each.second.isRetired; });
        return found == m_facts.media.end() ? std::nullopt : std::optional(found->second);
    }

    // The chance grows with the trays, so that the fewest are found by halving.
    int fewestTrays(const OrderLine& line, const YieldModel& model)
    {
        int tooFew = 0;
        int enough = 1;
        while (enough < kMostTraysProposed && !isMet(line, &model, enough)) {
            tooFew = enough;
            enough = std::min(enough * 2, kMostTraysProposed);
        }
        while (enough - tooFew > 1) {
            const int middle = (tooFew + enough) / 2;
            (isMet(line, &model, middle) ? enough : tooFew) = middle;
        }
        return enough;
    }

    void proposeSowing(OrderLine& line, const Protocol& protocol)
    {
        const auto medium = mediumOf(line.promise.order);
        if (!medium) {
            return;
        }
        SowingNeed need;
        need.medium = *medium;
        need.model = m_models.of(line.promise.order.variety, medium->id);
        need.trays = fewestTrays(line, need.model);
        need.times = timesForHarvest(protocol, {line.promise.day, m_facts.morningMinute});
        need.isLate = need.times.soak.value_or(need.times.sow).date < m_facts.now.date;
        if (protocol.variety.seedPerTray) {
            need.seed = *protocol.variety.seedPerTray * need.trays;
        }
        for (int trays = std::max(0, need.trays - kFewerShown); trays <= need.trays + kMoreShown;
             ++trays) {
            line.chances.push_back(chanceOf(line, &need.model, trays));
        }
        if (!need.isLate) {
            line.planned = chanceOf(line, &need.model, need.trays);
        }
        line.sowing = need;
    }

    const OrderFacts& m_facts;
    YieldModels m_models;
    std::set<TrayId> m_taken;
    std::map<TrayId, Date> m_sownOn;
};

} // namespace

std::vector<OrderLine> planOrders(const OrderFacts& facts)
{
    std::vector<Promise> promises = facts.promises;
    std::sort(promises.begin(), promises.end(), isBefore);
    Planner planner(facts);
    std::vector<OrderLine> lines;
    lines.reserve(promises.size());
    for (const Promise& promise : promises) {
        lines.push_back(planner.lineOf(promise));
    }
    addWhatThereIs(facts, lines);
    return lines;
}

} // namespace plumule
