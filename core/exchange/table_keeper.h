#pragma once

#include "core/exchange/row_cells.h"

#include <functional>

namespace plumule {

struct ImportPreview;

// A row that is left out: it stands in the journal already, or further up in the file.
struct HeldRow
{
    int line = 0;
    int as = 0; // the line that says the same; 0: the journal does
    bool operator==(const HeldRow&) const = default;
};

// The first few hundred, and how many there are.
class HeldRows
{
public:
    void add(HeldRow row);
    [[nodiscard]] std::int64_t count() const { return m_count; }
    [[nodiscard]] const std::vector<HeldRow>& rows() const { return m_kept; }

private:
    std::vector<HeldRow> m_kept;
    std::int64_t m_count = 0;
};

// What becomes of a row without a fault in its cells.
enum class Fate
{
    New,
    Refused, // why is noted in the cells
    Open     // finish() tells
};

// What is peculiar to the rows of one kind of table: how they are read, resolved against the
// journal and checked. The rows of a file are shown to it in order.
class TableKeeper
{
public:
    virtual ~TableKeeper() = default;

    // Hands over the key of every row that the journal has.
    virtual void begin(const std::function<void(std::string key)>& know) = 0;
    // Reads the present row, notes what is wrong with it, and gives its key: rows with the same key
    // say the same.
    virtual std::string read(RowCells& cells) = 0;
    // The row read last is no duplicate: it is asked whether it agrees with the journal and with
    // the rows before it.
    virtual Fate accept(RowCells& cells) = 0;
    // After the last row: what only the whole file tells.
    virtual void finish(FaultList& faults, HeldRows& held) = 0;
    // Hands over what else a preview shows.
    virtual void tell(ImportPreview& preview) = 0;
};

// One that also writes; inside a transaction.
class StoringKeeper : public TableKeeper
{
public:
    // The row accepted last.
    virtual void store() = 0;
    void tell(ImportPreview&) override {}
};

} // namespace plumule
