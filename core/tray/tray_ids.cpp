#include "core/tray/tray_ids.h"

namespace plumule {

std::string idList(const std::vector<TrayId>& trays)
{
    std::string list = "[";
    for (const TrayId tray : trays) {
        list += (list.size() > 1 ? "," : "") + std::to_string(tray.value);
    }
    return list + "]";
}

std::vector<TrayId> idsOf(const std::vector<TrayRecord>& records)
{
    std::vector<TrayId> ids;
    ids.reserve(records.size());
    for (const TrayRecord& record : records) {
        ids.push_back(record.tray.id);
    }
    return ids;
}

} // namespace plumule
