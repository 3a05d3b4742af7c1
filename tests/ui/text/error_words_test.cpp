#include "ui/text/error_words.h"

#include "core/storage/folder_kind.h"
#include "tests/support/enumerators.h"
#include "tests/ui/text/sentence_check.h"
#include "ui/text/text.h"

#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>
#include <QSet>
#include <gtest/gtest.h>

#include <cstdio>

namespace plumule::ui {
namespace {

// Whether the part after the first colon begins with something to do.
bool saysWhatToDo(const QString& sentence)
{
    static const QRegularExpression kAct(": "
                                         "(add|ask|bring|check|choose|change|close|complete|copy|"
                                         "correct|draw|end|enter|fill|give|go|"
                                         "harvest|keep|leave|let|look|make|mark|measure|move|open|"
                                         "plan|put|read|remove|rename|sanitise|"
                                         "save|say|"
                                         "sow|start|take|tell|tick|type|update|weigh|write)\\b");
    return sentence.contains(kAct);
}

template <class Family>
class EveryReason : public testing::Test
{};

TYPED_TEST_SUITE(EveryReason, EveryReasonFamily<testing::Types>);

TYPED_TEST(EveryReason, HasASentenceThatSaysWhatIsWrongAndWhatToDo)
{
    QSet<QString> sentences;
    const auto reasons = enumeratorsOf<TypeParam>();
    ASSERT_FALSE(reasons.empty());
    for (const auto& [reason, name] : reasons) {
        // Where a reason has a number, a day or a stage, a name stands for it.
        const Error error =
            fail(ErrorKind::Invalid, reason, "Alder", "4", "RD031", "RD032").value();
        const QString text = sentence(error);
        std::printf("%-36s %s\n", name.c_str(), qPrintable(text));
        EXPECT_EQ(blemish(text), "") << name << ": " << text.toStdString();
        EXPECT_TRUE(saysWhatToDo(text)) << name << ": " << text.toStdString();
        EXPECT_FALSE(sentences.contains(text)) << name << " speaks as another reason does";
        sentences.insert(text);
    }
}

TEST(ErrorWords, CallAFullDiskFull)
{
    const Error errors[] = {
        fail(ErrorKind::DiskFull, FileReason::NotWritten, "a.csv").value(),
        fail(ErrorKind::DiskFull, StorageReason::NotMade, "A.plumule").value(),
        fail(ErrorKind::DiskFull, StorageReason::Failed, "COMMIT", "disk I/O error").value(),
        fail(ErrorKind::DiskFull, TrayReason::PhotoFolder, "a photos").value(),
        fail(ErrorKind::DiskFull, TrayReason::PhotoNotCopied, "A.jpg").value(),
    };
    for (const Error& error : errors) {
        const QString text = sentence(error);
        EXPECT_TRUE(text.startsWith("The disk is full")) << text.toStdString();
        EXPECT_EQ(blemish(text), "") << text.toStdString();
        EXPECT_TRUE(saysWhatToDo(text)) << text.toStdString();
    }
}

TEST(ErrorWords, ExplainAFolderThatIsNotOfThisMachine)
{
    EXPECT_TRUE(explanationOf(FolderKind::Local).isEmpty());
    EXPECT_TRUE(explanationOf(FolderKind::Network).contains("another machine"));
    EXPECT_TRUE(explanationOf(FolderKind::Bridged).contains("synced"));
}

template <class... Families>
struct CountOf
{
    static constexpr int kCount = sizeof...(Families);
};

// A family that no one words would be said as nothing at all.
TEST(ReasonFamilies, AreAllWorded)
{
    int declared = 0;
    for (const char* tree : {"core", "ui"}) {
        QDirIterator files(QStringLiteral(PLUMULE_REFERENCES "/../../") + tree, {"*_reason.h"},
                           QDir::Files, QDirIterator::Subdirectories);
        while (files.hasNext()) {
            files.next();
            ++declared;
        }
    }
    EXPECT_EQ(EveryReasonFamily<CountOf>::kCount, declared);
}

TEST(ErrorSentence, NamesWhatStandsInTheWay)
{
    EXPECT_EQ(sentence(fail(ErrorKind::Conflict, TrayReason::PlaceTaken, "B2", 4, "RD031").value()),
              "B2, place 4 is taken by RD031: choose another place, or move that tray first.");
    EXPECT_EQ(sentence(fail(ErrorKind::Conflict, TrialReason::BlockPlaces, 3, 4).value()),
              "Too few shelves have room for a whole block of 4 trays: choose 3 blocks, add a "
              "shelf, or sow on another day.");
}

TEST(ErrorSentence, WordsDaysAndStagesAndLeavesWhatAGrowerWroteAsItStands)
{
    EXPECT_TRUE(sentence(fail(ErrorKind::Duplicate, CostReason::DayTaken, "2026-03-02").value())
                    .contains("2 Mar 2026"));
    EXPECT_TRUE(sentence(fail(ErrorKind::Conflict, TrayReason::PlaceTakenThen, "A2", 1, "RD076",
                              "2026-11-28 08:42")
                             .value())
                    .contains("28 Nov 2026 08:42"));
    EXPECT_TRUE(
        sentence(fail(ErrorKind::Conflict, TrayReason::StageNotBegun, "under_weight").value())
            .contains("under weight"));
    EXPECT_TRUE(sentence(fail(ErrorKind::Duplicate, TrayReason::CodeTaken, "RD%1 50%").value())
                    .contains("RD%1 50%"));
}

} // namespace
} // namespace plumule::ui
