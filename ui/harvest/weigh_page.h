#pragma once

#include "core/harvest/scale_text.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

#include <set>

class QBoxLayout;
class QTableView;

namespace plumule::ui {

class ChartView;
class DueList;
class WeighCard;
class WeighedModel;

// The scale. A tray is typed or scanned, its weight read in, Enter records it and goes on to the
// next tray due. What is odd is asked about in place: a second Enter accepts it.
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

    // Puts this tray on the scale; refuses in words when it can't be weighed.
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

    // weigh_acts.cpp
    [[nodiscard]] bool settleTray();
    void record();
    void finishRecording(const QString& code, Mass net);
    void goToNext(const QString& after);
    void beginCorrection(int row);
    void saveCorrection(const std::vector<BowlDraft>& bowls);
    void leaveCorrection();
    [[nodiscard]] WeighingDraft draftOf(const std::vector<BowlDraft>& bowls) const;
    // Asks about doubts that are not accepted yet; true when there are none left.
    bool settleDoubts(WeighingDraft& draft);

    void sayExpected();
    void showTrial();
    void setMode(bool isResidue);
    void setUnit(MassUnit unit);

    PageHead* m_head = nullptr;
    Segmented* m_mode = nullptr;
    Segmented* m_unit = nullptr;
    QBoxLayout* m_columns = nullptr;
    WeighCard* m_card = nullptr;
    WeighedModel* m_weighed = nullptr;
    QTableView* m_weighedView = nullptr;
    Card* m_trialCard = nullptr;
    ChartView* m_trialChart = nullptr;
    QLabel* m_trialWords = nullptr;
    DueList* m_due = nullptr;
    bool m_isResidue = false;
    WeighIn m_weighIn;
    std::vector<DueRow> m_residuesDue;
    std::optional<TrayAtScale> m_tray;
    std::optional<TrialSoFar> m_trial;
    std::set<Doubt> m_asked; // about the weight that stands there now
    std::optional<Harvest> m_correcting;
    int m_listener = 0;
    bool m_isBadgeQueued = false;
};

} // namespace plumule::ui
