#include "core/journal/merge/merge_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/merge/merge_dialog.h"

#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "tests/ui/support/key_time.h"
#include "ui/backup/take_along.h"
#include "ui/merge/acts_text.h"

namespace plumule::ui {
namespace {

// Two trays of broccoli, and a copy of the journal in which both sides worked.
class MergeDialogTest : public GrowingTest
{
protected:
    void SetUp() override
    {
        GrowingTest::SetUp();
        trays = journal->trays().sow(broccoli(2, kTwoDaysAgo)).value();
        const TakenCopy copy = journal->copies().beginCopy("Rack laptop").value();
        ASSERT_TRUE(journal->copies().writeCopyTo(copy, copyPath(), {}));
        laptop = std::move(*Journal::open(copyPath(), clock));
    }
    [[nodiscard]] std::string copyPath() const
    {
        return (folder.path() + "/laptop.plumule").toStdString();
    }
    void setAsideOnBoth()
    {
        ASSERT_TRUE(journal->trays().setAside(trays[0], "watered twice"));
        ASSERT_TRUE(laptop->trays().setAside(trays[0], "fell down"));
    }
    std::unique_ptr<MergeDialog> opened()
    {
        auto coming = journal->copies().comeBack(openCopy(copyPath()).value());
        EXPECT_TRUE(coming) << told(coming.error());
        auto dialog = std::make_unique<MergeDialog>(*journal, services(), std::move(*coming));
        dialog->show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(dialog.get()));
        return dialog;
    }
    static QString words(const QWidget& dialog, const char* name)
    {
        const auto* found = dialog.findChild<QLabel*>(name);
        return found == nullptr ? QString() : found->text();
    }
    static QPushButton* buttonOf(const QWidget& dialog, const char* name)
    {
        return dialog.findChild<QPushButton*>(name);
    }
    std::string asideReason()
    {
        return journal->trays().sheet(trays[0])->record.tray.setAsideReason.value_or("");
    }
    bool bringTogether(MergeDialog& dialog)
    {
        click(buttonOf(dialog, "mergeTogether"));
        return soon([&dialog] { return dialog.result() == QDialog::Accepted; });
    }

    std::vector<TrayId> trays;
    std::unique_ptr<Journal> laptop;
};

TEST_F(MergeDialogTest, ShowsBothSidesAndWritesNothingBeforeAllIsChosen)
{
    setAsideOnBoth();
    const auto dialog = opened();
    EXPECT_TRUE(words(*dialog, "mergeCopy").startsWith("Rack laptop, copy 2"));
    EXPECT_TRUE(words(*dialog, "metHere").contains("watered twice"));
    EXPECT_TRUE(words(*dialog, "metThere").contains("fell down"));
    EXPECT_EQ(words(*dialog, "metState"), "Not chosen yet");
    EXPECT_FALSE(buttonOf(*dialog, "mergeTogether")->isEnabled());
    EXPECT_EQ(actsIn(*journal), 2);
}

TEST_F(MergeDialogTest, TheKeysOneAndTwoChooseAndWhatIsNotKeptIsANote)
{
    setAsideOnBoth();
    const auto dialog = opened();
    KeyTime time;
    time.rule(*dialog);
    QTest::keyClick(dialog.get(), Qt::Key_2);
    ASSERT_TRUE(soon([&] { return buttonOf(*dialog, "mergeTogether")->isEnabled(); }));
    ASSERT_TRUE(bringTogether(*dialog));
    EXPECT_EQ(asideReason(), "fell down");
    const TraySheet sheet = journal->trays().sheet(trays[0]).value();
    ASSERT_EQ(sheet.notes.size(), 1U);
    EXPECT_NE(sheet.notes[0].text.find("watered twice"), std::string::npos);
    EXPECT_EQ(messages.text(), "Brought the copy Rack laptop back.");
    EXPECT_EQ(BackupStore::of(journal->path()).list().size(), 1U) << "a backup went first";
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(asideReason(), "watered twice");
}

TEST_F(MergeDialogTest, AScannersDigitsChooseNothing)
{
    setAsideOnBoth();
    const auto dialog = opened();
    KeyTime time;
    time.rule(*dialog);
    time.scan([&] {
        for (const int key : {Qt::Key_1, Qt::Key_2, Qt::Key_1}) {
            QTest::keyClick(dialog.get(), static_cast<Qt::Key>(key));
        }
    });
    settleDown();
    EXPECT_FALSE(buttonOf(*dialog, "mergeTogether")->isEnabled());
}

TEST_F(MergeDialogTest, AllFromHereChoosesEveryOne)
{
    setAsideOnBoth();
    ASSERT_TRUE(journal->trays().discard(trays[1], "mould", clock.now()));
    ASSERT_TRUE(laptop->trays().setAside(trays[1], "too wet"));
    const auto dialog = opened();
    EXPECT_EQ(words(*dialog, "mergeLeft"), "2 still to choose");
    click(buttonOf(*dialog, "allHere"));
    EXPECT_TRUE(buttonOf(*dialog, "mergeTogether")->isEnabled());
    ASSERT_TRUE(bringTogether(*dialog));
    EXPECT_EQ(asideReason(), "watered twice");
    EXPECT_EQ(journal->trays().sheet(trays[1])->record.tray.state, TrayState::Discarded);
}

TEST_F(MergeDialogTest, ATrayThatGetsAnotherCodeIsSaid)
{
    ASSERT_TRUE(journal->trays().sow(broccoli(1, clock.now())));
    SowingDraft draft = broccoli(1, clock.now());
    draft.places.clear();
    ASSERT_TRUE(laptop->trays().sow(draft));
    const auto dialog = opened();
    EXPECT_TRUE(words(*dialog, "mergeRenamed").contains("BR003 is BR004 here"));
    ASSERT_TRUE(bringTogether(*dialog));
    EXPECT_TRUE(messages.text().contains("label it anew"));
}

TEST_F(MergeDialogTest, LaterLeavesEverythingAsItIs)
{
    setAsideOnBoth();
    const auto dialog = opened();
    click(buttonOf(*dialog, "mergeLater"));
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_EQ(asideReason(), "watered twice");
}

TEST_F(MergeDialogTest, ActsAreCountedByKindOnBothSides)
{
    setAsideOnBoth();
    ASSERT_TRUE(laptop->trays().writeNote(trays[1], "even", clock.now()));
    const auto coming = journal->copies().comeBack(openCopy(copyPath()).value()).value();
    const auto rows = actsOf(coming->plan({}).value());
    ASSERT_EQ(rows.size(), 3U);
    EXPECT_EQ(rows.back().here, 1);
    EXPECT_EQ(rows.back().there, 2);
    EXPECT_EQ(rows.back().met, 1);
}

TEST_F(MergeDialogTest, ACopyIsTakenAlongUnderItsName)
{
    QWidget parent;
    ask.lineAnswer = "Tablet";
    ask.fileAnswer = folder.filePath("tablet");
    takeCopyAlong(*journal, services(), &parent);
    ASSERT_TRUE(soon([&] { return messages.text().contains("The copy Tablet is written"); }));
    EXPECT_TRUE(std::filesystem::exists(folder.filePath("tablet.plumule").toStdString()));
    EXPECT_EQ(journal->copies().copies()->size(), 2U);
}

TEST_F(MergeDialogTest, ACopyOfAFileThatIsThereIsRefusedAndForgotten)
{
    QWidget parent;
    ask.lineAnswer = "Tablet";
    ask.fileAnswer = QString::fromStdString(copyPath());
    takeCopyAlong(*journal, services(), &parent);
    ASSERT_TRUE(soon([&] { return messages.isRefusal(); }));
    EXPECT_EQ(journal->copies().copies()->size(), 1U);
}

TEST_F(MergeDialogTest, WhatIsNoCopyIsRefusedInWords)
{
    QWidget parent;
    ask.fileAnswer = QString::fromStdString(journal->path().string());
    MergeDialog::begin(*journal, services(), &parent);
    ASSERT_TRUE(soon([&] { return messages.isRefusal(); }));
    EXPECT_TRUE(messages.text().contains("is no copy that was taken along"));
}

} // namespace
} // namespace plumule::ui
