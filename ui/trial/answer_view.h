#pragma once

#include "core/review/answer/trial_answer.h"
#include "core/review/facts/compared_trays.h"
#include "core/tray/tray_id.h"
#include "ui/page/latest.h"
#include "ui/page/page.h"
#include "ui/review/season_answer.h"
#include "ui/widget/widgets.h"

class QComboBox;

namespace plumule::ui {

class ClimateCard;
class ComparisonView;
class DiaryCard;
class SeasonModel;
class TableCard;

// What a trial answers: one metric at a time as in the season's review, its blocks, the numbers,
// and the notes and photographs of each medium on the same day side by side.
class AnswerView : public QWidget
{
    Q_OBJECT

public:
    AnswerView(Journal& journal, Services services, QWidget* parent = nullptr);

    void show(TrialId trial);
    [[nodiscard]] const std::optional<TrialAnswer>& answer() const { return m_shown; }
    // What is asked now.
    [[nodiscard]] ComparisonAsk asked() const;

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);

private:
    void ask();
    void showAnswer(const Result<TrialAnswer>& answer);

    Journal& m_journal;
    Services m_services;
    TrialId m_trial;
    Segmented* m_metric = nullptr;
    QComboBox* m_groups = nullptr;
    QLabel* m_model = nullptr;
    ComparisonView* m_comparison = nullptr;
    SeasonModel* m_numbers = nullptr;
    TableCard* m_numberCard = nullptr;
    QLabel* m_leftOut = nullptr;
    ClimateCard* m_climate = nullptr; // beside heights
    DiaryCard* m_diary = nullptr;
    std::optional<TrialAnswer> m_shown;
    Latest m_latest;
};

} // namespace plumule::ui
