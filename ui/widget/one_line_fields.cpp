#include "ui/widget/one_line_fields.h"

#include <QApplication>
#include <QEvent>
#include <QLineEdit>
#include <QRegularExpression>

namespace plumule::ui {
namespace {

const QRegularExpression& lineBreak()
{
    static const QRegularExpression breaks(
        QStringLiteral("[\\s\\x{85}]*[\\r\\n\\v\\f\\x{85}\\x{2028}"
                       "\\x{2029}][\\s\\x{85}]*"));
    return breaks;
}

void join(QLineEdit& field)
{
    if (!field.text().contains(lineBreak())) {
        return;
    }
    const QString before = field.text().left(field.cursorPosition());
    field.setText(field.text().replace(lineBreak(), QStringLiteral(" ")));
    field.setCursorPosition(
        static_cast<int>(QString(before).replace(lineBreak(), QStringLiteral(" ")).size()));
    field.setModified(true);
}

// Looks after each field from its first showing on.
class OneLineFields : public QObject
{
public:
    using QObject::QObject;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() == QEvent::Polish) {
            if (auto* field = qobject_cast<QLineEdit*>(watched)) {
                connect(field, &QLineEdit::textEdited, field, [field] { join(*field); });
            }
        }
        return QObject::eventFilter(watched, event);
    }
};

} // namespace

void keepFieldsOnOneLine(QApplication& application)
{
    application.installEventFilter(new OneLineFields(&application));
}

} // namespace plumule::ui
