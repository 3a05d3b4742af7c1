#include "tests/ui/support/ui_fixture.h"
#include "ui/widget/date_field.h"
#include "ui/widget/theme.h"

#include <QComboBox>
#include <QListWidget>
#include <QToolButton>

namespace plumule::ui {
namespace {

using HouseStyleTest = UiTest;

// How wide the icons of markers and the calendar are drawn at that size of type.
std::vector<int> iconsAt(double type)
{
    applyTheme(*qApp, Ground::Light, type);
    QComboBox box;
    QListWidget list;
    DateField day("day");
    box.ensurePolished();
    list.ensurePolished();
    day.ensurePolished();
    const auto* calendar = day.findChild<QToolButton*>();
    EXPECT_NE(calendar, nullptr);
    std::vector<int> wide = {box.iconSize().width(),
                             list.style()->pixelMetric(QStyle::PM_ListViewIconSize, nullptr, &list),
                             calendar == nullptr ? 0 : calendar->width()};
    applyTheme(*qApp, Ground::Light);
    return wide;
}

TEST_F(HouseStyleTest, IconsGrowWithTheType)
{
    const auto usual = iconsAt(1);
    const auto large = iconsAt(2);
    for (std::size_t i = 0; i < usual.size(); ++i) {
        EXPECT_GE(usual[i], 16) << i;
        EXPECT_GE(large[i], 2 * usual[i] - 8) << i; // the calendar's has a rim that doesn't grow
    }
}

} // namespace
} // namespace plumule::ui
