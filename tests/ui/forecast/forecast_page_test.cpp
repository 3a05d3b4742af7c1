#include "ui/forecast/forecast_page.h"

#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/forecast/forecast_answers.h"
#include "core/journal/room/room_entries.h"
#include "ui/forecast/forecast_text.h"
#include "ui/widget/widgets.h"

#include "tests/ui/support/aside_page.h"

#include <QSignalSpy>
#include <QTableView>

namespace plumule::ui {
namespace {

class ForecastPageTest : public AsidePageTest
{
protected:
    void open()
    {
        page = openPage<ForecastPage>();
        settleDown();
        table = find<QTableView>(*page, "growingForecasts");
    }
    void TearDown() override
    {
        page.reset();
        AsidePageTest::TearDown();
    }
    [[nodiscard]] QString cell(int row, int column) const
    {
        return table->model()->index(row, column).data().toString();
    }
    [[nodiscard]] QString basis() const
    {
        return page->findChild<QLabel*>("forecastBasis")->text();
    }

    std::unique_ptr<ForecastPage> page;
    QTableView* table = nullptr;
};

TEST_F(ForecastPageTest, SaysThatNothingGrowsAndNothingWasScored)
{
    open();
    const QStringList texts = textsIn(*page);
    EXPECT_TRUE(texts.join(' ').contains("Nothing grows now."));
    EXPECT_TRUE(texts.join(' ').contains("No harvest was foretold from this room's own past yet."));
    EXPECT_FALSE(table->isVisible());
}

TEST_F(ForecastPageTest, ShowsTheLibrarysValueAndSaysWhoseItIs)
{
    sow(broccoli(2, kTwoDaysAgo));
    open();
    ASSERT_EQ(table->model()->rowCount(), 2);
    EXPECT_EQ(cell(0, 0), "BR001");
    EXPECT_EQ(cell(0, 1), "3");
    table->selectRow(0);
    EXPECT_TRUE(basis().contains("the library's value (Li et al. 2023")) << basis().toStdString();
    EXPECT_TRUE(basis().contains("It is not scored."));
    EXPECT_TRUE(basis().contains("Day: the protocol's"));
}

TEST_F(ForecastPageTest, ShowsWhatTheDoorAnswers)
{
    useSample();
    open();
    const ForecastReport report = journal->forecast().answer()->report;
    ASSERT_EQ(table->model()->rowCount(), static_cast<int>(report.growing.size()));
    const UnitText units(journal->room().layout()->room.units);
    for (int row = 0; row < table->model()->rowCount(); ++row) {
        const TrayForecast& forecast = report.growing[static_cast<std::size_t>(row)];
        EXPECT_EQ(cell(row, 0), QString::fromStdString(forecast.code));
        EXPECT_EQ(cell(row, 2), dayWords(forecast));
        EXPECT_EQ(cell(row, 4), yieldMiddle(forecast.yield, units));
        EXPECT_EQ(cell(row, 5), yieldRange(forecast.yield, units));
    }
    EXPECT_TRUE(textsIn(*page).contains(coverageSentence(report)));
    auto* scores = find<QTableView>(*page, "forecastScores");
    EXPECT_EQ(scores->model()->rowCount(), static_cast<int>(report.scores.size()) + 1);
}

TEST_F(ForecastPageTest, OrdersByVariety)
{
    useSample();
    open();
    QStringList before;
    for (int row = 0; row < table->model()->rowCount(); ++row) {
        before << cell(row, 0);
    }
    click(page->findChild<Segmented*>()->segment(1));
    QStringList prefixes;
    QStringList after;
    for (int row = 0; row < table->model()->rowCount(); ++row) {
        after << cell(row, 0);
        if (prefixes.isEmpty() || prefixes.back() != cell(row, 0).left(2)) {
            prefixes << cell(row, 0).left(2);
        }
    }
    EXPECT_EQ(prefixes.removeDuplicates(), 0) << "a variety's trays stand together";
    before.sort();
    after.sort();
    EXPECT_EQ(before, after);
}

TEST_F(ForecastPageTest, OpensTheChosenTrayByEnter)
{
    useSample();
    open();
    QSignalSpy asked(page.get(), &Page::trayAsked);
    table->selectRow(1);
    table->setFocus();
    press(Qt::Key_Return);
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.front().front().value<TrayId>(),
              journal->forecast().answer()->report.growing[1].tray);
}

TEST_F(ForecastPageTest, ShowsOuncesInAUsRoom)
{
    sow(broccoli(1, kTwoDaysAgo));
    Room room = journal->room().layout()->room;
    room.units = UnitSystem::UsCustomary;
    ASSERT_TRUE(journal->room().changeRoom(room));
    open();
    const TrayForecast forecast = journal->forecast().answer()->report.growing.front();
    EXPECT_EQ(cell(0, 4), numberText(inOunces(forecast.yield.middle), 1));
    EXPECT_EQ(table->model()->headerData(4, Qt::Horizontal).toString(), "oz");
}

VarietyScore badScore()
{
    VarietyScore score;
    score.harvests = 6;
    score.yieldInside = 3;
    score.days = 6;
    score.dayInside = 6;
    score.yieldWidened = 1.5;
    return score;
}

TEST(ForecastText, SaysThatAVarietyScoredBadly)
{
    EXPECT_EQ(badHeading(badScore(), "Red cabbage"), "Red cabbage has scored badly: 3 of 6");
    EXPECT_TRUE(badDetail(badScore()).contains("drawn 1.5 times as wide"));
    EXPECT_TRUE(badHeading({}, "Radish").isEmpty());
}

TEST(ForecastText, SaysHowManyFellInTheirInterval)
{
    ForecastReport report;
    report.all.harvests = 40;
    report.all.yieldInside = 33;
    report.all.days = 40;
    report.all.dayInside = 34;
    EXPECT_EQ(coverageSentence(report), "Of 40 harvests, 33 fell in their 80 % interval.");
    EXPECT_TRUE(coverageDetail(report).startsWith("83 in 100 for yield, 85 for the day."));
}

} // namespace
} // namespace plumule::ui
