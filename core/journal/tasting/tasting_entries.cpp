#include "core/journal/tasting/tasting_entries.h"

#include "core/journal/ledger/ledger.h"
#include "core/medium/medium_reason.h"
#include "core/medium/medium_repository.h"
#include "core/tasting/tasting_reason.h"
#include "core/tasting/tasting_storing.h"
#include "core/trial/trial_reason.h"
#include "core/trial/trial_repository.h"

#include <algorithm>

namespace plumule {
namespace {

Result<PanelRecord> recordOf(Database& database, PanelId id)
{
    TastingRepository tastings(database);
    const auto panel = tastings.find(id);
    if (!panel) {
        return fail(ErrorKind::NotFound, TastingReason::Unknown);
    }
    return tastings.record(*panel);
}

Result<PanelRecord> openRecordOf(Database& database, PanelId id)
{
    auto record = recordOf(database, id);
    if (record && !record->panel.isOpen()) {
        return fail(ErrorKind::Conflict, TastingReason::Closed, record->panel.name);
    }
    return record;
}

PanelDraft draftOf(const PanelRecord& record)
{
    PanelDraft draft;
    draft.panel = record.panel;
    for (const PanelSample& sample : record.samples) {
        draft.media.push_back(sample.medium);
    }
    for (const PanelAttribute& attribute : record.attributes) {
        draft.attributes.push_back(attribute.name);
    }
    for (const Taster& taster : record.tasters) {
        draft.tasters.push_back(taster.name);
    }
    return draft;
}

Result<std::vector<Medium>> mediaOf(Database& database, const std::vector<MediumId>& ids)
{
    const auto known = MediumRepository(database).byId();
    std::vector<Medium> media;
    for (const MediumId id : ids) {
        const auto found = known.find(id);
        if (found == known.end()) {
            return fail(ErrorKind::NotFound, MediumReason::Unknown);
        }
        media.push_back(found->second);
    }
    return media;
}

// What stands in the way of keeping the draft.
Done checkDraftIn(Database& database, const PanelDraft& draft)
{
    if (const Done checked = checkPanel(draft); !checked) {
        return checked;
    }
    if (draft.panel.trial && !TrialRepository(database).find(*draft.panel.trial)) {
        return fail(ErrorKind::NotFound, TrialReason::Unknown);
    }
    const auto media = mediaOf(database, draft.media);
    if (!media) {
        return passOn(media);
    }
    std::vector<std::string> names;
    for (const Medium& medium : *media) {
        names.push_back(medium.name);
    }
    if (const Done blind = checkIsBlind(draft, names); !blind) {
        return blind;
    }
    if (draft.panel.id.isStored()) {
        const auto stored = openRecordOf(database, draft.panel.id);
        if (!stored) {
            return passOn(stored);
        }
        if (!stored->scores.empty()) {
            return fail(ErrorKind::Conflict, TastingReason::HasScores, stored->panel.name);
        }
    }
    return {};
}

struct Scored
{
    PanelRecord record;
    Serving serving;
};

// The serving of that code in an open panel that has the attribute.
Result<Scored> servingToScore(Database& database, PanelId panel, const std::string& code,
                              PanelAttributeId attribute)
{
    auto record = openRecordOf(database, panel);
    if (!record) {
        return passOn(record);
    }
    const Serving* serving = servingWith(*record, code);
    if (serving == nullptr) {
        return fail(ErrorKind::NotFound, TastingReason::CodeUnknown, code);
    }
    const bool isKnown =
        std::any_of(record->attributes.begin(), record->attributes.end(),
                    [&](const PanelAttribute& each) { return each.id == attribute; });
    if (!isKnown) {
        return fail(ErrorKind::NotFound, TastingReason::AttributeUnknown);
    }
    const Serving found = *serving;
    return Scored{std::move(*record), found};
}

// Another serving of the same taster with that value: a rank given twice, an odd one named before.
const Score* clashWith(const Scored& scored, PanelAttributeId attribute, int value,
                       std::string& code)
{
    if (scored.record.panel.method == TastingMethod::Hedonic) {
        return nullptr;
    }
    for (const Serving& other : servingsOf(scored.record, scored.serving.taster)) {
        const Score* score = scoreOf(scored.record, other.id, attribute);
        if (other.id != scored.serving.id && score != nullptr && score->value == value) {
            code = other.code;
            return score;
        }
    }
    return nullptr;
}

EnteredScore storeScore(TastingRepository& tastings, const Scored& scored,
                        PanelAttributeId attribute, int value)
{
    EnteredScore entered;
    entered.serving = scored.serving;
    entered.taster = *tasterOf(scored.record, scored.serving);
    std::string clashing;
    if (const Score* clash = clashWith(scored, attribute, value, clashing)) {
        entered.clashingCode = clashing;
        if (scored.record.panel.method == TastingMethod::Triangle) {
            tastings.remove(clash->id);
        }
    }
    if (const Score* before = scoreOf(scored.record, scored.serving.id, attribute)) {
        entered.before = before->value;
        Score changed = *before;
        changed.value = value;
        tastings.update(changed);
    } else {
        Score score{{}, scored.serving.id, attribute, value};
        tastings.insert(score);
    }
    if (scored.record.panel.isOpen()) {
        entered.serving.sample = {};
    }
    return entered;
}

tl::unexpected<Error> refuseRankTwice(const RankTwice& twice)
{
    std::string codes;
    for (const std::string& code : twice.codes) {
        codes += (codes.empty() ? "" : ", ") + code;
    }
    return fail(ErrorKind::Conflict, TastingReason::RankTwice, twice.taster.name,
                twice.attribute.name, codes);
}

} // namespace

Result<std::vector<PanelRow>> TastingEntries::list(std::optional<TrialId> trial)
{
    return m_ledger.ask([&](Database& database) {
        TastingRepository tastings(database);
        auto counts = tastings.counts();
        std::vector<PanelRow> rows;
        for (const Panel& panel : tastings.panels(trial)) {
            const PanelCounts& count = counts[panel.id];
            const int wanted = panel.method == TastingMethod::Triangle
                                   ? count.tasters
                                   : count.servings * count.attributes;
            rows.push_back({panel, count.samples, count.tasters, count.scores, wanted});
        }
        return rows;
    });
}

Result<PanelDraft> TastingEntries::newDraft(std::optional<TrialId> trial)
{
    return m_ledger.ask([&](Database& database) {
        PanelDraft draft;
        draft.panel.trial = trial;
        draft.panel.on = m_ledger.clock().today();
        draft.panel.drawNumber = m_ledger.clock().utcMilliseconds();
        if (trial) {
            draft.media = TastingRepository(database).mediaOf(*trial);
        }
        return draft;
    });
}

Result<PanelDraft> TastingEntries::draft(PanelId panel)
{
    return m_ledger.ask([&](Database& database) {
        return recordOf(database, panel).map([](const PanelRecord& record) {
            return draftOf(record);
        });
    });
}

Result<PanelRecord> TastingEntries::record(PanelId panel)
{
    return m_ledger.ask([&](Database& database) {
        auto record = recordOf(database, panel);
        if (record && record->panel.isOpen()) {
            for (Serving& serving : record->servings) {
                serving.sample = {};
            }
        }
        return record;
    });
}

Result<std::vector<PlatedServing>> TastingEntries::plating(PanelId panel)
{
    using Plated = std::vector<PlatedServing>;
    return m_ledger.ask([&](Database& database) -> Result<Plated> {
        const auto record = recordOf(database, panel);
        if (!record) {
            return passOn(record);
        }
        const auto media = MediumRepository(database).byId();
        std::map<PanelSampleId, Medium> bySample;
        for (const PanelSample& sample : record->samples) {
            bySample[sample.id] = pointedAt(media, sample.medium, "panel_sample", sample.id);
        }
        Plated plated;
        for (const Serving& serving : record->servings) {
            plated.push_back({serving, tasterOf(*record, serving)->name,
                              pointedAt(bySample, serving.sample, "serving", serving.id)});
        }
        return plated;
    });
}

Result<Panel> TastingEntries::save(const PanelDraft& draft)
{
    return m_ledger.record(Intention::PlanTasting,
                           [&](Database& database, Deed& deed) -> Result<Panel> {
                               TastingRepository tastings(database);
                               PanelDraft kept = tidied(draft);
                               kept.panel.closedOn.reset();
                               deed.whom = kept.panel.name;
                               if (const Done checked = checkDraftIn(database, kept); !checked) {
                                   return passOn(checked);
                               }
                               if (kept.panel.id.isStored()) {
                                   tastings.update(kept.panel);
                                   tastings.removeContents(kept.panel.id);
                               } else {
                                   tastings.insert(kept.panel);
                               }
                               storePanelContents(tastings, kept);
                               return kept.panel;
                           });
}

Result<EnteredScore> TastingEntries::enter(PanelId panel, const std::string& code,
                                           PanelAttributeId attribute, int value)
{
    return m_ledger.record(
        Intention::EnterScore, [&](Database& database, Deed& deed) -> Result<EnteredScore> {
            deed.whom = code;
            const auto scored = servingToScore(database, panel, code, attribute);
            if (!scored) {
                return passOn(scored);
            }
            if (const Done checked =
                    checkScore(scored->record.panel.method, scored->record.samples.size(), value);
                !checked) {
                return passOn(checked);
            }
            TastingRepository tastings(database);
            return storeScore(tastings, *scored, attribute, value);
        });
}

Done TastingEntries::clear(PanelId panel, const std::string& code, PanelAttributeId attribute)
{
    return m_ledger.record(Intention::ClearScore, [&](Database& database, Deed& deed) -> Done {
        deed.whom = code;
        const auto scored = servingToScore(database, panel, code, attribute);
        if (!scored) {
            return passOn(scored);
        }
        const Score* score = scoreOf(scored->record, scored->serving.id, attribute);
        if (score == nullptr) {
            return fail(ErrorKind::NothingThere, TastingReason::NoScore, code);
        }
        TastingRepository(database).remove(score->id);
        return {};
    });
}

Result<Panel> TastingEntries::close(PanelId panel)
{
    return m_ledger.record(Intention::CloseTasting,
                           [&](Database& database, Deed& deed) -> Result<Panel> {
                               const auto record = openRecordOf(database, panel);
                               if (!record) {
                                   return passOn(record);
                               }
                               deed.whom = record->panel.name;
                               if (record->scores.empty()) {
                                   return fail(ErrorKind::TooFew, TastingReason::NoScores);
                               }
                               if (const auto twice = ranksTwice(*record); !twice.empty()) {
                                   return refuseRankTwice(twice.front());
                               }
                               Panel closed = record->panel;
                               closed.closedOn = m_ledger.clock().today();
                               TastingRepository(database).update(closed);
                               return closed;
                           });
}

Done TastingEntries::remove(PanelId panel)
{
    return m_ledger.record(Intention::RemoveTasting, [&](Database& database, Deed& deed) -> Done {
        TastingRepository tastings(database);
        const auto found = tastings.find(panel);
        if (!found) {
            return fail(ErrorKind::NotFound, TastingReason::Unknown);
        }
        deed.whom = found->name;
        tastings.remove(panel);
        return {};
    });
}

Result<TastingResult> TastingEntries::result(PanelId panel)
{
    return m_ledger.ask([&](Database& database) -> Result<TastingResult> {
        const auto record = recordOf(database, panel);
        if (!record) {
            return passOn(record);
        }
        const auto media = mediaOf(database, draftOf(*record).media);
        if (!media) {
            return passOn(media);
        }
        return tastingResult(*record, *media);
    });
}

} // namespace plumule
