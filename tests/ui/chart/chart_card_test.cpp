#include "tests/ui/support/look_check.h"
#include "tests/ui/support/ui_fixture.h"
#include "ui/chart/chart_card.h"
#include "ui/chart/chart_text.h"
#include "ui/chart/chart_view.h"

#include <QFile>
#include <QSignalSpy>

namespace plumule::ui {
namespace {

class ChartCardTest : public UiTest
{
protected:
    std::unique_ptr<ChartCard> card;

    void openCard()
    {
        messages.setWindowFlags(Qt::ToolTip);
        card = std::make_unique<ChartCard>(services(), "heights");
        show(*card, {520, 360});
    }
    static ChartSpec twoDots(const std::string& note = "BR001")
    {
        ChartSpec spec;
        spec.key = "tray_heights";
        spec.form = ChartForm::Curves;
        spec.x.key = "day";
        spec.x.high = 12;
        spec.y.key = "height";
        spec.y.unit = "mm";
        spec.y.high = 90;
        ChartSeries dots;
        dots.points.push_back({3, 20, note, 7, false});
        dots.points.push_back({8, 61, note, 9, false});
        spec.series.push_back(dots);
        return spec;
    }
    [[nodiscard]] QPushButton* saveButton()
    {
        for (auto* each : card->findChildren<QPushButton*>()) {
            if (each->accessibleName() == "Save this chart") {
                return each;
            }
        }
        return nullptr;
    }
    QByteArray savedAs(const char* name)
    {
        ask.fileAnswer = folder.filePath(name);
        click(saveButton());
        QFile file(ask.fileAnswer);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << messages.text().toStdString();
        return file.readAll();
    }
};

TEST_F(ChartCardTest, HidesItselfWhereThereIsNothingToDraw)
{
    openCard();
    card->draw(ChartSpec());
    EXPECT_FALSE(card->isVisible());
    card->draw(twoDots());
    EXPECT_TRUE(card->isVisible());
    EXPECT_EQ(card->chart()->spec(), twoDots());
}

TEST_F(ChartCardTest, SavesAPictureADrawingPagesAndTheNumbersBehindIt)
{
    openCard();
    card->draw(twoDots());
    settleDown();
    EXPECT_TRUE(savedAs("a.png").startsWith("\x89PNG"));
    EXPECT_TRUE(savedAs("a.svg").contains("<svg"));
    EXPECT_TRUE(savedAs("a.pdf").startsWith("%PDF"));
    const QByteArray numbers = savedAs("a.csv");
    EXPECT_TRUE(numbers.contains("61")) << numbers.toStdString();
    EXPECT_TRUE(messages.text().contains("a.csv"));
    EXPECT_FALSE(messages.isRefusal());
}

TEST_F(ChartCardTest, SaysWhereItCantBeSaved)
{
    openCard();
    card->draw(twoDots());
    for (const char* name : {"no/such/a.png", "no/such/a.csv"}) {
        messages.clear();
        ask.fileAnswer = folder.filePath(name);
        click(saveButton());
        EXPECT_TRUE(messages.isRefusal()) << name;
        EXPECT_FALSE(QFile::exists(ask.fileAnswer));
    }
}

TEST_F(ChartCardTest, LeavingTheQuestionForAFileSavesNothing)
{
    openCard();
    card->draw(twoDots());
    click(saveButton());
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_TRUE(messages.text().isEmpty());
}

TEST_F(ChartCardTest, ADotLeadsToItsTray)
{
    openCard();
    card->draw(twoDots());
    std::vector<TrayId> asked;
    QObject::connect(card.get(), &ChartCard::trayAsked,
                     [&asked](TrayId tray) { asked.push_back(tray); });
    Q_EMIT card->chart()->pointChosen(9);
    EXPECT_EQ(asked, std::vector<TrayId>({TrayId{9}}));
}

TEST_F(ChartCardTest, IsToldInWordsToThoseWhoCantSeeIt)
{
    openCard();
    card->draw(twoDots());
    EXPECT_FALSE(chartTitle(twoDots()).isEmpty());
    EXPECT_FALSE(chartDescription(twoDots()).isEmpty());
    const QString spoken =
        card->chart()->accessibleName() + ' ' + card->chart()->accessibleDescription();
    EXPECT_TRUE(spoken.contains(chartDescription(twoDots()))) << spoken.toStdString();
    EXPECT_EQ(unnamedControls(*card).join('\n').toStdString(), "");
}

TEST_F(ChartCardTest, ALongHeadingGoesOnInASecondLine)
{
    openCard();
    card->draw(twoDots());
    card->setHeading(QString("What every tray weighed ").repeated(12));
    settleDown();
    EXPECT_EQ(cutTexts(*card).join('\n').toStdString(), "");
    EXPECT_LE(card->minimumSizeHint().width(), 520);
}

} // namespace
} // namespace plumule::ui
