#pragma once

#include "core/journal/trial/trial_entries.h"
#include "core/review/planning/trial_outlook.h"
#include "ui/page/page.h"
#include "ui/trial/layout_grid.h"
#include "ui/widget/widgets.h"

class QBoxLayout;
class QMenu;
class QTableView;
class QTimer;

namespace plumule::ui {

class ChartView;
class NumberField;
class PlanForm;
class TextTable;

// A trial before it is sown: the question and its size at the left with the chance of an answer,
// the places drawn by lot and what to prepare at the right. All of it follows the fields.
class PlanView : public QWidget
{
    Q_OBJECT

public:
    PlanView(Journal& journal, Services services, QWidget* parent = nullptr);

    void begin(const TrialDraft& draft);
    // Something in the journal changed: stock, places, media.
    void reload();
    [[nodiscard]] const TrialDraft& draft() const { return m_draft; }
    // Whether the plan differs from the one that is kept.
    [[nodiscard]] bool hasUnsaved() const;
    // Asks for a printer; false where nothing can be sown yet.
    bool printThePrepSheet();
    // Back to the list; asks first where something isn't kept.
    void leave();

Q_SIGNALS:
    void left();
    void kept(plumule::TrialId trial);
    void sown(plumule::TrialId trial);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildHead();
    QWidget* buildQuestion();
    QWidget* buildLayoutCard();
    QWidget* buildSupplies();
    void wireSignals();
    void follow();
    void drawPlaces(const TrialDraft& asked);
    void drawAgain();
    void exchange(int tile, int other);
    void fillFreePlaces(int tile);
    void moveTo(int tile, PlaceId place);
    void showAnswer();
    void showOutlook(const Result<PlanOutlook>& outlook);
    void showLayout();
    [[nodiscard]] std::vector<LayoutGrid::Row> layoutRows() const;
    [[nodiscard]] QString layoutWords() const;
    void showSupplies();
    void showFairness(const std::vector<Finding>& findings);
    // False, and said why, where it is refused.
    bool keep();
    void remove();
    void askToSow();
    void sow();
    void savePrepSheet();
    [[nodiscard]] UnitText units() const;

    Journal& m_journal;
    Services m_services;
    TrialDraft m_draft; // as shown
    TrialDraft m_begun; // as it was kept, or newly begun
    Preparation m_preparation;
    std::optional<Error> m_fault; // why it can't be sown as it stands
    PageHead* m_head = nullptr;
    QPushButton* m_prepare = nullptr;
    QPushButton* m_keep = nullptr;
    QPushButton* m_sow = nullptr;
    QPushButton* m_remove = nullptr;
    QBoxLayout* m_columns = nullptr;
    PlanForm* m_form = nullptr;
    QLabel* m_powerTitle = nullptr;
    ChartView* m_power = nullptr;
    QLabel* m_outlook = nullptr;
    QLabel* m_layoutTitle = nullptr;
    QLabel* m_layoutWords = nullptr;
    LayoutGrid* m_grid = nullptr;
    NumberField* m_number = nullptr;
    QPushButton* m_again = nullptr;
    QPushButton* m_move = nullptr;
    QMenu* m_free = nullptr;
    TextTable* m_supplies = nullptr;
    QTableView* m_supplyTable = nullptr;
    QLabel* m_supplyWords = nullptr;
    Card* m_fairness = nullptr;
    QLabel* m_fairnessWords = nullptr;
    QTimer* m_later = nullptr;
};

} // namespace plumule::ui
