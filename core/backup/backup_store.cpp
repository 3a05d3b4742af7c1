#include "core/backup/backup_store.h"

#include "core/backup/backup_repository.h"
#include "core/backup/backup_rota.h"
#include "core/base/number_text.h"
#include "core/base/whole_file.h"
#include "core/base/work_reason.h"
#include "core/storage/failure.h"
#include "core/storage/journal_file.h"

#include <algorithm>
#include <fmt/format.h>
#include <fstream>
#include <set>
#include <sstream>

namespace plumule {
namespace {

namespace fs = std::filesystem;

constexpr const char* kEnding = ".plumule";
constexpr int kMostInAMinute = 1000;
// What stands beside a backup's file and goes with it.
constexpr const char* kBeside[] = {".photos", ".crc", ""};

fs::path photoListOf(const fs::path& backup)
{
    return backup.string() + ".photos";
}

// Of "2026-11-28 0705", with a number behind it where two were made in one minute.
bool readName(const std::string& text, Backup& backup)
{
    constexpr std::size_t kPlain = 15;
    if (text.size() < kPlain || text[10] != ' ') {
        return false;
    }
    const auto day = dateFromIso(text.substr(0, 10));
    const auto minute = minuteFromText(text.substr(11, 2) + ':' + text.substr(13, 2));
    const auto number = text.size() == kPlain ? Result<long long>(1)
                        : text[kPlain] == ' ' ? wholeFromText(text.substr(kPlain + 1))
                                              : Result<long long>(0);
    if (!day || !minute || !number || *number < 1 || *number > kMostInAMinute) {
        return false;
    }
    backup.at = {*day, *minute};
    backup.number = static_cast<int>(*number);
    return true;
}

Result<std::vector<KeptPhoto>> photosOf(const fs::path& backup)
{
    std::ifstream file(photoListOf(backup), std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    const auto photos = file ? photoListFrom(text.str()) : std::nullopt;
    if (!photos) {
        return fail(ErrorKind::Damaged, BackupReason::Altered, photoListOf(backup).string());
    }
    return *photos;
}

} // namespace

fs::path BackupStore::usualFolder(const fs::path& journal)
{
    return journal.parent_path() / (journal.stem().string() + " backups");
}

BackupStore BackupStore::of(const fs::path& journal, const fs::path& chosenFolder)
{
    return {chosenFolder.empty() ? usualFolder(journal) : chosenFolder, journal.stem().string()};
}

std::vector<Backup> BackupStore::list() const
{
    std::vector<Backup> backups;
    std::error_code failed;
    for (fs::directory_iterator each(m_folder, failed), end; !failed && each != end;
         each.increment(failed)) {
        const std::string name = each->path().filename().string();
        const bool isOurs = name.starts_with(m_stem + ' ') && name.ends_with(kEnding);
        if (!isOurs || name.size() < m_stem.size() + 1 + std::string(kEnding).size()) {
            continue;
        }
        const std::size_t from = m_stem.size() + 1;
        Backup backup;
        backup.file = each->path();
        std::error_code unknown;
        backup.bytes = each->file_size(unknown);
        if (readName(name.substr(from, name.size() - from - std::string(kEnding).size()), backup)) {
            backups.push_back(std::move(backup));
        }
    }
    std::sort(backups.begin(), backups.end(), [](const Backup& a, const Backup& b) {
        return std::tie(b.at, b.number) < std::tie(a.at, a.number);
    });
    return backups;
}

// Above the highest number of that minute, so that the newest stays the first of the list.
Backup BackupStore::next(Moment now) const
{
    Backup backup;
    backup.at = now;
    for (const Backup& each : list()) {
        if (each.at == now) {
            backup.number = std::max(backup.number, each.number + 1);
        }
    }
    const std::string number =
        backup.number == 1 ? std::string() : ' ' + std::to_string(backup.number);
    backup.file = m_folder / fmt::format("{} {} {:02}{:02}{}{}", m_stem, toIso(now.date),
                                         now.minute / 60, now.minute % 60, number, kEnding);
    return backup;
}

// The folder itself may be made; a stick that was pulled out is not made up on the disk instead.
Done BackupStore::makeFolder() const
{
    std::error_code failed;
    if (!fs::is_directory(m_folder.parent_path(), failed)) {
        return fail(ErrorKind::NotFound, BackupReason::FolderGone, m_folder.string());
    }
    const Done made =
        plumule::makeFolder(m_folder).and_then([&] { return plumule::makeFolder(photoStore()); });
    if (!made) {
        return made.error().kind == ErrorKind::DiskFull
                   ? made
                   : fail(ErrorKind::NotWritable, BackupReason::FolderGone, m_folder.string());
    }
    return {};
}

Result<BackupMade> BackupStore::add(Database& journal, const fs::path& photoFolder, Moment now,
                                    const Progress& progress) const
{
    constexpr double kShareOfJournal = 0.5;
    if (const Done made = makeFolder(); !made) {
        return passOn(made);
    }
    BackupMade made;
    made.backup = next(now);
    // The list comes first: a backup whose file stands is whole.
    if (const Done copied =
            copyPhotos(journal, photoFolder, made, progress.part(0, kShareOfJournal));
        !copied) {
        return passOn(copied);
    }
    if (const Done copied = backUp(journal, made.backup.file, progress.part(kShareOfJournal, 1));
        !copied) {
        std::error_code ignored;
        fs::remove(photoListOf(made.backup.file), ignored);
        return passOn(copied);
    }
    std::error_code unknown;
    made.backup.bytes = fs::file_size(made.backup.file, unknown);
    return made;
}

Done BackupStore::copyPhotos(Database& journal, const fs::path& photoFolder, BackupMade& made,
                             const Progress& progress) const
{
    const auto names = BackupRepository(journal).photoNames();
    std::vector<KeptPhoto> photos;
    for (const std::string& name : names) {
        if (progress.isStopped()) {
            return fail(ErrorKind::Cancelled, WorkReason::Stopped);
        }
        progress.report(static_cast<double>(photos.size()) / static_cast<double>(names.size()));
        const auto key = isPlainFileName(name) ? photoKeyOf(photoFolder / name)
                                               : Result<std::string>(std::string());
        photos.push_back({name, key.value_or(std::string())});
        if (photos.back().key.empty()) {
            ++made.photosMissing;
            continue;
        }
        const fs::path kept = photoStore() / *key;
        std::error_code ignored;
        if (fs::exists(kept, ignored)) {
            continue;
        }
        if (const Done copied = copyWhole(photoFolder / name, kept); !copied) {
            return copied;
        }
        ++made.photosCopied;
    }
    return writeWhole(photoListOf(made.backup.file), photoListText(photos));
}

Done BackupStore::prune() const
{
    const auto backups = list();
    if (backups.empty()) {
        return {};
    }
    if (const Done sound = verifyBackup(backups.front().file); !sound) {
        return sound;
    }
    std::vector<Moment> moments;
    moments.reserve(backups.size());
    for (const Backup& backup : backups) {
        moments.push_back(backup.at);
    }
    const auto kept = backupsToKeep(moments);
    std::vector<Backup> left;
    for (const Backup& backup : backups) {
        if (std::find(kept.begin(), kept.end(), backup.at) != kept.end()) {
            left.push_back(backup);
            continue;
        }
        std::error_code ignored;
        for (const char* ending : kBeside) {
            fs::remove(backup.file.string() + ending, ignored);
        }
    }
    removePhotosOfNone(left);
    return {};
}

// A list that can't be read may name any of them: then all stay.
void BackupStore::removePhotosOfNone(const std::vector<Backup>& left) const
{
    std::set<std::string> held;
    for (const Backup& backup : left) {
        const auto photos = photosOf(backup.file);
        if (!photos) {
            return;
        }
        for (const KeptPhoto& photo : *photos) {
            held.insert(photo.key);
        }
    }
    std::error_code failed;
    std::vector<fs::path> unheld;
    for (fs::directory_iterator each(photoStore(), failed), end; !failed && each != end;
         each.increment(failed)) {
        if (!held.contains(each->path().filename().string())) {
            unheld.push_back(each->path());
        }
    }
    for (const fs::path& photo : unheld) {
        fs::remove(photo, failed);
    }
}

Result<BackupContent> BackupStore::look(const Backup& backup) const
{
    if (const Done sound = verifyBackup(backup.file); !sound) {
        return fail(ErrorKind::Damaged, BackupReason::Altered, backup.file.filename().string());
    }
    try {
        // Also one of an older schema, which is brought up to date only when it is brought back.
        Database database(backup.file, Access::ReadImmutable);
        BackupContent content = BackupRepository(database).content();
        if (const auto photos = photosOf(backup.file)) {
            content.photosMissing =
                std::count_if(photos->begin(), photos->end(),
                              [](const KeptPhoto& photo) { return photo.key.empty(); });
        }
        return content;
    } catch (const StorageFailure& failure) {
        return passOn(failure.error());
    }
}

Done BackupStore::bringBack(const Backup& backup, const fs::path& target,
                            const Progress& progress) const
{
    std::error_code ignored;
    const fs::path folder = photoFolderOf(target);
    for (const fs::path& taken : {target, folder}) {
        if (fs::exists(taken, ignored)) {
            return fail(ErrorKind::Duplicate, BackupReason::TargetTaken, taken.string());
        }
    }
    if (const Done sound = verifyBackup(backup.file); !sound) {
        return fail(ErrorKind::Damaged, BackupReason::Altered, backup.file.filename().string());
    }
    const auto photos = photosOf(backup.file);
    if (!photos) {
        return passOn(photos);
    }
    Done brought = bringPhotos(*photos, folder, progress);
    if (brought) {
        brought = copyWhole(backup.file, target);
    }
    if (!brought) {
        fs::remove_all(folder, ignored);
    }
    return brought;
}

Done BackupStore::bringPhotos(const std::vector<KeptPhoto>& photos, const fs::path& folder,
                              const Progress& progress) const
{
    if (!photos.empty()) {
        if (const Done made = plumule::makeFolder(folder); !made) {
            return made;
        }
    }
    double done = 0;
    for (const KeptPhoto& photo : photos) {
        progress.report(done++ / static_cast<double>(photos.size()));
        if (progress.isStopped()) {
            return fail(ErrorKind::Cancelled, WorkReason::Stopped);
        }
        if (photo.key.empty()) {
            continue;
        }
        const fs::path kept = photoStore() / photo.key;
        if (photoKeyOf(kept).value_or("") != photo.key) {
            return fail(ErrorKind::Damaged, BackupReason::PhotoAltered, photo.name);
        }
        if (const Done copied = copyWhole(kept, folder / photo.name); !copied) {
            return copied;
        }
    }
    return {};
}

} // namespace plumule
