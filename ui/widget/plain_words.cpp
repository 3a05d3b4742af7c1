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

QString wrappingPath(const QString& path)
{
    constexpr QChar kMayBreak(0x200b); // Unicode's zero width space
    QString wrapping;
    for (const QChar sign : path) {
        wrapping += sign;
        if (QStringLiteral("/\\_-").contains(sign)) {
            wrapping += kMayBreak;
        }
    }
    return wrapping;
}

} // namespace plumule::ui
