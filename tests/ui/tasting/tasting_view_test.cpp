#include "core/journal/tasting/tasting_entries.h"
#include "tests/ui/tasting/tasting_fixture.h"
#include "ui/widget/text_table.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDialog>
#include <QListWidget>
#include <QPlainTextEdit>

namespace plumule::ui {
namespace {

class TastingViewTest : public TastingTest
{
protected:
    QDialog* dialogOf(TastingView& view)
    {
        auto* dialog = find<QDialog>(view, "tastingDialog");
        EXPECT_TRUE(dialog != nullptr && dialog->isVisible());
        return dialog;
    }
};

TEST_F(TastingViewTest, PlansATastingFromNothing)
{
    auto view = openTasting();
    press(*view, "tastingFirst");
    QDialog* dialog = dialogOf(*view);
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(find<QPlainTextEdit>(*dialog, "panelAttributes")->toPlainText(),
              "appearance\nevenness\ncolour\ncrunch\nflavour");
    auto* media = find<QListWidget>(*dialog, "panelMedia");
    media->item(0)->setCheckState(Qt::Checked);
    media->item(1)->setCheckState(Qt::Checked);
    press(*dialog, "panelSave");
    EXPECT_TRUE(textOf(*dialog, "refusal").contains("enter one taster"));
    find<QPlainTextEdit>(*dialog, "panelTasters")->setPlainText("Ana\n\nBen\n");
    EXPECT_TRUE(textOf(*dialog, "panelFacts").startsWith("4 servings"));
    press(*dialog, "panelSave");
    const auto panels = journal->tastings().list(trial).value();
    ASSERT_EQ(panels.size(), 1u);
    EXPECT_EQ(panels[0].tasters, 2);
    EXPECT_EQ(panels[0].scoresWanted, 20);
    EXPECT_TRUE(find<QLineEdit>(*view, "tastingCode")->isVisible());
    EXPECT_TRUE(textOf(*view, "tastingFacts").contains("blind until it is closed"));
}

TEST_F(TastingViewTest, APlanIsChangedWhileThereAreNoScores)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 2, {"Ana", "Ben"});
    auto view = openTasting();
    press(*view, "tastingChange");
    QDialog* dialog = dialogOf(*view);
    auto* tasters = find<QPlainTextEdit>(*dialog, "panelTasters");
    EXPECT_EQ(tasters->toPlainText(), "Ana\nBen");
    tasters->setPlainText("Ana\nBen\nCem");
    press(*dialog, "panelSave");
    EXPECT_EQ(recordOf(panel).tasters.size(), 3u);
    scoreAll(panel);
    settleDown();
    EXPECT_FALSE(find<QPushButton>(*view, "tastingChange")->isVisible());
}

TEST_F(TastingViewTest, ATriangleAsksForTwoMediaAndNoAttributes)
{
    auto view = openTasting();
    press(*view, "tastingFirst");
    QDialog* dialog = dialogOf(*view);
    auto* method = find<QComboBox>(*dialog, "panelMethod");
    method->setCurrentIndex(method->findText("triangle test"));
    EXPECT_FALSE(find<QPlainTextEdit>(*dialog, "panelAttributes")->isEnabled());
    auto* media = find<QListWidget>(*dialog, "panelMedia");
    for (int i = 0; i < 3; ++i) {
        media->item(i)->setCheckState(Qt::Checked);
    }
    find<QPlainTextEdit>(*dialog, "panelTasters")->setPlainText("Ana");
    press(*dialog, "panelSave");
    EXPECT_TRUE(textOf(*dialog, "refusal").contains("A triangle test compares two media"));
    media->item(2)->setCheckState(Qt::Unchecked);
    press(*dialog, "panelSave");
    EXPECT_EQ(journal->tastings().list(trial)->at(0).scoresWanted, 1);
}

TEST_F(TastingViewTest, NothingInTheWindowNamesAMediumWhileItIsOpen)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 3, {"Ana", "Ben"});
    auto view = openTasting();
    scoreAll(panel);
    settleDown();
    find<QLineEdit>(*view, "tastingCode")->setFocus();
    enter(QString::fromStdString(recordOf(panel).servings[1].code));
    const QString open = allTextOf(*view);
    EXPECT_TRUE(open.contains(QString::fromStdString(recordOf(panel).servings[0].code)));
    for (const Medium& medium : media(3)) {
        EXPECT_FALSE(open.contains(QString::fromStdString(medium.name), Qt::CaseInsensitive))
            << medium.name;
    }
    // The same search finds the names once the tasting is closed.
    press(*view, "tastingClose");
    const QString closed = allTextOf(*view);
    for (const Medium& medium : media(3)) {
        EXPECT_TRUE(closed.contains(QString::fromStdString(medium.name))) << medium.name;
    }
}

TEST_F(TastingViewTest, OpeningAnOpenTastingAfterAClosedOneShowsNoMediumOfIt)
{
    const PanelId first =
        plan(TastingMethod::Hedonic, 3, {"Ana", "Ben", "Cem", "Dana", "Eli", "Finn"});
    scoreAll(first);
    ASSERT_TRUE(journal->tastings().close(first));
    auto view = openTasting();
    EXPECT_TRUE(textOf(*view, "tastingHeadline").contains("tell the media apart"));
    const PanelId second = plan(TastingMethod::Hedonic, 2, {"Ana"});
    settleDown();
    auto* choice = find<QComboBox>(*view, "tastingChoice");
    ASSERT_EQ(choice->count(), 2);
    EXPECT_TRUE(choice->isVisible());
    choice->setFocus();
    QTest::keyClick(choice, Qt::Key_Up);
    settleDown();
    ASSERT_TRUE(find<QLineEdit>(*view, "tastingCode")->isVisible());
    for (const QLabel* each : view->findChildren<QLabel*>()) {
        for (const Medium& medium : media(3)) {
            EXPECT_FALSE(each->isVisible() &&
                         each->text().contains(QString::fromStdString(medium.name)));
        }
    }
    EXPECT_TRUE(recordOf(second).panel.isOpen());
}

TEST_F(TastingViewTest, ClosingWithScoresMissingSaysWhichAndAsks)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 2, {"Ana", "Ben", "Cem"});
    scoreAll(panel);
    const PanelRecord record = recordOf(panel);
    const Serving lacking = servingsOf(record, record.tasters[1].id)[1];
    ASSERT_TRUE(journal->tastings().clear(panel, lacking.code, record.attributes[0].id));
    auto view = openTasting();
    ask.agrees = false;
    press(*view, "tastingClose");
    ASSERT_EQ(ask.questions.size(), 1);
    EXPECT_TRUE(ask.questions[0].contains("Ben: " + QString::fromStdString(lacking.code)));
    EXPECT_TRUE(recordOf(panel).panel.isOpen());
    ask.agrees = true;
    press(*view, "tastingClose");
    EXPECT_FALSE(recordOf(panel).panel.isOpen());
    EXPECT_TRUE(textOf(*view, "tastingCaveats").contains("Scores of Ben are missing"));
    // The media were shown, so there is no way back to offer.
    EXPECT_TRUE(messages.findChild<QPushButton*>("messageAction")->isHidden());
}

TEST_F(TastingViewTest, AClosedTastingIsAnsweredInASentenceAChartAndTables)
{
    const PanelId panel =
        plan(TastingMethod::Hedonic, 3, {"Ana", "Ben", "Cem", "Dana", "Eli", "Finn"});
    scoreAll(panel);
    ASSERT_TRUE(journal->tastings().close(panel));
    auto view = openTasting();
    EXPECT_EQ(textOf(*view, "tastingHeadline"),
              "The tasters tell the media apart in crunch and flavour.");
    EXPECT_TRUE(textOf(*view, "tastingDetail").contains("more than"));
    EXPECT_TRUE(textOf(*view, "tastingCaveats").contains("only large differences show"));
    EXPECT_FALSE(textOf(*view, "tastingBetter").isEmpty());
    for (const char* name : {"tastingAttributes", "tastingScores", "tastingPairs"}) {
        auto* table = find<QTableView>(*view, name);
        ASSERT_NE(table, nullptr);
        EXPECT_TRUE(table->isVisible()) << name;
        EXPECT_GT(table->model()->rowCount(), 0) << name;
        const QAbstractItemModelTester tester(table->model());
    }
    auto* attributes = find<QTableView>(*view, "tastingAttributes");
    attributes->setFocus();
    press(Qt::Key_Down);
    EXPECT_TRUE(textOf(*view, "tastingAttributeWords").startsWith("Flavour:"));
    EXPECT_FALSE(find<QPushButton>(*view, "tastingClose")->isVisible());
    EXPECT_FALSE(find<QPushButton>(*view, "tastingSheets")->isVisible());
}

TEST_F(TastingViewTest, ATastingIsRemovedAfterAsking)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 2, {"Ana"});
    scoreAll(panel);
    auto view = openTasting();
    press(*view, "tastingRemove");
    EXPECT_TRUE(ask.questions[0].contains("with its 4 scores"));
    EXPECT_TRUE(journal->tastings().list(trial)->empty());
    EXPECT_TRUE(find<QPushButton>(*view, "tastingFirst")->isVisible());
    click(messages.findChild<QPushButton*>("messageAction"));
    settleDown();
    EXPECT_EQ(journal->tastings().list(trial)->at(0).scores, 4);
    EXPECT_TRUE(find<QLineEdit>(*view, "tastingCode")->isVisible());
}

} // namespace
} // namespace plumule::ui
