#include "ui/trial/answer_view.h"

#include "core/journal/climate/climate_entries.h"
#include "core/review/charts/block_chart.h"
#include "ui/climate/climate_card.h"
#include "ui/page/table_card.h"
#include "ui/review/comparison_view.h"
#include "ui/review/grouping_choice.h"
#include "ui/review/season_model.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_text.h"
#include "ui/trial/diary_card.h"
#include "ui/trial/trial_report.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"

#include <QComboBox>
#include <QScrollArea>
#include <QTableView>
#include <QVBoxLayout>

#include <array>

namespace plumule::ui {
namespace {

constexpr std::array kMetrics{Response::YieldPerTray, Response::CostPerGram, Response::HeightOnDay,
                              Response::Evenness, Response::Residue};

} // namespace

AnswerView::AnswerView(Journal& journal, Services services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(12));
    auto* bar = new QWidget;
    auto* row = new FlowLayout(bar);
    m_metric =
        new Segmented({tr("Yield"), tr("Cost"), tr("Height"), tr("Evenness"), tr("Residue")});
    m_metric->setObjectName("trialMetric");
    m_model = label(QString(), "muted");
    m_model->setObjectName("trialModel");
    m_model->setMinimumHeight(m_metric->sizeHint().height());
    m_groups = groupingChoice();
    row->addWidget(m_metric);
    row->addWidget(m_groups);
    row->addWidget(m_model);
    column->addWidget(bar);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner), 1);
    m_comparison = new ComparisonView(services);
    m_numbers = new SeasonModel(this);
    m_numberCard = new TableCard(services, tr("The numbers as weighed, medium by medium"),
                                 m_numbers, "trialNumbers");
    m_leftOut = label(QString(), "muted");
    m_leftOut->setWordWrap(true);
    m_numberCard->body()->addWidget(m_leftOut);
    m_diary = new DiaryCard(journal.photoFolder());
    m_climate = new ClimateCard;
    inner->addWidget(m_comparison, 1);
    inner->addWidget(m_climate);
    inner->addWidget(m_numberCard);
    inner->addWidget(m_diary);
    connect(m_metric, &Segmented::chosenByHand, this, &AnswerView::ask);
    connect(m_groups, &QComboBox::activated, this, &AnswerView::ask);
    connect(m_comparison, &ComparisonView::trayAsked, this, &AnswerView::trayAsked);
}

void AnswerView::show(TrialId trial)
{
    m_trial = trial;
    ask();
}

ComparisonAsk AnswerView::asked() const
{
    ComparisonAsk ask;
    ask.response = kMetrics[static_cast<std::size_t>(std::max(0, m_metric->chosen()))];
    ask.groups = chosenGrouping(*m_groups);
    return ask;
}

void AnswerView::ask()
{
    TrialQuestion question;
    question.trial = m_trial;
    question.asks.push_back(asked());
    question.parts = partsBeside(question.asks.front().response);
    askTrial(m_services, m_journal, question, this,
             m_latest.only([this](const Result<TrialAnswer>& answer) { showAnswer(answer); }));
}

void AnswerView::showAnswer(const Result<TrialAnswer>& answer)
{
    if (!answer) {
        m_services.messages.refuse(sentence(answer.error()));
        return;
    }
    m_shown = *answer;
    const SeasonAnswer& season = m_shown->season;
    const SeasonComparison& comparison = season.comparisons.front();
    m_model->setText(spreadWords(comparison));
    const bool isOfYield = comparison.ask.response == Response::YieldPerTray;
    const auto blocks = blocksOf(m_shown->progress);
    m_comparison->show(season.review, comparison,
                       isOfYield && blocks.size() > 1 ? byBlockChart(comparison, blocks)
                                                      : chartBeside(season, comparison));
    if (comparison.ask.response == Response::HeightOnDay) {
        m_climate->show(m_journal.climate().ofTrial(m_trial));
    } else {
        m_climate->hide();
    }
    m_numbers->show(season.review);
    m_numberCard->fit();
    m_leftOut->setText(leftOutText(season.review));
    m_diary->show(m_shown->diary);
}

} // namespace plumule::ui

#include "moc_answer_view.cpp"
