#include "core/journal/harvest/tray_at_scale.h"

#include "core/harvest/harvest_reason.h"
#include "core/harvest/harvest_repository.h"
#include "core/harvest/weighing_rules.h"
#include "core/journal/harvest/weigh_in.h"
#include "core/room/room_repository.h"
#include "core/starter/starter_yields.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/variety/variety_repository.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr int kTaresLookedAt = 3;
// Rooms and sowing rates differ so much that a tray may give a third of what was read, or, sown as
// densely as for sale, four times as much (from memory).
constexpr double kLibraryLess = 3;
constexpr double kLibraryMore = 4;
// What is left in a tray after cutting, from a thin mat to a deep wet mix (from memory).
constexpr Mass kLightestResidue = milligrams(20'000);
constexpr Mass kHeaviestResidue = milligrams(5'000'000);

ExpectedRange libraryRange(Database& database, const Tray& tray)
{
    const auto variety = VarietyRepository(database).find(tray.variety);
    const LibraryYield yield = libraryYield(variety ? variety->name : "");
    const double area = RoomRepository(database).room().trayArea();
    ExpectedRange range;
    range.source = yield.source;
    range.low = grams(yield.gramsLow * area / kLibraryLess);
    range.high = grams(yield.gramsHigh * area * kLibraryMore);
    return range;
}

// The nearest that history has a range from. A later cut is held against later cuts alone: by seed,
// and in the library, there are but first ones.
ExpectedRange expectedCut(Database& database, const Tray& tray, int cut)
{
    HarvestRepository harvests(database);
    ExpectedRange range;
    for (const RangeSource from :
         {RangeSource::VarietyOnMedium, RangeSource::SameTrial, RangeSource::Variety}) {
        if (from == RangeSource::SameTrial && !tray.trial) {
            continue;
        }
        range = rangeFrom(from, harvests.pastCuts(tray, from, cut));
        if (range.isKnown()) {
            return range;
        }
    }
    if (cut > 1) {
        return range;
    }
    if (tray.seed) {
        range = rangeBySeed(harvests.pastCuts(tray, RangeSource::RoomBySeed, cut), tray.variety,
                            *tray.seed);
    }
    return range.isKnown() ? range : libraryRange(database, tray);
}

ExpectedRange expectedResidue(Database& database, const Tray& tray)
{
    HarvestRepository harvests(database);
    for (const RangeSource from : {RangeSource::VarietyOnMedium, RangeSource::Medium}) {
        ExpectedRange range = rangeFrom(from, harvests.pastResidues(tray, from));
        if (range.isKnown()) {
            return range;
        }
    }
    ExpectedRange wide;
    wide.source = kFromMemory;
    wide.low = kLightestResidue;
    wide.high = kHeaviestResidue;
    return wide;
}

bool isInTheDark(Database& database, const Tray& tray)
{
    return tray.state == TrayState::Growing &&
           isBeforeLight(TrayRepository(database).stages(tray.id));
}

int cutNumber(const std::vector<Harvest>& cuts)
{
    return cuts.empty() ? 1 : cuts.back().cut + 1;
}

WeighingFacts factsOf(Database& database, const Tray& tray, const std::vector<Harvest>& cuts,
                      const Harvest* corrected)
{
    HarvestRepository harvests(database);
    WeighingFacts facts;
    facts.expected = expectedCut(database, tray, corrected ? corrected->cut : cutNumber(cuts));
    facts.isWeighedAlready = std::any_of(cuts.begin(), cuts.end(), [&](const Harvest& cut) {
        return cut.isLast && (corrected == nullptr || cut.id != corrected->id);
    });
    facts.isInTheDark = isInTheDark(database, tray);
    facts.lastTares = harvests.lastTares(kTaresLookedAt);
    return facts;
}

// The scale's bowls are not the tares of whole trays.
WeighingFacts residueFactsOf(Database& database, const Tray& tray,
                             const std::vector<Residue>& residues)
{
    WeighingFacts facts;
    facts.expected = expectedResidue(database, tray);
    facts.isWeighedAlready = !residues.empty();
    facts.isInTheDark = isInTheDark(database, tray);
    return facts;
}

// A growing tray that was taken off the racks has a last place, but stands nowhere.
std::optional<Spot> spotAtScale(Database& database, const TrayRecord& record)
{
    if (!record.place) {
        return std::nullopt;
    }
    if (record.tray.state == TrayState::Growing) {
        const auto standing = TrayRepository(database).occupied();
        const auto here = standing.find(*record.place);
        if (here == standing.end() || here->second != record.tray.id) {
            return std::nullopt;
        }
    }
    for (const Spot& spot : RoomRepository(database).layout().spots()) {
        if (spot.place == *record.place) {
            return spot;
        }
    }
    return std::nullopt;
}

TrayAtScale atScaleWithoutFacts(Database& database, const TrayRecord& record, Date today)
{
    HarvestRepository harvests(database);
    TrayAtScale tray;
    tray.record = record;
    tray.spot = spotAtScale(database, record);
    tray.day = dayCount(record.tray.sownOn, record.tray.endedOn.value_or(today));
    if (!record.stages.empty()) {
        tray.lastDay = dayCount(record.tray.sownOn, planOf(record.stages).harvest.date);
    }
    if (record.tray.piece) {
        tray.pieceUse = harvests.useOfPiece(record.tray);
    }
    tray.cuts = harvests.ofTray(record.tray.id);
    tray.residues = harvests.residuesOfTray(record.tray.id);
    tray.cut = cutNumber(tray.cuts);
    tray.trial = trialSoFarOf(database, record.tray);
    return tray;
}

} // namespace

Done checkNotDiscarded(const Tray& tray)
{
    if (tray.state == TrayState::Discarded) {
        return fail(ErrorKind::Conflict, HarvestReason::TrayDiscarded, tray.code);
    }
    return {};
}

std::vector<Bowl> bowlsAtScale(Database& database, const Harvest& cut)
{
    std::vector<Bowl> bowls = HarvestRepository(database).bowls(cut.id);
    if (bowls.empty()) {
        bowls.push_back({{}, cut.id, cut.net, Mass{}});
    }
    return bowls;
}

WeighingFacts factsAtScale(Database& database, const Tray& tray, Weighing what,
                           const Harvest* corrected)
{
    HarvestRepository harvests(database);
    return what == Weighing::Cut ? factsOf(database, tray, harvests.ofTray(tray.id), corrected)
                                 : residueFactsOf(database, tray, harvests.residuesOfTray(tray.id));
}

Result<TrayAtScale> trayAtScale(Database& database, const std::string& code, Weighing what,
                                Date today)
{
    TrayRepository trays(database);
    const auto found = trays.findByCode(code);
    const auto record = found ? trays.record(found->id) : std::nullopt;
    if (!record) {
        return fail(ErrorKind::NotFound, TrayReason::CodeUnknown, code);
    }
    if (Done allowed = checkNotDiscarded(record->tray); !allowed) {
        return passOn(allowed);
    }
    TrayAtScale tray = atScaleWithoutFacts(database, *record, today);
    tray.facts = what == Weighing::Cut ? factsOf(database, record->tray, tray.cuts, nullptr)
                                       : residueFactsOf(database, record->tray, tray.residues);
    return tray;
}

Result<CutAtScale> cutAtScale(Database& database, HarvestId cut, Date today)
{
    const auto harvest = HarvestRepository(database).find(cut);
    const auto record = harvest ? TrayRepository(database).record(harvest->tray) : std::nullopt;
    if (!record) {
        return fail(ErrorKind::NotFound, HarvestReason::Unknown);
    }
    if (Done allowed = checkNotDiscarded(record->tray); !allowed) {
        return passOn(allowed);
    }
    CutAtScale shown{atScaleWithoutFacts(database, *record, today), *harvest,
                     bowlsAtScale(database, *harvest)};
    shown.tray.cut = harvest->cut;
    shown.tray.facts = factsOf(database, record->tray, shown.tray.cuts, &*harvest);
    return shown;
}

} // namespace plumule
