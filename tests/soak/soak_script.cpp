#include "tests/soak/soak_script.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/support/told.h"

#include <algorithm>
#include <fmt/format.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

std::vector<TrayId> newestTrays(Journal& journal)
{
    std::vector<TrayId> trays;
    Database database(journal.path(), Access::ReadOnly);
    Statement rows = database.prepare("SELECT id FROM tray ORDER BY id DESC LIMIT ?1");
    rows.bind(kTraysOfStep);
    while (rows.step()) {
        trays.push_back(TrayId{rows.get<std::int64_t>(0)});
    }
    return trays;
}

Done sowThree(Journal& journal)
{
    SowingDraft draft;
    draft.variety = journal.varieties().all().value().front().id;
    const auto media = journal.media().all().value();
    const auto isUsedOnce = [](const Medium& medium) { return !medium.isReusable; };
    draft.medium = std::find_if(media.begin(), media.end(), isUsedOnce)->id;
    draft.count = kTraysOfStep;
    draft.at = journal.clock().now() + -kMinutesPerDay;
    const auto sown = journal.trays().sow(draft);
    return sown ? Done() : Done(passOn(sown));
}

} // namespace

ScriptState stateAfter(int steps)
{
    const int whole = steps / kStepsOfScript;
    const int rest = steps % kStepsOfScript;
    const auto times = [&](int after) { return whole + (rest > after ? 1 : 0); };
    return {kTraysOfStep * times(0), kTraysOfStep * times(1), times(2), rest == 4 ? 1 : 0};
}

ScriptState stateOf(const std::filesystem::path& path)
{
    Database database(path, Access::ReadOnly);
    const auto rowsOf = [&](const char* table) {
        return database.scalar(std::string("SELECT count(*) FROM ") + table);
    };
    return {rowsOf("tray"), rowsOf("watering"), rowsOf("tray_note"), rowsOf("height")};
}

void makeScriptJournal(const std::filesystem::path& path, const Clock& clock)
{
    RoomPlan plan;
    plan.room.name = "Tried";
    const auto journal = Journal::create(path, plan, clock);
    ASSERT_TRUE(journal) << told(journal.error());
}

namespace {

Done tryStep(Journal& journal, int step)
{
    const Moment now = journal.clock().now();
    if (step % kStepsOfScript == 0) {
        return sowThree(journal);
    }
    const auto trays = newestTrays(journal);
    const auto done = [](const auto& result) { return result ? Done() : Done(passOn(result)); };
    switch (step % kStepsOfScript) {
    case 1:
        return done(journal.watering().tickAll(trays, now.date, Slot::Morning));
    case 2:
        return done(journal.trays().writeNote(trays.front(), "step " + std::to_string(step), now));
    case 3:
        return done(
            journal.trays().noteHeight(trays.front(), millimetres(20), ReadFrom::Surface, now));
    default:
        return done(journal.undo());
    }
}

} // namespace

Done doStep(Journal& journal, int step)
{
    try {
        return tryStep(journal, step);
    } catch (const StorageFailure& failure) {
        return passOn(failure.error()); // met by the script's own reading
    } catch (const tl::bad_expected_access<Error>& refused) {
        return passOn(refused.error());
    }
}

Found lookAt(const std::filesystem::path& path, const Clock& clock)
{
    Found found;
    const auto journal = Journal::open(path, clock);
    found.isOpened = journal && !(*journal)->readOnlyBecause();
    if (found.isOpened) {
        const auto faults = (*journal)->faults();
        found.isSound = faults && faults->empty();
        found.state = stateOf(path);
    }
    return found;
}

void Tally::count(const Found& found, int acknowledged)
{
    ++tries;
    if (!found.isOpened || !found.isSound) {
        ++unsound;
        return;
    }
    if (found.state == stateAfter(acknowledged) || found.state == stateAfter(acknowledged + 1)) {
        return;
    }
    for (int steps = 0; steps < acknowledged; ++steps) {
        if (found.state == stateAfter(steps)) {
            ++lost;
            return;
        }
    }
    ++half;
}

std::string Tally::text(const char* what) const
{
    return fmt::format("{} {}: {} lost, {} half, {} unsound", tries, what, lost, half, unsound);
}

} // namespace plumule
