#pragma once

#include "core/cost/work_time.h"
#include "ui/page/page.h"
#include "ui/widget/key_button.h"

class QTimer;

namespace plumule::ui {

// Starts and stops the timer of the work that its page is for, by F8 on every page that has one.
// The timer is the journal's: it runs on while the program is closed. One that was forgotten, or
// whose count the journal can't tell, is asked about.
class WorkTimerButton : public KeyButton
{
    Q_OBJECT

public:
    WorkTimerButton(Journal& journal, Services services, LabourKind task,
                    QWidget* parent = nullptr);
    ~WorkTimerButton() override;

    // What it starts next.
    void setTask(LabourKind task);
    // Reads what runs.
    void reload();
    void press();

private:
    void showState();
    void begin();
    void end(const WorkTime& running);
    void ask(const WorkTime& running);

    Journal& m_journal;
    Services m_services;
    LabourKind m_task;
    std::optional<WorkTime> m_running;
    QTimer* m_minute = nullptr;
    int m_listener = 0;
};

} // namespace plumule::ui
