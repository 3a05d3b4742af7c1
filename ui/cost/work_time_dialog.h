#pragma once

#include "core/cost/work_time.h"
#include "ui/page/record_dialog.h"

class QComboBox;

namespace plumule::ui {

class DateField;
class NumberField;
class TimeField;

// How long a stretch of work took and how often the task was done in it: of a timer that was
// forgotten or whose count the journal can't tell, and of one that was timed by hand.
class WorkTimeDialog : public RecordDialog
{
    Q_OBJECT

public:
    // `work` may run still, be stored, or be new.
    WorkTimeDialog(Journal& journal, Services services, const WorkTime& work, QWidget* parent);

protected:
    [[nodiscard]] std::optional<QString> save() override;

private:
    void buildFields();
    void fillAmounts();
    void askOfTimer();

    WorkTime m_work;
    QComboBox* m_task = nullptr;
    DateField* m_on = nullptr;
    TimeField* m_at = nullptr;
    NumberField* m_minutes = nullptr;
    NumberField* m_times = nullptr;
};

} // namespace plumule::ui
