#include "core/journal/medium/medium_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/setup/setup_page.h"

#include <QSignalSpy>
#include <QStackedWidget>
#include <QTabBar>

namespace plumule::ui {
namespace {

class SetupPageTest : public SetupTest
{
protected:
    static SetupPart* shownPart(QWidget& page)
    {
        for (auto* each : page.findChildren<SetupPart*>()) {
            if (each->isVisible()) {
                return each;
            }
        }
        return nullptr;
    }
};

TEST_F(SetupPageTest, HasAPartForEverythingThatIsSet)
{
    const auto page = openPage<SetupPage>();
    EXPECT_EQ(page->partNames(), QStringList({"Room", "Varieties", "Seed", "Media", "Water",
                                              "Prices and work", "Journal"}));
    for (const QString& name : page->partNames()) {
        page->showPart(name);
        ASSERT_NE(shownPart(*page), nullptr) << name.toStdString();
        EXPECT_EQ(shownPart(*page)->name(), name);
    }
}

TEST_F(SetupPageTest, IsWalkedFromPartToPartByTheArrowKeys)
{
    const auto page = openPage<SetupPage>();
    auto* tabs = find<QTabBar>(*page, "parts");
    tabs->setFocus();
    for (const QString& name : page->partNames()) {
        EXPECT_EQ(shownPart(*page)->name(), name);
        QTest::keyClick(tabs, Qt::Key_Right);
    }
}

TEST_F(SetupPageTest, ReadsAPartWhenItIsShownAndWhenItChanges)
{
    const auto page = openPage<SetupPage>();
    page->showPart("Media");
    const auto mediaShown = [&] {
        return recordsOf(*shownPart(*page)).filter("Jute mat").size() == 1;
    };
    EXPECT_FALSE(mediaShown());
    Medium jute;
    jute.name = "Jute mat";
    jute.form = MediumForm::Mat;
    ASSERT_TRUE(journal->media().save(jute));
    EXPECT_TRUE(soon(mediaShown));
    page->showPart("Varieties");
    ASSERT_TRUE(journal->undo());
    page->showPart("Media");
    EXPECT_FALSE(mediaShown());
}

TEST_F(SetupPageTest, KeepsAmountsRightWhenTheUnitsAreChangedOnItsFirstPart)
{
    const auto page = openPage<SetupPage>();
    page->showPart("Varieties");
    chooseRecord(*shownPart(*page), "Broccoli");
    ASSERT_EQ(textOf(*page, "varietySeed"), "25");
    page->showPart("Room");
    find<QComboBox>(*page, "roomUnits")->setCurrentIndex(1);
    press(*page, "saveRoom");
    page->showPart("Varieties");
    press(*shownPart(*page), "saveRecord");
    const auto seed = journal->varieties().protocol(varietyNamed("Broccoli"))->variety.seedPerTray;
    ASSERT_TRUE(seed);
    EXPECT_NEAR(inGrams(*seed), 25, 0.05);
}

TEST_F(SetupPageTest, FitsItsNarrowestWindowWithoutScrollingSidewards)
{
    // 1024 by 768 less the sidebar.
    const auto page = openPage<SetupPage>({816, 700});
    for (const QString& name : page->partNames()) {
        page->showPart(name);
        settleDown();
        EXPECT_LE(page->minimumSizeHint().width(), 816) << name.toStdString();
        EXPECT_EQ(page->width(), 816) << name.toStdString();
    }
}

TEST_F(SetupPageTest, PassesOnWhatTheJournalPartAsks)
{
    const auto page = openPage<SetupPage>();
    const QSignalSpy asked(page.get(), &SetupPage::journalAsked);
    const QSignalSpy look(page.get(), &SetupPage::lookAsked);
    page->showPart("Journal");
    ask.fileAnswer = "other.plumule";
    press(*page, "openAnother");
    press(*page, "applyLook");
    EXPECT_EQ(asked.count(), 1);
    EXPECT_EQ(look.count(), 1);
}

TEST_F(SetupPageTest, GivesEveryFieldAWordForThoseWhoCannotSeeIt)
{
    const auto page = openPage<SetupPage>();
    for (const QString& name : page->partNames()) {
        page->showPart(name);
        SetupPart* part = shownPart(*page);
        for (QWidget* each : part->findChildren<QWidget*>()) {
            const bool isField = qobject_cast<QLineEdit*>(each) != nullptr ||
                                 qobject_cast<QComboBox*>(each) != nullptr ||
                                 qobject_cast<QAbstractSpinBox*>(each) != nullptr;
            // The line inside a box speaks with the box's voice.
            const bool isInner = qobject_cast<QComboBox*>(each->parentWidget()) != nullptr ||
                                 qobject_cast<QAbstractSpinBox*>(each->parentWidget()) != nullptr;
            if (!isField || isInner || !each->isVisibleTo(part)) {
                continue;
            }
            bool hasBuddy = false;
            for (const QLabel* label : part->findChildren<QLabel*>()) {
                hasBuddy = hasBuddy || label->buddy() == each;
            }
            EXPECT_TRUE(hasBuddy || !each->accessibleName().isEmpty())
                << name.toStdString() << ": " << each->metaObject()->className() << " '"
                << each->objectName().toStdString() << "'";
        }
    }
}

} // namespace
} // namespace plumule::ui
