#pragma once

#include "core/review/comparison.h"
#include "core/review/height_fits.h"
#include "ui/shared/page.h"
#include "ui/shared/widgets.h"

class QBoxLayout;
class QDateEdit;
class QMenu;
class QTableView;

namespace plumule::ui {

class ChartView;
class PairModel;
class SeasonModel;

// What the page shows of a season: the numbers, the media compared, and the fitted heights.
struct SeasonAnswer
{
    SeasonReview review;
    SeasonComparison comparison;
    std::vector<HeightFit> heights;
};

// The season's answer: one metric at a time, the verdict in a sentence, each tray a dot, what was
// unfair, the pairs and the numbers below. It is worked out off the window's thread on a
// connection of its own.
class SeasonPage : public Page
{
    Q_OBJECT

public:
    enum class Metric
    {
        Yield,
        CostPerGram,
        Height
    };

    SeasonPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;

    void showMetric(Metric metric);
    void setFilter(const SeasonFilter& filter);
    // What is shown now; none before the first answer.
    [[nodiscard]] const std::optional<SeasonAnswer>& answer() const { return m_shown; }

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildHead();
    QWidget* buildFilter();
    QWidget* buildAnswer();
    void buildCharts();
    QWidget* buildFairness();
    QWidget* buildPairs();
    QWidget* buildTable();
    void wireSignals();
    void fillVarieties();
    [[nodiscard]] Response response() const;
    void show(const Result<SeasonAnswer>& answer);
    void showWords();
    void showTables();
    void showCharts();
    void saveChart(ChartView& chart);

    PageHead* m_head = nullptr;
    Segmented* m_metric = nullptr;
    QDateEdit* m_from = nullptr;
    QDateEdit* m_to = nullptr;
    QPushButton* m_varieties = nullptr;
    QMenu* m_varietyMenu = nullptr;
    Card* m_answer = nullptr;
    QLabel* m_headline = nullptr;
    QLabel* m_detail = nullptr;
    QBoxLayout* m_charts = nullptr;
    Card* m_leftCard = nullptr;
    Card* m_rightCard = nullptr;
    ChartView* m_left = nullptr;
    ChartView* m_right = nullptr;
    Card* m_fairness = nullptr;
    QLabel* m_fairnessWords = nullptr;
    PairModel* m_pairs = nullptr;
    QTableView* m_pairTable = nullptr;
    SeasonModel* m_model = nullptr;
    QTableView* m_table = nullptr;
    QLabel* m_leftOut = nullptr;
    SeasonFilter m_filter;
    std::optional<SeasonAnswer> m_shown;
    int m_asked = 0; // number of the latest question, so that an older answer is not shown
};

} // namespace plumule::ui
