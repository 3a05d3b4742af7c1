#pragma once

#include "core/backup/backup_store.h"
#include "core/merge/copy_file.h"
#include "core/merge/merge_plan.h"
#include "core/merge/two_sides_repository.h"

namespace plumule {

class Ledger;

// What is written down about what is not kept of an item: on that tray's note; of tray 0 what
// belongs to none.
using MergeWords = std::function<std::string(const MergeItem& item, std::int64_t tray)>;

struct BroughtBack
{
    int rows = 0;
    int notes = 0;
    int photos = 0;
    int photosMissing = 0; // that the copy names and does not have
    std::vector<Renamed> renamed;
};

// A copy beside the journal that it comes back to. Nothing is written before bringTogether().
class ComingBack
{
public:
    ComingBack(Ledger& ledger, CopyFile copy);

    // Damaged where changesets make no sense.
    [[nodiscard]] Done read();
    // By what was chosen so far, per family: a choice can bring up another item, where both sides
    // would then break a rule together.
    [[nodiscard]] Result<MergePlan> plan(const Choices& choices);
    [[nodiscard]] const TakenCopy& copy() const { return m_copy.copy; }
    // The columns of a table, in the order of a row's cells.
    [[nodiscard]] const std::vector<ColumnInfo>& columnsOf(const std::string& table) const;
    // Photographs that come along.
    [[nodiscard]] int photosComing(const MergePlan& plan) const;

    // As one intention. `first` is the backup that was made before: it is checked once more.
    // NotAllChosen, StillBroken; ChangedMeanwhile where the plan is no longer that of `shown`.
    Result<BroughtBack> bringTogether(const MergePlan& shown, const MergeWords& words,
                                      const BackupMade& first);

private:
    struct PhotoFile
    {
        std::filesystem::path from;
        std::string name; // here
    };
    [[nodiscard]] std::vector<PhotoFile> photosOf(const std::map<RowKey, RowState>& outcome) const;
    [[nodiscard]] Done bringPhotos(const std::map<RowKey, RowState>& outcome,
                                   BroughtBack& brought) const;
    [[nodiscard]] bool isPhotoTaken(const std::string& name) const;
    [[nodiscard]] std::filesystem::path photosThere() const;
    Done keepWords(Database& database, const MergePlan& plan, const MergeWords& words,
                   std::vector<std::string>& details, BroughtBack& brought) const;

    Ledger& m_ledger;
    CopyFile m_copy;
    TwoSidesRepository m_sides;
};

} // namespace plumule
