#pragma once

#include "core/trial/trial_progress.h"
#include "ui/page/page.h"

class QTableView;

namespace plumule::ui {

class PageStack;
class PageHead;
class PlanView;
class TextTable;
class TrialView;

// Trials from the question to the answer: the list of all, the plan of one that is not sown yet,
// and one that grows or is done.
class TrialsPage : public Page
{
    Q_OBJECT

public:
    TrialsPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;
    [[nodiscard]] bool hasUnsaved() const override;
    bool print() override;

    void openList();
    void openNew();
    // Its plan while it is not sown, else how it stands.
    void openTrial(TrialId trial);
    [[nodiscard]] PlanView& plan() const { return *m_plan; }
    [[nodiscard]] TrialView& trial() const { return *m_trial; }

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void layOutColumns();
    QWidget* buildList();
    void wireSignals();
    void reloadList();
    void openRow(int row);

    PageStack* m_stack = nullptr;
    PageHead* m_head = nullptr;
    TextTable* m_model = nullptr;
    QTableView* m_table = nullptr;
    QLabel* m_empty = nullptr;
    PlanView* m_plan = nullptr;
    TrialView* m_trial = nullptr;
    std::vector<TrialRow> m_rows;
};

} // namespace plumule::ui
