#include "core/journal/cost/cost_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/review/season_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/review/season_filter_bar.h"
#include "ui/review/what_if_card.h"
#include "ui/widget/choice_menu.h"
#include "ui/widget/date_field.h"

#include <QComboBox>
#include <QMenu>
#include <QSignalSpy>

namespace plumule::ui {
namespace {

// The bar alone, in a journal of two declared seasons.
class SeasonFilterBarTest : public GrowingTest
{
protected:
    std::unique_ptr<SeasonFilterBar> bar;
    std::unique_ptr<QSignalSpy> changed;
    std::vector<bool> asked; // whether a new season was asked for

    void SetUp() override
    {
        GrowingTest::SetUp();
        declare("Winter", date(2025, 11, 1));
        declare("Spring", date(2026, 3, 1));
    }
    void declare(const char* name, Date startsOn)
    {
        Season season;
        season.name = name;
        season.startsOn = startsOn;
        ASSERT_TRUE(journal->seasons().save(season));
    }
    void openBar()
    {
        bar = std::make_unique<SeasonFilterBar>(*journal);
        changed = std::make_unique<QSignalSpy>(bar.get(), &SeasonFilterBar::changed);
        QObject::connect(bar.get(), &SeasonFilterBar::newSeasonAsked,
                         [this] { asked.push_back(true); });
        QObject::connect(bar.get(), &SeasonFilterBar::seasonChangeAsked,
                         [this] { asked.push_back(false); });
        show(*bar, {1100, 160});
        bar->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(bar.get()));
        bar->reload();
        bar->setFilter(journal->review().usualSeason());
        changed->clear();
    }
    [[nodiscard]] QComboBox& box(const char* name) { return *find<QComboBox>(*bar, name); }
    // As a person does: down the open list by its letters or arrows.
    void chooseRow(const char* name, int row)
    {
        QComboBox& list = box(name);
        list.setFocus();
        while (list.currentIndex() > row) {
            press(Qt::Key_Up);
        }
        while (list.currentIndex() < row) {
            press(Qt::Key_Down);
        }
    }
};

TEST_F(SeasonFilterBarTest, ListsSeasonsNewestFirstAndWhatElseCanBeDone)
{
    openBar();
    QStringList rows;
    for (int i = 0; i < box("season").count(); ++i) {
        rows << box("season").itemText(i);
    }
    EXPECT_EQ(rows, QStringList({"Season Spring", "Season Winter", "Days of your own",
                                 "Change this season…", "A new season…"}));
    EXPECT_EQ(box("season").currentText(), "Season Spring");
    EXPECT_EQ(find<DateField>(*bar, "from")->date(), date(2026, 3, 1));
    EXPECT_EQ(find<DateField>(*bar, "to")->date(), clock.today());
}

TEST_F(SeasonFilterBarTest, AChosenSeasonBringsItsDaysAndItsOwnSowings)
{
    openBar();
    chooseRow("season", 1);
    EXPECT_EQ(changed->count(), 1);
    const SeasonFilter filter = bar->filter();
    EXPECT_EQ(filter.from, date(2025, 11, 1));
    EXPECT_EQ(filter.sownFrom, date(2025, 11, 1));
    EXPECT_EQ(filter.sownUntil, date(2026, 2, 28)) << "until the next season begins";
    chooseRow("season", 0);
    EXPECT_EQ(bar->filter().sownFrom, date(2026, 3, 1));
    EXPECT_FALSE(bar->filter().sownUntil);
}

TEST_F(SeasonFilterBarTest, TypedDaysAreDaysOfYourOwn)
{
    openBar();
    give(*bar, "from", "2 Feb 2026");
    EXPECT_EQ(changed->count(), 1);
    EXPECT_EQ(bar->filter().from, date(2026, 2, 2));
    EXPECT_FALSE(bar->filter().sownFrom) << "no season's sowings any more";
    bar->setFilter(bar->filter());
    EXPECT_EQ(box("season").currentText(), "Days of your own");
    give(*bar, "from", "1 Mar 2026");
    give(*bar, "to", "12 Mar 2026");
    bar->reload();
    EXPECT_EQ(bar->filter().to, date(2026, 3, 12));
}

TEST_F(SeasonFilterBarTest, ADayThatIsNoneIsMarkedAndTheDayBeforeCounts)
{
    openBar();
    const SeasonFilter before = bar->filter();
    give(*bar, "from", "the thaw");
    EXPECT_TRUE(find<QLineEdit>(*bar, "from")->property("wrong").toBool());
    EXPECT_EQ(bar->filter(), before);
    EXPECT_EQ(changed->count(), 0);
}

TEST_F(SeasonFilterBarTest, ChangingAndDeclaringAreAskedForAndChooseNothing)
{
    openBar();
    const SeasonFilter before = bar->filter();
    QComboBox& season = box("season");
    for (const int row : {3, 4}) {
        season.setCurrentIndex(row);
        Q_EMIT season.activated(row);
    }
    EXPECT_EQ(asked, std::vector<bool>({false, true}));
    EXPECT_EQ(bar->filter(), before);
    EXPECT_EQ(season.currentText(), "Season Spring") << "the list shows what is shown";
    EXPECT_EQ(changed->count(), 0);
}

TEST_F(SeasonFilterBarTest, MarginAndGroupsAreAskedAsChosen)
{
    openBar();
    EXPECT_FALSE(bar->ask().marginPercent);
    EXPECT_FALSE(bar->ask().groups);
    chooseRow("margin", 3);
    EXPECT_EQ(bar->ask().marginPercent, 8);
    chooseRow("groups", 2);
    EXPECT_EQ(bar->ask().groups, Grouping::Nutrients);
    chooseRow("margin", 0);
    chooseRow("groups", 0);
    EXPECT_FALSE(bar->ask().marginPercent);
    EXPECT_FALSE(bar->ask().groups);
    EXPECT_GE(changed->count(), 4);
}

TEST_F(SeasonFilterBarTest, SeasonsSideBySideAreSpansOfTheDaysThatAreShown)
{
    openBar();
    EXPECT_TRUE(bar->beside().empty());
    give(*bar, "from", "2025-07-01");
    chooseRow("beside", 2);
    const auto quarters = bar->beside();
    ASSERT_EQ(quarters.size(), 3U);
    EXPECT_EQ(quarters[0].from, date(2025, 7, 1));
    EXPECT_EQ(quarters[1].from, date(2025, 10, 1));
    EXPECT_EQ(quarters[2].to, clock.today());
    chooseRow("beside", 1);
    const auto years = bar->beside();
    ASSERT_EQ(years.size(), 2U);
    EXPECT_EQ(years[0].from, date(2024, 7, 1)) << "the same days a year before";
    EXPECT_EQ(years[1].from, date(2025, 7, 1));
}

TEST_F(SeasonFilterBarTest, VarietiesStayTickedWhenAnotherSeasonIsChosen)
{
    openBar();
    auto* menu = find<ChoiceMenu>(*bar, "varieties");
    menu->menu()->actions().at(2)->trigger();
    const auto ticked = bar->filter().varieties;
    ASSERT_EQ(ticked.size(), 1U);
    chooseRow("season", 1);
    EXPECT_EQ(bar->filter().varieties, ticked);
}

TEST_F(SeasonFilterBarTest, ShelvesAndTrialsOfTheRoomAreOffered)
{
    Trial trial;
    trial.name = "Mesh & <b>mix</b>";
    ASSERT_TRUE(journal->trials().save(trial));
    openBar();
    const auto entries = [this](const char* name) {
        QStringList texts;
        for (const QAction* each : find<ChoiceMenu>(*bar, name)->menu()->actions()) {
            texts << each->text();
        }
        return texts;
    };
    EXPECT_TRUE(entries("seasonTrials").contains("T1  Mesh && <b>mix</b>"))
        << entries("seasonTrials").join('|').toStdString();
    EXPECT_EQ(entries("seasonShelves").size(), 2 + 8) << "two racks of four shelves";
    EXPECT_TRUE(entries("seasonShelves").contains("A1"));
}

TEST_F(SeasonFilterBarTest, SeasonsWithMarksInTheirNamesAreShownAsTheyAre)
{
    declare("<b>Late</b> %1 & spring", date(2026, 3, 11));
    openBar();
    EXPECT_EQ(box("season").itemText(0), "Season <b>Late</b> %1 & spring");
    EXPECT_EQ(textsWithMarks(*bar).join('\n').toStdString(), "");
}

TEST_F(SeasonFilterBarTest, EveryControlIsNamedAndItsRowsAreShown)
{
    openBar();
    EXPECT_EQ(unnamedControls(*bar).join('\n').toStdString(), "");
    EXPECT_EQ(poorDropDowns(*bar).join('\n').toStdString(), "");
    EXPECT_EQ(unreachedByTab(*bar).join('\n').toStdString(), "");
}

// What if a price were another.
class WhatIfCardTest : public GrowingTest
{
protected:
    std::unique_ptr<WhatIfCard> card;
    std::unique_ptr<QSignalSpy> changed;
    Medium mesh;
    SeasonReview review;

    void openCard()
    {
        mesh = inertMedium(true);
        mesh.plannedUses = 30;
        ASSERT_TRUE(journal->media().save(mesh));
        review = SeasonReview();
        review.currency = "EUR";
        for (const Medium& each : {inertMedium(), mesh}) {
            MediumSeason season;
            season.medium = each;
            review.media.push_back(season);
        }
        card = std::make_unique<WhatIfCard>(*journal);
        changed = std::make_unique<QSignalSpy>(card.get(), &WhatIfCard::changed);
        show(*card, {800, 400});
        card->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(card.get()));
        card->show(review);
        settleDown();
    }
    [[nodiscard]] QByteArray priceField(const Medium& medium) const
    {
        return "whatIfPrice" + QByteArray::number(qlonglong(medium.id.value));
    }
    [[nodiscard]] QByteArray usesField() const
    {
        return "whatIfUses" + QByteArray::number(qlonglong(mesh.id.value));
    }
    [[nodiscard]] bool isReckoned(int times)
    {
        return soon([&] { return changed->count() == times; });
    }
};

TEST_F(WhatIfCardTest, ShowsWhatHoldsNowAndTakesWhatIsTyped)
{
    openCard();
    EXPECT_EQ(find<QLineEdit>(*card, priceField(mesh))->placeholderText(), "no price");
    EXPECT_EQ(find<QLineEdit>(*card, usesField())->placeholderText(), "30");
    write(*card, priceField(mesh), "9,5");
    ASSERT_TRUE(isReckoned(1)) << "once, after the typing";
    EXPECT_EQ(card->whatIf().mediumPrices.at(mesh.id), money(9.5));
    write(*card, usesField(), "12");
    ASSERT_TRUE(isReckoned(2));
    EXPECT_EQ(card->whatIf().plannedUses.at(mesh.id), 12);
    EXPECT_TRUE(journal->costs().prices()->empty()) << "nothing is stored";
}

TEST_F(WhatIfCardTest, WhatIsNoNumberIsMarkedAndReckonsWithTheRest)
{
    openCard();
    write(*card, priceField(mesh), "4");
    ASSERT_TRUE(isReckoned(1));
    write(*card, priceField(inertMedium()), "1,234");
    EXPECT_TRUE(soon([&] {
        return find<QLineEdit>(*card, priceField(inertMedium()))->property("wrong").toBool();
    }));
    EXPECT_EQ(card->whatIf().mediumPrices.size(), 1U);
    EXPECT_EQ(changed->count(), 1);
}

TEST_F(WhatIfCardTest, GoesBackToWhatWasPaidAtOnePress)
{
    openCard();
    write(*card, priceField(mesh), "4");
    ASSERT_TRUE(isReckoned(1));
    card->show(review); // as the page does with the answer
    auto* back = find<QPushButton>(*card, "whatIfBack");
    ASSERT_TRUE(back->isVisible());
    click(back);
    EXPECT_TRUE(card->whatIf().isEmpty());
    EXPECT_EQ(find<QLineEdit>(*card, priceField(mesh))->text(), "");
    EXPECT_EQ(changed->count(), 2);
    card->show(review);
    EXPECT_FALSE(back->isVisible());
}

TEST_F(WhatIfCardTest, EveryFieldIsNamed)
{
    openCard();
    EXPECT_EQ(unnamedControls(*card).join('\n').toStdString(), "");
    EXPECT_TRUE(find<QLineEdit>(*card, usesField())->accessibleName().contains("planned uses"));
}

} // namespace
} // namespace plumule::ui
