#include "ui/widget/plain_words.h"

#include <QTextDocument>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

QString asDrawn(const QString& hint)
{
    QTextDocument document;
    Qt::mightBeRichText(hint) ? document.setHtml(hint) : document.setPlainText(hint);
    return document.toPlainText();
}

TEST(PlainHint, ShowsEveryLetterOfAName)
{
    for (const char* name : {"Mesh", "<b>Mesh</b>", "Mesh & <mix>", "<img src=x>", "a < b > c",
                             "“<b>” is no number", "two\nlines"}) {
        EXPECT_EQ(asDrawn(plainHint(name)).toStdString(), name);
    }
}

TEST(PlainHint, LeavesOrdinaryWordsAsTheyAre)
{
    EXPECT_EQ(plainHint("Takes back: Watered BR001."), "Takes back: Watered BR001.");
    EXPECT_EQ(plainHint(""), "");
}

TEST(PlainEntry, KeepsTheSignThatMenusTakeForAKey)
{
    EXPECT_EQ(plainEntry("Mesh & mix"), "Mesh && mix");
    EXPECT_EQ(plainEntry("Mesh"), "Mesh");
}

TEST(WrappingPath, MayBreakAfterItsPartsAndIsTheSameToTheEye)
{
    QString path = wrappingPath("/rooms/north_2/my journal.plumule");
    EXPECT_TRUE(path.startsWith(QString("/") + QChar(0x200b) + "rooms"));
    EXPECT_TRUE(path.contains(QString("north_") + QChar(0x200b) + "2"));
    EXPECT_EQ(path.remove(QChar(0x200b)), "/rooms/north_2/my journal.plumule");
}

} // namespace
} // namespace plumule::ui
