#include "tests/ui/tasting/tasting_fixture.h"

namespace plumule::ui {
namespace {

class TastingEntryTest : public TastingTest
{
protected:
    static QString codeOf(const PanelRecord& record, std::size_t serving)
    {
        return QString::fromStdString(record.servings[serving].code);
    }
    std::optional<int> valueOf(PanelId panel, std::size_t serving, std::size_t attribute)
    {
        const PanelRecord record = recordOf(panel);
        const Score* score =
            scoreOf(record, record.servings[serving].id, record.attributes[attribute].id);
        return score == nullptr ? std::nullopt : std::optional(score->value);
    }
};

TEST_F(TastingEntryTest, AWholeTastingIsTypedInByTheKeyboardAlone)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 3, {"Ana", "Ben"});
    auto view = openTasting();
    const PanelRecord record = recordOf(panel);
    ASSERT_EQ(nameOfFocus(), "tastingCode");
    for (std::size_t serving = 0; serving < record.servings.size(); ++serving) {
        enter(codeOf(record, serving));
        EXPECT_TRUE(textOf(*view, "tastingWho").contains(serving < 3 ? "Ana" : "Ben"));
        ASSERT_EQ(nameOfFocus(), "tastingValue0");
        enter(QString::number(serving + 1));
        ASSERT_EQ(nameOfFocus(), "tastingValue1");
        enter(QString::number(9 - serving));
        settleDown();
        ASSERT_EQ(nameOfFocus(), "tastingCode");
    }
    for (std::size_t serving = 0; serving < record.servings.size(); ++serving) {
        EXPECT_EQ(valueOf(panel, serving, 0), static_cast<int>(serving) + 1);
        EXPECT_EQ(valueOf(panel, serving, 1), 9 - static_cast<int>(serving));
    }
    EXPECT_EQ(textOf(*view, "tastingCount"), "12 of 12 scores are in");
    EXPECT_FALSE(find<QLabel>(*view, "tastingMissing")->isVisible());
}

TEST_F(TastingEntryTest, AWrongCodeOrScoreIsSaidAndCanBeTypedOver)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 2, {"Ana"});
    auto view = openTasting();
    const PanelRecord record = recordOf(panel);
    enter("12");
    EXPECT_EQ(textOf(*view, "tastingSaid"), "There is no code 12 in this tasting.");
    EXPECT_EQ(nameOfFocus(), "tastingCode");
    enter(codeOf(record, 0));
    enter("10");
    EXPECT_EQ(nameOfFocus(), "tastingValue0");
    EXPECT_TRUE(textOf(*view, "tastingSaid").contains("from 1 to 9"));
    EXPECT_FALSE(valueOf(panel, 0, 0));
    enter("x");
    EXPECT_EQ(nameOfFocus(), "tastingValue0");
    enter("7");
    EXPECT_EQ(valueOf(panel, 0, 0), 7);
    EXPECT_EQ(nameOfFocus(), "tastingValue1");
}

TEST_F(TastingEntryTest, AScoreIsCorrectedOrTakenOutByItsCode)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 2, {"Ana"});
    auto view = openTasting();
    const PanelRecord record = recordOf(panel);
    for (const char* value : {"4", "6"}) {
        enter(codeOf(record, 1));
        press(Qt::Key_Backtab);
        find<QLineEdit>(*view, "tastingValue0")->setFocus();
        find<QLineEdit>(*view, "tastingValue0")->selectAll();
        enter(value);
        enter("5");
        settleDown();
    }
    EXPECT_EQ(valueOf(panel, 1, 0), 6);
    enter(codeOf(record, 1));
    auto* first = find<QLineEdit>(*view, "tastingValue0");
    EXPECT_EQ(first->text(), "6") << "what is in is shown";
    first->setFocus();
    first->selectAll();
    press(Qt::Key_Delete);
    press(Qt::Key_Return);
    EXPECT_FALSE(valueOf(panel, 1, 0));
    EXPECT_EQ(valueOf(panel, 1, 1), 5);
}

TEST_F(TastingEntryTest, WhatIsBeingTypedOutlivesAReload)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 2, {"Ana"});
    auto view = openTasting();
    const PanelRecord record = recordOf(panel);
    enter(codeOf(record, 0));
    enter("7");
    type("3");
    view->reload();
    settleDown();
    EXPECT_EQ(nameOfFocus(), "tastingValue1");
    EXPECT_EQ(find<QLineEdit>(*view, "tastingValue1")->text(), "3");
    press(Qt::Key_Return);
    EXPECT_EQ(valueOf(panel, 0, 1), 3);
}

TEST_F(TastingEntryTest, ARankGivenTwiceIsSaidWhileTypingAndRefusedWhenClosing)
{
    const PanelId panel = plan(TastingMethod::Ranking, 2, {"Ana"}, {"liking"});
    auto view = openTasting();
    const PanelRecord record = recordOf(panel);
    enter(codeOf(record, 0));
    enter("1");
    settleDown();
    enter(codeOf(record, 1));
    enter("1");
    settleDown();
    EXPECT_TRUE(
        textOf(*view, "tastingSaid").contains("Ana has given the rank 1 to " + codeOf(record, 0)));
    press(*view, "tastingClose");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(messages.text().contains("Ana gave one rank of liking to several servings"))
        << messages.text().toStdString();
    EXPECT_TRUE(recordOf(panel).panel.isOpen());
}

TEST_F(TastingEntryTest, ATriangleTakesTheCodeThatWasTicked)
{
    const PanelId panel = plan(TastingMethod::Triangle, 2, {"Ana", "Ben"});
    auto view = openTasting();
    const PanelRecord record = recordOf(panel);
    enter(codeOf(record, 0));
    settleDown();
    EXPECT_EQ(textOf(*view, "tastingSaid"), "Ana named " + codeOf(record, 0) + ".");
    enter(codeOf(record, 2));
    settleDown();
    EXPECT_TRUE(textOf(*view, "tastingSaid").contains("no longer " + codeOf(record, 0)));
    EXPECT_EQ(recordOf(panel).scores.size(), 1u);
    EXPECT_EQ(textOf(*view, "tastingCount"), "1 of 2 scores are in");
    press(*view, "tastingClose");
    EXPECT_TRUE(textOf(*view, "tastingDetail").contains("of 1 named the odd one"));
}

TEST_F(TastingEntryTest, ARowThatIsClickedIsTypedInNext)
{
    const PanelId panel = plan(TastingMethod::Hedonic, 2, {"Ana", "Ben"});
    auto view = openTasting();
    auto* table = find<QTableView>(*view, "tastingServings");
    const QModelIndex cell = table->model()->index(3, 2);
    QTest::mouseClick(table->viewport(), Qt::LeftButton, Qt::NoModifier,
                      table->visualRect(cell).center());
    EXPECT_TRUE(textOf(*view, "tastingWho").startsWith(codeOf(recordOf(panel), 3)));
    EXPECT_EQ(nameOfFocus(), "tastingValue0");
}

} // namespace
} // namespace plumule::ui
