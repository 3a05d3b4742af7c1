#pragma once

#include "core/harvest/weighing_rules.h"
#include "ui/harvest/scale_field.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

#include <set>

class QBoxLayout;
class QTableView;

namespace plumule::ui {

class ChartView;
class DueList;
class RangeStrip;
class WeighCard;
class WeighedModel;
class WorkTimerButton;

// The scale. A tray is typed or scanned, its weight read in, Enter records it and goes on to the
// next tray due. What is odd is asked about in place, and nothing recorded before it is answered.
class WeighPage : public Page
{
    Q_OBJECT

public:
    WeighPage(Journal& journal, Services services, QWidget* parent = nullptr);
    ~WeighPage() override;

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;
    void followClock() override;
    [[nodiscard]] bool hasUnsaved() const override;

    // Puts this tray on the scale; refuses in words when it can't be weighed. A weight of another
    // tray that was not recorded goes, and is named.
    void take(const QString& code);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildHead();
    void buildColumns();
    QWidget* buildWeighed();
    QWidget* buildSide();
    void wireSignals();
    void noteBadge();
    void readPreferences();

    void showHead();
    void showDue();
    void showTray();
    void sayExpected();
    void showRange();
    void showTrial();
    void takeNext(const QString& after);
    void setMode(Weighing what);
    void setUnit(MassUnit unit);
    void layOut();
    [[nodiscard]] MassUnit scaleUnit() const;
    // Masses as the scale shows them.
    [[nodiscard]] UnitText scaleUnits() const;
    [[nodiscard]] QString codeOnScale() const;
    // The net that stands there now; none where nothing is typed, or no weight.
    [[nodiscard]] std::optional<Mass> typedNet() const;

    // weigh_page_acts.cpp
    [[nodiscard]] bool settleTray();
    void record();
    void refuseWeight(const Error& error);
    // What is odd about the bowls and not accepted.
    [[nodiscard]] std::vector<Doubt> openDoubtsOf(const std::vector<BowlDraft>& bowls) const;
    void ask(const std::vector<BowlDraft>& bowls, const std::vector<Doubt>& open);
    void takeAnswer(int choice);
    void leaveQuestion();
    void store(const std::vector<BowlDraft>& bowls);
    void finishRecording(const QString& code, Mass net);
    void beginCorrection(int row);
    void leaveCorrection();
    void clearTray();
    // Says that a weight which stands there was not recorded.
    void nameUnrecorded(const QString& nextCode);

    PageHead* m_head = nullptr;
    WorkTimerButton* m_timer = nullptr;
    Segmented* m_mode = nullptr;
    Segmented* m_unit = nullptr;
    QBoxLayout* m_columns = nullptr;
    WeighCard* m_card = nullptr;
    WeighedModel* m_weighed = nullptr;
    QTableView* m_weighedView = nullptr;
    Card* m_rangeCard = nullptr;
    QLabel* m_rangeWords = nullptr;
    RangeStrip* m_range = nullptr;
    Card* m_trialCard = nullptr;
    ChartView* m_trialChart = nullptr;
    QLabel* m_trialWords = nullptr;
    DueList* m_due = nullptr;
    Weighing m_what = Weighing::Cut;
    WeighIn m_weighIn;
    std::vector<DueRow> m_residuesDue;
    std::optional<TrayAtScale> m_tray;
    std::optional<CutAtScale> m_correcting;
    std::set<Doubt> m_accepted; // of the weight that stands there now
    std::vector<Doubt> m_asked; // by the question that stands
    std::optional<Slip> m_slip; // that the question offers to put right
    int m_listener = 0;
    bool m_isBadgeQueued = false;
};

} // namespace plumule::ui
