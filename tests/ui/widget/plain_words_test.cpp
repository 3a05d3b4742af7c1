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

} // namespace
} // namespace plumule::ui
