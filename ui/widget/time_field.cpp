#include "ui/widget/time_field.h"

#include "core/base/date.h"
#include "ui/text/text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QKeyEvent>
#include <QRegularExpression>

namespace plumule::ui {
namespace {

constexpr int kStepMinutes = 15;

} // namespace

std::optional<int> minuteTyped(const QString& text)
{
    static const QRegularExpression form(
        QStringLiteral("^(\\d{1,2})(?:[:.h ]?(\\d{2}))?(?:\\s*([ap])\\.?(?:m\\.?)?)?$"),
        QRegularExpression::CaseInsensitiveOption);
    const auto match = form.match(text.simplified());
    if (!match.hasMatch()) {
        return std::nullopt;
    }
    int hour = match.captured(1).toInt();
    const int minute = match.captured(2).toInt();
    const QString half = match.captured(3).toLower();
    if (!half.isEmpty()) {
        if (hour < 1 || hour > 12) {
            return std::nullopt;
        }
        hour = hour % 12 + (half == "p" ? 12 : 0);
    }
    return hour < 24 && minute < 60 ? std::optional(hour * 60 + minute) : std::nullopt;
}

QString howToWriteATime()
{
    return TimeField::tr("Please write the time like 07:30.");
}

TimeField::TimeField(const char* name, QWidget* parent)
    : QLineEdit(parent)
{
    setObjectName(QString::fromLatin1(name));
    setMaximumWidth(scaled(140));
    connect(this, &QLineEdit::textEdited, this, [this] { markWrong(*this, false); });
    connect(this, &QLineEdit::editingFinished, this, &TimeField::settle);
}

std::optional<int> TimeField::minute() const
{
    return minuteTyped(text());
}

void TimeField::setMinute(int minute)
{
    m_known = minute;
    setText(clockText(minute));
    markWrong(*this, false);
}

bool TimeField::requireTime()
{
    const bool isThere = minute().has_value();
    markWrong(*this, !isThere);
    return isThere;
}

void TimeField::settle()
{
    const auto given = minute();
    if (!given) {
        markWrong(*this, true);
        return;
    }
    const bool isOther = *given != m_known;
    setMinute(*given);
    if (isOther) {
        Q_EMIT timeGiven();
    }
}

void TimeField::keyPressEvent(QKeyEvent* event)
{
    const int step = event->key() == Qt::Key_Up     ? kStepMinutes
                     : event->key() == Qt::Key_Down ? -kStepMinutes
                                                    : 0;
    const auto from = minute();
    if (step == 0 || !from) {
        QLineEdit::keyPressEvent(event);
        return;
    }
    setMinute((*from + step + kMinutesPerDay) % kMinutesPerDay);
    selectAll();
    Q_EMIT timeGiven();
}

} // namespace plumule::ui

#include "moc_time_field.cpp"
