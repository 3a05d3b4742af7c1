#include "ui/widget/date_field.h"

#include "ui/text/text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QAction>
#include <QCalendarWidget>
#include <QKeyEvent>
#include <QLocale>
#include <QRegularExpression>
#include <QVBoxLayout>

#include <cmath>

namespace plumule::ui {
namespace {

// Without the weekday that stands before it, which the grower seldom corrects with the day.
QString withoutWeekday(const QString& text, const QLocale& desktop)
{
    for (const QLocale& locale : {desktop, QLocale(QLocale::English)}) {
        for (int day = 1; day <= 7; ++day) {
            for (const auto form : {QLocale::LongFormat, QLocale::ShortFormat}) {
                const QString name = locale.dayName(day, form);
                const QString rest = text.mid(name.size());
                if (!name.isEmpty() && text.startsWith(name, Qt::CaseInsensitive) &&
                    !rest.isEmpty() && !rest.front().isLetter()) {
                    qsizetype from = 0;
                    while (from < rest.size() && !rest[from].isLetterOrNumber()) {
                        ++from;
                    }
                    return rest.mid(from);
                }
            }
        }
    }
    return text;
}

// A desktop's form without its weekday, with the year in full, and with no leading zeros asked for.
QString loosened(QString format)
{
    format.remove(QRegularExpression(QStringLiteral("^d{3,4}[^A-Za-z]*")));
    if (!format.contains("yyyy")) {
        format.replace("yy", "yyyy");
    }
    if (!format.contains("MMM")) {
        format.replace("MM", "M");
    }
    return format.replace("dd", "d");
}

// A year of two digits is one of this century.
QDate inThisCentury(QDate day)
{
    if (day.isValid() && day.year() < 100) {
        return day.addYears(2000);
    }
    return day.isValid() && day.year() < 1970 ? day.addYears(100) : day;
}

QDate nearest(QDate withoutYear, QDate near)
{
    QDate best;
    for (int year = near.year() - 1; year <= near.year() + 1; ++year) {
        const QDate day(year, withoutYear.month(), withoutYear.day());
        if (day.isValid() &&
            (!best.isValid() || std::abs(day.daysTo(near)) < std::abs(best.daysTo(near)))) {
            best = day;
        }
    }
    return best;
}

QDate readDay(const QString& text, const QLocale& desktop, QDate near)
{
    const QLocale english(QLocale::English);
    const QDate iso = QDate::fromString(text, Qt::ISODate);
    if (iso.isValid()) {
        return iso;
    }
    for (const auto form : {QLocale::ShortFormat, QLocale::LongFormat}) {
        const QString format = desktop.dateFormat(form);
        for (const QString& each : {loosened(format), format}) {
            const QDate day = inThisCentury(desktop.toDate(text, each));
            if (day.isValid()) {
                return day;
            }
        }
    }
    for (const char* format : {"d MMM yyyy", "d MMMM yyyy"}) {
        const QDate day = inThisCentury(english.toDate(text, QLatin1String(format)));
        if (day.isValid()) {
            return day;
        }
    }
    // In a leap year, so that the 29th of February can be read.
    for (const char* format : {"d MMM yyyy", "d MMMM yyyy"}) {
        const QDate day = english.toDate(text + " 2024", QLatin1String(format));
        if (day.isValid()) {
            return nearest(day, near);
        }
    }
    return {};
}

} // namespace

std::optional<Date> dayFrom(const QString& text, const QLocale& desktop, Date near)
{
    const QDate read = readDay(withoutWeekday(text.simplified(), desktop), desktop, toQDate(near));
    return read.isValid() ? std::optional(fromQDate(read)) : std::nullopt;
}

QString howToWriteADay()
{
    return DateField::tr("Please write the day like 12 Mar 2026 or 2026-03-12.");
}

DateField::DateField(const char* name, QWidget* parent)
    : QLineEdit(parent)
{
    setObjectName(QString::fromLatin1(name));
    setMinimumWidth(scaled(150));
    setToolTip(tr("Typed like 12 Mar 2026 or 2026-03-12; Alt+Down opens a calendar."));
    auto* calendar =
        addAction(QIcon(QStringLiteral(":/icons/calendar.svg")), QLineEdit::TrailingPosition);
    calendar->setToolTip(tr("Choose from a calendar"));
    connect(calendar, &QAction::triggered, this, &DateField::openCalendar);
    connect(this, &QLineEdit::textEdited, this, [this] { markWrong(*this, false); });
    connect(this, &QLineEdit::editingFinished, this, &DateField::settle);
}

std::optional<Date> DateField::date() const
{
    return dayFrom(text(), QLocale::system(), m_known.value_or(fromQDate(QDate::currentDate())));
}

bool DateField::isUnreadable() const
{
    return !text().trimmed().isEmpty() && !date();
}

void DateField::setDate(std::optional<Date> date)
{
    m_known = date;
    setText(date ? QLocale(QLocale::English).toString(toQDate(*date), "ddd d MMM yyyy")
                 : QString());
    setCursorPosition(0);
    markWrong(*this, false);
}

bool DateField::requireDate()
{
    const bool isThere = date().has_value();
    markWrong(*this, !isThere);
    return isThere;
}

void DateField::settle()
{
    const auto given = date();
    if (!given && isUnreadable()) {
        markWrong(*this, true);
        return;
    }
    if (given != m_known) {
        setDate(given);
        Q_EMIT dateGiven();
    } else {
        setDate(given);
    }
}

void DateField::take(Date date)
{
    setDate(date);
    selectAll();
    Q_EMIT dateGiven();
}

void DateField::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Down && event->modifiers() == Qt::AltModifier) {
        openCalendar();
        return;
    }
    const auto from = date();
    if (from && !isReadOnly()) {
        switch (event->key()) {
        case Qt::Key_Up:
            take(*from + 1);
            return;
        case Qt::Key_Down:
            take(*from - 1);
            return;
        case Qt::Key_PageUp:
            take(fromQDate(toQDate(*from).addMonths(1)));
            return;
        case Qt::Key_PageDown:
            take(fromQDate(toQDate(*from).addMonths(-1)));
            return;
        default:
            break;
        }
    }
    QLineEdit::keyPressEvent(event);
}

void DateField::openCalendar()
{
    auto* popup = new QFrame(this, Qt::Popup);
    popup->setObjectName("calendarPopup");
    popup->setAttribute(Qt::WA_DeleteOnClose);
    popup->setProperty("role", "card");
    auto* column = new QVBoxLayout(popup);
    column->setContentsMargins(scaled(6), scaled(6), scaled(6), scaled(6));
    auto* calendar = new QCalendarWidget;
    calendar->setObjectName("calendar");
    calendar->setLocale(QLocale(QLocale::English));
    calendar->setFirstDayOfWeek(QLocale::system().firstDayOfWeek());
    calendar->setVerticalHeaderFormat(QCalendarWidget::NoVerticalHeader);
    if (const auto shown = date()) {
        calendar->setSelectedDate(toQDate(*shown));
    }
    column->addWidget(calendar);
    const auto choose = [this, popup](QDate day) {
        take(fromQDate(day));
        popup->close();
        setFocus();
    };
    connect(calendar, &QCalendarWidget::clicked, this, choose);
    connect(calendar, &QCalendarWidget::activated, this, choose);
    popup->adjustSize();
    popup->move(mapToGlobal(QPoint(0, height())));
    popup->show();
    calendar->setFocus();
}

} // namespace plumule::ui

#include "moc_date_field.cpp"
