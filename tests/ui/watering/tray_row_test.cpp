#include "tests/ui/watering/round_part_fixture.h"
#include "ui/watering/tray_row.h"

#include <QVBoxLayout>

namespace plumule::ui {
namespace {

class TrayRowTest : public RoundPartTest
{
protected:
    // A row in a layout, as it stands in a shelf's card.
    std::unique_ptr<QWidget> card;
    TrayRow* row = nullptr;

    void show(bool isAsNeeded)
    {
        RoundTray tray;
        tray.code = "MU004";
        tray.variety = "Mustard";
        tray.medium.name = "Coir mix";
        tray.isAsNeeded = isAsNeeded;
        RowFrame frame;
        frame.codeWidth = TrayRow::widthOfCode(tray.code);
        card = std::make_unique<QWidget>();
        auto* column = new QVBoxLayout(card.get());
        row = new TrayRow(tray, frame);
        column->addWidget(row);
        column->addStretch(1);
        card->show();
    }
    int heightAt(int wide)
    {
        card->resize(wide, 600);
        settleDown();
        EXPECT_EQ(row->height(), row->heightForWidth(row->width())) << wide;
        return row->height();
    }
};

TEST_F(TrayRowTest, IsAsHighAsItsLinesWhereverItsWidthComesFrom)
{
    show(false);
    const int one = heightAt(1000);
    const int two = heightAt(600);
    const int four = heightAt(340);
    EXPECT_LT(one, two);
    EXPECT_LT(two, four);
    EXPECT_EQ(heightAt(600), two);
    EXPECT_EQ(heightAt(1000), one);
}

TEST_F(TrayRowTest, AnswersAreBesideEachOtherAndWithinTheRow)
{
    show(true);
    for (const int wide : {1100, 700, 500, 280}) {
        heightAt(wide);
        EXPECT_TRUE(row->rect().contains(row->wateredArea())) << wide;
        EXPECT_TRUE(row->rect().contains(row->notNeededArea())) << wide;
        EXPECT_FALSE(row->wateredArea().intersects(row->notNeededArea())) << wide;
    }
}

} // namespace
} // namespace plumule::ui
