#include "core/harvest/weighing_rules.h"

#include "core/harvest/harvest_reason.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace plumule {
namespace {

constexpr Mass kHeaviestBowl = milligrams(50'000'000);

constexpr double kAnywhere = std::numeric_limits<double>::max();

double distanceFromMiddle(Mass net, const ExpectedRange& range)
{
    const double middle = std::sqrt(inGrams(*range.low) * inGrams(*range.high));
    return std::abs(std::log(inGrams(net) / middle));
}

// Of all bowls, one of which is that many times too heavy or too light.
std::optional<Slip> likeliestSlip(const std::vector<BowlDraft>& bowls,
                                  const ExpectedRange& expected, double times)
{
    const Mass net = netOf(bowls);
    std::optional<Slip> likeliest;
    double nearest = net > Mass{} ? distanceFromMiddle(net, expected) / 2 : kAnywhere;
    for (std::size_t i = 0; i < bowls.size(); ++i) {
        for (const double factor : {1 / times, times}) {
            const Mass gross = bowls[i].gross.scaledBy(factor);
            const Slip slip{i, gross, net - bowls[i].gross + gross};
            if (slip.net <= Mass{} || !expected.holds(slip.net)) {
                continue;
            }
            const double distance = distanceFromMiddle(slip.net, expected);
            if (distance < nearest) {
                likeliest = slip;
                nearest = distance;
            }
        }
    }
    return likeliest;
}

bool isTareForgotten(const std::vector<BowlDraft>& bowls, const std::vector<Mass>& lastTares)
{
    const bool everTared =
        !lastTares.empty() &&
        std::all_of(lastTares.begin(), lastTares.end(), [](Mass tare) { return tare > Mass{}; });
    return everTared && std::any_of(bowls.begin(), bowls.end(), [](const BowlDraft& bowl) {
               return bowl.tare == Mass{} && !bowl.isTaredByScale;
           });
}

} // namespace

const char* toText(Doubt doubt)
{
    switch (doubt) {
    case Doubt::DecimalSlip:
        return "decimal_slip";
    case Doubt::OutsideExpected:
        return "outside_expected";
    case Doubt::AlreadyWeighed:
        return "already_weighed";
    case Doubt::UnstableReading:
        return "unstable_reading";
    case Doubt::TareForgotten:
        return "tare_forgotten";
    case Doubt::NotDueYet:
        return "not_due_yet";
    }
    assert(false);
    return "";
}

Mass netOf(const std::vector<BowlDraft>& bowls)
{
    Mass net;
    for (const BowlDraft& bowl : bowls) {
        net += bowl.gross - bowl.tare;
    }
    return net;
}

Mass WeighingDraft::net() const
{
    return netOf(bowls);
}

std::optional<Slip> slipIn(const std::vector<BowlDraft>& bowls, const ExpectedRange& expected)
{
    const Mass net = netOf(bowls);
    if (expected.holds(net)) {
        return std::nullopt;
    }
    for (const double times : {10.0, kGramsPerOunce, 100.0}) {
        if (const auto slip = likeliestSlip(bowls, expected, times)) {
            return slip;
        }
    }
    return std::nullopt;
}

std::vector<Doubt> doubtsAbout(const std::vector<BowlDraft>& bowls, const WeighingFacts& facts)
{
    std::vector<Doubt> doubts;
    if (!facts.expected.holds(netOf(bowls))) {
        doubts.push_back(slipIn(bowls, facts.expected) ? Doubt::DecimalSlip
                                                       : Doubt::OutsideExpected);
    }
    if (facts.isWeighedAlready) {
        doubts.push_back(Doubt::AlreadyWeighed);
    }
    if (std::any_of(bowls.begin(), bowls.end(),
                    [](const BowlDraft& bowl) { return !bowl.isStable; })) {
        doubts.push_back(Doubt::UnstableReading);
    }
    if (isTareForgotten(bowls, facts.lastTares)) {
        doubts.push_back(Doubt::TareForgotten);
    }
    if (facts.isInTheDark) {
        doubts.push_back(Doubt::NotDueYet);
    }
    return doubts;
}

std::vector<Doubt> openDoubts(std::vector<Doubt> doubts, const std::set<Doubt>& accepted)
{
    std::erase_if(doubts, [&](Doubt doubt) { return accepted.contains(doubt); });
    return doubts;
}

bool isAsStored(const std::vector<BowlDraft>& bowls, const std::vector<Bowl>& stored)
{
    return std::equal(bowls.begin(), bowls.end(), stored.begin(), stored.end(),
                      [](const BowlDraft& draft, const Bowl& bowl) {
                          return draft.isStable && draft.gross == bowl.gross &&
                                 draft.tare == bowl.tare;
                      });
}

Done checkBowls(const std::vector<BowlDraft>& bowls)
{
    if (bowls.empty()) {
        return fail(ErrorKind::Missing, HarvestReason::NoBowls);
    }
    for (const BowlDraft& bowl : bowls) {
        if (bowl.tare < Mass{}) {
            return fail(ErrorKind::Invalid, HarvestReason::TareNegative);
        }
        if (bowl.gross > kHeaviestBowl || bowl.gross < -kHeaviestBowl) {
            return fail(ErrorKind::Invalid, HarvestReason::GrossTooHeavy);
        }
    }
    if (netOf(bowls) <= Mass{}) {
        return fail(ErrorKind::Invalid, HarvestReason::NothingNet);
    }
    return {};
}

bool isBeforeLight(const std::vector<TrayStage>& stages)
{
    const auto light = std::find_if(stages.begin(), stages.end(), [](const TrayStage& stage) {
        return stage.stage == Stage::Light;
    });
    return light != stages.end() && !light->startedOn;
}

bool isCutDue(Moment harvestDue, const std::vector<Harvest>& cuts, Date on)
{
    return harvestDue.date <= on && std::none_of(cuts.begin(), cuts.end(), [&](const Harvest& cut) {
               return cut.on >= harvestDue.date;
           });
}

} // namespace plumule
