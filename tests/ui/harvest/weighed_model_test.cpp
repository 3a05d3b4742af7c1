#include "tests/ui/harvest/weigh_fixture.h"
#include "ui/harvest/weigh_card.h"
#include "ui/harvest/weighed_model.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QTableView>

namespace plumule::ui {
namespace {

QString cell(const QAbstractItemModel& model, int row, int column)
{
    return model.index(row, column).data().toString();
}

TEST_F(WeighTest, TheListOfWhatWasWeighedIsASoundModelNewestFirst)
{
    growDueTrays(2);
    open();
    auto* model = find<QTableView>(*page, "weighed")->model();
    const QAbstractItemModelTester tester(model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    enter("BR001");
    type("200");
    press(Qt::Key_F4);
    press(Qt::Key_Return);
    clock.set({clock.today(), 8 * 60 + 15});
    enter("310");
    ASSERT_TRUE(soon([&] { return model->rowCount() == 2; }));
    EXPECT_EQ(cell(*model, 0, WeighedModel::Tray), "BR002");
    EXPECT_EQ(cell(*model, 1, WeighedModel::Tray), "BR001");
    EXPECT_EQ(cell(*model, 0, WeighedModel::Cut), "");
    EXPECT_EQ(cell(*model, 1, WeighedModel::Cut), "cut 1, again later");
    EXPECT_EQ(cell(*model, 0, WeighedModel::Net), "310.0 g");
    EXPECT_EQ(cell(*model, 0, WeighedModel::Time), "08:15");
    EXPECT_EQ(cell(*model, 0, WeighedModel::MediumName).toStdString(), inertMedium().name);
    const Mass seed = sheetOf("BR002").record.tray.seed.value();
    EXPECT_EQ(cell(*model, 0, WeighedModel::PerSeed), numberText(310 / inGrams(seed), 1));
}

TEST_F(WeighTest, AModelOfNothingIsSoundToo)
{
    WeighedModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(model.rowCount(), 0);
    model.show({}, UnitText());
    EXPECT_EQ(model.columnCount(), int(WeighedModel::Columns));
    for (int i = 0; i < model.columnCount() - 1; ++i) {
        EXPECT_FALSE(model.headerData(i, Qt::Horizontal, Qt::DisplayRole).toString().isEmpty());
    }
}

TEST_F(WeighTest, TheCardAloneWorksOutTheNetAndAsksWhenEntered)
{
    WeighCard card;
    show(card, {700, 320});
    card.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&card));
    QSignalSpy asked(&card, &WeighCard::recordAsked);
    QSignalSpy coded(&card, &WeighCard::codeEntered);
    card.setTare(grams(38.5));
    card.focusWeight();
    type("331.5");
    EXPECT_EQ(find<QLabel>(card, "net")->text(), "293.0 g");
    EXPECT_EQ(asked.count(), 0);
    press(Qt::Key_Return);
    EXPECT_EQ(asked.count(), 1);
    const auto bowls = card.bowls();
    ASSERT_TRUE(bowls);
    ASSERT_EQ(bowls->size(), 1U);
    EXPECT_EQ(bowls->front().gross, grams(331.5));
    EXPECT_EQ(bowls->front().tare, grams(38.5));
    EXPECT_EQ(coded.count(), 0);
    card.focusCode();
    enter("RD029");
    ASSERT_EQ(coded.count(), 1);
    EXPECT_EQ(coded.front().front().toString(), "RD029");
}

TEST_F(WeighTest, ChangingTheUnitTurnsTheTareIntoIt)
{
    WeighCard card;
    card.setTare(grams(56.7)); // 2 oz of 28.35 g
    card.setUnit(MassUnit::Ounce);
    EXPECT_EQ(find<QLineEdit>(card, "tare")->text(), "2.00");
    card.setUnit(MassUnit::Gram);
    EXPECT_EQ(find<QLineEdit>(card, "tare")->text(), "56.7");
}

TEST_F(WeighTest, AnotherBowlNeedsAWeightFirst)
{
    WeighCard card;
    show(card, {700, 320});
    click(find<QPushButton>(card, "addBowl"));
    EXPECT_TRUE(find<QLabel>(card, "words")->text().contains("Weigh this bowl first"));
    EXPECT_FALSE(card.hasBowls());
}

} // namespace
} // namespace plumule::ui
