#include "core/journal/variety/variety_entries.h"
#include "core/journal/week/week_entries.h"
#include "core/week/repeat_rules.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/week/repeat_dialog.h"
#include "ui/week/repeats_dialog.h"

namespace plumule::ui {
namespace {

class WeekDialogsTest : public GrowingTest
{
protected:
    Repeat stored()
    {
        Repeat repeat;
        repeat.variety = varietyNamed("Broccoli");
        repeat.medium = inertMedium().id;
        repeat.trays = 4;
        repeat.weekdays = weekdayBit(1);
        repeat.from = clock.today();
        return journal->week().save(repeat).value();
    }
};

TEST_F(WeekDialogsTest, CanBeReadAndUsedAtEveryLook)
{
    const Repeat repeat = stored();
    EXPECT_EQ(faultsOfDialog([&] { return new RepeatDialog(*journal, services(), repeat); }),
              QStringList());
    EXPECT_EQ(faultsOfDialog([&] { return new RepeatsDialog(*journal, services()); }),
              QStringList());
}

TEST_F(WeekDialogsTest, KeepsWhatItWasGiven)
{
    const Repeat repeat = stored();
    RepeatDialog dialog(*journal, services(), repeat);
    show(dialog, {640, 700});
    click(find<QPushButton>(dialog, "repeatSave"));
    EXPECT_FALSE(dialog.isVisible());
    EXPECT_EQ(journal->week().repeats().value().front().repeat, repeat);
}

TEST_F(WeekDialogsTest, SaysWhatIsWrongWithADay)
{
    RepeatDialog dialog(*journal, services(), stored());
    show(dialog, {640, 700});
    write(dialog, "repeatUntil", "when it suits");
    click(find<QPushButton>(dialog, "repeatSave"));
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_FALSE(find<QLabel>(dialog, "refusal")->text().isEmpty());
}

} // namespace
} // namespace plumule::ui
