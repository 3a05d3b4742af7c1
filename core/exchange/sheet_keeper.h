#pragma once

#include "core/exchange/stored_rows.h"
#include "core/exchange/table_keeper.h"
#include "core/room/room.h"
#include "core/tray/tray.h"

namespace plumule {

// Keeps rows that become rows of one table of the journal. Two rows say the same where all cells
// but the number are alike.
class SheetKeeper : public StoringKeeper
{
public:
    SheetKeeper(Database& database, std::string_view table, Date today);

    void begin(const std::function<void(std::string)>& know) override;
    std::string read(RowCells& cells) override;
    Fate accept(RowCells& cells) override;
    void finish(FaultList&, HeldRows&) override {}
    void store() override;

protected:
    // Before the stored rows are walked through.
    virtual void learn() {}
    // Each row that the journal has.
    virtual void learnRow(const StoredRow&) {}
    // Sets the row's cells.
    virtual void readRow(RowCells& cells) = 0;
    virtual void check(RowCells&) {}
    // What is written beside the row.
    virtual void storeBeside(std::int64_t) {}
    // What else is part of what a row says.
    [[nodiscard]] virtual std::string keyBeside() const { return {}; }
    [[nodiscard]] virtual std::string keyBesideOf(const StoredRow&) const { return {}; }
    // A column that is no part of what a row says.
    [[nodiscard]] virtual bool isGivenHere(std::string_view) const { return false; }

    template <class T>
    void set(std::string_view column, const T& value)
    {
        m_cells[indexOf(column)] = ColumnTraits<T>::toCell(value);
    }
    // Not after today, or none and noted.
    std::optional<Date> pastDay(RowCells& cells, std::string_view column);

    [[nodiscard]] Database& database() const { return m_database; }
    [[nodiscard]] const Room& room() const { return m_room; }
    [[nodiscard]] Date today() const { return m_today; }

private:
    [[nodiscard]] std::size_t indexOf(std::string_view column) const;
    [[nodiscard]] std::string keyOf(const std::vector<Cell>& cells) const;

    Database& m_database;
    JournalSheet m_sheet;
    std::vector<Cell> m_cells; // of the row read last
    Date m_today;
    Room m_room;
};

// What is to be known of a tray.
struct KnownTray
{
    TrayId id;
    std::string code;
    MediumId medium;
    Date sownOn;
    TrayState state = TrayState::Growing;
};

// The journal's trays by code; letter case does not matter.
class KnownTrays
{
public:
    explicit KnownTrays(Database& database);
    // Of the cell in that column, which is needed; null, and noted, where there is none.
    [[nodiscard]] KnownTray* in(RowCells& cells, std::string_view column);

private:
    std::unordered_map<std::string, KnownTray> m_trays;
};

// Keeps rows that are about a tray on a day.
class TraySheetKeeper : public SheetKeeper
{
public:
    using SheetKeeper::SheetKeeper;

protected:
    void learn() override;
    // Sets tray_id, on_date and minute, and gives the tray; null where something is wrong.
    KnownTray* readTrayDay(RowCells& cells, std::optional<Slot> slot = std::nullopt);
    [[nodiscard]] Moment at() const { return m_at; }

private:
    std::optional<KnownTrays> m_trays;
    Moment m_at;
};

// The day and time of a row about a tray: not before its sowing; none, and noted, else.
[[nodiscard]] std::optional<Moment> momentOf(RowCells& cells, const KnownTray& tray, Date today,
                                             int otherwiseMinute);

} // namespace plumule
