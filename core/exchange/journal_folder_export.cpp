// Part of core/exchange/journal_folder.h: the way out.
#include "core/base/file_reason.h"
#include "core/base/whole_file.h"
#include "core/base/work_reason.h"
#include "core/exchange/csv.h"
#include "core/exchange/exchange_reason.h"
#include "core/exchange/journal_folder.h"
#include "core/exchange/journal_folder_parts.h"
#include "core/exchange/sheet_notes.h"
#include "core/exchange/sheet_repository.h"

#include <fmt/format.h>
#include <set>

namespace plumule {
namespace fs = std::filesystem;

namespace {

constexpr std::size_t kBytesHeld = std::size_t{1} << 18;

// What was made in the folder, taken away again unless it is kept.
class Made
{
public:
    explicit Made(const fs::path& folder)
        : m_folder(folder)
    {}
    ~Made()
    {
        std::error_code ignored;
        for (auto path = m_paths.rbegin(); path != m_paths.rend(); ++path) {
            fs::remove(*path, ignored); // of a folder only where it is empty
        }
    }
    Made(const Made&) = delete;
    Made& operator=(const Made&) = delete;

    Done folder(const fs::path& path)
    {
        std::error_code error;
        if (fs::create_directory(path, error)) {
            m_paths.push_back(path);
        }
        return error ? Done(fail(ErrorKind::NotWritable, FileReason::NotWritten, path.string()))
                     : Done();
    }
    fs::path file(const std::string& name)
    {
        m_paths.push_back(m_folder / name);
        return m_paths.back();
    }
    void keep() { m_paths.clear(); }

private:
    fs::path m_folder;
    std::vector<fs::path> m_paths;
};

Done checkIsFree(const fs::path& folder)
{
    std::error_code error;
    const bool isThere = fs::exists(folder, error);
    const bool isFree =
        !isThere || (fs::is_directory(folder, error) && fs::is_empty(folder, error));
    return isFree && !error
               ? Done()
               : Done(fail(ErrorKind::Conflict, ExchangeReason::FolderTaken, folder.string()));
}

// Writes the sheets of one journal.
class FolderWriter
{
public:
    FolderWriter(Database& database, const fs::path& folder, const Progress& progress)
        : m_tables(database)
        , m_sheets(m_tables.sheets())
        , m_folder(folder)
        , m_made(folder)
        , m_progress(progress)
    {
        for (const JournalSheet& sheet : m_sheets) {
            m_total += m_tables.rowCount(sheet);
            for (const SheetColumn& column : sheet.columns) {
                m_referred.insert(column.refersTo);
            }
        }
    }

    Result<FolderOutcome> write(const fs::path& photos)
    {
        Done done = m_made.folder(m_folder).and_then([this] { return writeDictionary(); });
        for (const JournalSheet& sheet : m_sheets) {
            done = done.and_then([&] { return writeSheet(sheet); });
        }
        done = done.and_then([&] { return writePhotos(photos); });
        if (!done) {
            return passOn(done);
        }
        m_made.keep();
        return m_outcome;
    }

private:
    Done writeDictionary()
    {
        std::string text = csvLine({"file", "column", "unit", "meaning", "values"});
        for (const JournalSheet& sheet : m_sheets) {
            const std::string file = fileOf(sheet);
            text += csvLine({file, "", "", std::string(meaningOf(sheet.table)), ""});
            for (const SheetColumn& column : sheet.columns) {
                const auto& words = wordsOf(sheet.table, column.stored);
                const std::string values = column.kind == SheetKind::Flag ? "yes, no"
                                           : column.kind == SheetKind::Reference
                                               ? "rows of " + column.refersTo + ".csv"
                                               : fmt::format("{}", fmt::join(words, ", "));
                text += csvLine({file, column.name, column.unit,
                                 std::string(meaningOf(sheet.table, column.stored)), values});
            }
        }
        ++m_outcome.files;
        return writeWhole(m_made.file(std::string(kDictionaryFile)), text);
    }

    Done writeSheet(const JournalSheet& sheet)
    {
        auto file = WholeFile::begin(m_made.file(fileOf(sheet)));
        if (!file) {
            return passOn(file);
        }
        Done done;
        std::string text = csvLine(headerOf(sheet));
        m_tables.forEachRow(sheet, [&](const std::vector<Cell>& cells) {
            if (!done) {
                return;
            }
            text += rowText(sheet, cells);
            if (text.size() > kBytesHeld) {
                done = file->write(text);
                text.clear();
            }
            done = done.and_then([this] { return goOn(); });
        });
        ++m_outcome.files;
        return done.and_then([&] { return file->write(text); }).and_then([&] {
            return file->commit();
        });
    }

    std::string rowText(const JournalSheet& sheet, const std::vector<Cell>& cells)
    {
        std::vector<std::string> texts;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            texts.push_back(sheetText(sheet.columns[i], cells[i], m_names));
        }
        if (m_referred.contains(sheet.table)) {
            m_names.note(sheet, texts, numberIn(sheet, cells));
        }
        return csvLine(texts);
    }

    Done goOn()
    {
        if (++m_outcome.rows % kRowsBetweenLooks == 0) {
            m_progress.report(static_cast<double>(m_outcome.rows) / static_cast<double>(m_total));
            if (m_progress.isStopped()) {
                return fail(ErrorKind::Cancelled, WorkReason::Stopped);
            }
        }
        return {};
    }

    Done writePhotos(const fs::path& photos)
    {
        Done done;
        for (const JournalSheet& sheet : m_sheets) {
            if (sheet.table != kPhotoTable) {
                continue;
            }
            m_tables.forEachRow(sheet, [&](const std::vector<Cell>& cells) {
                done = done.and_then([&] { return writePhoto(photos, photoIn(sheet, cells)); });
            });
        }
        return done;
    }

    Done writePhoto(const fs::path& photos, const std::string& name)
    {
        std::error_code error;
        if (!isPlainName(name) || !fs::is_regular_file(photos / name, error)) {
            m_outcome.missingPhotos.push_back(name);
            return {};
        }
        if (m_progress.isStopped()) {
            return fail(ErrorKind::Cancelled, WorkReason::Stopped);
        }
        ++m_outcome.photos;
        return m_made.folder(m_folder / kPhotoFolder).and_then([&] {
            return copyWhole(photos / name, m_made.file((fs::path(kPhotoFolder) / name).string()));
        });
    }

    SheetRepository m_tables;
    std::vector<JournalSheet> m_sheets;
    fs::path m_folder;
    Made m_made;
    Progress m_progress;
    SheetNames m_names;
    std::set<std::string> m_referred;
    std::int64_t m_total = 0;
    FolderOutcome m_outcome;
};

} // namespace

Result<FolderOutcome> writeJournalFolder(Database& database, const fs::path& photos,
                                         const fs::path& folder, const Progress& progress)
{
    if (Done free = checkIsFree(folder); !free) {
        return passOn(free);
    }
    return FolderWriter(database, folder, progress).write(photos);
}

} // namespace plumule
