#include "core/journal/trial/usual_trial.h"

#include "core/journal/trial/trial_storing.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_places.h"
#include "core/trial/trial_reason.h"
#include "core/variety/variety_repository.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr int kDaysOfLate = 180; // sown since then is "of late"
constexpr int kMostDaysAhead = 21;
constexpr std::size_t kMostMedia = 4;
constexpr std::size_t kFewestMedia = 2;

// Newest first; all there ever were where none was sown of late.
std::vector<TrayRecord> sownOfLate(Database& database, Date today)
{
    const TrayRepository trays(database);
    TrayFilter filter;
    filter.sownFrom = today - kDaysOfLate;
    std::vector<TrayRecord> found = trays.records(filter);
    return found.empty() ? trays.records() : found;
}

bool growsByProtocol(VarietyRepository& varieties, VarietyId variety)
{
    const auto protocol = varieties.protocol(variety);
    return protocol && minutesToHarvest(*protocol) > 0;
}

std::optional<VarietyId> usualVariety(Database& database, const std::vector<TrayRecord>& sown)
{
    VarietyRepository varieties(database);
    for (const TrayRecord& record : sown) {
        if (growsByProtocol(varieties, record.tray.variety)) {
            return record.tray.variety;
        }
    }
    for (const Variety& variety : varieties.all(Listed::InUse)) {
        if (growsByProtocol(varieties, variety.id)) {
            return variety.id;
        }
    }
    return std::nullopt;
}

std::optional<SeedLotId> fullestLot(Database& database, VarietyId variety)
{
    const std::vector<SeedLotStock> lots =
        VarietyRepository(database).stock(variety, Listed::InUse);
    const auto fullest = std::max_element(
        lots.begin(), lots.end(),
        [](const SeedLotStock& a, const SeedLotStock& b) { return a.left < b.left; });
    return fullest == lots.end() ? std::nullopt : std::optional(fullest->lot.id);
}

// Most sown first, then by name.
std::vector<MediumId> usualMedia(Database& database, const std::vector<TrayRecord>& sown)
{
    std::map<MediumId, int> counts;
    for (const TrayRecord& record : sown) {
        ++counts[record.tray.medium];
    }
    std::vector<Medium> media = MediumRepository(database).all(Listed::InUse);
    std::stable_sort(media.begin(), media.end(),
                     [&](const Medium& a, const Medium& b) { return counts[a.id] > counts[b.id]; });
    std::vector<MediumId> usual;
    for (const Medium& medium : media) {
        const bool isUsual = counts[medium.id] > 0 && usual.size() < kMostMedia;
        if (isUsual || usual.size() < kFewestMedia) {
            usual.push_back(medium.id);
        }
    }
    return usual;
}

Moment nextMorning(const Room& room, Moment now)
{
    const Moment today{now.date, room.morningMinute};
    return now < today ? today : today + kMinutesPerDay;
}

// On the first morning on which the places are free; where there is none, the first one stays.
void drawWhenFree(Database& database, TrialDraft& draft)
{
    const Date first = draft.plan.sowOn;
    for (int wait = 0; wait <= kMostDaysAhead; ++wait) {
        draft.plan.sowOn = first + wait;
        if (auto drawn = drawFor(database, draft)) {
            draft.trays = std::move(*drawn);
            return;
        }
    }
    draft.plan.sowOn = first;
}

} // namespace

Result<TrialDraft> usualDraft(Database& database, Moment now, std::int64_t drawNumber)
{
    const std::vector<TrayRecord> sown = sownOfLate(database, now.date);
    const auto variety = usualVariety(database, sown);
    if (!variety) {
        return fail(ErrorKind::Missing, TrialReason::NothingToGrow);
    }
    TrialDraft draft;
    draft.trial.code = freeTrialCode(database);
    for (const MediumId medium : usualMedia(database, sown)) {
        Treatment treatment;
        treatment.position = static_cast<int>(draft.treatments.size());
        treatment.medium = medium;
        draft.treatments.push_back(treatment);
    }
    if (!draft.treatments.empty()) {
        draft.trial.control = draft.treatments.front().medium;
    }
    const Moment at = nextMorning(RoomRepository(database).room(), now);
    draft.plan.variety = *variety;
    draft.plan.seedLot = fullestLot(database, *variety);
    draft.plan.sowOn = at.date;
    draft.plan.sowMinute = at.minute;
    draft.plan.drawNumber = drawNumber;
    drawWhenFree(database, draft);
    return draft;
}

} // namespace plumule
