#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/cost/price_part.h"
#include "ui/medium/medium_part.h"
#include "ui/room/room_part.h"
#include "ui/setup/scanner_card.h"
#include "ui/variety/seed_part.h"
#include "ui/variety/variety_part.h"

#include <QClipboard>

namespace plumule::ui {
namespace {

// Names as people, scanners and clip boards bring them, in every part of the set-up.
class TypedNamesTest : public SetupTest
{
protected:
    void paste(QWidget& part, const char* field, const QString& text)
    {
        auto* found = find<QLineEdit>(part, field);
        found->setFocus();
        found->selectAll();
        QGuiApplication::clipboard()->setText(text);
        press(Qt::Key_V, Qt::ControlModifier);
    }
    // Types each hostile name and saves by Enter; `kept` is what the journal then holds.
    void keepsAll(QWidget& part, const char* field, const std::function<std::string()>& kept)
    {
        for (const HostileText& each : hostileTexts()) {
            messages.clear();
            putInto(part, field, each.text);
            const int before = actsIn(*journal);
            press(Qt::Key_Return);
            settleDown();
            if (messages.isRefusal()) {
                EXPECT_FALSE(messages.text().isEmpty()) << each.what;
                EXPECT_EQ(actsIn(*journal), before) << each.what;
                continue;
            }
            EXPECT_EQ(actsIn(*journal), before + 1) << each.what;
            EXPECT_EQ(QString::fromStdString(kept()), each.text) << each.what;
            EXPECT_EQ(textOf(part, field), each.text) << each.what;
            EXPECT_EQ(textsWithMarks(part).join('\n').toStdString(), "") << each.what;
        }
    }
    void keepsOneLine(QWidget& part, const char* field, const std::function<std::string()>& kept)
    {
        messages.clear();
        paste(part, field, "Cellar\nleft");
        press(Qt::Key_Return);
        settleDown();
        ASSERT_FALSE(messages.isRefusal()) << messages.text().toStdString();
        EXPECT_EQ(kept(), "Cellar left");
    }
    // Ten thousand letters are refused in words, or kept whole without widening the part.
    void bearsManyLetters(QWidget& part, const char* field,
                          const std::function<std::string()>& kept)
    {
        messages.clear();
        find<QLineEdit>(part, field)->setText(tenThousandLetters().trimmed());
        find<QLineEdit>(part, field)->setFocus();
        press(Qt::Key_Return);
        settleDown();
        if (!messages.isRefusal()) {
            EXPECT_EQ(QString::fromStdString(kept()), tenThousandLetters().trimmed());
        }
        EXPECT_FALSE(messages.text().isEmpty());
        EXPECT_LE(part.minimumSizeHint().width(), 1100);
    }
};

TEST_F(TypedNamesTest, OfTheRoom)
{
    const auto part = openPart<RoomPart>();
    const auto kept = [this] { return journal->room().layout()->room.name; };
    keepsAll(*part, "roomName", kept);
    keepsOneLine(*part, "roomName", kept);
    bearsManyLetters(*part, "roomName", kept);
}

TEST_F(TypedNamesTest, OfARack)
{
    const auto part = openPart<RoomPart>();
    const RackId rack = journal->room().layout()->racks.front().id;
    for (const HostileText& each : hostileTexts()) {
        ask.lineAnswer = each.text;
        for (auto* made : part->findChildren<QPushButton*>()) {
            if (made->isVisible() && made->text().startsWith("Rename")) {
                click(made);
                break;
            }
        }
        settleDown();
        EXPECT_EQ(textsWithMarks(*part).join('\n').toStdString(), "") << each.what;
        if (!messages.isRefusal()) {
            EXPECT_EQ(QString::fromStdString(journal->room().layout()->racks.front().name),
                      each.text)
                << each.what;
        }
        messages.clear();
    }
    EXPECT_EQ(journal->room().layout()->racks.front().id, rack);
    EXPECT_LE(part->minimumSizeHint().width(), 1100);
}

TEST_F(TypedNamesTest, OfAMedium)
{
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Hemp mat");
    const MediumId id = mediumNamed("Hemp mat")->id;
    const auto kept = [this, id] {
        const auto media = journal->media().all(Listed::All);
        for (const Medium& each : *media) {
            if (each.id == id) {
                return each.name;
            }
        }
        return std::string();
    };
    keepsAll(*part, "mediumName", kept);
    keepsOneLine(*part, "mediumName", kept);
    bearsManyLetters(*part, "mediumName", kept);
}

TEST_F(TypedNamesTest, OfAVariety)
{
    const auto part = openPart<VarietyPart>();
    chooseRecord(*part, "Kale");
    const VarietyId id = varietyNamed("Kale");
    const auto kept = [this, id] { return journal->varieties().protocol(id)->variety.name; };
    keepsAll(*part, "varietyName", kept);
    keepsOneLine(*part, "varietyName", kept);
    bearsManyLetters(*part, "varietyName", kept);
}

TEST_F(TypedNamesTest, OfASeedLot)
{
    const auto part = openPart<SeedPart>();
    press(*part, "newRecord");
    write(*part, "lotNumber", "L1");
    press(*part, "saveRecord");
    ASSERT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    const auto kept = [this] {
        const auto varieties = journal->varieties().all();
        for (const Variety& each : *varieties) {
            const auto lots = journal->varieties().lots(each.id);
            if (lots && !lots->empty()) {
                return lots->front().lot.lotNumber;
            }
        }
        return std::string();
    };
    ASSERT_EQ(kept(), "L1");
    keepsAll(*part, "lotNumber", kept);
    keepsOneLine(*part, "lotNumber", kept);
}

// What every form of the set-up does with what is typed and not saved.
class LeftFormsTest : public SetupTest
{
protected:
    template <class Part>
    void asksBeforeAnotherRecord(const char* field, const QString& typed)
    {
        const auto part = openPart<Part>();
        ASSERT_GE(recordsOf(*part).size(), 2);
        write(*part, field, typed);
        EXPECT_TRUE(part->hasUnsaved());
        const int before = actsIn(*journal);
        ask.questions.clear();
        ask.whenUnsaved = ScriptedAsk::Unsaved::Stay;
        press(*part, "newRecord");
        EXPECT_EQ(ask.questions.size(), 1) << part->name().toStdString();
        EXPECT_EQ(textOf(*part, field), typed) << "the grower stays";
        ask.whenUnsaved = ScriptedAsk::Unsaved::Leave;
        press(*part, "newRecord");
        EXPECT_EQ(textOf(*part, field), "");
        EXPECT_EQ(actsIn(*journal), before) << "nothing was saved";
        EXPECT_FALSE(part->hasUnsaved());
    }
};

TEST_F(LeftFormsTest, OfAMedium)
{
    asksBeforeAnotherRecord<MediumPart>("mediumName", "Half typed");
}

TEST_F(LeftFormsTest, OfAVariety)
{
    asksBeforeAnotherRecord<VarietyPart>("varietyName", "Half typed");
}

TEST_F(LeftFormsTest, SavingFirstSavesAndGoesOn)
{
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Hemp mat");
    write(*part, "mediumName", "Hemp mat, thick");
    ask.whenUnsaved = ScriptedAsk::Unsaved::Save;
    press(*part, "newRecord");
    EXPECT_TRUE(mediumNamed("Hemp mat, thick"));
    EXPECT_EQ(textOf(*part, "mediumName"), "");
}

TEST_F(LeftFormsTest, WhereSavingIsRefusedTheGrowerStays)
{
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Hemp mat");
    write(*part, "mediumName", "   ");
    ask.whenUnsaved = ScriptedAsk::Unsaved::Save;
    press(*part, "newRecord");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_EQ(textOf(*part, "mediumName"), "   ");
    EXPECT_TRUE(mediumNamed("Hemp mat"));
}

TEST_F(LeftFormsTest, EveryControlOfEveryFormIsNamedAndReachedByTab)
{
    const auto look = [](QWidget& part, const char* which) {
        EXPECT_EQ(unnamedControls(part).join('\n').toStdString(), "") << which;
        EXPECT_EQ(unreachedByTab(part).join('\n').toStdString(), "") << which;
        EXPECT_EQ(poorDropDowns(part).join('\n').toStdString(), "") << which;
    };
    look(*openPart<RoomPart>(), "room");
    look(*openPart<MediumPart>(), "media");
    look(*openPart<VarietyPart>(), "varieties");
    look(*openPart<SeedPart>(), "seed");
    look(*openPart<PricePart>(), "prices");
}

// What a scanner sends round a code.
class ScannerCardTest : public SetupTest
{
protected:
    std::unique_ptr<ScannerCard> card;

    void openCard()
    {
        messages.setWindowFlags(Qt::ToolTip);
        card = std::make_unique<ScannerCard>(preferences, messages);
        show(*card, {700, 260});
        card->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(card.get()));
    }
};

TEST_F(ScannerCardTest, KeepsItsSignsByEnterOrTheButtonAndShowsThemAgain)
{
    openCard();
    write(*card, "scanBefore", "*");
    press(Qt::Key_Return);
    EXPECT_EQ(preferences.get(Preference::ScanBefore).toString(), "*");
    EXPECT_TRUE(messages.text().contains("kept on this computer"));
    write(*card, "scanAfter", "#");
    EXPECT_EQ(preferences.get(Preference::ScanAfter).toString(), "");
    click(find<QPushButton>(*card, "applyScanner"));
    EXPECT_EQ(preferences.get(Preference::ScanAfter).toString(), "#");
    openCard();
    EXPECT_EQ(textOf(*card, "scanBefore"), "*");
    EXPECT_EQ(textOf(*card, "scanAfter"), "#");
}

TEST_F(ScannerCardTest, SignsAreShortAndTakenAsTheyAre)
{
    openCard();
    auto* before = find<QLineEdit>(*card, "scanBefore");
    before->setFocus();
    QTest::keyClicks(before, QString(200, 'x'));
    EXPECT_EQ(before->text().size(), 20) << "no scanner sends more";
    write(*card, "scanBefore", " <b>");
    press(Qt::Key_Return);
    EXPECT_EQ(preferences.get(Preference::ScanBefore).toString(), " <b>");
    EXPECT_EQ(textsWithMarks(*card).join('\n').toStdString(), "");
}

TEST_F(ScannerCardTest, EveryFieldIsNamedAndReachedByTab)
{
    openCard();
    find<QLineEdit>(*card, "scanBefore")->setFocus();
    EXPECT_EQ(unnamedControls(*card).join('\n').toStdString(), "");
    EXPECT_EQ(unreachedByTab(*card).join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
