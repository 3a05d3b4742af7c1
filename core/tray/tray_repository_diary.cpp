// Part of core/tray/tray_repository.h: heights, notes and photographs.
#include "core/tray/tray_repository.h"

#include "core/storage/id_list.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_table_of.h"

namespace plumule {

namespace {

template <class Row>
std::vector<Row> diaryOf(Database& database, TrayId tray)
{
    return selectRows<Row>(database, "WHERE tray_id = ?1 ORDER BY on_date, minute, id", tray);
}

template <class Row>
std::map<TrayId, std::vector<Row>> diariesOf(Database& database, const std::vector<TrayId>& trays)
{
    std::map<TrayId, std::vector<Row>> byTray;
    for (Row& row : selectRows<Row>(database,
                                    "WHERE tray_id IN (SELECT value FROM json_each(?1)) "
                                    "ORDER BY on_date, minute, id",
                                    idList(trays))) {
        byTray[row.tray].push_back(std::move(row));
    }
    return byTray;
}

} // namespace

std::vector<Height> TrayRepository::heights(TrayId tray) const
{
    return diaryOf<Height>(m_database, tray);
}

TrayRepository::ByTray<Height> TrayRepository::heights(const std::vector<TrayId>& trays) const
{
    return diariesOf<Height>(m_database, trays);
}

void TrayRepository::insert(Height& height)
{
    insertRow(m_database, height);
}

std::optional<TrayNote> TrayRepository::find(TrayNoteId note) const
{
    return findRow<TrayNote>(m_database, note);
}

std::vector<TrayNote> TrayRepository::notes(TrayId tray) const
{
    return diaryOf<TrayNote>(m_database, tray);
}

TrayRepository::ByTray<TrayNote> TrayRepository::notes(const std::vector<TrayId>& trays) const
{
    return diariesOf<TrayNote>(m_database, trays);
}

void TrayRepository::insert(TrayNote& note)
{
    insertRow(m_database, note);
}

void TrayRepository::remove(TrayNoteId note)
{
    deleteRow<TrayNote>(m_database, note);
}

std::optional<Photo> TrayRepository::find(PhotoId photo) const
{
    return findRow<Photo>(m_database, photo);
}

std::vector<Photo> TrayRepository::photos(TrayId tray) const
{
    return diaryOf<Photo>(m_database, tray);
}

TrayRepository::ByTray<Photo> TrayRepository::photos(const std::vector<TrayId>& trays) const
{
    return diariesOf<Photo>(m_database, trays);
}

void TrayRepository::insert(Photo& photo)
{
    insertRow(m_database, photo);
}

void TrayRepository::remove(PhotoId photo)
{
    deleteRow<Photo>(m_database, photo);
}

} // namespace plumule
