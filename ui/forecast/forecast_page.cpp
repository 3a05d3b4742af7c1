#include "ui/forecast/forecast_page.h"

#include "core/forecast/forecast_chart.h"
#include "core/journal/forecast/forecast_answers.h"
#include "ui/chart/chart_card.h"
#include "ui/chart/chart_view.h"
#include "ui/forecast/forecast_text.h"
#include "ui/forecast/growing_table.h"
#include "ui/page/table_card.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QBoxLayout>
#include <QScrollArea>
#include <QTableView>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kLeastTableWidth = 620;
constexpr int kScoresWidth = 380;

enum Order
{
    ByDay,
    ByVariety
};

QString varietyName(const ForecastFacts& facts, VarietyId variety)
{
    const auto found = facts.varieties.find(variety);
    return found == facts.varieties.end() ? QString() : QString::fromStdString(found->second);
}

QString ofText(int inside, int all)
{
    return all > 0 ? ForecastPage::tr("%1 of %2").arg(inside).arg(all) : QStringLiteral("–");
}

TextRow scoreRow(const QString& name, const VarietyScore& score)
{
    return {{name, ofText(score.yieldInside, score.harvests), ofText(score.dayInside, score.days)},
            QIcon(),
            score.yieldWidened > 1 || score.dayWidened > 1};
}

} // namespace

ForecastPage::ForecastPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
    , m_answer(std::make_shared<const ForecastAnswer>())
    , m_aside(journal, services.tasks, this)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(12));
    m_head = new PageHead(tr("Forecast"));
    m_order = new Segmented({tr("By day"), tr("By variety")});
    m_order->choose(ByDay);
    m_head->addControl(m_order);
    column->addWidget(m_head);
    m_nothing =
        label(tr("Nothing grows now. Once trays are sown, their harvest days and yields stand "
                 "here."),
              "muted");
    m_nothing->setWordWrap(true);
    m_growing = new GrowingTable;
    auto* left = new QVBoxLayout;
    left->addWidget(m_nothing);
    left->addWidget(m_growing);
    left->addStretch(1);
    m_beside = new QBoxLayout(QBoxLayout::LeftToRight);
    m_beside->setSpacing(scaled(14));
    m_beside->addLayout(left, 1);
    m_scores = buildScores();
    m_beside->addWidget(m_scores);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner), 1);
    inner->addLayout(m_beside);
    inner->addStretch(1);
    connect(m_order, &Segmented::chosenByHand, this, [this] { showGrowing(); });
    connect(m_growing, &GrowingTable::trayAsked, this, &Page::trayAsked);
    connect(m_chart, &ChartCard::trayAsked, this, &Page::trayAsked);
}

QWidget* ForecastPage::buildScores()
{
    auto* scores = new QWidget;
    auto* column = new QVBoxLayout(scores);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    m_coverage = new Card(QStringLiteral(" "), "answer");
    m_coverage->setObjectName("forecastCoverage");
    m_coverage->wrapHeading();
    m_coverageWords = label(QString(), "muted");
    m_coverageWords->setWordWrap(true);
    m_coverage->body()->addWidget(m_coverageWords);
    column->addWidget(m_coverage);
    m_bad = new QVBoxLayout;
    m_bad->setSpacing(scaled(14));
    column->addLayout(m_bad);
    m_chart = new ChartCard(services(), "forecastChart");
    column->addWidget(m_chart);
    m_scoreModel = new TextTable(this);
    m_scoreTable =
        new TableCard(services(), tr("Scored by variety"), m_scoreModel, "forecastScores");
    column->addWidget(m_scoreTable);
    column->addStretch(1);
    return scores;
}

QString ForecastPage::name() const
{
    return tr("Forecast");
}

bool ForecastPage::concerns(Concept) const
{
    return true;
}

void ForecastPage::begin()
{
    m_growing->table()->setFocus();
}

// The present day moved on, and with it what is still to come.
void ForecastPage::followClock()
{
    noteChange();
}

void ForecastPage::reload()
{
    m_aside.ask(
        tr("Foretelling"),
        [](Journal& journal, const Progress&) {
            return journal.forecast().answer().map([](ForecastAnswer&& answer) {
                return std::make_shared<const ForecastAnswer>(std::move(answer));
            });
        },
        [this](const Result<Answer>& answer) { show(answer); });
}

void ForecastPage::show(const Result<Answer>& answer)
{
    if (!accept(answer)) {
        return;
    }
    m_answer = *answer;
    m_head->setSubtitle(tr("%1 · harvest day and yield of each growing tray")
                            .arg(dayText(m_answer->facts.now.date)));
    showGrowing();
    showScores();
    showBad();
}

void ForecastPage::showGrowing()
{
    std::vector<GrowingRow> rows;
    for (const TrayForecast& forecast : m_answer->report.growing) {
        const auto medium = m_answer->facts.media.find(forecast.medium);
        const bool isKnown = medium != m_answer->facts.media.end();
        rows.push_back({forecast, isKnown ? medium->second.marker : 0,
                        dayCount(forecast.sownOn, m_answer->facts.now.date),
                        varietyName(m_answer->facts, forecast.variety),
                        isKnown ? QString::fromStdString(medium->second.name) : QString()});
    }
    if (m_order->chosen() == ByVariety) {
        std::stable_sort(rows.begin(), rows.end(), [](const GrowingRow& a, const GrowingRow& b) {
            return a.variety < b.variety;
        });
    }
    m_nothing->setVisible(rows.empty());
    m_growing->setVisible(!rows.empty());
    m_growing->show(std::move(rows), m_answer->facts.now.date, units());
}

void ForecastPage::showScores()
{
    m_coverage->setHeading(coverageSentence(m_answer->report));
    m_coverageWords->setText(coverageDetail(m_answer->report));
    m_chart->draw(coverageChart(m_answer->report.scored));
    std::vector<TextRow> rows;
    for (const VarietyScore& score : m_answer->report.scores) {
        rows.push_back(scoreRow(varietyName(m_answer->facts, score.variety), score));
    }
    m_scoreTable->setVisible(!rows.empty());
    rows.push_back(scoreRow(tr("All"), m_answer->report.all));
    m_scoreModel->show({tr("Variety"), tr("yield inside"), tr("day inside")}, std::move(rows));
    m_scoreTable->fit();
}

void ForecastPage::showBad()
{
    clearLayout(m_bad);
    const auto tell = [&](const VarietyScore& score, const QString& name) {
        const QString heading = badHeading(score, name);
        if (!heading.isEmpty()) {
            auto* card = new Card(heading, "caution");
            card->wrapHeading();
            auto* words = label(badDetail(score));
            words->setWordWrap(true);
            card->body()->addWidget(words);
            m_bad->addWidget(card);
        }
    };
    for (const VarietyScore& score : m_answer->report.scores) {
        tell(score, varietyName(m_answer->facts, score.variety));
    }
}

void ForecastPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    const bool isBeside = m_beside->direction() == QBoxLayout::LeftToRight;
    const bool fits =
        standsBeside(width(), scaled(kLeastTableWidth) + scaled(kScoresWidth), isBeside);
    m_beside->setDirection(fits ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_scores->setMaximumWidth(fits ? scaled(kScoresWidth) : QWIDGETSIZE_MAX);
    m_scores->setMinimumWidth(fits ? scaled(kScoresWidth) : 0);
}

} // namespace plumule::ui

#include "moc_forecast_page.cpp"
