#include "ui/review/season_page.h"

#include "core/journal/review/review_answers.h"
#include "core/journal/review/season_entries.h"
#include "ui/cost/payback_text.h"
#include "ui/page/table_card.h"
#include "ui/review/ageing_card.h"
#include "ui/review/beside_card.h"
#include "ui/review/comparison_view.h"
#include "ui/review/metric_text.h"
#include "ui/review/ratings_view.h"
#include "ui/review/season_dialog.h"
#include "ui/review/season_filter_bar.h"
#include "ui/review/season_model.h"
#include "ui/review/season_report.h"
#include "ui/review/season_text.h"
#include "ui/review/verdict_text.h"
#include "ui/review/what_if_card.h"
#include "ui/widget/page_stack.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/theme.h"

#include <QActionGroup>
#include <QMenu>
#include <QScrollArea>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace plumule::ui {
namespace {

// The metrics with a button of their own; after them the ratings.
constexpr std::array kMain{Response::YieldPerTray, Response::CostPerGram, Response::HeightOnDay};
constexpr std::array kMore{
    Response::YieldPerTraySown, Response::Evenness,   Response::DaysToHarvest,
    Response::Residue,          Response::Work,       Response::YieldPerArea,
    Response::YieldPerSeed,     Response::YieldPerDay};

QString spanText(const SeasonAnswer& answer)
{
    const SeasonFilter& filter = answer.review.filter;
    const QString days =
        SeasonPage::tr("%1 – %2").arg(longDateText(filter.from), longDateText(filter.to));
    return answer.series.kind == SeriesKind::Season
               ? SeasonPage::tr("Season %1, %2")
                     .arg(QString::fromStdString(answer.series.name), days)
               : days;
}

} // namespace

SeasonPage::SeasonPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(12));
    buildHead();
    m_filterBar = new SeasonFilterBar(journal);
    m_ratings = new RatingsView(services);
    m_stack = new PageStack;
    m_stack->addPage(buildAnswer());
    m_stack->addPage(m_ratings);
    column->addWidget(m_head);
    column->addWidget(m_filterBar);
    column->addWidget(m_stack, 1);
    wireSignals();
    m_usual = journal.review().usualSeason();
    setFilter(m_usual);
}

QString SeasonPage::name() const
{
    return tr("Season");
}

bool SeasonPage::concerns(Concept about) const
{
    return about != Concept::Watering;
}

void SeasonPage::buildHead()
{
    m_head = new PageHead(tr("Season review"));
    QStringList names;
    for (const Response response : kMain) {
        names << metricName(response);
    }
    m_metric = new Segmented(names << tr("Ratings"));
    m_metric->setObjectName("metric");
    m_more = button(tr("More"));
    m_more->setObjectName("moreMetrics");
    setRole(m_more, "menu");
    auto* menu = new QMenu(m_more);
    m_moreChoices = new QActionGroup(this);
    for (const Response response : kMore) {
        QAction* choice = menu->addAction(metricName(response));
        choice->setCheckable(true);
        choice->setData(int(response));
        m_moreChoices->addAction(choice);
    }
    m_more->setMenu(menu);
    auto* report = button(tr("Report"));
    report->setObjectName("seasonReport");
    setRole(report, "menu");
    auto* kinds = new QMenu(report);
    connect(kinds->addAction(tr("PDF pages…")), &QAction::triggered, this,
            [this] { makeReport(".pdf"); });
    connect(kinds->addAction(tr("One HTML file…")), &QAction::triggered, this,
            [this] { makeReport(".html"); });
    report->setMenu(kinds);
    m_head->addControl(m_metric);
    m_head->addControl(m_more);
    m_head->addControl(report);
}

QWidget* SeasonPage::buildAnswer()
{
    QVBoxLayout* inner = nullptr;
    QScrollArea* area = scrolling(inner);
    m_comparison = new ComparisonView(services());
    m_payback = new Card(tr("When a piece has paid for itself"));
    m_paybackWords = label(QString());
    m_paybackWords->setObjectName("payback");
    m_paybackWords->setWordWrap(true);
    m_payback->body()->addWidget(m_paybackWords);
    m_whatIf = new WhatIfCard(journal());
    m_ageing = new AgeingCard(services());
    m_beside = new BesideCard(services());
    inner->addWidget(m_comparison, 1);
    inner->addWidget(m_payback);
    inner->addWidget(m_whatIf);
    inner->addWidget(m_beside);
    inner->addWidget(m_ageing);
    inner->addWidget(buildNumbers());
    return area;
}

QWidget* SeasonPage::buildNumbers()
{
    m_model = new SeasonModel(this);
    m_numbers = new TableCard(services(), tr("The numbers as weighed, medium by medium"), m_model,
                              "numbers");
    m_leftOut = label(QString(), "muted");
    m_leftOut->setObjectName("leftOut");
    m_leftOut->setWordWrap(true);
    m_numbers->body()->addWidget(m_leftOut);
    return m_numbers;
}

void SeasonPage::wireSignals()
{
    connect(m_metric, &Segmented::chosenByHand, this, [this](int index) {
        if (index < static_cast<int>(kMain.size())) {
            showMetric(kMain[static_cast<std::size_t>(index)]);
        } else {
            showRatings();
        }
    });
    connect(m_moreChoices, &QActionGroup::triggered, this, [this](const QAction* choice) {
        showMetric(static_cast<Response>(choice->data().toInt()));
    });
    connect(m_filterBar, &SeasonFilterBar::changed, this, &SeasonPage::reload);
    connect(m_filterBar, &SeasonFilterBar::newSeasonAsked, this, &SeasonPage::declareSeason);
    connect(m_filterBar, &SeasonFilterBar::seasonChangeAsked, this, &SeasonPage::changeSeason);
    connect(m_whatIf, &WhatIfCard::changed, this, &SeasonPage::reload);
    connect(m_comparison, &ComparisonView::trayAsked, this, &Page::trayAsked);
    connect(m_ageing, &AgeingCard::trayAsked, this, &Page::trayAsked);
}

void SeasonPage::setFilter(const SeasonFilter& filter)
{
    m_filterBar->reload();
    m_filterBar->setFilter(filter);
    noteChange();
}

void SeasonPage::followClock()
{
    const SeasonFilter before = std::exchange(m_usual, journal().review().usualSeason());
    SeasonFilter shown = m_filterBar->filter();
    if (shown.from == before.from && shown.to == before.to) {
        shown.from = m_usual.from;
        shown.to = m_usual.to;
        shown.sownFrom = m_usual.sownFrom;
        shown.sownUntil = m_usual.sownUntil;
        setFilter(shown);
    }
}

void SeasonPage::declareSeason()
{
    Season season;
    season.startsOn = journal().clock().today();
    openSeason(season);
}

// The season that is shown, the latest where days of the grower's own are.
void SeasonPage::changeSeason()
{
    const auto seasons = journal().seasons().all();
    if (!accept(seasons)) {
        return;
    }
    if (seasons->empty()) {
        return declareSeason();
    }
    const auto shown =
        std::find_if(seasons->begin(), seasons->end(), [this](const SeasonSpanOfDays& span) {
            return m_filterBar->filter().sownFrom == span.season.startsOn;
        });
    openSeason((shown == seasons->end() ? seasons->back() : *shown).season);
}

void SeasonPage::openSeason(const Season& season)
{
    auto* dialog = new SeasonDialog(journal(), services(), season, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this] {
        m_usual = journal().review().usualSeason();
        setFilter(m_usual);
    });
    dialog->open();
}

void SeasonPage::showMetric(Response response)
{
    m_response = response;
    m_showsRatings = false;
    showChoice();
    reload();
}

void SeasonPage::showRatings()
{
    m_showsRatings = true;
    showChoice();
    reload();
}

// One choice out of two controls.
void SeasonPage::showChoice()
{
    const auto main = std::find(kMain.begin(), kMain.end(), m_response);
    const bool isMore = main == kMain.end() && !m_showsRatings;
    m_metric->choose(m_showsRatings ? static_cast<int>(kMain.size())
                     : isMore       ? -1
                                    : static_cast<int>(main - kMain.begin()));
    for (QAction* choice : m_moreChoices->actions()) {
        choice->setChecked(isMore && choice->data().toInt() == int(m_response));
    }
    m_more->setText(isMore ? metricName(m_response) : tr("More"));
    m_stack->setCurrentIndex(m_showsRatings ? 1 : 0);
}

SeasonQuestion SeasonPage::question() const
{
    SeasonQuestion asked;
    asked.filter = m_filterBar->filter();
    asked.series = journal().review().seriesOf(asked.filter);
    if (m_showsRatings) {
        asked.parts = {SeasonPart::Tastings};
        return asked;
    }
    asked.asks = {m_filterBar->ask()};
    asked.asks.front().response = m_response;
    asked.parts = partsBeside(m_response);
    asked.whatIf = m_whatIf->whatIf();
    asked.beside = m_filterBar->beside();
    return asked;
}

void SeasonPage::reload()
{
    m_filterBar->reload();
    askSeason(services(), journal(), question(), this,
              m_latest.only([this](const Result<SeasonAnswer>& answer) { show(answer); }));
}

void SeasonPage::show(const Result<SeasonAnswer>& answer)
{
    if (!accept(answer)) {
        return;
    }
    m_shown = *answer;
    if (m_shown->comparisons.empty()) {
        m_ratings->show(m_shown->tastings);
        return;
    }
    const SeasonReview& review = m_shown->review;
    const SeasonComparison& comparison = m_shown->comparisons.front();
    const QStringList counts{tr("%n tray(s)", nullptr, review.trays),
                             tr("%n variet(ies)", nullptr, review.varieties),
                             tr("%n trial(s)", nullptr, review.trials)};
    m_head->setSubtitle(tr("%1  ·  %2").arg(spanText(*m_shown), counts.join(", ")));
    m_comparison->show(review, comparison, chartBeside(*m_shown, comparison));
    const QStringList payback = paybackWords(*m_shown);
    m_paybackWords->setText(payback.join('\n'));
    m_payback->setVisible(!payback.isEmpty());
    m_whatIf->setVisible(m_response == Response::CostPerGram);
    m_whatIf->show(review);
    m_beside->show(m_shown->beside);
    m_ageing->show(m_shown->ageing);
    m_model->show(review);
    m_numbers->fit();
    m_leftOut->setText(leftOutText(review));
}

ReportContent SeasonPage::reportContent() const
{
    return [asked = question()](Journal& own, const Progress& progress) {
        SeasonQuestion whole = reportQuestion(asked.filter);
        whole.series = asked.series;
        for (ComparisonAsk& one : whole.asks) {
            one.groups = asked.asks.empty() ? std::nullopt : asked.asks.front().groups;
            one.marginPercent =
                asked.asks.empty() ? std::nullopt : asked.asks.front().marginPercent;
        }
        return own.review().season(whole, progress).map(seasonReport);
    };
}

void SeasonPage::makeReport(const QString& ending)
{
    ui::makeReport(this, services(), journal(), "season" + ending, reportContent());
}

bool SeasonPage::print()
{
    printReport(this, services(), journal(), reportContent());
    return true;
}

} // namespace plumule::ui

#include "moc_season_page.cpp"
