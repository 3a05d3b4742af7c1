#pragma once

#include "core/trial/trial_progress.h"
#include "ui/page/page.h"
#include "ui/report/report_task.h"

class QMenu;

namespace plumule::ui {

class PageStack;
class AnswerView;
class PageHead;
class ProgressView;
class Segmented;
class TastingView;

// A trial that was sown: how it stands, how it tasted, what it answers; labels and the report.
class TrialView : public QWidget
{
    Q_OBJECT

public:
    enum Part
    {
        Progress,
        Tasting,
        Answer
    };

    TrialView(Journal& journal, Services services, QWidget* parent = nullptr);

    // Where most of its trays are harvested it begins with the answer.
    void show(TrialId trial);
    void showPart(Part part);
    void reload();
    void printTheReport();

Q_SIGNALS:
    void left();
    void trayAsked(plumule::TrayId tray);

private:
    void buildHead();
    void wireSignals();
    // False, and said, where the trial is gone or can't be read.
    bool read();
    void showWhatWasRead();
    [[nodiscard]] ReportContent reportContent() const;
    void makeReport(const QString& ending);

    Journal& m_journal;
    Services m_services;
    TrialProgress m_shown;
    PageHead* m_head = nullptr;
    Segmented* m_part = nullptr;
    QPushButton* m_labels = nullptr;
    QPushButton* m_report = nullptr;
    QPushButton* m_change = nullptr;
    PageStack* m_stack = nullptr;
    ProgressView* m_progress = nullptr;
    TastingView* m_tasting = nullptr;
    AnswerView* m_answer = nullptr;
};

} // namespace plumule::ui
