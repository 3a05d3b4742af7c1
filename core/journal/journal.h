#pragma once

#include "core/backup/backup_store.h"
#include "core/journal/cost/cost_entries.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/review/season_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"

#include <memory>

namespace plumule {

// The one door to a journal: intentions in, answers out, changes announced. Used from one thread; a
// worker opens its own, to read.
class Journal
{
public:
    // As openJournalFile(). The clock must outlive the journal.
    [[nodiscard]] static Result<std::unique_ptr<Journal>>
    open(const std::filesystem::path& path, const Clock& clock, Access access = Access::ReadWrite);

    // A new journal with its room built, the starter library of varieties and media, water recipes
    // and labour minutes. The library is not an intention: it can't be undone.
    [[nodiscard]] static Result<std::unique_ptr<Journal>>
    create(const std::filesystem::path& path, const RoomPlan& plan, const Clock& clock);

    [[nodiscard]] const std::filesystem::path& path() const;
    // Where photographs are kept: "<journal without ending> photos", made when first needed.
    [[nodiscard]] std::filesystem::path photoFolder() const;
    [[nodiscard]] bool isReadOnly() const { return m_ledger.isReadOnly(); }
    // Where it lies; not Local: a rollback journal keeps it.
    [[nodiscard]] FolderKind folder() const { return m_ledger.folder(); }
    // As JournalFile's.
    [[nodiscard]] const std::optional<Error>& readOnlyBecause() const
    {
        return m_ledger.readOnlyBecause();
    }
    [[nodiscard]] const Clock& clock() const { return m_ledger.clock(); }

    RoomEntries& room() { return m_room; }
    VarietyEntries& varieties() { return m_varieties; }
    MediumEntries& media() { return m_media; }
    TrialEntries& trials() { return m_trials; }
    TastingEntries& tastings() { return m_tastings; }
    TrayEntries& trays() { return m_trays; }
    WateringEntries& watering() { return m_watering; }
    HarvestEntries& harvests() { return m_harvests; }
    CostEntries& costs() { return m_costs; }
    ReviewAnswers& review() { return m_review; }
    SeasonEntries& seasons() { return m_seasons; }
    ExchangeEntries& exchange() { return m_exchange; }

    // Whether the intention recorded last changed anything, so that there is something to undo.
    [[nodiscard]] bool didLastIntentionChange() const { return m_ledger.didLastIntentionChange(); }
    // What undo would take back, and redo do again; none where there is nothing.
    [[nodiscard]] std::optional<HistoryEntry> nextUndo();
    [[nodiscard]] std::optional<HistoryEntry> nextRedo();
    [[nodiscard]] Result<std::vector<HistoryEntry>> latestEntries(int count);
    // As History's; the newest when `id` is not stored.
    Result<HistoryEntry> undo(HistoryId id = {}) { return m_ledger.undo(id); }
    Result<HistoryEntry> redo() { return m_ledger.redo(); }
    // What taking it back would come to, or why it can't be.
    [[nodiscard]] Result<std::vector<History::RowEffect>> foreseeUndo(HistoryId id)
    {
        return m_ledger.foreseeUndo(id);
    }

    // The listener is called after each commit; the number takes it off again.
    int addListener(ChangeListener listener) { return m_ledger.addListener(std::move(listener)); }
    void removeListener(int number) { m_ledger.removeListener(number); }
    // Told of each intention that was refused, and why.
    void setRefusalListener(RefusalListener listener)
    {
        m_ledger.setRefusalListener(std::move(listener));
    }

    // As storage's backUp() and findFaults().
    [[nodiscard]] Done backUpTo(const std::filesystem::path& target, const Progress& progress);
    // Adds this journal and its photographs to the store, and lets go what its rota lets go. As
    // BackupStore::add().
    [[nodiscard]] Result<BackupMade> backUpInto(const BackupStore& store, const Progress& progress);
    [[nodiscard]] Result<std::vector<std::string>> faults();

private:
    Journal(JournalFile file, const Clock& clock);

    Ledger m_ledger;
    RoomEntries m_room{m_ledger};
    VarietyEntries m_varieties{m_ledger};
    MediumEntries m_media{m_ledger};
    TrialEntries m_trials{m_ledger};
    TastingEntries m_tastings{m_ledger};
    TrayEntries m_trays{m_ledger};
    WateringEntries m_watering{m_ledger};
    HarvestEntries m_harvests{m_ledger};
    CostEntries m_costs{m_ledger};
    ReviewAnswers m_review{m_ledger};
    SeasonEntries m_seasons{m_ledger};
    ExchangeEntries m_exchange{m_ledger};
};

} // namespace plumule
