#pragma once

#include "core/week/repeat.h"
#include "ui/page/record_dialog.h"

class QComboBox;
class QSpinBox;

namespace plumule::ui {

class DateField;

// A repeating sowing: what, on which medium, how many trays, on which days, from when until when.
class RepeatDialog : public RecordDialog
{
    Q_OBJECT

public:
    // A new one where its id is not stored.
    RepeatDialog(Journal& journal, Services services, const Repeat& repeat,
                 QWidget* parent = nullptr);

private:
    enum class Rhythm
    {
        Weekdays,
        EveryDays
    };

    void makeFields();
    void buildFields();
    QWidget* buildWeekdays();
    void addEnd();
    void fill();
    void fillChoices();
    void showRhythm();
    [[nodiscard]] std::optional<QString> save() override;

    Repeat m_repeat;
    Services m_services;
    QComboBox* m_variety = nullptr;
    QComboBox* m_medium = nullptr;
    QSpinBox* m_trays = nullptr;
    QComboBox* m_rhythm = nullptr;
    QWidget* m_weekdays = nullptr;
    std::vector<QPushButton*> m_weekday; // Monday first
    QSpinBox* m_days = nullptr;
    DateField* m_from = nullptr;
    DateField* m_until = nullptr;
};

} // namespace plumule::ui
