#include "core/tray/tray_ids.h"

namespace plumule {

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
