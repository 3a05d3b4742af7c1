#include "tests/ui/harvest/weigh_fixture.h"
#include "tests/ui/support/look_check.h"
#include "ui/harvest/due_list.h"
#include "ui/harvest/range_strip.h"
#include "ui/text/text.h"

#include <QSignalSpy>

namespace plumule::ui {
namespace {

class DueListTest : public WeighTest
{
protected:
    DueList list;
    QSignalSpy taken{&list, &DueList::taken};

    [[nodiscard]] std::vector<DueRow> rows(int count)
    {
        std::vector<DueRow> made;
        for (int i = 1; i <= count; ++i) {
            DueRow row;
            row.code = QString("BR%1").arg(i, 3, 10, QChar('0')).toStdString();
            row.medium = inertMedium();
            made.push_back(row);
        }
        return made;
    }
    void showRows(const std::vector<DueRow>& rows, const QString& present = {})
    {
        list.show(rows, present, "All trays due today are weighed.");
        show(list, {420, 640});
        settleDown();
    }
    [[nodiscard]] QStringList shown()
    {
        QStringList texts;
        for (const QLabel* each : list.findChildren<QLabel*>()) {
            if (each->isVisible()) {
                texts << each->text();
            }
        }
        return texts;
    }
    [[nodiscard]] QPushButton* buttonOf(const QString& code)
    {
        for (auto* each : list.findChildren<QPushButton*>()) {
            if (each->isVisible() && each->text() == code) {
                return each;
            }
        }
        return nullptr;
    }
};

TEST_F(DueListTest, APressOnACodeTakesIt)
{
    showRows(rows(3), "BR001");
    ASSERT_NE(buttonOf("BR002"), nullptr);
    EXPECT_EQ(buttonOf("BR002")->accessibleName(), "Weigh BR002");
    click(buttonOf("BR002"));
    ASSERT_EQ(taken.count(), 1);
    EXPECT_EQ(taken[0][0].toString(), "BR002");
    EXPECT_EQ(shown().filter("on the scale").size(), 1);
}

// 1024 pixels less the list of pages and the margins of page and card leave so much.
TEST_F(DueListTest, TheTrayOnTheScaleFitsAPortableScreenInTheLargestType)
{
    constexpr int kRoom = 600;
    auto one = rows(1);
    one.front().medium.name = "Wood-fibre mat, felted";
    applyTheme(*qApp, Ground::Light, 2.0);
    {
        DueList large;
        large.show(one, "BR001", QString());
        EXPECT_LE(large.minimumSizeHint().width(), kRoom);
    }
    applyTheme(*qApp, Ground::Light);
}

TEST_F(DueListTest, ManyAreCountedAndNoneIsSaid)
{
    showRows(rows(14));
    EXPECT_NE(buttonOf("BR010"), nullptr);
    EXPECT_EQ(buttonOf("BR011"), nullptr);
    EXPECT_TRUE(shown().contains("and 4 more"));
    showRows({});
    EXPECT_TRUE(shown().contains("All trays due today are weighed."));
    EXPECT_EQ(buttonOf("BR001"), nullptr);
}

TEST_F(DueListTest, NamesWithMarksAreReadAsTheyAre)
{
    auto marked = rows(1);
    marked[0].code = "<b>X</b>";
    marked[0].medium.name = "Mesh & <i>mix</i>";
    showRows(marked);
    EXPECT_TRUE(shown().contains("Mesh & <i>mix</i>"));
    EXPECT_EQ(textsWithMarks(list).join('\n').toStdString(), "");
}

// What the strip draws is told in words too.
class RangeStripTest : public WeighTest
{
protected:
    RangeStrip strip;

    [[nodiscard]] ExpectedRange rangeOf(std::initializer_list<double> weights)
    {
        ExpectedRange range;
        range.from = RangeSource::VarietyOnMedium;
        int number = 0;
        for (const double each : weights) {
            PastWeight past;
            past.code = QString("BR%1").arg(++number, 3, 10, QChar('0')).toStdString();
            past.net = grams(each);
            past.on = date(2026, 3, 1);
            range.past.push_back(past);
        }
        range.low = grams(280);
        range.high = grams(330);
        return range;
    }
    [[nodiscard]] QImage drawn() { return strip.grab().toImage(); }
};

TEST_F(RangeStripTest, DrawsTheWeightOnTheScaleAcrossTheRange)
{
    strip.show(rangeOf({300, 305, 310}), MassUnit::Gram);
    show(strip, {360, 140});
    const QImage empty = drawn();
    strip.setOnScale(grams(302));
    const QImage within = drawn();
    EXPECT_NE(empty, within);
    strip.setOnScale(grams(315));
    EXPECT_NE(drawn(), within);
    strip.setOnScale(std::nullopt);
    EXPECT_EQ(drawn(), empty);
}

TEST_F(RangeStripTest, SaysItselfToThoseWhoCantSeeItInTheUnitOfTheScale)
{
    strip.show(rangeOf({300, 305, 310}), MassUnit::Gram);
    EXPECT_TRUE(strip.accessibleDescription().contains("3 weights before"))
        << strip.accessibleDescription().toStdString();
    EXPECT_TRUE(strip.accessibleDescription().startsWith("expected "));
    EXPECT_FALSE(strip.accessibleDescription().contains("on the scale"));
    strip.setOnScale(grams(302));
    EXPECT_TRUE(strip.accessibleDescription().contains("on the scale 302.0 g"));
    strip.show(rangeOf({300}), MassUnit::Ounce);
    EXPECT_TRUE(strip.accessibleDescription().contains("1 weight before"));
    EXPECT_TRUE(strip.accessibleDescription().contains("10.65 oz")) << "302 / 28.349523125";
}

TEST_F(RangeStripTest, WithoutARangeItSaysNoneAndDrawsOn)
{
    strip.show({}, MassUnit::Gram);
    show(strip, {360, 140});
    EXPECT_FALSE(strip.accessibleDescription().contains("expected"));
    strip.setOnScale(grams(5000));
    EXPECT_TRUE(strip.accessibleDescription().contains("5000.0 g"));
    EXPECT_FALSE(drawn().isNull());
}

} // namespace
} // namespace plumule::ui
