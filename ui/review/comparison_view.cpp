#include "ui/review/comparison_view.h"

#include "core/review/charts/comparison_charts.h"
#include "ui/chart/chart_card.h"
#include "ui/chart/chart_view.h"
#include "ui/page/table_card.h"
#include "ui/review/pair_model.h"
#include "ui/review/report_parts.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_sentence.h"
#include "ui/review/verdict_text.h"
#include "ui/widget/theme.h"

#include <QComboBox>
#include <QHeaderView>
#include <QSignalBlocker>
#include <QTableView>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QLabel* words(const char* name, const char* role = "")
{
    QLabel* made = label(QString(), role);
    made->setObjectName(name);
    made->setWordWrap(true);
    return made;
}

void showText(QLabel& label, const QString& text)
{
    label.setText(text);
    label.setVisible(!text.isEmpty());
}

// Whether sowings are what repeats: then each of them is a row.
bool isOfSeveral(const SeasonComparison& comparison)
{
    return comparison.byTrial.size() > 1;
}

// So that no row and no series within it covers another.
int heightOf(const ChartSpec& spec)
{
    const auto rows = static_cast<int>(spec.rows.size());
    const int ofRow = spec.seriesARow > 1 ? 15 * spec.seriesARow : 28;
    return scaled(std::max(250, 80 + rows * ofRow));
}

} // namespace

ComparisonView::ComparisonView(const Services& services, QWidget* parent)
    : QWidget(parent)
{
    m_column = new QVBoxLayout(this);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(scaled(14));
    buildAnswer();
    buildCharts(services);
    buildPairs(services);
    m_beside = new ChartCard(services, "besideAnswer");
    connect(m_beside, &ChartCard::trayAsked, this, &ComparisonView::trayAsked);
    m_column->addWidget(m_beside);
    buildSums();
}

void ComparisonView::buildAnswer()
{
    m_answer = new Card(QString(), "answer");
    m_discards = words("discards");
    m_headline = words("headline", "code");
    m_detail = words("detail", "muted");
    m_answer->body()->addWidget(m_discards);
    m_answer->body()->addWidget(m_headline);
    m_answer->body()->addWidget(m_detail);
    m_column->addWidget(m_answer);
}

void ComparisonView::buildCharts(const Services& services)
{
    m_charts = new QBoxLayout(QBoxLayout::LeftToRight);
    m_charts->setSpacing(scaled(16));
    m_left = new ChartCard(services, "leftChart");
    m_right = new ChartCard(services, "rightChart");
    for (ChartCard* card : {m_left, m_right}) {
        m_charts->addWidget(card, 1);
        connect(card, &ChartCard::trayAsked, this, &ComparisonView::trayAsked);
    }
    m_pairChoice = new QComboBox;
    m_pairChoice->setObjectName("pairChoice");
    m_pairChoice->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_pairChoice->setAccessibleName(tr("Which pair is shown sowing by sowing"));
    m_left->body()->insertWidget(0, m_pairChoice, 0, Qt::AlignLeft);
    connect(m_pairChoice, &QComboBox::activated, this, &ComparisonView::showTrials);
    m_leftOut = words("leftOutWords", "muted");
    m_left->body()->addWidget(m_leftOut);
    m_varietyWords = words("varietyWords", "muted");
    m_right->body()->addWidget(m_varietyWords);
    m_column->addLayout(m_charts, 1);
}

void ComparisonView::buildPairs(const Services& services)
{
    m_pairRow = new QBoxLayout(QBoxLayout::LeftToRight);
    m_pairRow->setSpacing(scaled(16));
    m_pairs = new PairModel(this);
    m_pairCard = new TableCard(services, tr("Every pair"), m_pairs, "pairs");
    m_pairCard->table()->horizontalHeader()->setStretchLastSection(true);
    m_pairRow->addWidget(m_pairCard, 3);
    m_fairness = new Card(tr("For a fairer answer next time"), "caution");
    m_fairnessWords = words("fairness");
    m_fairnessWords->setTextFormat(Qt::PlainText);
    m_fairness->body()->addWidget(m_fairnessWords);
    m_fairness->body()->addStretch(1);
    m_fairness->hide();
    m_pairRow->addWidget(m_fairness, 1);
    m_column->addLayout(m_pairRow);
}

void ComparisonView::buildSums()
{
    auto* card = new Card;
    m_sumsButton = button(tr("The sums"), "quiet");
    m_sumsButton->setObjectName("sumsButton");
    m_sumsButton->setCheckable(true);
    m_sumsHint = words("sumsHint", "muted");
    m_sums = words("sums");
    m_sums->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_sums->hide();
    auto* row = new QHBoxLayout;
    row->addWidget(m_sumsButton);
    row->addWidget(m_sumsHint, 1);
    card->body()->addLayout(row);
    card->body()->addWidget(m_sums);
    connect(m_sumsButton, &QPushButton::toggled, m_sums, &QLabel::setVisible);
    m_column->addWidget(card);
}

void ComparisonView::show(const SeasonReview& review, const SeasonComparison& comparison,
                          const std::optional<ChartSpec>& beside)
{
    m_shown = comparison;
    if (review.trays == 0 || (comparison.pairs.empty() && comparison.means.size() < 2)) {
        const auto plain = comparison.n == 0 && review.trays > 0 ? wordsWithoutPairs(comparison)
                                                                 : wordsFor(review);
        showText(*m_discards, QString());
        m_headline->setText(plain.headline);
        showText(*m_detail, plain.detail);
    } else {
        showWords(comparison);
    }
    const QSignalBlocker quiet(m_pairChoice);
    m_pairChoice->clear();
    for (const MediaPair& pair : comparison.pairs) {
        m_pairChoice->addItem(pairName(pair, comparison));
    }
    m_pairChoice->setCurrentIndex(static_cast<int>(leadingPair(comparison)));
    m_pairChoice->setVisible(isOfSeveral(comparison));
    showTrials();
    const ChartSpec right =
        isOfSeveral(comparison) ? varietiesChart(comparison) : beside.value_or(ChartSpec());
    m_right->chart()->setMinimumHeight(heightOf(right));
    m_right->draw(right);
    showText(*m_varietyWords, varietyWords(comparison));
    m_beside->draw(isOfSeveral(comparison) ? beside.value_or(ChartSpec()) : ChartSpec());
    m_pairs->show(comparison);
    m_pairCard->fit();
    m_pairCard->setVisible(!comparison.pairs.empty());
    showFairness(comparison);
    showSums(comparison);
}

void ComparisonView::showWords(const SeasonComparison& comparison)
{
    const VerdictWords said = verdictWords(comparison);
    showText(*m_discards, said.discards.join('\n'));
    m_headline->setText(said.headline);
    QStringList detail{said.detail};
    detail << cautionWords(comparison);
    detail.removeAll(QString());
    showText(*m_detail, detail.join(' '));
}

void ComparisonView::showTrials()
{
    const bool isBySowing = isOfSeveral(*m_shown) && m_pairChoice->currentIndex() >= 0;
    const ChartSpec drawn =
        isBySowing ? sowingsChart(*m_shown, static_cast<std::size_t>(m_pairChoice->currentIndex()))
                   : adjustedMeansChart(*m_shown);
    m_left->chart()->setMinimumHeight(heightOf(drawn));
    m_left->draw(drawn);
    showText(*m_leftOut,
             isBySowing
                 ? leftOutWords(*m_shown, static_cast<std::size_t>(m_pairChoice->currentIndex()))
                 : QString());
}

void ComparisonView::showFairness(const SeasonComparison& comparison)
{
    const QStringList lines = adviceSentences(comparison) + oddTrayWords(comparison.model.checks);
    // A little apart, as one reads them one by one.
    m_fairnessWords->setText(lines.join(QStringLiteral("\n\n")));
    m_fairness->setVisible(!lines.isEmpty());
}

void ComparisonView::showSums(const SeasonComparison& comparison)
{
    m_sumsHint->setText(spreadWords(comparison));
    QStringList lines = sumsWords(comparison) + allCheckWords(comparison);
    lines << allowedForWords(comparison);
    lines.removeAll(QString());
    m_sums->setText(lines.join('\n'));
}

void ComparisonView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    // The pairs' words need their room.
    for (const auto& [row, needed] : {std::pair(m_charts, 900), std::pair(m_pairRow, 1320)}) {
        const bool isBeside = row->direction() == QBoxLayout::LeftToRight;
        row->setDirection(standsBeside(width(), scaled(needed), isBeside)
                              ? QBoxLayout::LeftToRight
                              : QBoxLayout::TopToBottom);
    }
}

} // namespace plumule::ui

#include "moc_comparison_view.cpp"
