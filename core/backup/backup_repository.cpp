#include "core/backup/backup_repository.h"

namespace plumule {

std::vector<std::string> BackupRepository::photoNames()
{
    std::vector<std::string> names;
    Statement rows = m_database.prepare("SELECT DISTINCT file_name FROM photo ORDER BY file_name");
    while (rows.step()) {
        names.push_back(rows.get<std::string>(0));
    }
    return names;
}

BackupContent BackupRepository::content()
{
    BackupContent content;
    content.trays = m_database.scalar("SELECT count(*) FROM tray");
    content.waterings = m_database.scalar("SELECT count(*) FROM watering");
    content.harvests = m_database.scalar("SELECT count(*) FROM harvest");
    content.photos = m_database.scalar("SELECT count(DISTINCT file_name) FROM photo");
    Statement last = m_database.prepare(
        "SELECT strftime('%Y-%m-%d %H:%M', max(at_utc_ms) / 1000, 'unixepoch') FROM history");
    content.lastEntryUtc = last.step() ? last.get<std::optional<std::string>>(0).value_or("") : "";
    return content;
}

} // namespace plumule
