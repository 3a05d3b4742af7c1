#include "tests/bench/life/room_of_years.h"

#include "core/base/clock.h"
#include "core/harvest/harvest_repository.h"
#include "core/journal/journal.h"
#include "core/journal/ledger/intention.h"
#include "core/journal/tray/sowing.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/storage/journal_file.h"
#include "core/storage/migrations.h"
#include "core/storage/recording.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_code.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"
#include "core/watering/watering_repository.h"
#include "tests/bench/life/present_moment.h"

#include <algorithm>
#include <cassert>
#include <map>

namespace plumule::bench {
namespace {

constexpr int kDaysGrown = 11;
constexpr int kFirstWateredDay = 3;
constexpr int kTraysOfATrial = 12;
constexpr int kTrialEvery = 40; // in times of twelve trays
constexpr int kDiscardedEvery = 25;
constexpr int kDaysOfOwnEntries = 60; // before the present
constexpr std::int64_t kDayMs = 86'400'000;

class RoomMaker
{
public:
    RoomMaker(Database& database, const RoomSize& size)
        : m_database(database)
        , m_size(size)
        , m_today(presentMoment().date)
    {
        for (const Medium& medium : MediumRepository(database).all(Listed::InUse)) {
            if (!medium.isReusable) {
                m_media.push_back(medium);
            }
        }
        for (const Variety& variety : VarietyRepository(database).all(Listed::InUse)) {
            auto protocol = VarietyRepository(database).protocol(variety.id);
            if (protocol && minutesToHarvest(*protocol) > 0) {
                m_protocols.push_back(*protocol);
            }
        }
        for (const Spot& spot : RoomRepository(database).layout().spots()) {
            m_free.push_back(spot.place);
        }
    }

    RoomOfYears make()
    {
        const int days = 365 * m_size.years;
        for (int day = days; day >= 0; --day) {
            const Date date = m_today - day;
            Transaction transaction(m_database);
            cutWhatIsDue(date);
            const int until =
                static_cast<int>(std::int64_t{m_size.trays} * (days - day + 1) / (days + 1));
            while (m_sown < until) {
                sow(date);
            }
            moveOn(date);
            // Of the present day nothing is ticked yet.
            if (day > 0) {
                water(date, Slot::Morning);
                water(date, Slot::Evening);
            }
            transaction.commit();
        }
        m_room.someCode = m_growing.front().tray.code;
        m_room.someVariety = m_growing.front().tray.variety;
        return m_room;
    }

private:
    struct Growing
    {
        Tray tray;
        std::vector<TrayStage> stages;
        PlaceId place;
        std::size_t number = 0;
    };

    struct Entry
    {
        std::string changeset;
        std::int64_t checksum = 0;
        std::int64_t rows = 0;
    };

    // One act, and its entry. The million entries of long ago hold the changeset of the first of
    // their kind: each is as long as its own would be, and of the same shape.
    template <class Act>
    void act(Intention what, const std::string& whom, Date date, Act done)
    {
        const auto first = m_entries.find(what);
        if (first != m_entries.end() && m_today - date > kDaysOfOwnEntries) {
            done();
            enterAgain(what, first->second, whom, date);
            return;
        }
        Recording recording(m_database);
        done();
        recording.finish(utcMsOf(date), toText(what), whom);
        if (first == m_entries.end()) {
            m_entries.emplace(what, latestEntry());
        }
    }
    static std::int64_t utcMsOf(Date date)
    {
        return std::int64_t{date - dateFromIso("1970-01-01").value()} * kDayMs;
    }
    Entry latestEntry()
    {
        Statement latest = m_database.prepare("SELECT changeset, changeset_crc, row_count "
                                              "FROM history ORDER BY id DESC LIMIT 1");
        latest.step();
        return {latest.get<std::string>(0), latest.get<std::int64_t>(1),
                latest.get<std::int64_t>(2)};
    }
    void enterAgain(Intention what, const Entry& entry, const std::string& whom, Date date)
    {
        m_database
            .prepare("INSERT INTO history (id, at_utc_ms, intention, subject, row_count, "
                     "schema_version, state, changeset, changeset_bytes, changeset_crc, details) "
                     "VALUES (?1, ?2, ?3, ?4, ?5, ?6, 'done', ?9, ?7, ?8, '')")
            .bind(m_database.nextId(), utcMsOf(date), std::string(toText(what)), whom, entry.rows,
                  migrations().back().version, static_cast<std::int64_t>(entry.changeset.size()),
                  entry.checksum)
            .bindBytes(9, entry.changeset)
            .run();
    }

    void sow(Date date)
    {
        const auto number = static_cast<std::size_t>(m_sown++);
        const Protocol& protocol = m_protocols[(number / 7) % m_protocols.size()];
        const SowingGround ground{protocol, m_media[number % m_media.size()]};
        SowingDraft draft;
        draft.variety = protocol.variety.id;
        draft.medium = ground.medium.id;
        draft.at = {date, kMorningMinute};
        draft.trial = trialOf(number, date);
        SownTray put;
        put.code = codeOf(protocol.variety.codePrefix, ++m_numbers[draft.variety]);
        assert(!m_free.empty());
        put.place = m_free.back();
        m_free.pop_back();
        act(Intention::SowTrays, put.code, date, [&] {
            const TrayRepository trays(m_database);
            const TrayId tray = storeSown(m_database, draft, ground, put);
            m_growing.push_back({*trays.find(tray), trays.stages(tray), *put.place, number});
        });
    }

    std::optional<TrialId> trialOf(std::size_t number, Date date)
    {
        if ((number / kTraysOfATrial) % kTrialEvery != 0) {
            return std::nullopt;
        }
        if (number % kTraysOfATrial == 0) {
            Trial trial;
            trial.code = "T" + std::to_string(++m_trials);
            trial.name = "Invented";
            trial.startedOn = date;
            act(Intention::AddTrial, trial.code, date,
                [&] { TrialRepository(m_database).insert(trial); });
            m_trial = trial.id;
        }
        return m_trial;
    }

    void moveOn(Date date)
    {
        for (Growing& each : m_growing) {
            for (TrayStage& stage : each.stages) {
                if (!stage.startedOn && stage.plannedOn <= date) {
                    act(Intention::MoveTrayOn, each.tray.code, date, [&] {
                        stage.startedOn = stage.plannedOn;
                        stage.startedMinute = stage.plannedMinute;
                        TrayRepository(m_database).update(stage);
                    });
                }
            }
        }
    }

    void water(Date date, Slot slot)
    {
        for (const Growing& each : m_growing) {
            if (date - each.tray.sownOn < kFirstWateredDay) {
                continue;
            }
            act(Intention::TickWatering, each.tray.code, date, [&] {
                Watering watering;
                watering.tray = each.tray.id;
                watering.on = date;
                watering.slot = slot;
                watering.minute = slot == Slot::Morning ? kMorningMinute : 1'085;
                watering.method = WateringMethod::Below;
                watering.amount = millilitres(300);
                WateringRepository(m_database).insert(watering);
            });
        }
    }

    void cutWhatIsDue(Date date)
    {
        const auto firstLeft =
            std::find_if(m_growing.begin(), m_growing.end(),
                         [&](const Growing& each) { return date - each.tray.sownOn < kDaysGrown; });
        for (auto each = m_growing.begin(); each != firstLeft; ++each) {
            cut(*each, date);
        }
        m_growing.erase(m_growing.begin(), firstLeft);
    }

    void cut(Growing& each, Date date)
    {
        m_free.insert(m_free.begin(), each.place);
        const bool isLost = each.number % kDiscardedEvery == 7;
        const Moment now{date, kMorningMinute};
        act(isLost ? Intention::DiscardTray : Intention::RecordHarvest, each.tray.code, date, [&] {
            if (isLost) {
                each.tray.discardReason = "mould";
                TrayRepository(m_database).end(each.tray, TrayState::Discarded, now);
                return;
            }
            const auto unlike = static_cast<std::int64_t>(each.number * 7919 % 90);
            Harvest harvest;
            harvest.tray = each.tray.id;
            harvest.on = date;
            harvest.minute = kMorningMinute;
            harvest.net = milligrams((210 + unlike) * 1'000);
            harvest.isLast = true;
            HarvestRepository harvests(m_database);
            harvests.insert(harvest);
            Bowl bowl{{}, harvest.id, harvest.net + grams(42), grams(42)};
            harvests.insert(bowl);
            TrayRepository(m_database).end(each.tray, TrayState::Harvested, now);
        });
        if (each.tray.trial && each.number % kTraysOfATrial == kTraysOfATrial - 1) {
            m_room.trial = *each.tray.trial;
        }
    }

    Database& m_database;
    RoomSize m_size;
    Date m_today;
    std::vector<Medium> m_media;
    std::vector<Protocol> m_protocols;
    std::vector<PlaceId> m_free;
    std::vector<Growing> m_growing; // oldest first
    std::map<VarietyId, int> m_numbers;
    std::optional<TrialId> m_trial;
    std::map<Intention, Entry> m_entries; // the first of each kind
    int m_trials = 0;
    int m_sown = 0;
    RoomOfYears m_room;
};

// With room for all that grows at once and half as much again.
RoomPlan planFor(const RoomSize& size)
{
    const int atOnce = size.trays / (365 * size.years) * kDaysGrown * 3 / 2 + 100;
    RoomPlan plan;
    plan.room.name = size.name;
    plan.shelvesPerRack = 5;
    plan.placesPerShelf = 10;
    plan.racks = atOnce / (plan.shelvesPerRack * plan.placesPerShelf) + 1;
    return plan;
}

} // namespace

RoomOfYears makeRoomOfYears(const std::filesystem::path& journal, const RoomSize& size)
{
    const FixedClock clock(presentMoment());
    Journal::create(journal, planFor(size), clock).value().reset();
    const JournalFile file = openJournalFile(journal).value();
    return RoomMaker(*file.database, size).make();
}

} // namespace plumule::bench
