#include "core/exchange/csv.h"
#include "ui/widget/choice_menu.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/text_table.h"
#include "ui/widget/widgets.h"

#include <QAbstractItemModelTester>
#include <QFile>
#include <QMenu>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

TEST(TextTable, KeepsToTheRulesOfTableModels)
{
    TextTable table;
    const QAbstractItemModelTester tester(&table,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(table.rowCount(), 0);
    table.show({"Item", "Needed", "Note"},
               {{{"Seed", "30 g", "lot L1"}, {}, false}, {{"Mat", "4"}, {}, true}}, 1, 2);
    ASSERT_EQ(table.rowCount(), 2);
    ASSERT_EQ(table.columnCount(), 3);
    EXPECT_EQ(table.index(0, 1).data().toString(), "30 g");
    EXPECT_EQ(table.index(1, 2).data().toString(), "") << "a short row ends in empty cells";
    EXPECT_FALSE(table.index(0, 0).data(Qt::ForegroundRole).isValid());
    EXPECT_TRUE(table.index(1, 0).data(Qt::ForegroundRole).isValid());
    const auto alignment = [&](int column) {
        return Qt::Alignment(table.index(0, column).data(Qt::TextAlignmentRole).toInt());
    };
    EXPECT_TRUE(alignment(0).testFlag(Qt::AlignLeft));
    EXPECT_TRUE(alignment(1).testFlag(Qt::AlignRight));
    EXPECT_TRUE(alignment(2).testFlag(Qt::AlignLeft));
    table.show({"Only"}, {});
    EXPECT_EQ(table.rowCount(), 0);
}

TEST(TableCsv, SaysWhatTheTableShows)
{
    TextTable table;
    table.show({"Medium", "Mean, g"},
               {{{"Mat, thick", "4.5"}, {}, false}, {{"Say \"mix\""}, {}, false}});
    const auto read = csvFrom(tableCsv(table));
    ASSERT_TRUE(read.has_value());
    EXPECT_EQ(read->header, (std::vector<std::string>{"Medium", "Mean, g"}));
    EXPECT_EQ(read->rows,
              (std::vector<std::vector<std::string>>{{"Mat, thick", "4.5"}, {"Say \"mix\"", ""}}));
}

TEST(ChoiceMenu, NothingTickedMeansAll)
{
    ChoiceMenu menu("All shelves", [](int count) { return QString("%1 shelves").arg(count); });
    menu.setItems({{1, "A1"}, {2, "A2"}, {3, "A3"}});
    const QSignalSpy chosen(&menu, &ChoiceMenu::chosenByHand);
    const auto press = [&](int row) { menu.menu()->actions().at(row)->trigger(); };
    EXPECT_EQ(menu.text(), "All shelves");
    press(2); // after "All shelves" and a line
    press(3);
    EXPECT_EQ(menu.text(), "A1, A2");
    EXPECT_EQ(menu.chosen(), (std::vector<qint64>{1, 2}));
    press(4);
    EXPECT_EQ(menu.text(), "3 shelves");
    press(2);
    EXPECT_EQ(menu.chosen(), (std::vector<qint64>{2, 3}));
    menu.setItems({{2, "A2"}, {3, "A3"}});
    EXPECT_EQ(menu.text(), "A2, A3") << "kept when the list is read again";
    press(0);
    EXPECT_TRUE(menu.chosen().empty());
    EXPECT_EQ(menu.text(), "All shelves");
    EXPECT_EQ(chosen.count(), 5);
}

TEST(StandsBeside, GoesBackOnlyWhereThereIsRoomForAScrollBarToo)
{
    EXPECT_TRUE(standsBeside(900, 900, true));
    EXPECT_FALSE(standsBeside(899, 900, true));
    EXPECT_FALSE(standsBeside(910, 900, false));
    EXPECT_TRUE(standsBeside(930, 900, false));
}

TEST(Segmented, MayHaveNoneChosen)
{
    Segmented parts({"One", "Two"});
    parts.choose(1);
    EXPECT_EQ(parts.chosen(), 1);
    parts.choose(-1);
    EXPECT_EQ(parts.chosen(), -1);
    parts.choose(0);
    EXPECT_EQ(parts.chosen(), 0);
    EXPECT_FALSE(parts.segment(1)->isChecked());
}

} // namespace
} // namespace plumule::ui
