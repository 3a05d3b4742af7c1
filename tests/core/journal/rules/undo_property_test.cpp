#include "core/journal/cost/cost_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/core/journal/rules/never.h"

#include "core/medium/medium_rules.h"

namespace plumule {
namespace {

// A grower who does what comes to hand. Much of it is refused, which is a part of the test.
class AnyGrower
{
public:
    AnyGrower(Journal& journal, FixedClock& clock, unsigned seed)
        : m_journal(journal)
        , m_clock(clock)
        , m_random(seed)
    {
        Medium mesh;
        mesh.name = "Wire bed";
        mesh.form = MediumForm::Mesh;
        mesh.isReusable = true;
        m_reusable = m_journal.media().save(mesh).value().id;
        EXPECT_TRUE(m_journal.media().addPieces(m_reusable, 3, std::nullopt));
    }

    // From 0 to below `count`.
    std::size_t draw(std::size_t count)
    {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(m_random);
    }

    void act()
    {
        m_clock.set(m_clock.now() + static_cast<int>(draw(3)) * 500);
        switch (draw(10)) {
        case 0:
        case 1:
            return sow();
        case 2:
        case 3:
            return actOnTray();
        case 4:
            return actOnCut();
        case 5:
            return actOnPiece();
        case 6:
            return actOnRoom();
        case 7:
            return actOnMedium();
        case 8:
            return actOnPrice();
        default:
            return tick();
        }
    }

private:
    template <class Rows>
    auto any(const Rows& rows)
    {
        return rows[draw(rows.size())];
    }

    void sow()
    {
        SowingDraft draft;
        draft.variety = any(m_journal.varieties().all().value()).id;
        draft.medium = any(m_journal.media().all().value()).id;
        draft.at = m_clock.now();
        if (draw(2) == 0) {
            draft.medium = m_reusable;
            draft.pieces = {
                any(m_journal.media().pieces(m_reusable, Listed::All).value()).piece.id};
        }
        if (const auto spots = m_journal.room().layout()->spots(); !spots.empty()) {
            draft.places = {any(spots).place};
        }
        (void)m_journal.trays().sow(draft);
    }

    std::optional<TrayId> anyTray()
    {
        const auto rows = m_journal.trays().list({}).value();
        return rows.empty() ? std::nullopt : std::optional(any(rows).record.tray.id);
    }

    void actOnTray()
    {
        const auto tray = anyTray();
        if (!tray) {
            return;
        }
        const auto spots = m_journal.room().layout()->spots();
        switch (draw(4)) {
        case 0:
            (void)m_journal.trays().moveTo(*tray, any(spots).place, m_clock.now());
            return;
        case 1:
            (void)m_journal.trays().moveTo(*tray, std::nullopt, m_clock.now());
            return;
        case 2:
            (void)m_journal.trays().moveOn(*tray, m_clock.now());
            return;
        default:
            (void)m_journal.trays().discard(*tray, "mould", m_clock.now());
            return;
        }
    }

    void actOnCut()
    {
        const auto tray = anyTray();
        if (!tray) {
            return;
        }
        const std::set<Doubt> all = {Doubt::DecimalSlip,    Doubt::OutsideExpected,
                                     Doubt::AlreadyWeighed, Doubt::UnstableReading,
                                     Doubt::TareForgotten,  Doubt::NotDueYet};
        const std::vector<BowlDraft> bowls = {{grams(300), grams(40)}};
        const auto cuts = m_journal.trays().sheet(*tray)->harvests;
        if (cuts.empty() || draw(3) == 0) {
            WeighingDraft draft;
            draft.tray = *tray;
            draft.bowls = bowls;
            draft.at = m_clock.now();
            draft.isLast = draw(2) == 0;
            draft.accepted = all;
            (void)m_journal.harvests().record(draft);
        } else {
            (void)m_journal.harvests().correct({any(cuts).id, bowls, draw(2) == 0, all});
        }
    }

    void actOnPiece()
    {
        const auto piece = any(m_journal.media().pieces(m_reusable, Listed::All).value()).piece;
        if (draw(5) == 0) {
            (void)m_journal.media().retirePiece(piece.id, "torn");
        } else {
            (void)m_journal.media().sanitise({piece.id}, "peroxide");
        }
    }

    void actOnRoom()
    {
        const auto racks = m_journal.room().layout()->racks;
        const std::vector<std::string> names = {"A", "B", "North", "South", "north"};
        switch (draw(3)) {
        case 0:
            (void)m_journal.room().addRack(any(names), 1, 2);
            return;
        case 1:
            (void)m_journal.room().removeRack(any(racks).id);
            return;
        default: {
            Rack rack = any(racks);
            rack.name = any(names);
            (void)m_journal.room().changeRack(rack);
            return;
        }
        }
    }

    void actOnMedium()
    {
        const std::vector<std::string> names = {"Felt", "Wool", "wool", "Cork"};
        if (draw(2) == 0) {
            Medium medium;
            medium.name = any(names);
            (void)m_journal.media().save(medium);
        } else {
            (void)m_journal.media().remove(any(m_journal.media().all().value()).id);
        }
    }

    void actOnPrice()
    {
        const auto prices = m_journal.costs().prices().value();
        if (!prices.empty() && draw(2) == 0) {
            (void)m_journal.costs().removePrice(any(prices).id);
            return;
        }
        Price price;
        price.item = PriceItem::Packaging;
        price.from = m_clock.today();
        price.amount = Money::ofCount(10000);
        (void)m_journal.costs().savePrice(price);
    }

    void tick()
    {
        const auto tray = anyTray();
        if (!tray) {
            return;
        }
        const Date day = m_clock.today();
        if (draw(2) == 0) {
            (void)m_journal.watering().tick(*tray, day, Slot::Morning);
        } else {
            (void)m_journal.watering().untick(*tray, day, Slot::Morning);
        }
    }

    Journal& m_journal;
    FixedClock& m_clock;
    std::mt19937 m_random;
    MediumId m_reusable;
};

class UndoPropertyTest : public JournalTest, public testing::WithParamInterface<unsigned>
{
protected:
    void expectSound()
    {
        Database database(path(), Access::ReadOnly);
        for (const char* never : kNever) {
            ASSERT_EQ(database.scalar(never), 0) << never;
        }
    }
    // Takes back any entry that stands. Whether it could.
    bool undoAny(AnyGrower& grower)
    {
        std::vector<HistoryId> standing;
        const auto entries = journal->latestEntries(1000).value();
        for (const HistoryEntry& entry : entries) {
            if (entry.state == HistoryState::Standing) {
                standing.push_back(entry.id);
            }
        }
        if (standing.empty()) {
            return false;
        }
        const std::string before = dump();
        const auto undone = journal->undo(standing[grower.draw(standing.size())]);
        if (!undone) {
            EXPECT_EQ(dump(), before) << "a refused undo left something behind";
            EXPECT_TRUE(undone.error().kind == ErrorKind::Conflict ||
                        undone.error().kind == ErrorKind::ChangedSince)
                << undone.error().reason.family() << undone.error().reason.code() << ' '
                << int(undone.error().kind)
                << (undone.error().values.empty() ? "" : undone.error().values.back());
        }
        return undone.has_value();
    }
    // Whether there was something to do again; it must then be possible.
    bool redoOne()
    {
        const auto redone = journal->redo();
        EXPECT_TRUE(redone || redone.error().is(StorageReason::NothingToDoAgain))
            << "what was taken back can't be done again: "
            << (redone ? std::string() : told(redone.error()));
        return redone.has_value();
    }
    void redoAll()
    {
        while (redoOne()) {
        }
    }
    void undoAll()
    {
        while (journal->nextUndo()) {
            const auto undone = journal->undo();
            ASSERT_TRUE(undone) << "a dead end: " << undone.error().reason.family() << ' '
                                << undone.error().reason.code() << ' '
                                << journal->nextUndo()->intention;
        }
    }
};

TEST_P(UndoPropertyTest, NoOrderOfUndoAndRedoBreaksARuleOrEndsNowhere)
{
    const std::string bottom = dump();
    AnyGrower grower(*journal, clock, GetParam());
    for (int i = 0; i < 60; ++i) {
        grower.act();
    }
    ASSERT_NO_FATAL_FAILURE(expectSound());
    const std::string top = dump();

    int outOfTurn = 0;
    for (int i = 0; i < 40; ++i) {
        if (grower.draw(4) != 0 || !redoOne()) {
            outOfTurn += undoAny(grower) ? 1 : 0;
        }
        ASSERT_NO_FATAL_FAILURE(expectSound());
    }
    EXPECT_GT(outOfTurn, 0);
    ASSERT_NO_FATAL_FAILURE(redoAll());
    EXPECT_EQ(dump(), top);

    ASSERT_NO_FATAL_FAILURE(undoAll());
    EXPECT_EQ(dump(), bottom);
    ASSERT_NO_FATAL_FAILURE(redoAll());
    EXPECT_EQ(dump(), top);
}

INSTANTIATE_TEST_SUITE_P(Seeds, UndoPropertyTest, testing::Range(1u, 9u));

} // namespace
} // namespace plumule
