#include "core/storage/database.h"

#include "core/base/whole_file.h"
#include "core/storage/journal_log.h"

#include <cassert>
#include <fstream>
#include <sqlite3.h>

namespace plumule {
namespace {

// A connection belongs to one thread at a time, so that SQLite's own lock, a tenth of a review's
// time, is not needed.
constexpr int kOneThread = SQLITE_OPEN_URI | SQLITE_OPEN_NOMUTEX;

// One that only reads is opened to write all the same, where that may be, and then forbidden to:
// the last of those that read could not take the log away else.
int openFlags(const std::filesystem::path& path, Access access, OpenAs as)
{
    if (access == Access::ReadImmutable ||
        (access == Access::ReadOnly && !isWritableInPlace(path))) {
        return SQLITE_OPEN_READONLY | kOneThread;
    }
    return SQLITE_OPEN_READWRITE | kOneThread | (as == OpenAs::New ? SQLITE_OPEN_CREATE : 0);
}

// A file: URI with every byte escaped that is not plain, so that no name can be read as options.
std::string uriOf(const std::filesystem::path& path, Access access)
{
    static constexpr char kHex[] = "0123456789ABCDEF";
    std::string uri = "file:";
    for (const char c : std::filesystem::absolute(path).string()) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) != 0 || c == '/' || c == '-' || c == '_' || c == '.') {
            uri += c;
        } else {
            uri += '%';
            uri += kHex[byte >> 4];
            uri += kHex[byte & 15];
        }
    }
    return access == Access::ReadImmutable ? uri + "?immutable=1" : uri;
}

bool isDiskFullIn(sqlite3_file* file)
{
    int systemError = 0;
    return file != nullptr && file->pMethods != nullptr &&
           file->pMethods->xFileControl(file, SQLITE_FCNTL_LAST_ERRNO, &systemError) == SQLITE_OK &&
           isDiskFull(systemError);
}

// Of the ways in which the system says so SQLite calls only one by its name; the others stand
// behind a failure of the file, or of its log.
bool isDiskFullBehind(sqlite3* handle)
{
    sqlite3_file* file = nullptr;
    sqlite3_file* log = nullptr;
    sqlite3_file_control(handle, "main", SQLITE_FCNTL_FILE_POINTER, &file);
    sqlite3_file_control(handle, "main", SQLITE_FCNTL_JOURNAL_POINTER, &log);
    return isDiskFull(sqlite3_system_errno(handle)) || isDiskFullIn(file) || isDiskFullIn(log);
}

ErrorKind kindOf(int code, sqlite3* handle)
{
    const int kind = code & 0xff;
    if ((kind == SQLITE_IOERR || kind == SQLITE_CANTOPEN) && isDiskFullBehind(handle)) {
        return ErrorKind::DiskFull;
    }
    switch (kind) {
    case SQLITE_FULL:
        return ErrorKind::DiskFull;
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_CANTOPEN:
        return ErrorKind::NotWritable;
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return ErrorKind::AlreadyOpen;
    case SQLITE_NOTADB:
        return ErrorKind::NotAJournal;
    case SQLITE_CORRUPT:
        return ErrorKind::Damaged;
    case SQLITE_CONSTRAINT:
        return ErrorKind::Conflict;
    case SQLITE_INTERRUPT:
        return ErrorKind::Cancelled;
    default:
        return ErrorKind::Unreadable;
    }
}

// The file is there before SQLite opens it, so that its connection is known from the first.
const std::filesystem::path& made(const std::filesystem::path& path)
{
    if (!path.empty()) {
        std::ofstream(path, std::ios::app);
    }
    return path;
}

} // namespace

Statement::Statement(Database& database, sqlite3_stmt* statement, IdleStatements& home)
    : m_database(&database)
    , m_statement(statement)
    , m_home(&home)
{}

Statement::Statement(Statement&& other) noexcept
    : m_database(other.m_database)
    , m_statement(std::exchange(other.m_statement, nullptr))
    , m_home(other.m_home)
{}

Statement::~Statement()
{
    if (m_statement != nullptr) {
        sqlite3_reset(m_statement);
        sqlite3_clear_bindings(m_statement);
        m_home->push_back(m_statement);
    }
}

Statement& Statement::bindCell(int index, const Cell& cell)
{
    int code = SQLITE_OK;
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
        code = sqlite3_bind_int64(m_statement, index, *whole);
    } else if (const auto* real = std::get_if<double>(&cell)) {
        code = sqlite3_bind_double(m_statement, index, *real);
    } else if (const auto* text = std::get_if<std::string>(&cell)) {
        code = sqlite3_bind_text(m_statement, index, text->data(), static_cast<int>(text->size()),
                                 SQLITE_TRANSIENT);
    } else {
        code = sqlite3_bind_null(m_statement, index);
    }
    if (code != SQLITE_OK) {
        m_database->throwFailure(code, "bind");
    }
    return *this;
}

Statement& Statement::bindBytes(int index, std::string_view bytes)
{
    const int code =
        sqlite3_bind_blob64(m_statement, index, bytes.data(), bytes.size(), SQLITE_STATIC);
    if (code != SQLITE_OK) {
        m_database->throwFailure(code, "bind");
    }
    return *this;
}

bool Statement::step()
{
    const int code = sqlite3_step(m_statement);
    if (code == SQLITE_ROW) {
        return true;
    }
    if (code != SQLITE_DONE) {
        const int extended = sqlite3_extended_errcode(m_database->handle());
        m_database->throwFailure(extended, sqlite3_sql(m_statement));
    }
    return false;
}

void Statement::run()
{
    while (step()) {
    }
}

Cell Statement::cellAt(int column) const
{
    switch (sqlite3_column_type(m_statement, column)) {
    case SQLITE_INTEGER:
        return std::int64_t{sqlite3_column_int64(m_statement, column)};
    case SQLITE_FLOAT:
        return sqlite3_column_double(m_statement, column);
    case SQLITE_TEXT:
    case SQLITE_BLOB: {
        const auto* bytes = static_cast<const char*>(sqlite3_column_blob(m_statement, column));
        const auto size = static_cast<std::size_t>(sqlite3_column_bytes(m_statement, column));
        return bytes == nullptr ? std::string() : std::string(bytes, size);
    }
    default:
        return {};
    }
}

int Statement::columns() const
{
    return sqlite3_column_count(m_statement);
}

// The row is known where its id is among the columns; of a sum the table is that of any column.
StorageFailure Statement::damageAt(int column) const
{
    const int count = columns();
    const auto textOf = [](const char* name) { return std::string(name == nullptr ? "" : name); };
    std::string table = textOf(sqlite3_column_table_name(m_statement, column));
    for (int i = 0; i < count && table.empty(); ++i) {
        table = textOf(sqlite3_column_table_name(m_statement, i));
    }
    for (int i = 0; i < count; ++i) {
        if (textOf(sqlite3_column_table_name(m_statement, i)) == table &&
            textOf(sqlite3_column_origin_name(m_statement, i)) == "id") {
            return damagedRow(table, sqlite3_column_int64(m_statement, i));
        }
    }
    return damagedRow(table, 0);
}

Database::Database(const std::filesystem::path& path, Access access, OpenAs as)
    : m_path(path)
    , m_access(access)
    , m_connection(as == OpenAs::New ? made(path) : path)
{
    const std::string name = path.empty() ? ":memory:" : uriOf(path, access);
    const int code = sqlite3_open_v2(name.c_str(), &m_handle, openFlags(path, access, as), nullptr);
    if (code != SQLITE_OK) {
        const std::string message = sqlite3_errstr(code);
        const ErrorKind kind = kindOf(code, m_handle);
        sqlite3_close(m_handle);
        throw StorageFailure(kind, StorageReason::Failed, "open", message);
    }
    try {
        applySettings(as);
    } catch (...) {
        finalizeIdle();
        sqlite3_close(m_handle);
        throw;
    }
}

Database::~Database()
{
    finalizeIdle();
    if (m_isOurs) {
        // A clean close leaves one whole file; a failure here loses nothing, the log stays beside
        // it.
        sqlite3_wal_checkpoint_v2(m_handle, nullptr, SQLITE_CHECKPOINT_TRUNCATE, nullptr, nullptr);
    }
    sqlite3_close(m_handle);
}

void Database::finalizeIdle()
{
    for (auto& [sql, statements] : m_idle) {
        for (sqlite3_stmt* statement : statements) {
            sqlite3_finalize(statement);
        }
    }
    m_idle.clear();
}

Statement Database::prepare(std::string_view sql)
{
    auto known = m_idle.find(sql);
    if (known == m_idle.end()) {
        known = m_idle.try_emplace(std::string(sql)).first;
    }
    IdleStatements& idle = known->second;
    if (!idle.empty()) {
        sqlite3_stmt* statement = idle.back();
        idle.pop_back();
        return {*this, statement, idle};
    }
    sqlite3_stmt* statement = nullptr;
    const int code = sqlite3_prepare_v3(m_handle, sql.data(), static_cast<int>(sql.size()),
                                        SQLITE_PREPARE_PERSISTENT, &statement, nullptr);
    if (code != SQLITE_OK) {
        throwFailure(code, sql);
    }
    return {*this, statement, idle};
}

void Database::execute(const std::string& sql)
{
    const int code = sqlite3_exec(m_handle, sql.c_str(), nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) {
        throwFailure(code, sql.substr(0, 80));
    }
}

std::int64_t Database::scalar(std::string_view sql, std::int64_t otherwise)
{
    Statement statement = prepare(sql);
    return statement.step() ? statement.get<std::optional<std::int64_t>>(0).value_or(otherwise)
                            : otherwise;
}

bool Database::isInTransaction() const
{
    return sqlite3_get_autocommit(m_handle) == 0;
}

std::int64_t Database::nextId()
{
    assert(isInTransaction());
    if (m_nextId == 0) {
        Statement statement = prepare("SELECT copy_number, next_counter FROM copy WHERE id = 1");
        if (!statement.step()) {
            throw damagedRow("copy", 1);
        }
        m_nextId = (statement.get<std::int64_t>(0) << 40) | statement.get<std::int64_t>(1);
    }
    m_counterMoved = true;
    return m_nextId++;
}

void Database::storeCounter()
{
    if (!m_counterMoved) {
        return;
    }
    constexpr std::int64_t kCounterMask = (std::int64_t{1} << 40) - 1;
    prepare("UPDATE copy SET next_counter = ?1 WHERE id = 1").bind(m_nextId & kCounterMask).run();
    m_counterMoved = false;
}

void Database::checkFileIsThere() const
{
    if (file() && fileKeyOf(m_path) != file()) {
        throw StorageFailure(ErrorKind::FileGone, StorageReason::FileGone, m_path.string());
    }
}

void Database::throwFailure(int code, std::string_view doing) const
{
    throw StorageFailure(kindOf(code, m_handle), StorageReason::Failed, std::string(doing),
                         std::string(sqlite3_errmsg(m_handle)));
}

} // namespace plumule
