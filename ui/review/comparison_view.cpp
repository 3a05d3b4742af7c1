#include "ui/review/comparison_view.h"

#include "core/review/charts/comparison_charts.h"
#include "ui/chart/chart_card.h"
#include "ui/page/table_card.h"
#include "ui/review/pair_model.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_text.h"
#include "ui/widget/theme.h"

#include <QHeaderView>
#include <QTableView>
#include <QVBoxLayout>

namespace plumule::ui {

ComparisonView::ComparisonView(const Services& services, QWidget* parent)
    : QWidget(parent)
{
    m_column = new QVBoxLayout(this);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(scaled(14));
    buildAnswer();
    buildFairness();
    m_charts = new QBoxLayout(QBoxLayout::LeftToRight);
    m_charts->setSpacing(scaled(16));
    m_left = new ChartCard(services, "leftChart");
    m_right = new ChartCard(services, "rightChart");
    for (ChartCard* card : {m_left, m_right}) {
        m_charts->addWidget(card, 1);
        connect(card, &ChartCard::trayAsked, this, &ComparisonView::trayAsked);
    }
    m_column->addLayout(m_charts, 1);
    m_pairs = new PairModel(this);
    m_pairCard = new TableCard(services, tr("Differences between media"), m_pairs, "pairs");
    m_pairCard->table()->horizontalHeader()->setStretchLastSection(true);
    m_column->addWidget(m_pairCard);
}

void ComparisonView::buildAnswer()
{
    m_answer = new Card(QString(), "answer");
    m_headline = label(QString(), "code");
    m_headline->setObjectName("headline");
    m_headline->setWordWrap(true);
    m_detail = label(QString(), "muted");
    m_detail->setObjectName("detail");
    m_detail->setWordWrap(true);
    m_answer->body()->addWidget(m_headline);
    m_answer->body()->addWidget(m_detail);
    m_column->addWidget(m_answer);
}

void ComparisonView::buildFairness()
{
    m_fairness = new Card(tr("What else differed"), "caution");
    m_fairnessWords = label(QString());
    m_fairnessWords->setObjectName("fairness");
    m_fairnessWords->setWordWrap(true);
    m_fairness->body()->addWidget(m_fairnessWords);
    m_fairness->hide();
    m_column->addWidget(m_fairness);
}

void ComparisonView::show(const SeasonReview& review, const SeasonComparison& comparison,
                          const std::optional<ChartSpec>& beside)
{
    showWords(review, comparison);
    showFairness(comparison);
    m_left->draw(adjustedMeansChart(comparison));
    m_right->draw(beside.value_or(ChartSpec()));
    m_pairs->show(comparison);
    m_pairCard->fit();
}

void ComparisonView::showWords(const SeasonReview& review, const SeasonComparison& comparison)
{
    // Where nothing can be told apart, why comes first.
    const bool hasPairs = std::any_of(review.media.begin(), review.media.end(),
                                      [](const MediumSeason& each) { return each.yield.n >= 2; });
    const auto told = verdictWords(comparison);
    const auto plain = wordsFor(review);
    const bool isTold = hasPairs && !comparison.pairs.empty();
    // Never a sentence of the yield where something else was asked for.
    if (comparison.pairs.empty() && comparison.ask.response != Response::YieldPerTray &&
        review.trays > 0) {
        const auto none = wordsWithoutPairs(comparison);
        m_headline->setText(none.headline);
        m_detail->setText(none.detail);
        return;
    }
    m_headline->setText(isTold ? told.headline : plain.headline);
    QStringList detail{isTold ? told.detail : plain.detail + ' ' + told.headline};
    detail << checkWords(comparison.checks);
    m_detail->setText(detail.join(' ').trimmed());
}

void ComparisonView::showFairness(const SeasonComparison& comparison)
{
    QStringList fairness = fairnessWords(comparison);
    const QStringList advice = adviceWords(comparison.suggestions);
    if (!fairness.isEmpty() && !advice.isEmpty()) {
        fairness << tr("For a fairer trial next time: %1.").arg(advice.join("; "));
    }
    m_fairnessWords->setText(fairness.join('\n'));
    m_fairness->setVisible(!fairness.isEmpty());
}

void ComparisonView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    const bool isBeside = m_charts->direction() == QBoxLayout::LeftToRight;
    m_charts->setDirection(standsBeside(width(), scaled(900), isBeside) ? QBoxLayout::LeftToRight
                                                                        : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui

#include "moc_comparison_view.cpp"
