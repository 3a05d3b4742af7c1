#include "core/harvest/weighing_rules.h"

#include "core/harvest/harvest_reason.h"

#include <algorithm>
#include <cassert>

namespace plumule {
namespace {

constexpr Mass kHeaviestBowl = milligrams(50'000'000);

bool isOutside(const WeighingDraft& draft, const WeighingFacts& facts)
{
    const Mass total = facts.cutBefore + draft.net();
    const bool isTooLight = draft.isLast && facts.expected.low && total < *facts.expected.low;
    return isTooLight || (facts.expected.high && total > *facts.expected.high);
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

std::vector<Doubt> doubtsAbout(const WeighingDraft& draft, const WeighingFacts& facts,
                               bool isResidue)
{
    std::vector<Doubt> doubts;
    if (!isResidue && isOutside(draft, facts)) {
        doubts.push_back(Doubt::OutsideExpected);
    }
    if (isResidue ? facts.isResidueWeighed : facts.isLastCutWeighed) {
        doubts.push_back(Doubt::AlreadyWeighed);
    }
    if (std::any_of(draft.bowls.begin(), draft.bowls.end(),
                    [](const BowlDraft& bowl) { return !bowl.isStable; })) {
        doubts.push_back(Doubt::UnstableReading);
    }
    if (isTareForgotten(draft.bowls, facts.lastTares)) {
        doubts.push_back(Doubt::TareForgotten);
    }
    if (facts.isInTheDark) {
        doubts.push_back(Doubt::NotDueYet);
    }
    return doubts;
}

std::optional<Doubt> firstOpenDoubt(const WeighingDraft& draft, const std::vector<Doubt>& doubts)
{
    const auto open = std::find_if(doubts.begin(), doubts.end(),
                                   [&](Doubt doubt) { return !draft.accepted.contains(doubt); });
    return open == doubts.end() ? std::nullopt : std::optional(*open);
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
