#include "ui/widget/plain_words.h"

#include <QTextDocument>

namespace plumule::ui {

QString plainHint(const QString& text)
{
    return Qt::mightBeRichText(text) ? Qt::convertFromPlainText(text) : text;
}

QString plainEntry(const QString& text)
{
    return QString(text).replace('&', QStringLiteral("&&"));
}

} // namespace plumule::ui
