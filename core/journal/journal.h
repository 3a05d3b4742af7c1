#pragma once

#include "core/base/clock.h"
#include "core/base/progress.h"
#include "core/journal/ledger/change.h"
#include "core/storage/access.h"
#include "core/storage/folder_kind.h"
#include "core/storage/history_entry.h"
#include "core/storage/row_effect.h"

#include <filesystem>
#include <memory>
#include <optional>

namespace plumule {

class BackupStore;
class ClimateEntries;
class CostEntries;
class ExchangeEntries;
class ForecastAnswers;
class HarvestEntries;
class MediumEntries;
class MergeEntries;
class RackEntries;
class OrderEntries;
class ReviewAnswers;
class RoomEntries;
class SeasonEntries;
class StockEntries;
class TastingEntries;
class TrayEntries;
class TrialEntries;
class VarietyEntries;
class WateringEntries;
class WeekEntries;
class WorkTimeEntries;
struct BackupMade;
struct JournalFile;
struct RoomPlan;

// The one door to a journal: intentions in, answers out, changes announced. Used from one thread; a
// worker opens its own, to read, or is handed one beside it, to write.
class Journal
{
public:
    ~Journal();
    Journal(const Journal&) = delete;
    Journal& operator=(const Journal&) = delete;

    // As openJournalFile(). The clock must outlive the journal.
    [[nodiscard]] static Result<std::unique_ptr<Journal>>
    open(const std::filesystem::path& path, const Clock& clock, Access access = Access::ReadWrite);

    // A new journal with its room built, the starter library of varieties and media, water recipes
    // and labour minutes. The library is not an intention: it can't be undone.
    [[nodiscard]] static Result<std::unique_ptr<Journal>>
    create(const std::filesystem::path& path, const RoomPlan& plan, const Clock& clock);

    // Another hand on this journal, for a worker that writes much; what it wrote is to be told here
    // by hear(). As openBeside().
    [[nodiscard]] Result<std::unique_ptr<Journal>> beside() const;
    // What another hand wrote: the listeners here are told.
    void hear(const std::vector<Change>& changes);

    [[nodiscard]] const std::filesystem::path& path() const;
    // Where photographs are kept: "<journal without ending> photos", made when first needed.
    [[nodiscard]] std::filesystem::path photoFolder() const;
    [[nodiscard]] bool isReadOnly() const;
    // Where it lies; not Local: a rollback journal keeps it.
    [[nodiscard]] FolderKind folder() const;
    // As JournalFile's.
    [[nodiscard]] const std::optional<Error>& readOnlyBecause() const;
    [[nodiscard]] const Clock& clock() const;

    [[nodiscard]] RoomEntries& room();
    [[nodiscard]] VarietyEntries& varieties();
    [[nodiscard]] MediumEntries& media();
    [[nodiscard]] TrialEntries& trials();
    [[nodiscard]] TastingEntries& tastings();
    [[nodiscard]] TrayEntries& trays();
    [[nodiscard]] WateringEntries& watering();
    [[nodiscard]] HarvestEntries& harvests();
    [[nodiscard]] CostEntries& costs();
    [[nodiscard]] WorkTimeEntries& workTimes();
    [[nodiscard]] ReviewAnswers& review();
    [[nodiscard]] SeasonEntries& seasons();
    [[nodiscard]] ExchangeEntries& exchange();
    [[nodiscard]] MergeEntries& copies();
    [[nodiscard]] ClimateEntries& climate();
    [[nodiscard]] RackEntries& racks();
    [[nodiscard]] WeekEntries& week();
    [[nodiscard]] ForecastAnswers& forecast();
    [[nodiscard]] OrderEntries& orders();
    [[nodiscard]] StockEntries& stock();

    // Whether the intention recorded last changed anything, so that there is something to undo.
    [[nodiscard]] bool didLastIntentionChange() const;
    // What undo would take back, and redo do again; none where there is nothing.
    [[nodiscard]] std::optional<HistoryEntry> nextUndo();
    [[nodiscard]] std::optional<HistoryEntry> nextRedo();
    [[nodiscard]] Result<std::vector<HistoryEntry>> latestEntries(int count);
    // As History's; the newest when `id` is not stored.
    Result<HistoryEntry> undo(HistoryId id = {});
    Result<HistoryEntry> redo();
    // What taking it back would come to, or why it can't be.
    [[nodiscard]] Result<std::vector<RowEffect>> foreseeUndo(HistoryId id);

    // The listener is called after each commit; the number takes it off again.
    int addListener(ChangeListener listener);
    void removeListener(int number);
    // Told of each intention that was refused, and why.
    void setRefusalListener(RefusalListener listener);

    // As storage's backUp().
    [[nodiscard]] Done backUpTo(const std::filesystem::path& target, const Progress& progress);
    // Adds this journal and its photographs to the store, and lets go what its rota lets go. As
    // BackupStore::add().
    [[nodiscard]] Result<BackupMade> backUpInto(const BackupStore& store, const Progress& progress);
    // As checkJournal().
    [[nodiscard]] Result<std::vector<Error>> faults();

private:
    Journal(JournalFile file, const Clock& clock);

    // The ledger, and the entries of every concept on it. Here by name alone: whoever asks a
    // concept includes its entries, so that a change of one, or of what keeps them, concerns nobody
    // else.
    struct Concepts;

    std::unique_ptr<Concepts> m_concepts;
};

} // namespace plumule
