#include "core/journal/medium/medium_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/tasting/tasting_fixture.h"
#include "ui/tasting/tasting_dialog.h"
#include "ui/tasting/tasting_text.h"

#include <QComboBox>
#include <QListWidget>
#include <QPlainTextEdit>

namespace plumule::ui {
namespace {

class TastingDialogTest : public TastingTest
{
protected:
    std::unique_ptr<TastingDialog> dialog;
    std::vector<PanelId> saved;

    void openDialog(const PanelDraft& draft)
    {
        messages.setWindowFlags(Qt::ToolTip);
        dialog = std::make_unique<TastingDialog>(*journal, services(), draft);
        QObject::connect(dialog.get(), &TastingDialog::saved,
                         [this](PanelId panel) { saved.push_back(panel); });
        dialog->open();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    void openNew() { openDialog(journal->tastings().newDraft(trial).value()); }
    void tickMedium(int row)
    {
        auto* list = find<QListWidget>(*dialog, "panelMedia");
        list->setFocus();
        list->setCurrentRow(row);
        press(Qt::Key_Space);
        ASSERT_EQ(list->item(row)->checkState(), Qt::Checked);
    }
    void writeLines(const char* field, const QString& lines)
    {
        auto* text = find<QPlainTextEdit>(*dialog, field);
        text->setFocus();
        text->selectAll();
        QTest::keyClick(text, Qt::Key_Delete);
        for (const QString& line : lines.split('\n')) {
            QTest::keyClicks(text, line);
            if (line != lines.split('\n').back()) {
                QTest::keyClick(text, Qt::Key_Return);
            }
        }
    }
    void save() { click(find<QPushButton>(*dialog, "panelSave")); }
    [[nodiscard]] QString refusal()
    {
        const auto* shown = find<QLabel>(*dialog, "refusal");
        return shown->isVisible() ? shown->text() : QString();
    }
    [[nodiscard]] QString facts() { return find<QLabel>(*dialog, "panelFacts")->text(); }
    [[nodiscard]] std::size_t panels() { return journal->tastings().list(trial)->size(); }
};

TEST_F(TastingDialogTest, DrawsWhatWasTypedAsOneActThatIsTakenBackAsOne)
{
    openNew();
    write(*dialog, "panelName", "Friday's");
    give(*dialog, "panelOn", "13 Mar 2026");
    tickMedium(0);
    tickMedium(2);
    writeLines("panelAttributes", "crunch\nflavour");
    writeLines("panelTasters", "Ana\nBen\nCem");
    write(*dialog, "panelNote", "after lunch");
    EXPECT_TRUE(facts().startsWith("6 servings")) << facts().toStdString();
    const int before = actsIn(*journal);
    press(Qt::Key_Return);
    ASSERT_EQ(saved.size(), 1U) << refusal().toStdString();
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_EQ(actsIn(*journal), before + 1);
    const PanelRecord record = recordOf(saved.front());
    EXPECT_EQ(record.panel.name, "Friday's");
    EXPECT_EQ(record.panel.on, date(2026, 3, 13));
    EXPECT_EQ(record.panel.note, "after lunch");
    EXPECT_EQ(record.tasters.size(), 3U);
    EXPECT_EQ(record.attributes.size(), 2U);
    const auto media = journal->tastings().draft(saved.front())->media;
    const auto all = journal->media().all().value();
    EXPECT_EQ(media, (std::vector<MediumId>{all[0].id, all[2].id}));
    EXPECT_TRUE(messages.text().contains("Friday's"));
    auto* undo = messages.findChild<QPushButton*>("messageAction");
    ASSERT_TRUE(undo->isVisible()) << "a draw by mistake is taken back";
    click(undo);
    EXPECT_EQ(panels(), 0U);
}

TEST_F(TastingDialogTest, EnterInAListOfLinesIsALineAndSavesNothing)
{
    openNew();
    tickMedium(0);
    tickMedium(1);
    writeLines("panelTasters", "Ana\nBen");
    EXPECT_EQ(find<QPlainTextEdit>(*dialog, "panelTasters")->toPlainText(), "Ana\nBen");
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_EQ(panels(), 0U);
    press(Qt::Key_Tab);
    EXPECT_NE(nameOfFocus(), "panelTasters") << "Tab leaves it";
}

TEST_F(TastingDialogTest, SaysWhatIsMissingOneAfterTheOther)
{
    openNew();
    give(*dialog, "panelName", "Autumn tasting");
    writeLines("panelTasters", "");
    save();
    EXPECT_FALSE(refusal().isEmpty());
    tickMedium(0);
    save();
    EXPECT_FALSE(refusal().isEmpty()) << "one medium alone";
    tickMedium(1);
    save();
    EXPECT_TRUE(refusal().contains("taster")) << refusal().toStdString();
    writeLines("panelTasters", "Ana");
    writeLines("panelAttributes", "");
    save();
    EXPECT_FALSE(refusal().isEmpty()) << "no attribute";
    give(*dialog, "panelOn", "whenever");
    save();
    EXPECT_FALSE(refusal().isEmpty()) << "no day";
    EXPECT_EQ(panels(), 0U);
    EXPECT_TRUE(dialog->isVisible());
}

TEST_F(TastingDialogTest, CountsServingsAsTheyAreTicked)
{
    openNew();
    EXPECT_FALSE(facts().contains("servings,")) << facts().toStdString();
    tickMedium(0);
    tickMedium(1);
    tickMedium(2);
    writeLines("panelTasters", "Ana\nBen");
    EXPECT_TRUE(facts().startsWith("6 servings")) << facts().toStdString();
    auto* method = find<QComboBox>(*dialog, "panelMethod");
    method->setFocus();
    press(Qt::Key_End);
    ASSERT_EQ(method->currentText(), nameOf(TastingMethod::Triangle));
    EXPECT_FALSE(find<QPlainTextEdit>(*dialog, "panelAttributes")->isEnabled());
}

TEST_F(TastingDialogTest, AChangedPlanIsFilledInAndSavedUntouchedKeepsItsDraw)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 3, {"Ana", "Ben"});
    const PanelRecord before = recordOf(panel);
    openDialog(journal->tastings().draft(panel).value());
    EXPECT_EQ(find<QLineEdit>(*dialog, "panelName")->text(), "First tasting");
    EXPECT_EQ(find<QPlainTextEdit>(*dialog, "panelTasters")->toPlainText(), "Ana\nBen");
    save();
    EXPECT_FALSE(dialog->isVisible()) << refusal().toStdString();
    EXPECT_EQ(recordOf(panel).panel.drawNumber, before.panel.drawNumber);
    ASSERT_EQ(recordOf(panel).servings.size(), before.servings.size());
    for (std::size_t i = 0; i < before.servings.size(); ++i) {
        EXPECT_EQ(recordOf(panel).servings[i].code, before.servings[i].code);
    }
}

TEST_F(TastingDialogTest, EscapeAsksWhereSomethingWasTypedAndPlansNothing)
{
    openNew();
    press(Qt::Key_Escape);
    EXPECT_TRUE(ask.questions.isEmpty());
    EXPECT_FALSE(dialog->isVisible());
    openNew();
    tickMedium(0);
    ask.agrees = false;
    press(Qt::Key_Escape);
    EXPECT_EQ(ask.questions.size(), 1) << "a tick is typed too";
    EXPECT_TRUE(dialog->isVisible());
    ask.agrees = true;
    press(Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_EQ(panels(), 0U);
}

TEST_F(TastingDialogTest, NamesAreKeptAsTheyAreTyped)
{
    for (const HostileText& each : hostileTexts()) {
        saved.clear();
        openNew();
        find<QLineEdit>(*dialog, "panelName")->setText(each.text);
        find<QPlainTextEdit>(*dialog, "panelTasters")->setPlainText(each.text + "\nBen");
        tickMedium(0);
        tickMedium(1);
        save();
        ASSERT_EQ(saved.size(), 1U) << each.what << ": " << refusal().toStdString();
        EXPECT_EQ(QString::fromStdString(recordOf(saved.front()).panel.name), each.text)
            << each.what;
        EXPECT_EQ(QString::fromStdString(recordOf(saved.front()).tasters.front().name), each.text)
            << each.what;
    }
}

TEST_F(TastingDialogTest, CanBeReadAndReachedAtEveryLook)
{
    const PanelDraft draft = journal->tastings().newDraft(trial).value();
    const auto faults =
        faultsOfDialog([&] { return new TastingDialog(*journal, services(), draft); });
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
