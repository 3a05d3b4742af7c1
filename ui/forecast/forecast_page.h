#pragma once

#include "ui/page/aside.h"
#include "ui/page/page.h"

#include "core/forecast/forecast_sums.h"

class QBoxLayout;
class QVBoxLayout;

namespace plumule {
struct ForecastAnswer;
}

namespace plumule::ui {

class Card;
class ChartCard;
class GrowingTable;
class PageHead;
class Segmented;
class TableCard;
class TextTable;

// What grows: when it is cut and what it gives, each with an interval; beside it how earlier
// forecasts came out.
class ForecastPage : public Page
{
    Q_OBJECT

public:
    ForecastPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;
    void followClock() override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* buildScores();
    // With the facts of all trays there ever were: shared with the thread that read them.
    using Answer = std::shared_ptr<const ForecastAnswer>;

    void show(const Result<Answer>& answer);
    void showGrowing();
    void showScores();
    void showBad();

    PageHead* m_head = nullptr;
    Segmented* m_order = nullptr;
    QBoxLayout* m_beside = nullptr;
    GrowingTable* m_growing = nullptr;
    QLabel* m_nothing = nullptr;
    QWidget* m_scores = nullptr;
    Card* m_coverage = nullptr;
    QLabel* m_coverageWords = nullptr;
    ChartCard* m_chart = nullptr;
    TextTable* m_scoreModel = nullptr;
    TableCard* m_scoreTable = nullptr;
    QVBoxLayout* m_bad = nullptr;
    Answer m_answer; // never none
    Aside m_aside;
};

} // namespace plumule::ui
