#pragma once

#include "core/base/date.h"

#include <QLineEdit>

#include <optional>

class QLocale;

namespace plumule::ui {

// What was typed as a day: as the desktop writes days, as they are shown here ("12 Mar 2026", a
// weekday before it or none), or ISO ("2026-03-12"). A day without a year is the one nearest to
// `near`. None for any other text.
[[nodiscard]] std::optional<Date> dayFrom(const QString& text, const QLocale& desktop, Date near);

// A day that is typed over or chosen from a calendar. Up and Down go by a day, Page Up and Page
// Down by a month, Alt+Down opens the calendar. An empty field is "not given".
class DateField : public QLineEdit
{
    Q_OBJECT

public:
    explicit DateField(const char* name, QWidget* parent = nullptr);

    // Of what stands in the field; none where it is empty or no day.
    [[nodiscard]] std::optional<Date> date() const;
    // Not empty, and no day either.
    [[nodiscard]] bool isUnreadable() const;
    // Emits nothing.
    void setDate(std::optional<Date> date);
    // Where none may stand there the day is marked as wrong, and true only where one does.
    [[nodiscard]] bool requireDate();
    void openCalendar();

Q_SIGNALS:
    // The grower gave another day: typed it and left the field, or chose it.
    void dateGiven();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void take(Date date);
    void settle();

    // What the field was last known to say.
    std::optional<Date> m_known;
};

// What to say where a day can't be read.
[[nodiscard]] QString howToWriteADay();

} // namespace plumule::ui
