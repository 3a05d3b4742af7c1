#pragma once

#include "core/trial/trial_progress.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {

class LayoutGrid;

// How a trial stands: its blocks, the stage of each tray, and what is missing.
class ProgressView : public QWidget
{
    Q_OBJECT

public:
    ProgressView(Journal& journal, Services services, QWidget* parent = nullptr);

    void show(const TrialProgress& progress);

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);

private:
    void showTrays();
    void showCounts();
    void showLegend();
    void showLacks();
    [[nodiscard]] QString standOf(const TrialTray& tray) const;

    Journal& m_journal;
    TrialProgress m_shown;
    Card* m_lacks = nullptr;
    QVBoxLayout* m_lackRows = nullptr;
    QLabel* m_counts = nullptr;
    LayoutGrid* m_grid = nullptr;
    QWidget* m_legend = nullptr;
};

} // namespace plumule::ui
