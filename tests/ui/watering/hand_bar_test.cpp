#include "tests/ui/watering/round_part_fixture.h"
#include "ui/watering/hand_bar.h"

namespace plumule::ui {
namespace {

class HandBarTest : public RoundPartTest
{
protected:
    [[nodiscard]] QString inHand()
    {
        const auto* code = find<QLabel>(*page, "inHand");
        return code->isVisible() ? code->text() : QString();
    }
    [[nodiscard]] QString buttonText(const char* name)
    {
        return find<QPushButton>(*page, name)->text();
    }
};

TEST_F(HandBarTest, SaysWhatIsInHandAsTheArrowsWalk)
{
    sowBroccoli(3, kUnderWeight);
    open();
    for (const char* code : {"BR001", "BR002", "BR003"}) {
        EXPECT_EQ(inHand(), code);
        EXPECT_TRUE(words("inHandWhere").contains("under weight")) << code;
        press(Qt::Key_Down);
    }
    EXPECT_EQ(inHand(), "BR003") << "the last stays in hand";
    press(Qt::Key_Home);
    EXPECT_EQ(inHand(), "BR001");
}

TEST_F(HandBarTest, TheTickSaysHowTheTrayIsWateredAndTakesItselfBack)
{
    const auto trays = sowBroccoli(2, kUnderWeight);
    open();
    EXPECT_EQ(buttonText("handTick"), "Misted");
    pressButton("handTick");
    EXPECT_EQ(doneCount(), 1);
    EXPECT_EQ(inHand(), "BR002") << "on to the next";
    press(Qt::Key_Up);
    EXPECT_EQ(buttonText("handTick"), "Take back");
    pressButton("handTick");
    EXPECT_EQ(doneCount(), 0);
    EXPECT_TRUE(sheetOf(trays[0]).waterings.empty());
    EXPECT_EQ(buttonText("handTick"), "Misted");
}

TEST_F(HandBarTest, WateringFromBelowIsCalledWatered)
{
    const auto trays = sowBroccoli(1, kInLight);
    bringIntoLight(trays, kInLight);
    open();
    EXPECT_EQ(buttonText("handTick"), "Watered");
}

TEST_F(HandBarTest, OffersADecisionOnlyWhereOneIsAsked)
{
    const auto under = sowBroccoli(1, kUnderWeight);
    const auto due = sowBroccoli(1, kDueNow);
    open();
    page->takeInHand(under.front());
    EXPECT_FALSE(isShown("handReady"));
    EXPECT_FALSE(isShown("handNotYet"));
    page->takeInHand(due.front());
    EXPECT_EQ(inHand(), "BR002");
    EXPECT_TRUE(isShown("handReady"));
    EXPECT_EQ(buttonText("handReady"), "Into blackout");
    const Moment before = planOf(due.front()).harvest;
    pressButton("handNotYet");
    EXPECT_EQ(planOf(due.front()).harvest - before, 11 * 60);
    EXPECT_TRUE(soon([&] { return !isShown("handReady"); }));
}

TEST_F(HandBarTest, ADecisionAloneHasNoTickAndNoNote)
{
    const auto trays = sowBroccoli(1, {date(2026, 2, 28), 7 * 60 + 30});
    bringIntoLight(trays, {date(2026, 2, 28), 7 * 60 + 30});
    open();
    EXPECT_EQ(inHand(), "BR001");
    EXPECT_EQ(buttonText("handReady"), "To the scale");
    for (const char* name : {"handTick", "openNote", "openHeight", "openWater", "handPhoto"}) {
        EXPECT_FALSE(isShown(name)) << name;
    }
    QSignalSpy asked(page.get(), &Page::weighingAsked);
    pressButton("handReady");
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.front().front().toString(), "BR001");
}

TEST_F(HandBarTest, PuttingDownLeavesNothingInHandAndNoKeyActs)
{
    sowBroccoli(2, kUnderWeight);
    open();
    pressButton("putDown");
    EXPECT_EQ(inHand(), "");
    EXPECT_FALSE(isShown("putDown"));
    EXPECT_FALSE(isShown("handTick"));
    page->setFocus();
    press(Qt::Key_Space);
    settleDown();
    EXPECT_EQ(doneCount(), 0);
    press(Qt::Key_Down);
    EXPECT_EQ(inHand(), "BR001");
}

TEST_F(HandBarTest, ItsButtonsOpenThePanelAtTheirField)
{
    sowBroccoli(1, kUnderWeight);
    open({1500, 900});
    const std::pair<const char*, const char*> parts[] = {
        {"openNote", "note"}, {"openHeight", "height"}, {"openWater", "given"}};
    for (const auto& [name, field] : parts) {
        pressButton(name);
        EXPECT_EQ(nameOfFocus(), field) << name;
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
        EXPECT_EQ(rowInHand(), shownRow(*page, "trayBR001")) << name;
    }
}

TEST_F(HandBarTest, APhotographGoesToTheTrayInHand)
{
    const auto trays = sowBroccoli(2, kUnderWeight);
    const QString file = folder.filePath("seen.png");
    QImage picture(20, 20, QImage::Format_RGB32);
    picture.fill(Qt::darkGreen);
    ASSERT_TRUE(picture.save(file));
    open({1500, 900});
    press(Qt::Key_Down);
    pressButton("handPhoto");
    EXPECT_TRUE(sheetOf(trays[1]).photos.empty()) << "the question for a file was left";
    ask.fileAnswer = file;
    letter(Qt::Key_F, [&] { return sheetOf(trays[1]).photos.size() == 1U; });
    EXPECT_TRUE(sheetOf(trays[0]).photos.empty());
    EXPECT_TRUE(messages.text().contains("BR002"));
}

TEST_F(HandBarTest, WhereThereIsLittleRoomTheKeysRemain)
{
    sowBroccoli(1, kUnderWeight);
    open({700, 700});
    EXPECT_FALSE(isShown("openWater"));
    EXPECT_TRUE(isShown("openNote"));
    openPanelBy(Qt::Key_W, "given");
    press(Qt::Key_Escape);
    page->resize(1500, 900);
    settleDown();
    for (const char* name : {"openNote", "openHeight", "openWater", "handPhoto"}) {
        EXPECT_TRUE(isShown(name)) << name;
    }
}

TEST_F(HandBarTest, NotNeededIsOfferedForATrayWateredAsNeeded)
{
    makeAsNeeded(Stage::UnderWeight);
    const auto trays = sowBroccoli(2, {clock.today() - 1, 6 * 60});
    open();
    ASSERT_TRUE(isShown("handNotNeeded"));
    pressButton("handNotNeeded");
    EXPECT_EQ(doneCount(), 1);
    EXPECT_TRUE(sheetOf(trays[0]).waterings.empty());
    EXPECT_EQ(inHand(), "BR002");
    pressButton("handTick");
    EXPECT_EQ(sheetOf(trays[1]).waterings.size(), 1U);
    EXPECT_EQ(doneCount(), 2);
    EXPECT_FALSE(isShown("handNotNeeded")) << "what is answered is not asked again";
}

} // namespace
} // namespace plumule::ui
