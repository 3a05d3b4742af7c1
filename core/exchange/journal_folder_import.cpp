// Part of core/exchange/journal_folder.h: the way in.
#include "core/base/whole_file.h"
#include "core/base/work_reason.h"
#include "core/exchange/csv.h"
#include "core/exchange/journal_folder.h"
#include "core/exchange/journal_folder_parts.h"
#include "core/exchange/row_fault.h"
#include "core/exchange/sheet_repository.h"

#include <algorithm>
#include <set>

namespace plumule {
namespace fs = std::filesystem;

namespace {

constexpr std::size_t kNotGiven = static_cast<std::size_t>(-1);
// Numbers are a copy's number and a counter; 2^22 copies there may be.
constexpr std::int64_t kHighestNumber = (std::int64_t{1} << 62) - 1;

Error at(const std::string& file, int line, Error error)
{
    error.row = RowAt{file, line};
    return error;
}

class FolderReader
{
public:
    FolderReader(Database& database, const fs::path& folder, const Progress& progress)
        : m_tables(database)
        , m_sheets(m_tables.sheets())
        , m_folder(folder)
        , m_progress(progress)
    {
        for (const JournalSheet& sheet : m_sheets) {
            for (const SheetColumn& column : sheet.columns) {
                m_referred.insert(column.refersTo);
            }
        }
    }

    Result<FolderOutcome> read()
    {
        Done done = readDictionary().and_then([this] { return checkFiles(); });
        for (std::size_t i = 0; i < m_sheets.size(); ++i) {
            const double whole = static_cast<double>(m_sheets.size());
            m_part =
                m_progress.part(static_cast<double>(i) / whole, static_cast<double>(i + 1) / whole);
            done = done.and_then([&] { return readSheet(m_sheets[i]); });
        }
        if (!done) {
            return passOn(done);
        }
        m_tables.countOnFrom(m_highest);
        return m_outcome;
    }

private:
    // The text of a file of the folder.
    [[nodiscard]] Result<std::string> textOf(const std::string& file) const
    {
        std::error_code error;
        if (!fs::is_regular_file(m_folder / file, error)) {
            return fail(ErrorKind::NotFound, ExchangeReason::FileMissing, file);
        }
        return textOfFile((m_folder / file).string());
    }

    // Which files belong to the folder.
    Done readDictionary()
    {
        const std::string file(kDictionaryFile);
        const auto text = textOf(file);
        const auto table = text ? csvFrom(*text) : passOn(text);
        if (!table) {
            return text ? passOn(inFile(file, table.error()))
                        : passOn(fail(ErrorKind::NotFound, ExchangeReason::FolderForeign,
                                      m_folder.string())
                                     .value());
        }
        const auto column = std::find(table->header.begin(), table->header.end(), "file");
        if (column == table->header.end()) {
            return faultAt(file, 1, ErrorKind::Missing, ExchangeReason::ColumnMissing,
                           std::string("file"));
        }
        for (const auto& row : table->rows) {
            m_named.insert(row[static_cast<std::size_t>(column - table->header.begin())]);
        }
        ++m_outcome.files;
        return {};
    }

    // A table that this journal does not know would be lost.
    Done checkFiles() const
    {
        std::set<std::string> known = {std::string(kDictionaryFile)};
        for (const JournalSheet& sheet : m_sheets) {
            known.insert(fileOf(sheet));
        }
        std::set<std::string> given = m_named;
        std::error_code error;
        for (const auto& entry : fs::directory_iterator(m_folder, error)) {
            if (entry.path().extension() == ".csv") {
                given.insert(entry.path().filename().string());
            }
        }
        for (const std::string& file : given) {
            if (!known.contains(file)) {
                return fail(ErrorKind::NotFound, ExchangeReason::FileUnknown, file);
            }
        }
        return {};
    }

    static Error inFile(const std::string& file, Error error)
    {
        return at(file, error.row ? static_cast<int>(error.row->number) : 1, std::move(error));
    }

    Done readSheet(const JournalSheet& sheet)
    {
        const std::string file = fileOf(sheet);
        if (!m_named.contains(file)) {
            return {}; // of a later schema than the one that was written out
        }
        const auto text = textOf(file);
        if (!text) {
            return passOn(text);
        }
        auto reader = CsvReader::on(*text);
        if (!reader) {
            return passOn(inFile(file, reader.error()));
        }
        const auto places = placesOf(sheet, reader->header());
        if (!places) {
            return passOn(places);
        }
        ++m_outcome.files;
        for (int row = 0;; ++row) {
            const auto isRow = reader->next();
            if (!isRow) {
                return passOn(inFile(file, isRow.error()));
            }
            if (!*isRow) {
                return checkCount(sheet, row);
            }
            if (Done read = readRow(sheet, *places, *reader, row); !read) {
                return read;
            }
        }
    }

    // Where each column of the sheet stands in the file.
    [[nodiscard]] static Result<std::vector<std::size_t>>
    placesOf(const JournalSheet& sheet, const std::vector<std::string>& header)
    {
        const std::vector<std::string> wanted = headerOf(sheet);
        for (const std::string& name : header) {
            if (std::find(wanted.begin(), wanted.end(), name) == wanted.end()) {
                return faultAt(fileOf(sheet), 1, ErrorKind::Invalid, ExchangeReason::ColumnUnknown,
                               name);
            }
        }
        std::vector<std::size_t> places;
        for (std::size_t i = 0; i < wanted.size(); ++i) {
            const auto found = std::find(header.begin(), header.end(), wanted[i]);
            if (found == header.end() && !sheet.columns[i].mayBeEmpty) {
                return faultAt(fileOf(sheet), 1, ErrorKind::Missing, ExchangeReason::ColumnMissing,
                               wanted[i]);
            }
            places.push_back(found == header.end()
                                 ? kNotGiven
                                 : static_cast<std::size_t>(found - header.begin()));
        }
        return places;
    }

    Done readRow(const JournalSheet& sheet, const std::vector<std::size_t>& places,
                 const CsvReader& reader, int row)
    {
        const std::string file = fileOf(sheet);
        if (reader.cells().size() != reader.header().size()) {
            return faultAt(file, reader.line(), ErrorKind::Invalid, ExchangeReason::CellCount,
                           reader.cells().size(), reader.header().size());
        }
        std::vector<std::string> texts;
        std::vector<Cell> cells;
        for (std::size_t i = 0; i < places.size(); ++i) {
            texts.push_back(places[i] == kNotGiven ? std::string() : reader.cells()[places[i]]);
            auto cell = sheetCell(sheet, sheet.columns[i], texts.back(), m_names);
            if (!cell) {
                return passOn(at(file, reader.line(), cell.error()));
            }
            cells.push_back(std::move(*cell));
        }
        if (Done stored = store(sheet, cells); !stored) {
            return passOn(at(file, reader.line(), stored.error()));
        }
        if (m_referred.contains(sheet.table)) {
            m_names.note(sheet, texts, numberIn(sheet, cells));
        }
        if (sheet.table == kPhotoTable) {
            m_outcome.photoNames.push_back(photoIn(sheet, cells));
        }
        return goOn(reader, row);
    }

    Done store(const JournalSheet& sheet, const std::vector<Cell>& cells)
    {
        const std::int64_t number = numberIn(sheet, cells);
        if (number > kHighestNumber) {
            return fail(ErrorKind::Invalid, ExchangeReason::CellForm, std::string("id"), number);
        }
        m_highest = std::max(m_highest, number);
        ++m_outcome.rows;
        try {
            m_tables.insert(sheet, cells);
        } catch (const StorageFailure& failure) {
            if (failure.error().kind != ErrorKind::Conflict) {
                throw;
            }
            return fail(ErrorKind::Duplicate, ExchangeReason::NumberTwice, std::string("id"),
                        number);
        }
        return {};
    }

    // A journal has one room.
    static Done checkCount(const JournalSheet& sheet, int rows)
    {
        return sheet.table == "room" && rows != 1
                   ? Done(faultAt(fileOf(sheet), 1, ErrorKind::Invalid, ExchangeReason::RoomRows))
                   : Done();
    }

    Done goOn(const CsvReader& reader, int row)
    {
        if (row % kRowsBetweenLooks == 0) {
            m_part.report(reader.fractionRead());
            if (m_part.isStopped()) {
                return fail(ErrorKind::Cancelled, WorkReason::Stopped);
            }
        }
        return {};
    }

    SheetRepository m_tables;
    std::vector<JournalSheet> m_sheets;
    fs::path m_folder;
    Progress m_progress;
    Progress m_part;
    SheetNames m_names;
    std::set<std::string> m_referred;
    std::set<std::string> m_named; // files, in the dictionary
    std::int64_t m_highest = 0;
    FolderOutcome m_outcome;
};

} // namespace

Result<FolderOutcome> readJournalFolder(Database& database, const fs::path& folder,
                                        const Progress& progress)
{
    return FolderReader(database, folder, progress).read();
}

Done bringPhotos(const fs::path& folder, const fs::path& photos, FolderOutcome& outcome)
{
    std::error_code ignored;
    std::vector<fs::path> copied;
    for (const std::string& name : outcome.photoNames) {
        const fs::path from = folder / kPhotoFolder / name;
        if (!isPlainName(name) || !fs::is_regular_file(from, ignored)) {
            outcome.missingPhotos.push_back(name);
            continue;
        }
        fs::create_directories(photos, ignored);
        if (Done done = copyWhole(from, photos / name); !done) {
            for (const fs::path& path : copied) {
                fs::remove(path, ignored);
            }
            return done;
        }
        copied.push_back(photos / name);
    }
    outcome.photos = static_cast<int>(copied.size());
    return {};
}

} // namespace plumule
