#include "core/sample/sample_room.h"

#include "core/base/work_reason.h"
#include "core/sample/sample_climate.h"
#include "core/sample/sample_orders.h"
#include "core/sample/sample_plans.h"
#include "core/sample/sample_reason.h"
#include "core/sample/sample_repeats.h"
#include "core/sample/sample_tastings.h"
#include "core/sample/sample_trays.h"
#include "core/tray/tray_repository.h"

namespace plumule {

Done storeSampleRoom(Database& database, const std::filesystem::path& folder, Moment now,
                     const Progress& progress)
{
    if (TrayRepository(database).count({}) > 0) {
        return fail(ErrorKind::Conflict, SampleReason::JournalHasTrays);
    }
    SampleTables tables(folder, now);
    const SampleStock stock = storeSampleStock(database, tables);
    if (!tables.isFaulty()) {
        storeSampleTrays(database, tables, stock);
    }
    if (!tables.isFaulty()) {
        storeSamplePlans(database, tables, stock);
    }
    if (!tables.isFaulty()) {
        storeSampleClimate(database, tables, stock);
    }
    if (!tables.isFaulty()) {
        storeSampleRepeats(database, tables, stock);
        storeSampleOrders(database, tables, stock);
    }
    if (!tables.isFaulty()) {
        storeSampleTastings(database, tables, stock);
    }
    if (!tables.isFaulty()) {
        storeSampleWaterings(database, tables, stock, progress);
    }
    if (progress.isStopped()) {
        return fail(ErrorKind::Cancelled, WorkReason::Stopped);
    }
    return tables.outcome();
}

} // namespace plumule
