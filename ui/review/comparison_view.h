#pragma once

#include "core/review/comparison/comparison.h"
#include "core/review/facts/season.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

#include <optional>

class QBoxLayout;

namespace plumule::ui {

class ChartCard;
class PairModel;
class TableCard;

// The answer to one comparison: the verdict in a sentence, what else differed, each tray a dot with
// the adjusted means, a second chart beside it, and the pairs. It shows what it is given.
class ComparisonView : public QWidget
{
    Q_OBJECT

public:
    explicit ComparisonView(const Services& services, QWidget* parent = nullptr);

    void show(const SeasonReview& review, const SeasonComparison& comparison,
              const std::optional<ChartSpec>& beside);

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildAnswer();
    void buildFairness();
    void showWords(const SeasonReview& review, const SeasonComparison& comparison);
    void showFairness(const SeasonComparison& comparison);

    QBoxLayout* m_column = nullptr;
    Card* m_answer = nullptr;
    QLabel* m_headline = nullptr;
    QLabel* m_detail = nullptr;
    Card* m_fairness = nullptr;
    QLabel* m_fairnessWords = nullptr;
    QBoxLayout* m_charts = nullptr;
    ChartCard* m_left = nullptr;
    ChartCard* m_right = nullptr;
    PairModel* m_pairs = nullptr;
    TableCard* m_pairCard = nullptr;
};

} // namespace plumule::ui
