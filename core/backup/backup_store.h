#pragma once

#include "core/backup/backup_reason.h"
#include "core/backup/backup_repository.h"
#include "core/backup/photo_list.h"
#include "core/base/progress.h"
#include "core/storage/database.h"

#include <filesystem>
#include <string>
#include <vector>

namespace plumule {

// One copy of a journal as its file is named: "<stem> 2026-11-28 0705.plumule". Beside it stand
// its checksum (….crc) and the list of its photographs (….photos).
struct Backup
{
    std::filesystem::path file;
    Moment at;
    int number = 1; // of those made in that minute
    std::uintmax_t bytes = 0;
    bool operator==(const Backup&) const = default;
};

struct BackupMade
{
    Backup backup;
    int photosCopied = 0; // those that no earlier backup had brought
    int photosMissing = 0;
};

// The backups of one journal in a folder of their own. Photographs stand once in the folder
// "photos" within it, named by checksum and size, however many backups hold them.
// Errors: FolderGone, NotWritable, DiskFull, Damaged, Cancelled.
class BackupStore
{
public:
    BackupStore(std::filesystem::path folder, std::string stem)
        : m_folder(std::move(folder))
        , m_stem(std::move(stem))
    {}
    // Beside the journal: "<journal without ending> backups".
    [[nodiscard]] static std::filesystem::path usualFolder(const std::filesystem::path& journal);
    // In that folder; in the usual one where it is empty.
    [[nodiscard]] static BackupStore of(const std::filesystem::path& journal,
                                        const std::filesystem::path& chosenFolder = {});

    [[nodiscard]] const std::filesystem::path& folder() const { return m_folder; }

    // Newest first. Empty where the folder was not made yet.
    [[nodiscard]] std::vector<Backup> list() const;

    // Copies the open journal's present state, checked, then the photographs it names that the
    // store does not hold yet, and the list of them. The folder is made where its parent is there.
    [[nodiscard]] Result<BackupMade> add(Database& journal,
                                         const std::filesystem::path& photoFolder, Moment now,
                                         const Progress& progress) const;

    // Removes what the rota lets go, and photographs that no backup left holds. Nothing goes while
    // the newest backup does not have its checksum.
    [[nodiscard]] Done prune() const;

    [[nodiscard]] Result<BackupContent> look(const Backup& backup) const;

    // The journal and its photographs as they were, under a name that is not taken.
    [[nodiscard]] Done bringBack(const Backup& backup, const std::filesystem::path& target,
                                 const Progress& progress) const;

private:
    [[nodiscard]] std::filesystem::path photoStore() const { return m_folder / "photos"; }
    [[nodiscard]] Backup next(Moment now) const;
    [[nodiscard]] Done makeFolder() const;
    [[nodiscard]] Done copyPhotos(Database& journal, const std::filesystem::path& photoFolder,
                                  BackupMade& made, const Progress& progress) const;
    [[nodiscard]] Done bringPhotos(const std::vector<KeptPhoto>& photos,
                                   const std::filesystem::path& folder,
                                   const Progress& progress) const;
    void removePhotosOfNone(const std::vector<Backup>& left) const;

    std::filesystem::path m_folder;
    std::string m_stem;
};

} // namespace plumule
