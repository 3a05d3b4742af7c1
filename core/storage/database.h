#pragma once

#include "core/storage/access.h"
#include "core/storage/cell_bounds.h"
#include "core/storage/column_traits.h"
#include "core/storage/failure.h"
#include "core/storage/journal_lock.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

struct sqlite3;
struct sqlite3_stmt;

namespace plumule {

class Database;

// Prepared statements of one text that nobody has borrowed.
using IdleStatements = std::vector<sqlite3_stmt*>;

// A prepared statement, borrowed from its database until it goes out of scope. Keep the scope
// small: an unfinished read holds the journal's write-ahead log open.
class Statement
{
public:
    Statement(Statement&& other) noexcept;
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;
    Statement& operator=(Statement&&) = delete;
    ~Statement();

    // Binds the values to ?1, ?2, … in order.
    template <class... Values>
    Statement& bind(const Values&... values)
    {
        int index = 0;
        (bindCell(++index, ColumnTraits<Values>::toCell(values)), ...);
        return *this;
    }
    Statement& bindCell(int index, const Cell& cell);
    // A BLOB, which is not copied: the bytes must live until the statement was run.
    Statement& bindBytes(int index, std::string_view bytes);

    // True while there is a row to read.
    bool step();
    // Runs to the end.
    void run();
    // The value of a column of the present row, from 0. Throws Damaged with table and row where the
    // cell holds another type, a word that is none, or a number out of range.
    template <class T>
    [[nodiscard]] T get(int column) const
    {
        try {
            return ColumnTraits<T>::fromCell(cellAt(column));
        } catch (const BadCell&) {
            throw damageAt(column);
        }
    }
    [[nodiscard]] Cell cellAt(int column) const;
    [[nodiscard]] int columns() const;

private:
    friend class Database;
    Statement(Database& database, sqlite3_stmt* statement, IdleStatements& home);
    [[nodiscard]] StorageFailure damageAt(int column) const;

    Database* m_database;
    sqlite3_stmt* m_statement;
    IdleStatements* m_home; // where it goes back to
};

// A column as the schema declares it: INTEGER, REAL or TEXT.
struct ColumnInfo
{
    std::string name;
    std::string type;
    CellBounds bounds{name};
};

enum class OpenAs
{
    Existing,
    New, // made where it is not there
};

// One connection, with the journal's settings, for one thread at a time. Throws StorageFailure for
// whatever the machine breaks.
class Database
{
public:
    // An empty path is a database in memory.
    Database(const std::filesystem::path& path, Access access, OpenAs as = OpenAs::Existing);
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    [[nodiscard]] Statement prepare(std::string_view sql);
    // Runs one or more statements that give no rows.
    void execute(const std::string& sql);
    // The first column of the first row; `otherwise` when there is none.
    [[nodiscard]] std::int64_t scalar(std::string_view sql, std::int64_t otherwise = 0);

    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }
    [[nodiscard]] Access access() const { return m_access; }
    [[nodiscard]] bool isInTransaction() const;
    [[nodiscard]] sqlite3* handle() const { return m_handle; }

    // Which file was opened; none in memory.
    [[nodiscard]] std::optional<FileKey> file() const { return m_connection.file(); }
    // Lets go of it after the file is closed.
    void holdUntilClosed(std::shared_ptr<const void> held) { m_held = std::move(held); }
    [[nodiscard]] const std::shared_ptr<const void>& held() const { return m_held; }

    // The next id of this copy of the journal: copy number << 40 | counter. Only inside a
    // transaction; the counter is stored when that commits.
    [[nodiscard]] std::int64_t nextId();

    // In the order of the table; empty where there is no such table. Read once.
    [[nodiscard]] const std::vector<ColumnInfo>& columnsOf(const std::string& table);

    // Throws FileGone when the file at path() is no longer the one that was opened.
    void checkFileIsThere() const;
    // Throws what SQLite's result code means.
    [[noreturn]] void throwFailure(int code, std::string_view doing) const;

private:
    friend class Transaction;
    // Finds a text without a copy of it.
    struct TextHash
    {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const
        {
            return std::hash<std::string_view>{}(text);
        }
    };

    void applySettings(OpenAs as);
    void finalizeIdle();
    void storeCounter();
    void forgetCounter() { m_nextId = 0; }

    std::filesystem::path m_path;
    Access m_access;
    std::shared_ptr<const void> m_held;
    OpenConnection m_connection;
    sqlite3* m_handle = nullptr;
    std::int64_t m_nextId = 0; // 0: not read yet
    bool m_counterMoved = false;
    bool m_isOurs = false; // a journal, opened to write
    std::unordered_map<std::string, IdleStatements, TextHash, std::equal_to<>> m_idle;
    std::unordered_map<std::string, std::vector<ColumnInfo>> m_columns;
};

// BEGIN IMMEDIATE … COMMIT; rolls back when it goes out of scope uncommitted.
class Transaction
{
public:
    explicit Transaction(Database& database);
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;

    // Stores the id counter and commits. Throws, and has rolled back, when the file is gone or the
    // disk is full.
    void commit();
    void rollback();

private:
    Database& m_database;
    bool m_isOpen = false;
};

// BEGIN … COMMIT to read: until it goes out of scope all that this connection reads is of one
// state, whatever others write. Joins a transaction that is open already.
class ReadTransaction
{
public:
    explicit ReadTransaction(Database& database);
    ~ReadTransaction();
    ReadTransaction(const ReadTransaction&) = delete;
    ReadTransaction& operator=(const ReadTransaction&) = delete;

private:
    Database* m_database; // none: joined
};

} // namespace plumule
