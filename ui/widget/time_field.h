#pragma once

#include <QLineEdit>

#include <optional>

namespace plumule::ui {

// What was typed as a time of day, as minutes of it: "7", "730", "07:30", "7.30", "7:30 pm". None
// for any other text.
[[nodiscard]] std::optional<int> minuteTyped(const QString& text);

// A time of day that is typed over; Up and Down go by a quarter of an hour.
class TimeField : public QLineEdit
{
    Q_OBJECT

public:
    explicit TimeField(const char* name, QWidget* parent = nullptr);

    // Of what stands in the field, minutes of the day; none where it is no time.
    [[nodiscard]] std::optional<int> minute() const;
    // Emits nothing.
    void setMinute(int minute);
    // Marks the field as wrong where no time stands in it; true where one does.
    [[nodiscard]] bool requireTime();

Q_SIGNALS:
    // The grower gave another time.
    void timeGiven();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void settle();

    int m_known = 0;
};

// What to say where a time can't be read.
[[nodiscard]] QString howToWriteATime();

} // namespace plumule::ui
