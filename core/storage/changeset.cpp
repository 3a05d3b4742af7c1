#include "core/storage/changeset.h"

#include "core/storage/changeset_bytes.h"

#include <algorithm>
#include <bit>

namespace plumule {
namespace {

constexpr std::uint64_t kMostColumns = 2000; // SQLite's own limit for a table, as shipped
// Bytes: more than all texts of any table's row come to, before and after.
constexpr std::size_t kLongestRow = std::size_t{1} << 20;

// The codes of SQLite's C interface; they are part of the stored form.
constexpr unsigned char kTableMark = 'T';
constexpr unsigned char kInsert = 18;
constexpr unsigned char kUpdate = 23;
constexpr unsigned char kDelete = 9;

enum class Held : unsigned char
{
    Nothing = 0,
    Whole = 1,
    Real = 2,
    Text = 3,
    Blob = 4,
    Null = 5
};

// Reads on from where it stands; after the first fault all reads give none.
class Bytes
{
public:
    explicit Bytes(std::string_view bytes)
        : m_left(bytes)
    {}

    [[nodiscard]] bool isAtEnd() const { return m_left.empty(); }
    [[nodiscard]] std::size_t size() const { return m_left.size(); }

    std::optional<unsigned char> byte()
    {
        const auto one = take(1);
        return one ? std::optional(static_cast<unsigned char>(one->front())) : std::nullopt;
    }

    std::optional<unsigned char> peek() const
    {
        return m_left.empty() ? std::nullopt
                              : std::optional(static_cast<unsigned char>(m_left.front()));
    }

    std::optional<std::string_view> take(std::uint64_t count)
    {
        if (count > m_left.size()) {
            m_left = {};
            return std::nullopt;
        }
        const std::string_view taken = m_left.substr(0, static_cast<std::size_t>(count));
        m_left.remove_prefix(static_cast<std::size_t>(count));
        return taken;
    }

    std::optional<std::uint64_t> bigEndian()
    {
        const auto eight = take(8);
        if (!eight) {
            return std::nullopt;
        }
        std::uint64_t value = 0;
        for (const char c : *eight) {
            value = value << 8 | static_cast<unsigned char>(c);
        }
        return value;
    }

    // Seven bits a byte, the highest bit set while more follow; the ninth byte is whole.
    std::optional<std::uint64_t> variable()
    {
        std::uint64_t value = 0;
        for (int i = 0; i < 8; ++i) {
            const auto next = byte();
            if (!next) {
                return std::nullopt;
            }
            value = value << 7 | (*next & 0x7FU);
            if ((*next & 0x80U) == 0) {
                return value;
            }
        }
        const auto last = byte();
        return last ? std::optional(value << 8 | *last) : std::nullopt;
    }

    std::optional<std::string_view> untilNull()
    {
        const std::size_t end = m_left.find('\0');
        if (end == std::string_view::npos) {
            m_left = {};
            return std::nullopt;
        }
        const std::string_view text = m_left.substr(0, end);
        m_left.remove_prefix(end + 1);
        return text;
    }

private:
    std::string_view m_left;
};

// False where no cell can be read; no cell where the record leaves it out.
bool readCell(Bytes& bytes, std::optional<Cell>& cell)
{
    const auto held = bytes.byte();
    if (!held) {
        return false;
    }
    switch (static_cast<Held>(*held)) {
    case Held::Nothing:
        cell.reset();
        return true;
    case Held::Null:
        cell.emplace();
        return true;
    case Held::Whole:
        if (const auto value = bytes.bigEndian()) {
            cell.emplace(static_cast<std::int64_t>(*value));
            return true;
        }
        return false;
    case Held::Real:
        if (const auto value = bytes.bigEndian()) {
            cell.emplace(std::bit_cast<double>(*value));
            return true;
        }
        return false;
    case Held::Text: {
        const auto size = bytes.variable();
        const auto text = size ? bytes.take(*size) : std::nullopt;
        if (text) {
            cell.emplace(std::string(*text));
        }
        return text.has_value();
    }
    case Held::Blob: // no tracked table holds one
        break;
    }
    return false;
}

bool readCells(Bytes& bytes, std::size_t columns, RowChange::Cells& cells)
{
    cells.resize(columns);
    for (std::optional<Cell>& cell : cells) {
        if (!readCell(bytes, cell)) {
            return false;
        }
    }
    return true;
}

// Of a row that came or went; an update alone leaves cells out.
bool readWholeRow(Bytes& bytes, std::size_t columns, RowChange::Cells& cells)
{
    return readCells(bytes, columns, cells) &&
           std::all_of(cells.begin(), cells.end(),
                       [](const std::optional<Cell>& cell) { return cell.has_value(); });
}

// An update says which row it is of, and what each cell that it changed was and is; SQLite itself
// reads where there is nothing when it lacks one of these.
bool readUpdate(Bytes& bytes, std::size_t columns, RowChange& change)
{
    if (!readCells(bytes, columns, change.before) || !readCells(bytes, columns, change.after) ||
        !change.before.front() || change.after.front()) {
        return false;
    }
    return std::equal(change.before.begin() + 1, change.before.end(), change.after.begin() + 1,
                      [](const std::optional<Cell>& was, const std::optional<Cell>& is) {
                          return was.has_value() == is.has_value();
                      });
}

struct TableHead
{
    std::string_view name;
    std::size_t columns = 0;
};

// What stands before the changes of a table; none for another form or key.
std::optional<TableHead> readTable(Bytes& bytes)
{
    bytes.byte(); // the mark
    const auto columns = bytes.variable();
    if (!columns || *columns == 0 || *columns > kMostColumns) {
        return std::nullopt;
    }
    const auto keys = bytes.take(*columns);
    const auto name = bytes.untilNull();
    if (!keys || !name || keys->front() != 1 ||
        keys->find_first_not_of('\0', 1) != std::string_view::npos) {
        return std::nullopt;
    }
    return TableHead{*name, static_cast<std::size_t>(*columns)};
}

bool readChange(Bytes& bytes, std::size_t columns, RowChange& change)
{
    const auto operation = bytes.byte();
    if (!operation || !bytes.byte()) { // the second says whether a trigger did it
        return false;
    }
    change.before.clear();
    change.after.clear();
    switch (*operation) {
    case kInsert:
        change.kind = ChangeKind::Insert;
        return readWholeRow(bytes, columns, change.after);
    case kDelete:
        change.kind = ChangeKind::Delete;
        return readWholeRow(bytes, columns, change.before);
    case kUpdate:
        change.kind = ChangeKind::Update;
        return readUpdate(bytes, columns, change);
    default:
        return false;
    }
}

} // namespace

std::int64_t RowChange::id() const
{
    const Cells& cells = kind == ChangeKind::Insert ? after : before;
    const auto* whole =
        cells.empty() || !cells.front() ? nullptr : std::get_if<std::int64_t>(&*cells.front());
    return whole == nullptr ? 0 : *whole;
}

bool walkChangeset(std::string_view stored, const OnRowChange& onRow)
{
    ChangesetWalk walk(onRow);
    if (!isPackedChangeset(stored)) {
        walk.feed(stored);
        return walk.isWhole();
    }
    std::vector<char> piece(std::size_t{1} << 16);
    ChangesetReader reader(stored);
    while (const std::size_t size = reader.read(piece.data(), piece.size())) {
        if (!walk.feed({piece.data(), size})) {
            return false;
        }
    }
    return !reader.isFaulty() && walk.isWhole();
}

bool ChangesetWalk::feed(std::string_view piece)
{
    if (m_unread.empty()) {
        m_unread = piece.substr(read(piece));
    } else {
        m_unread += piece;
        m_unread.erase(0, read(m_unread));
    }
    return m_unread.size() <= kLongestRow;
}

std::size_t ChangesetWalk::read(std::string_view bytes)
{
    Bytes left(bytes);
    std::size_t understood = 0;
    while (!left.isAtEnd()) {
        if (left.peek() == kTableMark) {
            const auto table = readTable(left);
            if (!table) {
                break;
            }
            m_table = table->name;
            m_columns = table->columns;
        } else if (m_columns == 0 || !readChange(left, m_columns, m_change)) {
            break;
        } else {
            m_change.table = m_table;
            m_onRow(m_change);
        }
        understood = bytes.size() - left.size();
    }
    return understood;
}

} // namespace plumule
