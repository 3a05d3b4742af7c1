#include "core/storage/rescue.h"

#include "core/base/work_reason.h"
#include "core/storage/journal_file.h"
#include "core/storage/migrations.h"
#include "core/storage/rescue_copy.h"
#include "core/storage/rescue_rows.h"
#include "core/storage/row_id.h"

#include <algorithm>

namespace plumule {
namespace {

namespace fs = std::filesystem;

struct OldJournal
{
    std::unique_ptr<Database> database;
    std::int64_t copyNumber = 1;
    std::int64_t nextCounter = 1;
};

// None where not even the list of its tables can be read.
std::unique_ptr<Database> openedIfReadable(const RescueCopy& copy)
{
    try {
        auto database = std::make_unique<Database>(copy.file(), Access::ReadOnly);
        return database->scalar("SELECT count(*) FROM sqlite_schema") > 0 ? std::move(database)
                                                                          : nullptr;
    } catch (const StorageFailure&) {
        return nullptr;
    }
}

std::unique_ptr<Database> openedSomehow(const RescueCopy& copy, std::vector<Error>& said)
{
    if (auto database = openedIfReadable(copy)) {
        return database;
    }
    said.push_back(fail(ErrorKind::Damaged, RescueReason::HeadRebuilt).value());
    copy.rebuildHead();
    auto database = openedIfReadable(copy);
    if (database == nullptr && copy.hasLog()) {
        said.push_back(fail(ErrorKind::Damaged, RescueReason::LogUnreadable).value());
        copy.dropLog();
        database = openedIfReadable(copy);
    }
    return database;
}

std::int64_t scalarIfReadable(Database& database, const char* sql, std::int64_t otherwise)
{
    try {
        return database.scalar(sql, otherwise);
    } catch (const StorageFailure&) {
        return otherwise;
    }
}

Result<OldJournal> openOld(const RescueCopy& copy, const fs::path& old, std::vector<Error>& said)
{
    OldJournal journal;
    journal.database = openedSomehow(copy, said);
    if (journal.database == nullptr) {
        return fail(ErrorKind::Damaged, RescueReason::NothingReadable, old.string());
    }
    Database& database = *journal.database;
    if (scalarIfReadable(database, "PRAGMA application_id", 0) != kApplicationId) {
        return fail(ErrorKind::NotAJournal, StorageReason::NotAJournal, old.string());
    }
    if (scalarIfReadable(database, "PRAGMA user_version", 0) > migrations().back().version) {
        return fail(ErrorKind::NewerVersion, StorageReason::MadeByNewer, old.string());
    }
    const auto copyNumber =
        scalarIfReadable(database, "SELECT copy_number FROM copy WHERE id = 1", 1);
    const auto next = scalarIfReadable(database, "SELECT next_counter FROM copy WHERE id = 1", 1);
    journal.copyNumber = copyNumber >= 1 && copyNumber <= std::int64_t{1} << 22 ? copyNumber : 1;
    journal.nextCounter = next >= 1 && next >> kIdCounterBits == 0 ? next : 1;
    return journal;
}

// Whether it came to its end.
bool takeOver(OldJournal& old, Database& fresh, const RescueKnowledge& knowledge,
              const Progress& progress, RescueReport& report)
{
    const auto tables = trackedTablesOf(fresh);
    RescuedSteps steps(*old.database, fresh, report.said);
    RescuedRows rows(fresh, knowledge, report);
    for (std::size_t i = 0; i < tables.size(); ++i) {
        if (progress.isStopped()) {
            return false;
        }
        progress.report(double(i) / double(tables.size()));
        rows.read(*old.database, tables[i], steps);
    }
    const std::int64_t copy = old.copyNumber << kIdCounterBits;
    std::int64_t next = std::max(copy | old.nextCounter, rows.highestId(old.copyNumber) + 1);
    if (steps.highestId() >> kIdCounterBits == old.copyNumber) {
        next = std::max(next, steps.highestId() + 1);
    }
    Transaction transaction(fresh);
    rows.store(tables);
    rows.storeRoom(next++);
    report.steps = steps.store(rows.isComplete() ? RescuedSteps::Undone::CanBeRedone
                                                 : RescuedSteps::Undone::Dropped);
    fresh.prepare("UPDATE copy SET next_counter = ?1 WHERE id = 1").bind(next - copy).run();
    transaction.commit();
    return true;
}

// A name that leads elsewhere is none of ours.
bool isPlainName(const std::string& name)
{
    return !name.empty() && name != "." && name != ".." &&
           name.find_first_of("/\\") == std::string::npos;
}

std::vector<std::string> photoNames(Database& database)
{
    std::vector<std::string> names;
    Statement rows = database.prepare("SELECT DISTINCT file_name FROM photo ORDER BY file_name");
    while (rows.step()) {
        names.push_back(rows.get<std::string>(0));
    }
    return names;
}

void copyPhotos(const std::vector<std::string>& names, const fs::path& old, const fs::path& fresh,
                RescueReport& report)
{
    for (const std::string& name : names) {
        std::error_code failed;
        fs::create_directories(photoFolderOf(fresh), failed);
        const bool isCopied =
            isPlainName(name) &&
            fs::copy_file(photoFolderOf(old) / name, photoFolderOf(fresh) / name, failed);
        if (isCopied) {
            ++report.photos;
        } else {
            report.said.push_back(fail(ErrorKind::Damaged, RescueReason::PhotoLost, name).value());
        }
    }
}

Done checkBoth(const fs::path& old, const fs::path& fresh)
{
    std::error_code ignored;
    if (!fs::exists(old, ignored)) {
        return fail(ErrorKind::NotFound, StorageReason::FileMissing, old.string());
    }
    if (!fs::is_regular_file(old, ignored)) {
        return fail(ErrorKind::Unreadable, StorageReason::FileUnreadable, old.string());
    }
    if (isOpenHere(old) || isLocked(old)) {
        return fail(ErrorKind::AlreadyOpen, StorageReason::OpenElsewhere, old.string());
    }
    if (fs::exists(fs::symlink_status(fresh, ignored))) {
        return fail(ErrorKind::Duplicate, StorageReason::FileExists, fresh.string());
    }
    return {};
}

} // namespace

Result<RescueReport> rescueFile(const fs::path& old, const fs::path& fresh,
                                const RescueKnowledge& knowledge, const Progress& progress)
{
    if (Done allowed = checkBoth(old, fresh); !allowed) {
        return passOn(allowed);
    }
    const auto copy = RescueCopy::make(old, fresh);
    if (!copy) {
        return passOn(copy);
    }
    RescueReport report;
    auto journal = openOld(*copy, old, report.said);
    if (!journal) {
        return passOn(journal);
    }
    auto made = createJournalFile(fresh, journal->copyNumber);
    if (!made) {
        return passOn(made);
    }
    std::optional<Error> refused;
    std::vector<std::string> photos;
    try {
        if (!takeOver(*journal, *made->database, knowledge, progress, report)) {
            refused = fail(ErrorKind::Cancelled, WorkReason::Stopped).value();
        } else if (report.entries == 0) {
            refused = fail(ErrorKind::Damaged, RescueReason::NothingReadable, old.string()).value();
        }
        photos = photoNames(*made->database);
    } catch (const StorageFailure& failure) {
        refused = failure.error();
    }
    if (refused) {
        discardNewJournal(std::move(*made), fresh);
        return passOn(*refused);
    }
    made->database.reset(); // its folder of photographs is kept from others while it is open
    copyPhotos(photos, old, fresh, report);
    return report;
}

} // namespace plumule
