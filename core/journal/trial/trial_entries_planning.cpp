// Part of core/journal/trial/trial_entries.h: planning and sowing.
#include "core/journal/trial/trial_entries.h"

#include "core/journal/ledger/ledger.h"
#include "core/journal/tray/sowing.h"
#include "core/journal/trial/trial_preparation.h"
#include "core/journal/trial/trial_storing.h"
#include "core/journal/trial/usual_trial.h"
#include "core/medium/medium_repository.h"
#include "core/trial/draw.h"
#include "core/trial/trial_places.h"
#include "core/trial/trial_plan_repository.h"
#include "core/trial/trial_reason.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr std::int64_t kDrawNumbers = 1'000'000; // short enough to be typed again

// Feeding that differs from the protocol needs a protocol that feeds.
Done checkFeeding(Database& database, const TrialDraft& draft)
{
    const auto stages = VarietyRepository(database).stages(draft.plan.variety);
    const bool feeds = std::any_of(stages.begin(), stages.end(), [](const ProtocolStage& stage) {
        return stage.water == WaterKind::Nutrient;
    });
    const bool asksForIt =
        std::any_of(draft.treatments.begin(), draft.treatments.end(),
                    [](const Treatment& one) { return one.feeding != Feeding::AsProtocol; });
    if (asksForIt && !feeds) {
        return fail(ErrorKind::Invalid, TrialReason::FeedingWithoutNutrient);
    }
    return {};
}

// Pieces to sow on, those used least first.
Result<std::vector<PieceId>> cleanPieces(Database& database, const Medium& medium, int count)
{
    std::vector<PieceRecord> clean = MediumRepository(database).pieces(medium.id, Listed::InUse);
    std::erase_if(clean, [](const PieceRecord& piece) { return !piece.isFree(); });
    if (static_cast<int>(clean.size()) < count) {
        return fail(ErrorKind::Conflict, TrialReason::TooFewPieces, medium.name, clean.size(),
                    count);
    }
    std::stable_sort(clean.begin(), clean.end(),
                     [](const PieceRecord& a, const PieceRecord& b) { return a.uses < b.uses; });
    std::vector<PieceId> pieces;
    pieces.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        pieces.push_back(clean[static_cast<std::size_t>(i)].piece.id);
    }
    return pieces;
}

// The trays of one medium of the trial, as one sowing.
struct MediumSowing
{
    SowingDraft draft;
    SowingGround ground;
    std::size_t next = 0; // piece
};

// Sows a stored draft whose layout is sound.
class TrialSowing
{
public:
    TrialSowing(Database& database, TrialDraft& draft, Moment at, std::optional<std::string> sownBy)
        : m_database(database)
        , m_draft(draft)
        , m_at(at)
        , m_sownBy(std::move(sownBy))
    {}

    // Looks at everything before the first tray is stored.
    [[nodiscard]] Done prepare()
    {
        for (const PlannedTray& tray : m_draft.trays) {
            SowingDraft& sowing = m_sowings[mediumOf(tray)].draft;
            sowing.count = sowing.variety.isStored() ? sowing.count + 1 : 1;
            sowing.variety = m_draft.plan.variety;
            if (tray.place) {
                sowing.places.push_back(*tray.place);
            }
        }
        for (auto& [medium, sowing] : m_sowings) {
            if (auto done = prepare(medium, sowing); !done) {
                return done;
            }
        }
        return {};
    }

    std::vector<TrayId> sow()
    {
        TrialPlanRepository plans(m_database);
        const Variety& variety = m_sowings.begin()->second.ground.protocol.variety;
        const auto codes = nextCodes(m_database, variety, static_cast<int>(m_draft.trays.size()));
        std::vector<TrayId> sown;
        for (PlannedTray& tray : m_draft.trays) {
            tray.tray = sow(tray, codes[sown.size()]);
            plans.update(tray);
            sown.push_back(*tray.tray);
        }
        return sown;
    }

private:
    [[nodiscard]] const Treatment& treatmentOf(const PlannedTray& tray) const
    {
        return m_draft.treatments[static_cast<std::size_t>(tray.treatment)];
    }
    [[nodiscard]] MediumId mediumOf(const PlannedTray& tray) const
    {
        return treatmentOf(tray).medium;
    }

    [[nodiscard]] Done prepare(MediumId id, MediumSowing& sowing)
    {
        SowingDraft& draft = sowing.draft;
        draft.seedLot = m_draft.plan.seedLot;
        draft.medium = id;
        draft.seedPerTray = m_draft.plan.seedPerTray;
        draft.at = m_at;
        draft.startsWithSoak = m_draft.plan.startsWithSoak;
        draft.trial = m_draft.trial.id;
        draft.sownBy = m_sownBy;
        const auto medium = MediumRepository(m_database).find(id);
        if (medium && medium->isReusable) {
            auto pieces = cleanPieces(m_database, *medium, draft.count);
            if (!pieces) {
                return passOn(pieces);
            }
            draft.pieces = std::move(*pieces);
        }
        auto ground = groundOf(m_database, draft);
        if (!ground) {
            return passOn(ground);
        }
        sowing.ground = std::move(*ground);
        return {};
    }

    TrayId sow(const PlannedTray& tray, const std::string& code)
    {
        MediumSowing& sowing = m_sowings.at(mediumOf(tray));
        SownTray put;
        put.code = code;
        if (sowing.next < sowing.draft.pieces.size()) {
            put.piece = sowing.draft.pieces[sowing.next++];
        }
        put.place = tray.place;
        put.block = tray.block;
        put.feeding = treatmentOf(tray).feeding;
        return storeSown(m_database, sowing.draft, sowing.ground, put);
    }

    Database& m_database;
    TrialDraft& m_draft;
    Moment m_at;
    std::optional<std::string> m_sownBy;
    std::map<MediumId, MediumSowing> m_sowings;
};

Result<std::vector<TrayId>> sowDraft(Database& database, TrialDraft& draft, Moment at,
                                     const std::optional<std::string>& sownBy)
{
    TrialSowing sowing(database, draft, at, sownBy);
    const Done ready =
        checkLayout(draft).and_then([&] { return checkFeeding(database, draft); }).and_then([&] {
            return sowing.prepare();
        });
    if (!ready) {
        return passOn(ready);
    }
    std::vector<TrayId> sown = sowing.sow();
    if (!draft.trial.startedOn) {
        draft.trial.startedOn = at.date;
        TrialRepository(database).update(draft.trial);
    }
    return sown;
}

} // namespace

Result<TrialDraft> TrialEntries::newDraft()
{
    return m_ledger.ask([&](Database& database) {
        const Clock& clock = m_ledger.clock();
        return usualDraft(database, clock.now(), clock.utcMilliseconds() % kDrawNumbers);
    });
}

Result<TrialDraft> TrialEntries::draft(TrialId trial)
{
    return m_ledger.ask([&](Database& database) -> Result<TrialDraft> {
        auto found = TrialPlanRepository(database).find(trial);
        if (!found) {
            return fail(ErrorKind::NotFound, TrialReason::NoPlan);
        }
        return std::move(*found);
    });
}

Result<std::vector<PlannedTray>> TrialEntries::draw(const TrialDraft& draft)
{
    return m_ledger.ask([&](Database& database) { return drawFor(database, draft); });
}

Result<std::vector<Spot>> TrialEntries::freePlaces(const TrialDraft& draft)
{
    return m_ledger.ask([&](Database& database) { return freeSpotsFor(database, draft); });
}

Result<TrialDraft> TrialEntries::savePlan(const TrialDraft& draft)
{
    return m_ledger.record(Intention::PlanTrial,
                           [&](Database& database, Deed& deed) -> Result<TrialDraft> {
                               TrialDraft stored = draft;
                               const Done done = storeDraft(database, stored);
                               deed.whom = stored.trial.code;
                               if (!done) {
                                   return passOn(done);
                               }
                               return stored;
                           });
}

Result<Preparation> TrialEntries::preparation(const TrialDraft& draft)
{
    return m_ledger.ask([&](Database& database) { return preparationOf(database, draft); });
}

Result<std::vector<TrayId>> TrialEntries::sow(const TrialDraft& draft, Moment at,
                                              const std::optional<std::string>& sownBy)
{
    return m_ledger.record(Intention::SowTrial,
                           [&](Database& database, Deed& deed) -> Result<std::vector<TrayId>> {
                               TrialDraft stored = draft;
                               const Done done = storeDraft(database, stored);
                               deed.whom = stored.trial.code;
                               if (!done) {
                                   return passOn(done);
                               }
                               return sowDraft(database, stored, at, sownBy);
                           });
}

} // namespace plumule
