#include "ui/widget/measured_label.h"

#include "ui/widget/theme.h"

#include <QApplication>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

// What Qt itself works out for the same words.
int heightByQt(const QLabel& like, int width)
{
    QLabel label(QStringLiteral("words")); // it had some once
    label.setText(like.text());
    label.setTextFormat(like.textFormat());
    label.setFont(like.font());
    label.setWordWrap(like.wordWrap());
    label.setMargin(like.margin());
    label.setIndent(like.indent());
    label.setContentsMargins(like.contentsMargins());
    label.setMinimumWidth(like.minimumWidth());
    return label.heightForWidth(width);
}

void expectHeights(const QLabel& label, const char* what)
{
    for (const int width : {40, 120, 121, 400, 120}) {
        EXPECT_EQ(label.heightForWidth(width), heightByQt(label, width)) << what << ", " << width;
    }
}

TEST(MeasuredLabel, IsAsHighAsQtSaysWhateverChanges)
{
    MeasuredLabel label(
        QStringLiteral("pH adjusters burn skin and eyes: wear gloves and glasses."));
    expectHeights(label, "one line");
    label.setWordWrap(true);
    expectHeights(label, "wrapped");
    label.setText(QStringLiteral("Short."));
    expectHeights(label, "another text");
    label.setText(QStringLiteral("Nothing grows here yet, and there is a good deal to say of it."));
    label.setFont(uiFont(1.75));
    expectHeights(label, "another font");
    label.setContentsMargins(20, 8, 20, 8);
    expectHeights(label, "edges");
    label.setMargin(6);
    label.setIndent(15);
    expectHeights(label, "margin and indent");
    label.setMinimumWidth(200);
    expectHeights(label, "a least width");
    label.setText(QString());
    expectHeights(label, "no words");
    label.setTextFormat(Qt::RichText);
    label.setText(QStringLiteral("<p>One</p><p>Two</p>"));
    expectHeights(label, "marks of HTML");
}

} // namespace
} // namespace plumule::ui
