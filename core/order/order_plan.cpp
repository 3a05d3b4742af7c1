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
        if (protocol != m_facts.protocols.end() && !isMet(line.planned)) {
            proposeSowing(line, protocol->second);
        }
        return line;
    }

private:
    static bool isMet(const ChanceOfTrays& chance) { return chance.chance >= kChanceWanted; }

    const YieldModel& modelOf(VarietyId variety, MediumId medium)
    {
        const auto key = std::pair(variety, medium);
        const auto found = m_models.find(key);
        return found != m_models.end()
                   ? found->second
                   : m_models
                         .emplace(key,
                                  yieldModel(m_facts.forecast, m_facts.report, variety, medium))
                         .first->second;
    }

    void takeGrowing(OrderLine& line)
    {
        const Promise& promise = line.promise;
        for (const TrayForecast& tray : m_facts.report.growing) {
            if (isMet(chanceOf(line, nullptr, 0))) {
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
                {modelOf(line.promise.order.variety, sowing.first), trays, sowing.second});
        }
        return parts;
    }

    ChanceOfTrays chanceOf(const OrderLine& line, const YieldModel* model, int trays)
    {
        std::vector<SumPart> parts = growingParts(line);
        if (model != nullptr && trays > 0) {
            parts.push_back({*model, trays, kNotSownYet});
        }
        const Mass cut = sumOf(line.cut);
        const Mass lacking = line.promise.order.amount - cut;
        const ForecastTotal total(parts);
        return {trays, lacking <= Mass{} ? 1 : total.chanceOf(lacking),
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
        while (enough < kMostTraysProposed && !isMet(chanceOf(line, &model, enough))) {
            tooFew = enough;
            enough = std::min(enough * 2, kMostTraysProposed);
        }
        while (enough - tooFew > 1) {
            const int middle = (tooFew + enough) / 2;
            (isMet(chanceOf(line, &model, middle)) ? enough : tooFew) = middle;
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
        need.model = modelOf(line.promise.order.variety, medium->id);
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
    std::map<std::pair<VarietyId, MediumId>, YieldModel> m_models;
    std::set<TrayId> m_taken;
    std::map<TrayId, Date> m_sownOn;
};

} // namespace

std::vector<OrderLine> planOrders(const OrderFacts& facts)
{
    std::vector<Promise> promises = facts.promises;
    std::sort(promises.begin(), promises.end(),
              [](const Promise& a, const Promise& b) { return a.key() < b.key(); });
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
