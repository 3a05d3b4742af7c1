#include "tests/soak/soak_room.h"

#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/support/told.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <map>

namespace plumule {
namespace {

constexpr int kTraysADay = 2;
constexpr int kUnderWeightDays = 2;
constexpr int kBlackoutDays = 1;
constexpr int kGrowingDays = 7;
constexpr int kMist = 30'000;   // µL
constexpr int kBelow = 200'000; // µL
constexpr int kSowingMinute = 8 * 60;

// Every seventeenth tray is discarded on its fifth day, after the morning's round.
constexpr int kDiscardedOneIn = 17;
constexpr int kDiscardedOnDay = 4;

bool isToBeDiscarded(int number)
{
    return number % kDiscardedOneIn == 0;
}

std::int64_t yieldOf(int number)
{
    return (150 + number * 37 % 90) * 1000;
}

int numberIn(const std::string& code)
{
    return std::stoi(code.substr(2));
}

template <class T>
void expectDone(const T& result, const char* what)
{
    EXPECT_TRUE(result) << what << ": " << (result ? "" : told(result.error()));
}

} // namespace

SoakRoom::SoakRoom(const std::filesystem::path& path, Moment begin)
    : m_path(path)
    , m_clock(begin)
{
    RoomPlan plan;
    plan.room.name = "Two years";
    plan.racks = 2;
    plan.shelvesPerRack = 2;
    plan.placesPerShelf = 4;
    auto made = Journal::create(path, plan, m_clock);
    EXPECT_TRUE(made) << told(made.error());
    m_journal = std::move(*made);
    addVariety();
}

void SoakRoom::addVariety()
{
    Protocol protocol;
    protocol.variety.name = "Tallied";
    protocol.variety.codePrefix = "TA";
    const auto stage = [&](Stage which, int days, int perDay, WateringMethod method, int amount) {
        ProtocolStage added;
        added.stage = which;
        added.lengthMinutes = days * kMinutesPerDay;
        added.wateringsPerDay = perDay;
        added.method = method;
        if (amount > 0) {
            added.amount = millilitres(amount / 1000.0);
        }
        protocol.stages.push_back(added);
    };
    stage(Stage::UnderWeight, kUnderWeightDays, 1, WateringMethod::Mist, kMist);
    stage(Stage::Blackout, kBlackoutDays, 0, WateringMethod::None, 0);
    stage(Stage::Light, kGrowingDays - kUnderWeightDays - kBlackoutDays, 2, WateringMethod::Below,
          kBelow);
    const auto saved = m_journal->varieties().save(protocol);
    expectDone(saved, "variety");
    m_variety = saved->variety.id;
    Medium medium;
    medium.name = "Tallied mix";
    medium.amountPerTray = litres(1.5);
    const auto added = m_journal->media().save(medium);
    expectDone(added, "medium");
    m_medium = added->id;
}

void SoakRoom::reopen()
{
    m_journal.reset();
    auto opened = Journal::open(m_path, m_clock);
    EXPECT_TRUE(opened) << told(opened.error());
    m_journal = std::move(*opened);
}

void SoakRoom::decide(const Round& round)
{
    for (const StageDecision& decision : round.decisions) {
        if (decision.to) {
            expectDone(m_journal->trays().moveOn(decision.tray, m_clock.now()), "moving on");
            ++m_intentions;
        } else {
            cut(decision.tray, decision.code);
        }
    }
}

void SoakRoom::cut(TrayId tray, const std::string& code)
{
    constexpr int kTare = 40;
    WeighingDraft weighing;
    weighing.tray = tray;
    weighing.bowls = {
        {grams(static_cast<double>(yieldOf(numberIn(code))) / 1000 + kTare), grams(kTare)}};
    weighing.at = m_clock.now();
    weighing.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::NotDueYet};
    expectDone(m_journal->harvests().record(weighing), "harvest");
    ++m_intentions;
}

void SoakRoom::walk(Slot slot)
{
    const auto before = m_journal->watering().round(m_clock.today(), slot);
    expectDone(before, "round");
    decide(*before);
    const auto round = m_journal->watering().round(m_clock.today(), slot);
    std::vector<TrayId> asked;
    for (const RoundTray& tray : round->trays) {
        if (tray.isAsked && !tray.isDone()) {
            asked.push_back(tray.tray);
        }
    }
    if (!asked.empty()) {
        expectDone(m_journal->watering().tickAll(asked, m_clock.today(), slot), "watering");
        ++m_intentions;
    }
}

void SoakRoom::sow()
{
    SowingDraft draft;
    draft.variety = m_variety;
    draft.medium = m_medium;
    draft.count = kTraysADay;
    draft.at = m_clock.now();
    const auto spots = m_journal->room().freeSpots().value();
    for (const Spot& spot : spots) {
        if (draft.places.size() < kTraysADay) {
            draft.places.push_back(spot.place);
        }
    }
    expectDone(m_journal->trays().sow(draft), "sowing");
    ++m_intentions;
    for (int i = 0; i < kTraysADay; ++i) {
        OwnTray own;
        own.sownDay = m_day;
        own.number = static_cast<int>(m_own.size()) + 1;
        m_own.push_back(own);
    }
}

void SoakRoom::discardSome()
{
    for (const OwnTray& own : m_own) {
        if (isToBeDiscarded(own.number) && m_day - own.sownDay == kDiscardedOnDay) {
            const auto tray = m_journal->trays().find(fmt::format("TA{:03}", own.number));
            expectDone(tray, "finding");
            expectDone(m_journal->trays().discard(*tray, "mould", m_clock.now()), "discarding");
            ++m_intentions;
        }
    }
}

void SoakRoom::takeBackAndDoAgain()
{
    constexpr int kBack = 3;
    for (int i = 0; i < kBack; ++i) {
        expectDone(m_journal->undo(), "undo");
    }
    for (int i = 0; i < kBack; ++i) {
        expectDone(m_journal->redo(), "redo");
    }
}

// By arithmetic: what each tray is given today, and what becomes of it.
void SoakRoom::tallyToday()
{
    for (OwnTray& own : m_own) {
        if (own.isHarvested || own.isDiscarded) {
            continue;
        }
        const int age = m_day - own.sownDay;
        const bool isDiscardedToday = isToBeDiscarded(own.number) && age == kDiscardedOnDay;
        if (age > 0 && age < kUnderWeightDays) {
            ++own.waterings;
            own.microlitres += kMist;
        } else if (age >= kUnderWeightDays + kBlackoutDays && age < kGrowingDays) {
            const int rounds = isDiscardedToday ? 1 : 2;
            own.waterings += rounds;
            own.microlitres += rounds * kBelow;
        } else if (age == kGrowingDays) {
            own.isHarvested = true;
            own.yieldMilligrams = yieldOf(own.number);
        }
        own.isDiscarded = isDiscardedToday;
    }
}

void SoakRoom::runDay()
{
    const Date today = m_clock.today();
    m_clock.set({today, 7 * 60});
    walk(Slot::Morning);
    m_clock.set({today, kSowingMinute});
    sow();
    discardSome();
    m_clock.set({today, 18 * 60});
    walk(Slot::Evening);
    if (m_day % 5 == 4) {
        takeBackAndDoAgain();
    }
    if (m_day % 30 == 29) {
        reopen();
    }
    tallyToday();
    ++m_day;
    m_clock.set({today + 1, 6 * 60});
}

void SoakRoom::runDays(int days)
{
    for (int i = 0; i < days && !testing::Test::HasFailure(); ++i) {
        SCOPED_TRACE(toIso(m_clock.today()));
        runDay();
    }
}

void SoakRoom::compareTray(const TraySheet& sheet, const OwnTray& own) const
{
    SCOPED_TRACE(sheet.record.tray.code);
    EXPECT_EQ(sheet.record.tray.state, own.isHarvested   ? TrayState::Harvested
                                       : own.isDiscarded ? TrayState::Discarded
                                                         : TrayState::Growing);
    std::int64_t given = 0;
    for (const Watering& watering : sheet.waterings) {
        given += watering.amount ? watering.amount->count() : 0;
    }
    EXPECT_EQ(sheet.waterings.size(), static_cast<std::size_t>(own.waterings));
    EXPECT_EQ(given, own.microlitres);
    std::int64_t weighed = 0;
    for (const Harvest& harvest : sheet.harvests) {
        weighed += harvest.net.count();
    }
    EXPECT_EQ(weighed, own.yieldMilligrams);
    EXPECT_EQ(sheet.stays.size(), 1U);
}

void SoakRoom::compare()
{
    const auto trays = m_journal->trays().list({});
    expectDone(trays, "list");
    ASSERT_EQ(trays->size(), m_own.size());
    for (const TrayListRow& row : *trays) {
        const auto sheet = m_journal->trays().sheet(row.record.tray.id);
        expectDone(sheet, "sheet");
        compareTray(*sheet, m_own.at(static_cast<std::size_t>(numberIn(row.record.tray.code) - 1)));
        if (testing::Test::HasFailure()) {
            return;
        }
    }
    const auto faults = m_journal->faults();
    expectDone(faults, "check");
    EXPECT_TRUE(faults->empty()) << told(faults->front());
    Database database(m_path, Access::ReadOnly);
    // Two trays on a place at a time.
    EXPECT_EQ(database.scalar(
                  "SELECT count(*) FROM stay a JOIN stay b ON a.place_id = b.place_id AND "
                  "a.id < b.id WHERE (a.from_on, a.from_minute) < (coalesce(b.to_on, '9999'), "
                  "coalesce(b.to_minute, 0)) AND (b.from_on, b.from_minute) < "
                  "(coalesce(a.to_on, '9999'), coalesce(a.to_minute, 0))"),
              0);
}

std::string SoakRoom::figures() const
{
    int harvested = 0;
    int discarded = 0;
    int waterings = 0;
    std::int64_t yield = 0;
    for (const OwnTray& own : m_own) {
        harvested += own.isHarvested ? 1 : 0;
        discarded += own.isDiscarded ? 1 : 0;
        waterings += own.waterings;
        yield += own.yieldMilligrams;
    }
    return fmt::format("{} days to {}: {} intentions, {} trays ({} harvested, {} discarded), {} "
                       "waterings, {} g",
                       m_day, toIso(m_clock.today()), m_intentions, m_own.size(), harvested,
                       discarded, waterings, yield / 1000);
}

} // namespace plumule
