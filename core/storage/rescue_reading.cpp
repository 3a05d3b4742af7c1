#include "core/storage/rescue_reading.h"

#include "core/storage/row_id.h"

#include <algorithm>
#include <limits>

namespace plumule {
namespace {

constexpr std::int64_t kFirstId = std::numeric_limits<std::int64_t>::min();
constexpr std::int64_t kLastId = std::numeric_limits<std::int64_t>::max();

// Rows looked for one by one where no index names them, at most.
constexpr std::int64_t kMostTries = 20'000;

enum class Direction
{
    Up,
    Down
};

bool isDamage(const StorageFailure& failure)
{
    return failure.error().kind != ErrorKind::DiskFull;
}

// Runs `work`; false where damage ended it.
template <class Work>
bool survives(Work work)
{
    try {
        return work();
    } catch (const StorageFailure& failure) {
        if (!isDamage(failure)) {
            throw;
        }
        return false;
    } catch (const std::bad_alloc&) { // a length that is none
        return false;
    }
}

class TableReader
{
public:
    TableReader(Database& database, std::string table, const std::vector<std::string>& columns)
        : m_database(database)
        , m_table('"' + std::move(table) + '"')
    {
        for (const std::string& column : columns) {
            m_columns += (m_columns.empty() ? "" : ", ") + column;
        }
    }

    ReadRows read()
    {
        std::int64_t low = kFirstId;
        std::int64_t high = kLastId;
        if (scan(Direction::Up, low)) {
            return std::move(m_read);
        }
        m_read.isWhole = false;
        scan(Direction::Down, high);
        m_read.before = low;
        m_read.behind = high;
        const std::set<std::int64_t> named = idsByIndexes();
        readEach(named);
        if (!m_read.isLostKnown) {
            readBetween(low, high);
        }
        return std::move(m_read);
    }

private:
    std::vector<Cell> cellsOf(const Statement& row) const
    {
        std::vector<Cell> cells;
        cells.reserve(static_cast<std::size_t>(row.columns()));
        for (int column = 0; column < row.columns(); ++column) {
            cells.push_back(row.cellAt(column));
        }
        return cells;
    }

    // From one end on, as far as the pages are in order. `reached` is the last row.
    bool scan(Direction direction, std::int64_t& reached)
    {
        return survives([&] {
            Statement rows =
                m_database.prepare("SELECT " + m_columns + " FROM " + m_table + " ORDER BY id" +
                                   (direction == Direction::Up ? "" : " DESC"));
            while (rows.step()) {
                const auto id = rows.get<std::int64_t>(0);
                if (direction == Direction::Up ? id <= reached : id >= reached) {
                    return false; // a page stands where another belongs
                }
                reached = id;
                m_read.rows.try_emplace(id, cellsOf(rows));
            }
            return true;
        });
    }

    std::set<std::int64_t> idsByIndexes()
    {
        std::vector<std::string> indexes;
        (void)survives([&] {
            Statement names = m_database.prepare(
                "SELECT name FROM sqlite_schema WHERE type = 'index' AND '\"' || tbl_name || '\"' "
                "= ?1 AND sql NOT LIKE '% WHERE %'");
            names.bind(m_table);
            while (names.step()) {
                indexes.push_back(names.get<std::string>(0));
            }
            return true;
        });
        std::set<std::int64_t> ids;
        for (const std::string& index : indexes) {
            m_read.isLostKnown = addIdsOf(index, ids) || m_read.isLostKnown;
        }
        return ids;
    }

    // An index has no more entries than its file has bytes.
    bool addIdsOf(const std::string& index, std::set<std::int64_t>& ids)
    {
        const auto most = m_database.scalar("PRAGMA page_count") * 4096;
        return survives([&] {
            Statement rows =
                m_database.prepare("SELECT id FROM " + m_table + " INDEXED BY \"" + index + '"');
            for (std::int64_t count = 0; rows.step(); ++count) {
                if (count > most) {
                    return false;
                }
                ids.insert(rows.get<std::int64_t>(0));
            }
            return true;
        });
    }

    bool readOne(std::int64_t id)
    {
        return survives([&] {
            Statement row =
                m_database.prepare("SELECT " + m_columns + " FROM " + m_table + " WHERE id = ?1");
            row.bind(id);
            const bool isThere = row.step() && row.cellAt(0) == Cell(id);
            if (isThere) {
                m_read.rows.try_emplace(id, cellsOf(row));
            }
            return isThere;
        });
    }

    void readEach(const std::set<std::int64_t>& ids)
    {
        for (const std::int64_t id : ids) {
            if (!m_read.rows.contains(id) && !readOne(id)) {
                m_read.lost.insert(id);
            }
        }
    }

    // Half of the tries from either side.
    void readBetween(std::int64_t low, std::int64_t high)
    {
        const std::int64_t from = low == kFirstId ? counted("1") : low + 1;
        high = std::min(high, counted("next_counter"));
        for (std::int64_t id = from, tries = 0; id < high && tries < kMostTries; ++id, ++tries) {
            if (!m_read.rows.contains(id)) {
                readOne(id);
            }
        }
        for (std::int64_t id = high - 1, tries = 0; id > from && tries < kMostTries;
             --id, ++tries) {
            if (!m_read.rows.contains(id)) {
                readOne(id);
            }
        }
    }

    // Ids count up from 1 within a copy. That of the counter, where it can be read.
    std::int64_t counted(const std::string& counter)
    {
        std::int64_t copy = 1;
        std::int64_t count = 1;
        (void)survives([&] {
            copy = m_database.scalar("SELECT copy_number FROM copy WHERE id = 1", 1);
            count = m_database.scalar("SELECT " + counter + " FROM copy WHERE id = 1", 1);
            return true;
        });
        const bool isOne =
            copy >= 1 && copy <= std::int64_t{1} << 22 && count >> kIdCounterBits == 0;
        return isOne ? copy << kIdCounterBits | count : (std::int64_t{1} << kIdCounterBits) + count;
    }

    Database& m_database;
    std::string m_table;
    std::string m_columns;
    ReadRows m_read;
};

} // namespace

std::vector<std::string> readableColumns(Database& old, Database& fresh, const std::string& table)
{
    std::set<std::string> known;
    (void)survives([&] {
        Statement there = old.prepare("SELECT name FROM pragma_table_info(?1) WHERE ?1 IN (SELECT "
                                      "name FROM sqlite_schema WHERE type = 'table')");
        there.bind(table);
        while (there.step()) {
            known.insert(there.get<std::string>(0));
        }
        return true;
    });
    std::vector<std::string> columns;
    Statement wanted = fresh.prepare(
        "SELECT name, coalesce(dflt_value, 'NULL') FROM pragma_table_info(?1) ORDER BY cid");
    wanted.bind(table);
    while (wanted.step() && !known.empty()) {
        const auto name = wanted.get<std::string>(0);
        columns.push_back(known.contains(name) ? '"' + name + '"' : wanted.get<std::string>(1));
    }
    return columns;
}

ReadRows readRows(Database& database, const std::string& table,
                  const std::vector<std::string>& columns)
{
    return TableReader(database, table, columns).read();
}

} // namespace plumule
