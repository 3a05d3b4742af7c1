#pragma once

#include "core/merge/copies_repository.h"
#include "core/merge/families.h"

#include <functional>

namespace plumule {

// What a copy did since it was last seen here, told in this journal's ids: a row that was made on
// both sides (a variety of one name, the tick of one round) is one row, and a new tray whose code
// is taken here has the next free one. Reads both journals and writes neither.
class TwoSidesRepository
{
public:
    // Whether a photograph of that name stands here already, with another content.
    using IsTaken = std::function<bool(const std::string& fileName)>;

    TwoSidesRepository(Database& here, Database& there, const TakenCopy& copy);

    // Damaged, as changesSince().
    [[nodiscard]] Done read(const IsTaken& isPhotoTaken);

    // That the copy changed and that are not alike here.
    [[nodiscard]] const std::map<RowKey, MergeRow>& rows() const { return m_rows; }
    [[nodiscard]] const SameRows& same() const { return m_same; }
    [[nodiscard]] const std::vector<Renamed>& renamed() const { return m_renamed; }
    [[nodiscard]] const std::vector<ActSince>& actsHere() const { return m_sinceHere.acts; }
    [[nodiscard]] const std::vector<ActSince>& actsThere() const { return m_sinceThere.acts; }
    // How far it goes: the mark of its next coming.
    [[nodiscard]] const HistoryMark& until() const { return m_until; }

    // All rows of a family that are not alike, whoever changed them.
    [[nodiscard]] std::vector<MergeRow> rowsOf(const Family& family);
    // Families that hold a row made on both sides which is not alike on both.
    [[nodiscard]] bool wasMadeOnBoth(const Family& family) const
    {
        return m_madeOnBoth.contains(family);
    }
    [[nodiscard]] Family familyOfRow(const RowKey& key, const WholeRow& row);
    // The copy's row in this journal's ids.
    [[nodiscard]] RowState thereNow(const RowKey& key);

private:
    [[nodiscard]] std::int64_t idThere(const RowKey& here) const;
    [[nodiscard]] WholeRow translated(const std::string& table, WholeRow row, std::int64_t id);
    void readRow(const RowKey& there, const RowSince& since);
    // The row here that it is, where it was made on both sides.
    [[nodiscard]] std::optional<std::int64_t> sameHere(const RowKey& there, const WholeRow& row);
    void keepNames(MergeRow& row);
    void rename(MergeRow& row);
    void renameTo(MergeRow& row, const char* column, const Cell& cell);
    [[nodiscard]] std::optional<Cell> freeName(const MergeRow& row, const std::string& column);
    [[nodiscard]] std::optional<Cell> freePhotoName(const std::string& wished);
    [[nodiscard]] Cell cellOf(const MergeRow& row, const char* column);
    [[nodiscard]] std::vector<std::string> textsOf(const std::string& table, const char* column);
    [[nodiscard]] std::vector<int> numbersOf(const std::string& table, const char* column,
                                             const char* where, const Cell& cell);

    Database& m_here;
    Database& m_there;
    CopyId m_copy;
    TakenCopy m_taken;
    HistorySince m_sinceHere;
    HistorySince m_sinceThere;
    HistoryMark m_until;
    SameRows m_same;
    std::map<RowKey, std::int64_t> m_sameBack; // by the row here
    std::set<Family> m_madeOnBoth;
    std::map<RowKey, MergeRow> m_rows;
    std::vector<Renamed> m_renamed;
    IsTaken m_isPhotoTaken;
};

} // namespace plumule
