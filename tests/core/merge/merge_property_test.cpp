#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/rules/never.h"
#include "tests/core/merge/copies_fixture.h"

#include <algorithm>

namespace plumule {
namespace {

// One who works in one of the copies, on trays, places and a variety that may be his alone.
class Worker
{
public:
    Worker(Journal& journal, FixedClock& clock, unsigned seed)
        : m_journal(journal)
        , m_clock(clock)
        , m_random(seed)
    {}

    // Takes back nothing that was done before the copies were taken, which others may take back
    // too.
    void keepToHisOwn()
    {
        m_keepsToHisOwn = true;
        m_before = m_journal.latestEntries(1).value().at(0).id;
    }

    void keepTo(std::vector<TrayId> trays, std::vector<PlaceId> places, VarietyId variety,
                MediumId medium)
    {
        m_trays = std::move(trays);
        m_places = std::move(places);
        m_variety = variety;
        m_medium = medium;
    }

    std::size_t draw(std::size_t count)
    {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(m_random);
    }

    // Much is refused, which is a part of the test.
    void act()
    {
        m_clock.set(m_clock.now() + static_cast<int>(draw(3)) * 200 + 1);
        const Moment now = m_clock.now();
        const TrayId tray = m_trays[draw(m_trays.size())];
        switch (draw(10)) {
        case 0:
            return sow();
        case 1:
            (void)m_journal.watering().tick(tray, now.date,
                                            now.minute < 12 * 60 ? Slot::Morning : Slot::Evening);
            return;
        case 2:
            return weigh(tray);
        case 3:
        case 4:
            (void)m_journal.trays().moveTo(tray, m_places[draw(m_places.size())], now);
            return;
        case 5:
            (void)m_journal.trays().writeNote(tray, "seen " + std::to_string(draw(1000)), now);
            return;
        case 6:
            return correct(tray);
        case 7:
            (void)m_journal.trays().discard(tray, "mould " + std::to_string(draw(1000)), now);
            return;
        case 8:
            (void)m_journal.trays().moveOn(tray, now);
            return;
        default:
            return takeBack();
        }
    }

private:
    void sow()
    {
        SowingDraft draft;
        draft.variety = m_variety;
        draft.medium = m_medium;
        draft.at = m_clock.now();
        draft.places = {m_places[draw(m_places.size())]};
        if (const auto sown = m_journal.trays().sow(draft)) {
            m_trays.push_back(sown->front());
        }
    }

    void weigh(TrayId tray)
    {
        WeighingDraft cut;
        cut.tray = tray;
        cut.bowls = {{grams(200 + static_cast<double>(draw(100))), grams(40)}};
        cut.at = m_clock.now();
        cut.isLast = draw(2) == 0;
        cut.accepted = all();
        (void)m_journal.harvests().record(cut);
    }

    void correct(TrayId tray)
    {
        const auto sheet = m_journal.trays().sheet(tray);
        if (sheet && !sheet->harvests.empty()) {
            const auto& cut = sheet->harvests[draw(sheet->harvests.size())];
            (void)m_journal.harvests().correct(
                {cut.id,
                 {{grams(200 + static_cast<double>(draw(100))), grams(40)}},
                 draw(2) == 0,
                 all()});
        } else {
            (void)m_journal.trays().setAside(tray, "why " + std::to_string(draw(1000)));
        }
    }

    void takeBack()
    {
        if (draw(3) == 0) {
            (void)m_journal.redo();
            return;
        }
        auto acts = m_journal.latestEntries(4).value();
        if (m_keepsToHisOwn) {
            std::erase_if(acts, [this](const HistoryEntry& act) { return act.id <= m_before; });
        }
        if (!acts.empty()) {
            (void)m_journal.undo(draw(2) == 0 ? acts.front().id : acts[draw(acts.size())].id);
        }
    }

    static std::set<Doubt> all()
    {
        return {Doubt::DecimalSlip,     Doubt::OutsideExpected, Doubt::AlreadyWeighed,
                Doubt::UnstableReading, Doubt::TareForgotten,   Doubt::NotDueYet};
    }

    Journal& m_journal;
    FixedClock& m_clock;
    std::mt19937 m_random;
    std::vector<TrayId> m_trays;
    std::vector<PlaceId> m_places;
    VarietyId m_variety;
    MediumId m_medium;
    bool m_keepsToHisOwn = false;
    HistoryId m_before;
};

class MergePropertyTest : public CopiesTest, public testing::WithParamInterface<unsigned>
{
protected:
    void SetUp() override
    {
        RoomPlan plan = smallRoom();
        plan.placesPerShelf = 6;
        createJournal(plan);
        places = freePlaces();
        for (std::size_t i = 0; i < 9; ++i) {
            trays.push_back(sowIn(*journal, places[i]));
        }
        wait(30);
    }

    template <class T>
    static std::vector<T> third(const std::vector<T>& all, std::size_t which)
    {
        std::vector<T> part;
        for (std::size_t i = which; i < all.size(); i += 3) {
            part.push_back(all[i]);
        }
        return part;
    }

    static std::string contentOf(const std::filesystem::path& journal)
    {
        std::istringstream lines(dumpOf(journal));
        std::string content;
        for (std::string line; std::getline(lines, line);) {
            content += line.starts_with("brought_") ? "" : line + "\n";
        }
        return content;
    }

    // Every value that was not chosen stands in a note, or in the act's own words.
    void expectAllKept(const MergePlan& plan)
    {
        std::string kept;
        const HistoryEntry act = journal->latestEntries(1).value().at(0);
        for (const std::string& each : act.details) {
            kept += each + "\n";
        }
        Database database(path(), Access::ReadOnly);
        Statement notes = database.prepare("SELECT text FROM tray_note");
        while (notes.step()) {
            kept += notes.get<std::string>(0) + "\n";
        }
        for (const MergeItem& item : plan.items) {
            for (const MergeRow& row : rowsNotKept(item)) {
                EXPECT_NE(kept.find(wordsOfRow(item, row)), std::string::npos)
                    << wordsOfRow(item, row);
            }
        }
    }

    void expectSound()
    {
        const auto faults = journal->faults().value();
        for (const Error& fault : faults) {
            ADD_FAILURE() << told(fault);
        }
        Database database(path(), Access::ReadOnly);
        for (const char* never : kNever) {
            EXPECT_EQ(database.scalar(never), 0) << never;
        }
    }

    std::vector<TrayId> trays;
    std::vector<PlaceId> places;
};

TEST_P(MergePropertyTest, WhereNoRowMetAnyOrderLeadsToTheSame)
{
    const std::vector<std::string> varieties = {"Radish", "Mustard", "Broccoli"};
    const MediumId medium = mediumNamed("Coir mix");
    const auto laptop = takeAlong("Laptop");
    const auto tablet = takeAlong("Tablet");
    std::vector<Worker> workers;
    std::size_t which = 0;
    for (Journal* each : {journal.get(), laptop.get(), tablet.get()}) {
        workers.emplace_back(*each, clock, GetParam() * 3 + static_cast<unsigned>(which));
        workers.back().keepTo(third(trays, which), third(places, which),
                              varietyNamed(varieties[which]), medium);
        workers.back().keepToHisOwn();
        ++which;
    }
    for (int i = 0; i < 60; ++i) {
        workers[workers[0].draw(3)].act();
    }
    const auto home = pathOf("room");
    journal.reset();
    std::filesystem::copy_file(home, pathOf("before"));
    std::vector<std::string> contents;
    for (const auto& order : {std::pair{"Laptop", "Tablet"}, std::pair{"Tablet", "Laptop"}}) {
        journal = std::move(*Journal::open(home, clock));
        for (const char* name : {order.first, order.second}) {
            const auto brought = bringBack(name, here);
            const bool isFine = brought || brought.error().is(MergeReason::NothingNew);
            EXPECT_TRUE(isFine) << told(brought.error());
            EXPECT_EQ(brought ? met : 0, 0);
            EXPECT_EQ(brought ? brought->renamed.size() : 0, 0u);
        }
        expectSound();
        journal.reset();
        contents.push_back(contentOf(home));
        std::filesystem::copy_file(pathOf("before"), home,
                                   std::filesystem::copy_options::overwrite_existing);
    }
    EXPECT_EQ(contents[0], contents[1]);
}

TEST_P(MergePropertyTest, WhereRowsMetNothingIsDroppedInSilence)
{
    const MediumId medium = mediumNamed("Coir mix");
    auto laptop = takeAlong("Laptop");
    auto tablet = takeAlong("Tablet");
    std::vector<Worker> workers;
    unsigned which = 0;
    for (Journal* each : {journal.get(), laptop.get(), tablet.get()}) {
        workers.emplace_back(*each, clock, GetParam() * 7 + which++);
        workers.back().keepTo(trays, places, varietyNamed("Radish"), medium);
    }
    for (int round = 0; round < 2; ++round) {
        for (int i = 0; i < 30; ++i) {
            workers[workers[0].draw(3)].act();
        }
        for (const std::string name : {"Laptop", "Tablet"}) {
            auto coming = comeBack(name);
            if (!coming) {
                EXPECT_TRUE(coming.error().is(MergeReason::NothingNew)) << told(coming.error());
                continue;
            }
            const std::string before = dump();
            const MergePlan plan = planBy(**coming, [&](const MergeItem&) {
                return workers[0].draw(2) == 0 ? Side::Here : Side::There;
            });
            EXPECT_EQ(plan.broken, std::nullopt);
            const auto brought = (*coming)->bringTogether(plan, plainWords, backUpFirst());
            ASSERT_TRUE(brought) << told(brought.error());
            expectAllKept(plan);
            expectSound();
            const std::string after = dump();
            ASSERT_TRUE(journal->undo());
            EXPECT_EQ(dump(), before);
            ASSERT_TRUE(journal->redo());
            EXPECT_EQ(dump(), after);
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, MergePropertyTest, testing::Range(1u, 25u));

} // namespace
} // namespace plumule
