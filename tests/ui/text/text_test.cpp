#include "ui/text/text.h"

#include <QDirIterator>
#include <QRegularExpression>
#include <QSet>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

// The rooms of core whose refusals and intentions reach a grower.
const char* const kSpeakingRooms[] = {"journal", "room",     "variety",  "medium",
                                      "trial",   "tray",     "watering", "harvest",
                                      "cost",    "exchange", "review",   "tasting"};

QString sourceOf(const QString& room)
{
    const QString folder = QStringLiteral(PLUMULE_REFERENCES "/../../core/") + room;
    QString all;
    QDirIterator files(folder, {"*.cpp", "*.h"}, QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        QFile file(files.next());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << file.fileName().toStdString();
        all += QString::fromUtf8(file.readAll());
    }
    return all;
}

QStringList allMatches(const QString& text, const QString& pattern)
{
    QStringList found;
    const QRegularExpression expression(pattern, QRegularExpression::DotMatchesEverythingOption);
    auto matches = expression.globalMatch(text);
    while (matches.hasNext()) {
        found << matches.next().captured(1);
    }
    return found;
}

// Every key that core/journal hands to record(): what stands between the bracket and the lambda.
QSet<QString> intentionKeys()
{
    QSet<QString> keys;
    for (const QString& call :
         allMatches(sourceOf("journal"), QStringLiteral(R"(m_ledger\.record\(([^\[]*)\[)"))) {
        const QStringList literals = allMatches(call, QStringLiteral("\"([^\"]*)\""));
        EXPECT_FALSE(literals.isEmpty()) << "no key in: " << call.toStdString();
        for (const QString& key : literals) {
            keys.insert(key);
        }
    }
    return keys;
}

// What is wrong with a sentence; empty when it is one.
std::string blemish(const QString& sentence)
{
    if (sentence.isEmpty() || !sentence.front().isUpper()) {
        return "it does not begin as a sentence";
    }
    if (!sentence.endsWith('.')) {
        return "it does not end as a sentence";
    }
    if (sentence.contains(QRegularExpression("%[0-9n]"))) {
        return "it holds a place that was not filled";
    }
    if (sentence.contains(QRegularExpression(R"([:,;.( ]\.|\s[.,;:)]|\s\s|\.\.)"))) {
        return "it holds stray marks or blanks";
    }
    return {};
}

void expectSentence(const Error& error)
{
    const QString text = sentence(error);
    EXPECT_EQ(blemish(text), "") << "kind " << int(error.kind) << " on '" << error.subject << "', '"
                                 << error.detail << "': " << text.toStdString();
}

constexpr int kKinds = int(ErrorKind::Cancelled) + 1;

TEST(ErrorSentence, IsWholeForEveryKindWithAndWithoutADetail)
{
    for (int kind = 0; kind < kKinds; ++kind) {
        for (const char* subject : {"tray.code", "journal", "season", "file"}) {
            expectSentence({static_cast<ErrorKind>(kind), subject, "RD029"});
            expectSentence({static_cast<ErrorKind>(kind), subject, ""});
        }
    }
}

TEST(ErrorSentence, TellsTheKindsApart)
{
    QSet<QString> sentences;
    for (int kind = 0; kind < kKinds; ++kind) {
        sentences.insert(sentence(Error{static_cast<ErrorKind>(kind), "tray.code", "RD029"}));
    }
    // NotAJournal, NotWritable, ReadOnly, FileGone and Unreadable speak of a file; of a tray's code
    // they are never said.
    EXPECT_GE(sentences.size(), kKinds - 5);
    QSet<QString> ofTheJournal;
    for (const ErrorKind kind :
         {ErrorKind::NotAJournal, ErrorKind::NewerVersion, ErrorKind::Damaged,
          ErrorKind::NotWritable, ErrorKind::AlreadyOpen, ErrorKind::ReadOnly, ErrorKind::NotFound,
          ErrorKind::Duplicate, ErrorKind::FileGone, ErrorKind::DiskFull, ErrorKind::Unreadable}) {
        ofTheJournal.insert(sentence(Error{kind, "journal", ""}));
    }
    EXPECT_EQ(ofTheJournal.size(), 11);
}

TEST(ErrorSentence, SaysWhatWasGivenAndWhere)
{
    const QString text = sentence(Error{ErrorKind::Invalid, "variety.seed_per_tray", "12..5"});
    EXPECT_TRUE(text.contains("the seed for a tray")) << text.toStdString();
    EXPECT_TRUE(text.contains("12..5")) << text.toStdString();
    EXPECT_EQ(sentence(Error{ErrorKind::Missing, "medium.name", ""}),
              "Please give the medium's name.");
    EXPECT_EQ(sentence(Error{ErrorKind::NothingThere, "undo", ""}), "There is nothing to undo.");
}

TEST(ErrorSentence, SpeaksOfNothingByItsKeyThatCoreCanName)
{
    QSet<QString> subjects;
    for (const char* room : kSpeakingRooms) {
        for (const QString& subject :
             allMatches(sourceOf(room),
                        QStringLiteral(
                            R"re(fail\(\s*ErrorKind::\w+,\s*"([a-z_]+\.[a-z_.]+)"\s*[,)])re"))) {
            subjects.insert(subject);
        }
    }
    // That the search finds what it is meant to.
    ASSERT_TRUE(subjects.contains("tray.stage_start"));
    ASSERT_TRUE(subjects.contains("variety.name"));
    ASSERT_GT(subjects.size(), 40);
    for (const QString& subject : subjects) {
        const QString bare = QString(subject).replace('.', ' ').replace('_', ' ');
        const QString text = sentence(Error{ErrorKind::Invalid, subject.toStdString(), "7"});
        EXPECT_NE(text, "Please check " + bare + ": 7.")
            << subject.toStdString() << " has no words: " << text.toStdString();
    }
}

TEST(HistorySentence, StandsForEveryIntentionOfTheJournal)
{
    const QSet<QString> keys = intentionKeys();
    ASSERT_GT(keys.size(), 40);
    ASSERT_TRUE(keys.contains("tray.sow"));
    ASSERT_TRUE(keys.contains("medium.change"));
    HistoryEntry unknown;
    unknown.intention = "nothing.of_the_kind";
    unknown.subject = "RD029";
    for (const QString& key : keys) {
        HistoryEntry entry;
        entry.intention = key.toStdString();
        entry.subject = "RD029";
        const QString text = sentence(entry);
        EXPECT_NE(text, sentence(unknown)) << key.toStdString() << " has no sentence of its own";
        EXPECT_EQ(blemish(text), "") << key.toStdString() << ": " << text.toStdString();
        EXPECT_TRUE(text.contains("RD029") || key == "room.change") << text.toStdString();
    }
}

TEST(HistorySentence, LeavesWhatAGrowerWroteAsItStands)
{
    HistoryEntry entry;
    entry.intention = "tray.sow";
    entry.subject = "RD%1 50%";
    EXPECT_EQ(sentence(entry), "Sowed RD%1 50%.");
}

} // namespace
} // namespace plumule::ui
