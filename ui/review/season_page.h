#pragma once

#include "core/review/answer/season_answer.h"
#include "core/review/facts/response.h"
#include "core/review/facts/season.h"
#include "core/review/season/season.h"
#include "ui/page/latest.h"
#include "ui/page/page.h"
#include "ui/report/report_task.h"
#include "ui/review/season_answer.h"
#include "ui/widget/widgets.h"

class QActionGroup;

namespace plumule::ui {

class PageStack;
class AgeingCard;
class BesideCard;
class ComparisonView;
class RatingsView;
class SeasonFilterBar;
class SeasonModel;
class TableCard;
class WhatIfCard;

// The season's answer: one metric at a time, the verdict in a sentence, each tray a dot, what was
// unfair, the pairs and the numbers below. It is worked out off the window's thread on a
// connection of its own.
class SeasonPage : public Page
{
    Q_OBJECT

public:
    SeasonPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    bool print() override;
    // The usual span ends with the day; one that was chosen stays.
    void followClock() override;

    void showMetric(Response response);
    // What tasters said instead of what scales did.
    void showRatings();
    void setFilter(const SeasonFilter& filter);
    // What is shown now; none before the first answer.
    [[nodiscard]] const std::optional<SeasonAnswer>& answer() const { return m_shown; }

private:
    void buildHead();
    void declareSeason();
    void changeSeason();
    void openSeason(const Season& season);
    QWidget* buildNumbers();
    QWidget* buildAnswer();
    void wireSignals();
    void showChoice();
    [[nodiscard]] SeasonQuestion question() const;
    void show(const Result<SeasonAnswer>& answer);
    [[nodiscard]] ReportContent reportContent() const;
    void makeReport(const QString& ending);

    PageHead* m_head = nullptr;
    Segmented* m_metric = nullptr;
    QPushButton* m_more = nullptr;
    QActionGroup* m_moreChoices = nullptr;
    SeasonFilterBar* m_filterBar = nullptr;
    SeasonFilter m_usual;
    PageStack* m_stack = nullptr;
    ComparisonView* m_comparison = nullptr;
    Card* m_payback = nullptr;
    QLabel* m_paybackWords = nullptr;
    WhatIfCard* m_whatIf = nullptr;
    BesideCard* m_beside = nullptr;
    AgeingCard* m_ageing = nullptr;
    SeasonModel* m_model = nullptr;
    TableCard* m_numbers = nullptr;
    QLabel* m_leftOut = nullptr;
    RatingsView* m_ratings = nullptr;
    Response m_response = Response::YieldPerTray;
    bool m_showsRatings = false;
    std::optional<SeasonAnswer> m_shown;
    Latest m_latest;
};

} // namespace plumule::ui
