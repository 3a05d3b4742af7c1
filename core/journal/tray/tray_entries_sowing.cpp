// Part of core/journal/tray/tray_entries.h: sowing.
#include "core/journal/tray/tray_entries.h"

#include "core/base/moment_text.h"
#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/tray/moving.h"
#include "core/journal/tray/sowing.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"

namespace plumule {
Result<std::vector<TrayId>> TrayEntries::sow(const SowingDraft& draft)
{
    return m_ledger.record(Intention::SowTrays, [&](Database& database, Deed& deed) {
        return sowAll(database, draft, deed);
    });
}

Done TrayEntries::moveTo(TrayId id, std::optional<PlaceId> place, Moment at)
{
    return m_ledger.record(Intention::MoveTray, [&](Database& database, Deed& deed) {
        return moveTrays(database, {{id, place}}, at, deed);
    });
}

} // namespace plumule
