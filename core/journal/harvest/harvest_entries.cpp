#include "core/journal/harvest/harvest_entries.h"

#include "core/harvest/harvest_reason.h"
#include "core/harvest/harvest_repository.h"
#include "core/harvest/weighing_rules.h"
#include "core/journal/harvest/tray_at_scale.h"
#include "core/journal/harvest/weigh_in.h"
#include "core/journal/ledger/ledger.h"
#include "core/medium/medium_repository.h"
#include "core/tray/stay_rules.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// What is refused whatever is accepted.
Result<Tray> trayToWeigh(Database& database, const WeighingDraft& draft, Date today)
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
    if (draft.at.date > today) {
        return fail(ErrorKind::Invalid, HarvestReason::Ahead);
    }
    return *tray;
}

Done checkDoubts(const std::vector<BowlDraft>& bowls, const WeighingFacts& facts,
                 const std::set<Doubt>& accepted)
{
    const std::vector<Doubt> open = openDoubts(doubtsAbout(bowls, facts), accepted);
    if (!open.empty()) {
        return fail(ErrorKind::Conflict, HarvestReason::DoubtOpen, toText(open.front()));
    }
    return {};
}

// A tray that was taken for harvested grew on; its piece must not have been given to another since.
Done checkPieceIsStillIts(Database& database, const Tray& tray)
{
    const auto record = tray.piece ? MediumRepository(database).record(*tray.piece) : std::nullopt;
    if (record && record->isInUse) {
        return fail(ErrorKind::Conflict, HarvestReason::PieceInUse, tray.code,
                    record->piece.number);
    }
    if (record && record->piece.retiredOn) {
        return fail(ErrorKind::Conflict, HarvestReason::PieceRetired, tray.code,
                    record->piece.number);
    }
    return {};
}

// A tray is harvested while one of its cuts is the last one.
Done followCuts(Database& database, Tray& tray)
{
    TrayRepository trays(database);
    const std::vector<Harvest> cuts = HarvestRepository(database).ofTray(tray.id);
    const auto last =
        std::find_if(cuts.begin(), cuts.end(), [](const Harvest& cut) { return cut.isLast; });
    if (last != cuts.end() && tray.state == TrayState::Growing) {
        const Moment at{last->on, last->minute};
        if (Done allowed = checkEnd(trays.openStay(tray.id), at); !allowed) {
            return allowed;
        }
        trays.end(tray, TrayState::Harvested, at);
    } else if (last == cuts.end() && tray.state == TrayState::Harvested) {
        if (Done free = checkPieceIsStillIts(database, tray); !free) {
            return free;
        }
        trays.reopen(tray);
    }
    return {};
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

Result<TrayAtScale> HarvestEntries::atScale(const std::string& code, Weighing what)
{
    return m_ledger.ask([&](Database& database) {
        return trayAtScale(database, code, what, m_ledger.clock().today());
    });
}

Result<CutAtScale> HarvestEntries::cutAtScale(HarvestId cut)
{
    return m_ledger.ask([&](Database& database) {
        return plumule::cutAtScale(database, cut, m_ledger.clock().today());
    });
}

Result<Harvest> HarvestEntries::record(const WeighingDraft& draft)
{
    return m_ledger.record(
        Intention::RecordHarvest, [&](Database& database, Deed& deed) -> Result<Harvest> {
            auto tray = trayToWeigh(database, draft, m_ledger.clock().today());
            if (!tray) {
                return passOn(tray);
            }
            const WeighingFacts facts = factsAtScale(database, *tray, Weighing::Cut);
            if (Done sure = checkDoubts(draft.bowls, facts, draft.accepted); !sure) {
                return passOn(sure);
            }
            deed.whom = tray->code;
            deed.with = {std::to_string(draft.net().count())};
            const Harvest harvest = storeCut(database, draft);
            if (Done followed = followCuts(database, *tray); !followed) {
                return passOn(followed);
            }
            return harvest;
        });
}

Result<Residue> HarvestEntries::recordResidue(const WeighingDraft& draft)
{
    return m_ledger.record(
        Intention::RecordResidue, [&](Database& database, Deed& deed) -> Result<Residue> {
            const auto tray = trayToWeigh(database, draft, m_ledger.clock().today());
            if (!tray) {
                return passOn(tray);
            }
            const WeighingFacts facts = factsAtScale(database, *tray, Weighing::Residue);
            if (Done sure = checkDoubts(draft.bowls, facts, draft.accepted); !sure) {
                return passOn(sure);
            }
            deed.whom = tray->code;
            deed.with = {std::to_string(draft.net().count())};
            Residue residue = residueFrom(draft);
            HarvestRepository(database).insert(residue);
            return residue;
        });
}

Result<Harvest> HarvestEntries::correct(const CutCorrection& correction)
{
    return m_ledger.record(
        Intention::CorrectHarvest, [&](Database& database, Deed& deed) -> Result<Harvest> {
            auto found = cutToChange(database, correction.cut);
            if (!found) {
                return passOn(found);
            }
            if (Done allowed = checkBowls(correction.bowls); !allowed) {
                return passOn(allowed);
            }
            auto& [harvest, tray] = *found;
            deed.whom = tray.code;
            HarvestRepository harvests(database);
            if (!isAsStored(correction.bowls, bowlsAtScale(database, harvest))) {
                const WeighingFacts facts = factsAtScale(database, tray, Weighing::Cut, &harvest);
                if (Done sure = checkDoubts(correction.bowls, facts, correction.accepted); !sure) {
                    return passOn(sure);
                }
                deed.with = {std::to_string(netOf(correction.bowls).count()),
                             std::to_string(harvest.net.count())};
                harvest.net = netOf(correction.bowls);
                harvests.removeBowls(harvest.id);
                storeBowls(harvests, harvest.id, correction.bowls);
            }
            harvest.isLast = correction.isLast;
            harvests.update(harvest);
            if (Done followed = followCuts(database, tray); !followed) {
                return passOn(followed);
            }
            return harvest;
        });
}

} // namespace plumule
