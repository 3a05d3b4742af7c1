#include "ui/trial/answer_view.h"

#include "core/review/charts/block_chart.h"
#include "ui/page/table_card.h"
#include "ui/review/comparison_view.h"
#include "ui/review/season_model.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_text.h"
#include "ui/trial/diary_card.h"
#include "ui/trial/trial_report.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"

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
    row->addWidget(m_metric);
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
    m_diary = new DiaryCard(journal);
    inner->addWidget(m_comparison, 1);
    inner->addWidget(m_numberCard);
    inner->addWidget(m_diary);
    connect(m_metric, &Segmented::chosenByHand, this, &AnswerView::ask);
    connect(m_comparison, &ComparisonView::trayAsked, this, &AnswerView::trayAsked);
}

void AnswerView::show(TrialId trial)
{
    m_trial = trial;
    m_diary->show(trial);
    ask();
}

void AnswerView::ask()
{
    SeasonQuestion question;
    question.filter = m_journal.review().filterOf(m_trial);
    question.ask.response = kMetrics[static_cast<std::size_t>(std::max(0, m_metric->chosen()))];
    const int number = ++m_asked;
    askSeason(m_services, m_journal, question, this,
              [this, number](const Result<SeasonAnswer>& answer) {
                  if (number == m_asked) {
                      showAnswer(answer);
                  }
              });
}

void AnswerView::showAnswer(const Result<SeasonAnswer>& answer)
{
    if (!answer) {
        m_services.messages.refuse(sentence(answer.error()));
        return;
    }
    m_shown = *answer;
    m_model->setText(modelWords(m_shown->comparison.model));
    const bool isOfYield = m_shown->comparison.ask.response == Response::YieldPerTray;
    const auto progress = m_journal.trials().progress(m_trial);
    const auto blocks = progress ? blocksOf(*progress) : std::vector<BlockOfTrays>();
    m_comparison->show(m_shown->review, m_shown->comparison,
                       isOfYield && blocks.size() > 1 ? byBlockChart(m_shown->comparison, blocks)
                                                      : chartBeside(*m_shown));
    m_numbers->show(m_shown->review);
    m_numberCard->fit();
    m_leftOut->setText(leftOutText(m_shown->review));
}

} // namespace plumule::ui

#include "moc_answer_view.cpp"
