#include "core/journal/variety/variety_entries.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/variety/protocol_editor.h"
#include "ui/variety/variety_part.h"

#include <QCheckBox>
#include <QLineEdit>

namespace plumule::ui {
namespace {

class VarietyPartTest : public SetupTest
{
protected:
    std::optional<Protocol> protocolNamed(const std::string& name)
    {
        const auto varieties = journal->varieties().all(Listed::All);
        for (const Variety& each : *varieties) {
            if (each.name == name) {
                return journal->varieties().protocol(each.id).value();
            }
        }
        return std::nullopt;
    }
    static void useStage(QWidget& part, const char* check, bool isUsed)
    {
        auto* found = find<QCheckBox>(part, check);
        ASSERT_NE(found, nullptr);
        found->setChecked(isUsed);
    }
    static void setLength(QWidget& part, const char* field, double value)
    {
        auto* found = find<QLineEdit>(part, field);
        ASSERT_NE(found, nullptr);
        found->setText(QString::number(value));
    }
};

TEST_F(VarietyPartTest, BringsANewVarietyWithItsProtocolIntoTheJournal)
{
    const auto part = openPart<VarietyPart>();
    press(*part, "newRecord");
    write(*part, "varietyName", "Mizuna, red");
    write(*part, "varietyPrefix", "mz");
    write(*part, "varietySeed", "12,5");
    useStage(*part, "soakUsed", true);
    setLength(*part, "soakLength", 4);
    useStage(*part, "under_weightUsed", true);
    setLength(*part, "under_weightLength", 2);
    useStage(*part, "lightUsed", true);
    setLength(*part, "lightLength", 7.5);
    write(*part, "lightCue", "First true leaf shows?");
    press(*part, "saveRecord");
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    const auto saved = protocolNamed("Mizuna, red");
    ASSERT_TRUE(saved);
    EXPECT_EQ(saved->variety.codePrefix, "MZ");
    EXPECT_EQ(saved->variety.seedPerTray, grams(12.5));
    ASSERT_EQ(saved->stages.size(), 3U);
    EXPECT_EQ(saved->stages[0].stage, Stage::Soak);
    EXPECT_EQ(saved->stages[0].lengthMinutes, 4 * 60);
    EXPECT_EQ(saved->stages[1].stage, Stage::UnderWeight);
    EXPECT_EQ(saved->stages[1].lengthMinutes, 2 * kMinutesPerDay);
    EXPECT_EQ(saved->stages[2].stage, Stage::Light);
    EXPECT_EQ(saved->stages[2].lengthMinutes, 7 * kMinutesPerDay + 12 * 60);
    EXPECT_EQ(saved->stages[2].cue, "First true leaf shows?");
    EXPECT_TRUE(recordsOf(*part).contains("Mizuna, red"));
    pressMessageAction();
    EXPECT_FALSE(protocolNamed("Mizuna, red").has_value());
}

TEST_F(VarietyPartTest, KeepsWhatIsBeingTypedWhenSomethingElseChanges)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    write(*part, "varietySeed", "27");
    write(*part, "lightCue", "half a sen");
    Protocol other = *protocolNamed("Kale");
    other.variety.note = "changed elsewhere";
    ASSERT_TRUE(journal->varieties().save(other));
    settleDown();
    EXPECT_EQ(textOf(*part, "varietyName"), "Broccoli");
    EXPECT_EQ(textOf(*part, "varietySeed"), "27");
    EXPECT_EQ(textOf(*part, "lightCue"), "half a sen");
    press(*part, "saveRecord");
    EXPECT_EQ(protocolNamed("Broccoli")->variety.seedPerTray, grams(27));
    EXPECT_EQ(protocolNamed("Kale")->variety.note, "changed elsewhere");
}

TEST_F(VarietyPartTest, ALengthThatWasNotTouchedStaysToTheMinute)
{
    Protocol odd = *protocolNamed("Broccoli");
    odd.stages.front().lengthMinutes = 1000;
    ASSERT_TRUE(journal->varieties().save(odd));
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    write(*part, "varietySeed", "27");
    press(*part, "saveRecord");
    EXPECT_EQ(protocolNamed("Broccoli")->stages.front().lengthMinutes, 1000);
}

TEST_F(VarietyPartTest, ALengthIsSavedAsItIsTyped)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    write(*part, "lightLength", "7.3125");
    press(*part, "saveRecord");
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_EQ(protocolNamed("Broccoli")->stages.back().lengthMinutes, 10530);
    write(*part, "lightLength", "a week");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.text().contains("“a week” is no length of a stage"));
    EXPECT_EQ(protocolNamed("Broccoli")->stages.back().lengthMinutes, 10530);
}

TEST_F(VarietyPartTest, KeepsANewOneBeingTypedWhenSomethingElseChanges)
{
    const auto part = openPart<VarietyPart>();
    press(*part, "newRecord");
    write(*part, "varietyName", "Miz");
    Protocol other = *protocolNamed("Kale");
    other.variety.note = "changed elsewhere";
    ASSERT_TRUE(journal->varieties().save(other));
    settleDown();
    EXPECT_EQ(textOf(*part, "varietyName"), "Miz");
    EXPECT_LT(find<QListWidget>(*part, "records")->currentRow(), 0);
}

TEST_F(VarietyPartTest, ShowsTheChosenRecordAnewWhenItWasChangedElsewhere)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    Protocol changed = *protocolNamed("Broccoli");
    changed.variety.seedPerTray = grams(31);
    ASSERT_TRUE(journal->varieties().save(changed));
    settleDown();
    EXPECT_EQ(textOf(*part, "varietySeed"), "31");
}

TEST_F(VarietyPartTest, SavingWithoutAChangeLeavesEveryProtocolAsItWas)
{
    const auto part = openPart<VarietyPart>();
    for (const char* name : {"Broccoli", "Arugula", "Beet", "Lentil"}) {
        const auto before = protocolNamed(name);
        chooseRecord(*part, name);
        press(*part, "saveRecord");
        EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
        EXPECT_EQ(protocolNamed(name)->variety, before->variety) << name;
        ASSERT_EQ(protocolNamed(name)->stages.size(), before->stages.size()) << name;
        for (std::size_t i = 0; i < before->stages.size(); ++i) {
            const ProtocolStage& was = before->stages[i];
            const ProtocolStage now = protocolNamed(name)->stages[i];
            EXPECT_EQ(now, was) << name << ", " << toText(was.stage) << ": amounts "
                                << now.amount.value_or(Volume()).count() << " and "
                                << was.amount.value_or(Volume()).count() << ", lengths "
                                << now.lengthMinutes << " and " << was.lengthMinutes << ", id "
                                << now.id.value << " and " << was.id.value << ", waterings "
                                << now.wateringsPerDay << " and " << was.wateringsPerDay;
        }
    }
}

TEST_F(VarietyPartTest, RefusesWhatIsNoAmountAndMarksTheField)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    const auto before = protocolNamed("Broccoli");
    write(*part, "varietySeed", "1.2.3");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(find<QLineEdit>(*part, "varietySeed")->property("wrong").toBool());
    write(*part, "varietySeed", "25");
    write(*part, "lightAmount", "a cup");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(find<QLineEdit>(*part, "lightAmount")->property("wrong").toBool());
    EXPECT_EQ(protocolNamed("Broccoli"), before);
}

TEST_F(VarietyPartTest, RefusesAVarietyWithoutANameOrLetters)
{
    const auto part = openPart<VarietyPart>();
    const auto before = recordsOf(*part);
    press(*part, "newRecord");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    write(*part, "varietyName", "Mizuna");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(recordsOf(*part), before);
    EXPECT_EQ(textOf(*part, "varietyName"), "Mizuna");
}

TEST_F(VarietyPartTest, ShowsTheFieldsOfTheStagesThatAreUsedOnly)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    EXPECT_TRUE(find<QLineEdit>(*part, "lightLength")->isVisibleTo(part.get()));
    EXPECT_FALSE(find<QLineEdit>(*part, "soakLength")->isVisibleTo(part.get()));
    useStage(*part, "soakUsed", true);
    EXPECT_TRUE(find<QLineEdit>(*part, "soakLength")->isVisibleTo(part.get()));
}

TEST_F(VarietyPartTest, KeepsAVarietyThatTraysHangOn)
{
    sow(broccoli(1, kTwoDaysAgo));
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    press(*part, "removeRecord");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(recordsOf(*part).contains("Broccoli"));
    chooseRecord(*part, "Kale");
    press(*part, "removeRecord");
    EXPECT_FALSE(messages.isRefusal());
    EXPECT_FALSE(recordsOf(*part).contains("Kale"));
    EXPECT_EQ(textOf(*part, "varietyName"), "");
}

TEST_F(VarietyPartTest, KeepsTheSeedWhenTheRoomsUnitsChange)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    const auto before = protocolNamed("Broccoli")->variety.seedPerTray;
    useUsUnits();
    press(*part, "saveRecord");
    const auto after = protocolNamed("Broccoli")->variety.seedPerTray;
    ASSERT_TRUE(before && after);
    EXPECT_NEAR(inGrams(*after), inGrams(*before), 0.05);
}

TEST_F(VarietyPartTest, OffersNoUndoOfSomethingElseWhenNothingChanged)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    write(*part, "varietySeed", "26");
    press(*part, "saveRecord");
    press(*part, "saveRecord");
    auto* action = messages.findChild<QPushButton*>("messageAction");
    if (action->isVisible()) {
        pressMessageAction();
    }
    EXPECT_EQ(protocolNamed("Broccoli")->variety.seedPerTray, grams(26))
        << "the undo of a save that changed nothing took back an earlier act";
}

TEST_F(VarietyPartTest, AsksBeforeWhatIsTypedMakesWayForAnotherRecord)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    settleDown();
    EXPECT_FALSE(part->hasUnsaved());
    write(*part, "varietyName", "Broccoli, early");
    EXPECT_TRUE(part->hasUnsaved());
    ask.whenUnsaved = ScriptedAsk::Unsaved::Stay;
    chooseRecord(*part, "Radish");
    settleDown();
    ASSERT_EQ(ask.questions.size(), 1);
    EXPECT_EQ(textOf(*part, "varietyName"), "Broccoli, early");
    EXPECT_EQ(find<QListWidget>(*part, "records")->currentItem()->text(), "Broccoli");

    ask.whenUnsaved = ScriptedAsk::Unsaved::Leave;
    chooseRecord(*part, "Radish");
    settleDown();
    EXPECT_EQ(textOf(*part, "varietyName"), "Radish");
    EXPECT_FALSE(protocolNamed("Broccoli, early"));

    write(*part, "varietyName", "Radish, red");
    ask.whenUnsaved = ScriptedAsk::Unsaved::Save;
    press(*part, "newRecord");
    EXPECT_TRUE(protocolNamed("Radish, red"));
    EXPECT_EQ(textOf(*part, "varietyName"), "");
    EXPECT_FALSE(part->hasUnsaved());
}

TEST_F(VarietyPartTest, EnterSavesFromAFieldOfTheProtocolToo)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Broccoli");
    settleDown();
    write(*part, "lightCue", "first true leaves");
    press(Qt::Key_Return);
    settleDown();
    EXPECT_EQ(protocolNamed("Broccoli")->stages.back().cue, "first true leaves");
    EXPECT_FALSE(part->hasUnsaved());
    EXPECT_EQ(nameOfFocus(), "lightCue");
}

} // namespace
} // namespace plumule::ui
