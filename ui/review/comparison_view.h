#pragma once

#include "core/review/comparison/comparison.h"
#include "core/review/facts/season.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

#include <optional>

class QBoxLayout;
class QComboBox;
class QVBoxLayout;

namespace plumule::ui {

class ChartCard;
class PairModel;
class TableCard;

// The answer to one comparison: what was thrown away, the verdict in a sentence, whether the trials
// agree, each tray by variety, the pairs with what would make it fairer beside them, and the sums
// folded away. It shows what it is given.
class ComparisonView : public QWidget
{
    Q_OBJECT

public:
    explicit ComparisonView(const Services& services, QWidget* parent = nullptr);

    // `beside` is one more picture under the answer.
    void show(const SeasonReview& review, const SeasonComparison& comparison,
              const std::optional<ChartSpec>& beside);

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildAnswer();
    void buildCharts(const Services& services);
    void buildPairs(const Services& services);
    void buildSums();
    void showWords(const SeasonComparison& comparison);
    void showTrials();
    void showFairness(const SeasonComparison& comparison);
    void showSums(const SeasonComparison& comparison);

    QVBoxLayout* m_column = nullptr;
    Card* m_answer = nullptr;
    QLabel* m_discards = nullptr;
    QLabel* m_headline = nullptr;
    QLabel* m_detail = nullptr;
    QBoxLayout* m_charts = nullptr;
    ChartCard* m_left = nullptr;
    ChartCard* m_right = nullptr;
    QComboBox* m_pairChoice = nullptr;
    QLabel* m_leftOut = nullptr;
    QLabel* m_varietyWords = nullptr;
    QBoxLayout* m_pairRow = nullptr;
    PairModel* m_pairs = nullptr;
    TableCard* m_pairCard = nullptr;
    Card* m_fairness = nullptr;
    QLabel* m_fairnessWords = nullptr;
    QPushButton* m_sumsButton = nullptr;
    QLabel* m_sumsHint = nullptr;
    QLabel* m_sums = nullptr;
    ChartCard* m_beside = nullptr;
    std::optional<SeasonComparison> m_shown;
};

} // namespace plumule::ui
