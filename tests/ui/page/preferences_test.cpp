#include "ui/page/preferences.h"

#include <QSettings>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

constexpr Preference kEvery[] = {Preference::LastJournal, Preference::Look, Preference::FontScale,
                                 Preference::ScaleUnit, Preference::LastTare};

void expectDefaults(const Preferences& preferences)
{
    EXPECT_EQ(preferences.get(Preference::LastJournal).toString(), "");
    EXPECT_EQ(preferences.get(Preference::Look).toString(), "light");
    EXPECT_EQ(preferences.get(Preference::FontScale).toDouble(), 1.0);
    EXPECT_EQ(preferences.get(Preference::ScaleUnit).toString(), "");
    EXPECT_EQ(preferences.get(Preference::LastTare).toInt(), 0);
}

// Puts the user's settings into a folder of the test's own.
class StoredPreferencesTest : public ::testing::Test
{
protected:
    QTemporaryDir folder;
    void SetUp() override
    {
        ASSERT_TRUE(folder.isValid());
        QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, folder.path());
    }
};

TEST(PassingPreferences, BeginWithTheDefaults)
{
    expectDefaults(PassingPreferences());
}

TEST(PassingPreferences, KeepEachValueApart)
{
    PassingPreferences preferences;
    int number = 10;
    for (const Preference which : kEvery) {
        preferences.set(which, number++);
    }
    number = 10;
    for (const Preference which : kEvery) {
        EXPECT_EQ(preferences.get(which).toInt(), number++);
    }
    expectDefaults(PassingPreferences());
}

TEST_F(StoredPreferencesTest, BeginWithTheDefaults)
{
    expectDefaults(StoredPreferences());
}

TEST_F(StoredPreferencesTest, AreThereAtTheNextStart)
{
    {
        StoredPreferences preferences;
        preferences.set(Preference::LastJournal, "room of mine.plumule");
        preferences.set(Preference::FontScale, 1.5);
        preferences.set(Preference::LastTare, 38'500);
    }
    const StoredPreferences again;
    EXPECT_TRUE(again.folder().startsWith(folder.path()));
    EXPECT_EQ(again.get(Preference::LastJournal).toString(), "room of mine.plumule");
    EXPECT_EQ(again.get(Preference::FontScale).toDouble(), 1.5);
    EXPECT_EQ(again.get(Preference::LastTare).toInt(), 38'500);
    EXPECT_EQ(again.get(Preference::Look).toString(), "light");
}

} // namespace
} // namespace plumule::ui
