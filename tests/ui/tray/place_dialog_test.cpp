#include "core/journal/room/room_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/tray/place_dialog.h"

#include <QListWidget>

namespace plumule::ui {
namespace {

class PlaceDialogTest : public GrowingTest
{
protected:
    std::unique_ptr<PlaceDialog> dialog;
    std::vector<qint64> chosen;

    void openDialog(const std::vector<Spot>& spots)
    {
        dialog = std::make_unique<PlaceDialog>(ask, spots);
        QObject::connect(dialog.get(), &PlaceDialog::chosen,
                         [this](qint64 place) { chosen.push_back(place); });
        dialog->open();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    [[nodiscard]] QListWidget& list() { return *find<QListWidget>(*dialog, "placeList"); }
    [[nodiscard]] std::vector<Spot> freeSpots() { return journal->room().freeSpots().value(); }
};

TEST_F(PlaceDialogTest, ListsTheFreePlacesInWalkingOrderAndOffTheRacksLast)
{
    sow(broccoli(5, kTwoDaysAgo));
    const auto spots = freeSpots();
    openDialog(spots);
    ASSERT_EQ(list().count(), int(spots.size()) + 1);
    for (std::size_t i = 0; i < spots.size(); ++i) {
        EXPECT_EQ(list().item(int(i))->text(), nameOf(std::optional(spots[i])));
    }
    EXPECT_EQ(list().item(list().count() - 1)->text(), "off the racks");
}

TEST_F(PlaceDialogTest, IsAnsweredByTheKeyboardAlone)
{
    const auto spots = freeSpots();
    openDialog(spots);
    list().setFocus();
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    ASSERT_EQ(chosen.size(), 1U) << "once, and not for list and button";
    EXPECT_EQ(chosen.front(), spots[2].place.value);
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(PlaceDialogTest, ADoublePressOnARowMovesThere)
{
    const auto spots = freeSpots();
    openDialog(spots);
    const QPoint at = list().visualItemRect(list().item(3)).center();
    QTest::mouseClick(list().viewport(), Qt::LeftButton, Qt::NoModifier, at);
    QTest::mouseDClick(list().viewport(), Qt::LeftButton, Qt::NoModifier, at);
    ASSERT_EQ(chosen.size(), 1U);
    EXPECT_EQ(chosen.front(), spots[3].place.value);
}

TEST_F(PlaceDialogTest, EscapeMovesNothing)
{
    openDialog(freeSpots());
    press(Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(chosen.empty());
    EXPECT_TRUE(ask.questions.isEmpty());
}

TEST_F(PlaceDialogTest, AFullRoomStillLetsATrayOffTheRacks)
{
    openDialog({});
    ASSERT_EQ(list().count(), 1);
    click(find<QPushButton>(*dialog, "placeMove"));
    EXPECT_EQ(chosen, std::vector<qint64>{0});
}

TEST_F(PlaceDialogTest, CanBeReadAndReachedAtEveryLook)
{
    const auto spots = freeSpots();
    const auto faults = faultsOfDialog([&] { return new PlaceDialog(ask, spots); });
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
