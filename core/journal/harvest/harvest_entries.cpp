#include "core/journal/harvest/harvest_entries.h"

#include "core/harvest/harvest_reason.h"
#include "core/harvest/harvest_repository.h"
#include "core/harvest/weighing_rules.h"
#include "core/journal/harvest/weigh_in.h"
#include "core/journal/ledger/ledger.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr int kTaresLookedAt = 3;

ExpectedRange expectedFor(Database& database, const Tray& tray)
{
    return expectedRange(HarvestRepository(database).yieldsOf(tray.variety, tray.medium, tray.id));
}

Mass sumOf(const std::vector<Harvest>& cuts)
{
    Mass sum;
    for (const Harvest& cut : cuts) {
        sum += cut.net;
    }
    return sum;
}

bool hasLastCut(const std::vector<Harvest>& cuts)
{
    return std::any_of(cuts.begin(), cuts.end(), [](const Harvest& cut) { return cut.isLast; });
}

bool isInTheDark(Database& database, const Tray& tray)
{
    return tray.state == TrayState::Growing &&
           isBeforeLight(TrayRepository(database).stages(tray.id));
}

std::vector<Doubt> doubtsOn(Database& database, const Tray& tray, const WeighingDraft& draft,
                            bool isResidue)
{
    HarvestRepository harvests(database);
    const std::vector<Harvest> cuts = harvests.ofTray(tray.id);
    WeighingFacts facts;
    facts.expected = isResidue ? ExpectedRange{} : expectedFor(database, tray);
    facts.cutBefore = sumOf(cuts);
    facts.isLastCutWeighed = hasLastCut(cuts);
    facts.isResidueWeighed = !harvests.residuesOfTray(tray.id).empty();
    facts.isInTheDark = isInTheDark(database, tray);
    // The scale's bowls are not the tares of whole trays.
    facts.lastTares = isResidue ? std::vector<Mass>{} : harvests.lastTares(kTaresLookedAt);
    return doubtsAbout(draft, facts, isResidue);
}

Done checkNotDiscarded(const Tray& tray)
{
    if (tray.state == TrayState::Discarded) {
        return fail(ErrorKind::Conflict, HarvestReason::TrayDiscarded, tray.code);
    }
    return {};
}

// What is refused whatever is accepted.
Result<Tray> trayToWeigh(Database& database, const WeighingDraft& draft)
{
    const auto tray = TrayRepository(database).find(draft.tray);
    if (!tray) {
        return fail(ErrorKind::NotFound, TrayReason::Unknown);
    }
    if (Done allowed = checkNotDiscarded(*tray); !allowed) {
        return passOn(allowed);
    }
    if (Done allowed = checkBowls(draft.bowls); !allowed) {
        return passOn(allowed);
    }
    if (draft.at.date < tray->sownOn) {
        return fail(ErrorKind::Invalid, HarvestReason::BeforeSowing, toIso(tray->sownOn));
    }
    return *tray;
}

Done checkDoubts(Database& database, const Tray& tray, const WeighingDraft& draft, bool isResidue)
{
    if (const auto open = firstOpenDoubt(draft, doubtsOn(database, tray, draft, isResidue))) {
        return fail(ErrorKind::Conflict, HarvestReason::DoubtOpen, toText(*open));
    }
    return {};
}

// A tray is harvested while one of its cuts is the last one.
void followCuts(Database& database, Tray& tray)
{
    TrayRepository trays(database);
    const std::vector<Harvest> cuts = HarvestRepository(database).ofTray(tray.id);
    const auto last =
        std::find_if(cuts.begin(), cuts.end(), [](const Harvest& cut) { return cut.isLast; });
    if (last != cuts.end() && tray.state == TrayState::Growing) {
        trays.end(tray, TrayState::Harvested, {last->on, last->minute});
    } else if (last == cuts.end() && tray.state == TrayState::Harvested) {
        trays.reopen(tray);
    }
}

void storeBowls(HarvestRepository& harvests, HarvestId harvest, const std::vector<BowlDraft>& bowls)
{
    for (const BowlDraft& draft : bowls) {
        Bowl bowl{{}, harvest, draft.gross, draft.tare};
        harvests.insert(bowl);
    }
}

Harvest storeCut(Database& database, const WeighingDraft& draft)
{
    HarvestRepository harvests(database);
    const std::vector<Harvest> before = harvests.ofTray(draft.tray);
    Harvest harvest;
    harvest.tray = draft.tray;
    harvest.cut = before.empty() ? 1 : before.back().cut + 1;
    harvest.on = draft.at.date;
    harvest.minute = draft.at.minute;
    harvest.net = draft.net();
    harvest.isLast = draft.isLast;
    harvest.note = draft.note;
    harvests.insert(harvest);
    storeBowls(harvests, harvest.id, draft.bowls);
    return harvest;
}

Residue residueFrom(const WeighingDraft& draft)
{
    Residue residue;
    residue.tray = draft.tray;
    residue.on = draft.at.date;
    residue.minute = draft.at.minute;
    residue.net = draft.net();
    Mass gross;
    Mass tare;
    for (const BowlDraft& bowl : draft.bowls) {
        gross += bowl.gross;
        tare += bowl.tare;
    }
    residue.gross = gross;
    residue.tare = tare;
    return residue;
}

// The cut and the tray that it belongs to.
Result<std::pair<Harvest, Tray>> cutToChange(Database& database, HarvestId id)
{
    const auto harvest = HarvestRepository(database).find(id);
    if (!harvest) {
        return fail(ErrorKind::NotFound, HarvestReason::Unknown);
    }
    const auto tray = TrayRepository(database).find(harvest->tray);
    if (!tray) {
        return fail(ErrorKind::NotFound, TrayReason::Unknown);
    }
    if (Done allowed = checkNotDiscarded(*tray); !allowed) {
        return passOn(allowed);
    }
    return std::pair(*harvest, *tray);
}

} // namespace

Result<WeighIn> HarvestEntries::weighIn(Date date)
{
    return m_ledger.ask([&](Database& database) { return weighInOn(database, date); });
}

Result<std::vector<DueRow>> HarvestEntries::residuesDue(Date date)
{
    return m_ledger.ask([&](Database& database) { return residuesDueOn(database, date); });
}

Result<TrayAtScale> HarvestEntries::atScale(const std::string& code)
{
    return m_ledger.ask([&](Database& database) -> Result<TrayAtScale> {
        TrayRepository trays(database);
        const auto found = trays.findByCode(code);
        const auto record = found ? trays.record(found->id) : std::nullopt;
        if (!record) {
            return fail(ErrorKind::NotFound, TrayReason::CodeUnknown, code);
        }
        if (Done allowed = checkNotDiscarded(record->tray); !allowed) {
            return passOn(allowed);
        }
        HarvestRepository harvests(database);
        TrayAtScale tray;
        tray.record = *record;
        tray.day =
            dayCount(record->tray.sownOn, record->tray.endedOn.value_or(m_ledger.clock().today()));
        if (record->tray.piece) {
            tray.pieceUse = harvests.useOfPiece(record->tray);
        }
        tray.cuts = harvests.ofTray(record->tray.id);
        tray.residues = harvests.residuesOfTray(record->tray.id);
        tray.expected = expectedFor(database, record->tray);
        tray.isInTheDark = isInTheDark(database, record->tray);
        return tray;
    });
}

Result<std::optional<TrialSoFar>> HarvestEntries::trialSoFar(TrayId tray)
{
    return m_ledger.ask([&](Database& database) { return trialSoFarOf(database, tray); });
}

Result<std::vector<Doubt>> HarvestEntries::doubts(const WeighingDraft& draft, bool isResidue)
{
    return m_ledger.ask([&](Database& database) -> Result<std::vector<Doubt>> {
        const auto tray = trayToWeigh(database, draft);
        if (!tray) {
            return passOn(tray);
        }
        return doubtsOn(database, *tray, draft, isResidue);
    });
}

Result<Harvest> HarvestEntries::record(const WeighingDraft& draft)
{
    return m_ledger.record(Intention::RecordHarvest,
                           [&](Database& database, Deed& deed) -> Result<Harvest> {
                               auto tray = trayToWeigh(database, draft);
                               if (!tray) {
                                   return passOn(tray);
                               }
                               if (Done sure = checkDoubts(database, *tray, draft, false); !sure) {
                                   return passOn(sure);
                               }
                               deed.whom = tray->code;
                               const Harvest harvest = storeCut(database, draft);
                               followCuts(database, *tray);
                               return harvest;
                           });
}

Result<Residue> HarvestEntries::recordResidue(const WeighingDraft& draft)
{
    return m_ledger.record(Intention::RecordResidue,
                           [&](Database& database, Deed& deed) -> Result<Residue> {
                               const auto tray = trayToWeigh(database, draft);
                               if (!tray) {
                                   return passOn(tray);
                               }
                               if (Done sure = checkDoubts(database, *tray, draft, true); !sure) {
                                   return passOn(sure);
                               }
                               deed.whom = tray->code;
                               Residue residue = residueFrom(draft);
                               HarvestRepository(database).insert(residue);
                               return residue;
                           });
}

Result<Harvest> HarvestEntries::correct(HarvestId id, const std::vector<BowlDraft>& bowls,
                                        bool isLast)
{
    return m_ledger.record(Intention::CorrectHarvest,
                           [&](Database& database, Deed& deed) -> Result<Harvest> {
                               auto found = cutToChange(database, id);
                               if (!found) {
                                   return passOn(found);
                               }
                               if (Done allowed = checkBowls(bowls); !allowed) {
                                   return passOn(allowed);
                               }
                               auto& [harvest, tray] = *found;
                               deed.whom = tray.code;
                               harvest.net = netOf(bowls);
                               harvest.isLast = isLast;
                               HarvestRepository harvests(database);
                               harvests.update(harvest);
                               harvests.removeBowls(harvest.id);
                               storeBowls(harvests, harvest.id, bowls);
                               followCuts(database, tray);
                               return harvest;
                           });
}

Result<std::vector<Bowl>> HarvestEntries::bowls(HarvestId harvest)
{
    return m_ledger.ask(
        [&](Database& database) { return HarvestRepository(database).bowls(harvest); });
}

Done HarvestEntries::remove(HarvestId id)
{
    return m_ledger.record(Intention::RemoveHarvest, [&](Database& database, Deed& deed) -> Done {
        auto found = cutToChange(database, id);
        if (!found) {
            return passOn(found);
        }
        auto& [harvest, tray] = *found;
        deed.whom = tray.code;
        HarvestRepository(database).remove(harvest.id);
        followCuts(database, tray);
        return {};
    });
}

} // namespace plumule
