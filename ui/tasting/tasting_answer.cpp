#include "ui/tasting/tasting_answer.h"

#include "ui/chart/chart_card.h"
#include "ui/medium/marker.h"
#include "ui/page/table_card.h"
#include "ui/tasting/tasting_text.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"

#include <QHeaderView>
#include <QItemSelectionModel>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

QLabel* wrapped(const char* name, const char* role = "")
{
    QLabel* made = label(QString(), role);
    made->setObjectName(name);
    made->setWordWrap(true);
    return made;
}

// The attribute with the clearest difference.
int clearest(const TastingResult& result)
{
    const auto least = std::min_element(
        result.attributes.begin(), result.attributes.end(),
        [](const AttributeResult& a, const AttributeResult& b) { return a.p() < b.p(); });
    return static_cast<int>(std::distance(result.attributes.begin(), least));
}

} // namespace

TastingAnswer::TastingAnswer(const Services& services, QWidget* parent)
    : QWidget(parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    buildAnswer();
    buildNumbers(services);
    auto* caution = new Card(tr("To bear in mind"), "caution");
    m_caveats = wrapped("tastingCaveats");
    caution->body()->addWidget(m_caveats);
    column->addWidget(caution);
    auto* better = new Card(tr("What would make the next one better"));
    m_better = wrapped("tastingBetter");
    better->body()->addWidget(m_better);
    column->addWidget(better);
    column->addStretch(1);
}

void TastingAnswer::buildAnswer()
{
    auto* answer = new Card(QString(), "answer");
    m_headline = wrapped("tastingHeadline", "code");
    m_detail = wrapped("tastingDetail", "muted");
    answer->body()->addWidget(m_headline);
    answer->body()->addWidget(m_detail);
    layout()->addWidget(answer);
}

void TastingAnswer::buildNumbers(const Services& services)
{
    m_attributes = new TextTable(this);
    m_attributeCard =
        new TableCard(services, tr("Each attribute"), m_attributes, "tastingAttributes");
    m_attributeWords = wrapped("tastingAttributeWords");
    m_attributeCard->body()->addWidget(m_attributeWords);
    m_attributeCard->table()->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    layout()->addWidget(m_attributeCard);
    m_numbers = new QBoxLayout(QBoxLayout::LeftToRight);
    m_numbers->setSpacing(scaled(16));
    m_chart = new ChartCard(services, "tastingChart");
    auto* tables = new QVBoxLayout;
    tables->setSpacing(scaled(14));
    m_scores = new TextTable(this);
    m_scoreCard = new TableCard(services, tr("Medium by medium"), m_scores, "tastingScores");
    m_rankNote = wrapped("tastingRankNote", "muted");
    m_scoreCard->body()->addWidget(m_rankNote);
    m_pairs = new TextTable(this);
    m_pairCard = new TableCard(services, tr("Pairs of media"), m_pairs, "tastingPairs");
    tables->addWidget(m_scoreCard);
    tables->addWidget(m_pairCard);
    tables->addStretch(1);
    m_numbers->addWidget(m_chart, 1);
    m_numbers->addLayout(tables, 1);
    static_cast<QVBoxLayout*>(layout())->addLayout(m_numbers);
    connect(m_attributeCard->table()->selectionModel(), &QItemSelectionModel::currentRowChanged,
            this, [this](const QModelIndex& now) {
                if (now.isValid()) {
                    showAttribute(static_cast<std::size_t>(now.row()));
                }
            });
}

void TastingAnswer::show(const TastingResult& result)
{
    const bool isSame = result.panel.id == m_shown.panel.id;
    const int chosen = isSame ? m_attributeCard->table()->currentIndex().row() : -1;
    m_shown = result;
    const TastingAnswerWords words = answerWords(result);
    m_headline->setText(words.headline);
    m_detail->setText(words.detail);
    m_caveats->setText(caveatWords(result).join('\n'));
    m_better->setText(betterWords(result).join('\n'));
    const bool hasAttributes = !result.attributes.empty();
    m_attributeCard->setVisible(result.attributes.size() > 1);
    m_chart->setVisible(hasAttributes);
    m_scoreCard->setVisible(hasAttributes);
    m_pairCard->setVisible(hasAttributes);
    if (hasAttributes) {
        showAttributes();
        m_attributeCard->table()->setCurrentIndex(
            m_attributes->index(chosen < 0 ? clearest(result) : chosen, 0));
    }
}

void TastingAnswer::showAttributes()
{
    std::vector<TextRow> rows;
    for (const AttributeResult& each : m_shown.attributes) {
        QStringList cells{attributeName(each.attribute)};
        cells << (each.isShown() ? tr("they differ") : tr("not shown"));
        const auto order = bestFirst(each, m_shown.panel.method);
        cells << (order.empty() ? QString()
                                : QString::fromStdString(each.samples[order.front()].medium.name));
        cells << QString::number(each.tasters) << (each.friedman ? pCell(each.p()) : QString())
              << (each.friedman ? numberText(each.friedman->kendallW, 2) : QString());
        rows.push_back({cells, QIcon(), false});
    }
    m_attributes->show(
        {tr("Attribute"), tr("Difference"), tr("First"), tr("Tasters"), tr("p"), tr("W")},
        std::move(rows), 3);
    m_attributeCard->table()->horizontalHeader()->setSectionResizeMode(2, QHeaderView::Stretch);
    m_attributeCard->fit();
}

void TastingAnswer::showAttribute(std::size_t attribute)
{
    const AttributeResult& shown = m_shown.attributes[attribute];
    m_attributeWords->setText(attributeWords(m_shown, attribute));
    m_chart->draw(m_shown.charts[attribute]);
    if (m_shown.attributes.size() > 1) {
        m_chart->setHeading(
            tr("%1: each dot a taster, the mean marked").arg(attributeTitle(shown.attribute)));
    }
    showScores(shown);
    showPairs(shown);
}

void TastingAnswer::showScores(const AttributeResult& shown)
{
    std::vector<TextRow> rows;
    for (const std::size_t sample : bestFirst(shown, m_shown.panel.method)) {
        const SampleScores& scores = shown.samples[sample];
        rows.push_back({{QString::fromStdString(scores.medium.name), numberText(scores.mean, 2),
                         numberText(scores.median, 1),
                         shown.friedman ? numberText(scores.rankSum, 1) : QString()},
                        markerIcon(scores.medium.marker),
                        false});
    }
    const bool isRanking = m_shown.panel.method == TastingMethod::Ranking;
    m_scores->show(
        {tr("Medium"), isRanking ? tr("Mean rank") : tr("Mean"), tr("Median"), tr("Rank sum")},
        std::move(rows));
    m_scoreCard->table()->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    m_scoreCard->fit();
    QStringList note{isRanking ? tr("Rank 1 is the best: low sums are better.")
                               : tr("9 is the best: high sums are better.")};
    if (shown.friedman) {
        note << tr("Friedman's χ² %1 with %2 degrees of freedom, p %3%4; Iman and Davenport's F "
                   "%5, p %6.")
                    .arg(numberText(shown.friedman->chiSquare, 2))
                    .arg(shown.friedman->df)
                    .arg(numberText(shown.friedman->p, 4),
                         shown.friedman->pExact
                             ? tr(" (exact %1)").arg(numberText(*shown.friedman->pExact, 4))
                             : QString(),
                         std::isfinite(shown.friedman->imanDavenportF)
                             ? numberText(shown.friedman->imanDavenportF, 2)
                             : tr("without bound"),
                         numberText(shown.friedman->pF, 4));
    }
    m_rankNote->setText(note.join(' '));
}

void TastingAnswer::showPairs(const AttributeResult& shown)
{
    std::vector<TextRow> rows;
    for (const stats::NemenyiPair& pair : shown.pairs) {
        rows.push_back(
            {{tr("%1 – %2").arg(QString::fromStdString(shown.samples[pair.b].medium.name),
                                QString::fromStdString(shown.samples[pair.a].medium.name)),
              numberText(pair.rankSumDifference, 1), pCell(pair.p),
              pair.p < 0.05 ? tr("told apart") : tr("not shown")},
             QIcon(),
             false});
    }
    m_pairCard->setVisible(!rows.empty());
    m_pairs->show({tr("Pair"), tr("Rank sums"), tr("p"), QString()}, std::move(rows), 1, 3);
    m_pairCard->table()->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    m_pairCard->fit();
    m_pairCard->setHeading(
        shown.criticalDifference
            ? tr("Pairs of media, told apart from %1 on").arg(*shown.criticalDifference)
            : tr("Pairs of media"));
}

void TastingAnswer::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    const bool isBeside = m_numbers->direction() == QBoxLayout::LeftToRight;
    m_numbers->setDirection(standsBeside(width(), scaled(900), isBeside) ? QBoxLayout::LeftToRight
                                                                         : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui

#include "moc_tasting_answer.cpp"
