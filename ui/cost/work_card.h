#pragma once

#include "core/cost/work_time.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QComboBox;
class QGridLayout;

namespace plumule::ui {

class WorkTimerButton;

// The minutes that costs are reckoned with, beside what timers measured: a measured mean is offered
// and taken only by its button. The timer of any task starts here, and times are corrected.
class WorkCard : public Card
{
    Q_OBJECT

public:
    WorkCard(Journal& journal, Services services, QWidget* parent = nullptr);

    void reload();
    [[nodiscard]] WorkTimerButton* timer() const { return m_timer; }

private:
    void buildTimer();
    void addTask(int row, const LabourTask& task, const std::vector<MeasuredTask>& measured);
    QWidget* timedLine(const QString& words, const WorkTime& work);
    void showLatest();
    void take(const LabourTask& task, int seconds);
    void open(const WorkTime& work);
    void writeDown();

    Journal& m_journal;
    Services m_services;
    QComboBox* m_task = nullptr;
    WorkTimerButton* m_timer = nullptr;
    QGridLayout* m_grid = nullptr;
    QVBoxLayout* m_latest = nullptr;
};

} // namespace plumule::ui
