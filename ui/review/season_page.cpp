#include "ui/review/season_page.h"

#include "core/review/comparison_charts.h"
#include "ui/chart/chart_text.h"
#include "ui/chart/chart_view.h"
#include "ui/review/pair_model.h"
#include "ui/review/season_model.h"
#include "ui/review/season_words.h"
#include "ui/review/verdict_words.h"
#include "ui/shared/flow_layout.h"
#include "ui/shared/plain_table.h"
#include "ui/shared/theme.h"

#include <QDateEdit>
#include <QHeaderView>
#include <QMenu>
#include <QScrollArea>
#include <QTableView>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QDateEdit* dayField(const char* name)
{
    auto* field = new QDateEdit;
    field->setObjectName(name);
    field->setDisplayFormat("d MMM yyyy");
    field->setCalendarPopup(true);
    field->setKeyboardTracking(false);
    return field;
}

Result<SeasonAnswer> answerFor(Journal& journal, const SeasonFilter& filter, Response response,
                               const Progress& progress)
{
    SeasonAnswer answer;
    const auto review = journal.review().season(filter, progress);
    if (!review) {
        return tl::unexpected<Error>(review.error());
    }
    answer.review = *review;
    progress.report(0.3);
    const auto comparison = journal.review().comparison(filter, response, std::nullopt, progress);
    if (!comparison) {
        return tl::unexpected<Error>(comparison.error());
    }
    answer.comparison = *comparison;
    if (response == Response::HeightOnDay) {
        progress.report(0.6);
        answer.heights =
            journal.review().heightFits(filter, progress).value_or(std::vector<HeightFit>());
    }
    return answer;
}

} // namespace

SeasonPage::SeasonPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(12));
    buildHead();
    column->addWidget(m_head);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner), 1);
    inner->addWidget(buildFilter());
    inner->addWidget(buildAnswer());
    buildCharts();
    inner->addWidget(buildFairness());
    inner->addLayout(m_charts, 1);
    inner->addWidget(buildPairs());
    inner->addWidget(buildTable());
    wireSignals();
    setFilter(journal.review().usualSeason());
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
    m_metric = new Segmented({tr("Yield g/tray"), tr("Cost per gram"), tr("Height")});
    m_metric->setObjectName("metric");
    m_head->addControl(m_metric);
}

QWidget* SeasonPage::buildFilter()
{
    auto* bar = new QWidget;
    auto* row = new FlowLayout(bar);
    m_from = dayField("from");
    m_to = dayField("to");
    m_varieties = button(tr("All varieties"));
    m_varieties->setObjectName("varieties");
    setRole(m_varieties, "menu");
    m_varietyMenu = new QMenu(m_varieties);
    m_varieties->setMenu(m_varietyMenu);
    const auto beside = [this](const QString& text) {
        auto* made = label(text, "muted");
        made->setMinimumHeight(m_from->sizeHint().height());
        return made;
    };
    row->addWidget(beside(tr("Harvested from")));
    row->addWidget(m_from);
    row->addWidget(beside(tr("to")));
    row->addWidget(m_to);
    row->addWidget(m_varieties);
    return bar;
}

QWidget* SeasonPage::buildAnswer()
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
    return m_answer;
}

void SeasonPage::buildCharts()
{
    m_charts = new QBoxLayout(QBoxLayout::LeftToRight);
    m_charts->setSpacing(scaled(16));
    const auto add = [this](Card*& card, ChartView*& chart, const char* chartName) {
        card = new Card(QStringLiteral(" "));
        chart = new ChartView;
        chart->setObjectName(chartName);
        chart->setMinimumHeight(scaled(250));
        auto* save = button(tr("Save…"), "quiet");
        save->setAccessibleName(tr("Save this chart as a picture"));
        connect(save, &QPushButton::clicked, this, [this, view = chart] { saveChart(*view); });
        connect(chart, &ChartView::pointChosen, this,
                [this](qint64 tray) { Q_EMIT trayAsked(TrayId{tray}); });
        card->headingRow()->addWidget(save);
        card->body()->addWidget(chart, 1);
        m_charts->addWidget(card, 1);
    };
    add(m_leftCard, m_left, "leftChart");
    add(m_rightCard, m_right, "rightChart");
}

QWidget* SeasonPage::buildFairness()
{
    m_fairness = new Card(tr("What else differed"), "caution");
    m_fairnessWords = label(QString());
    m_fairnessWords->setObjectName("fairness");
    m_fairnessWords->setWordWrap(true);
    m_fairness->body()->addWidget(m_fairnessWords);
    m_fairness->hide();
    return m_fairness;
}

QWidget* SeasonPage::buildPairs()
{
    auto* card = new Card(tr("Differences between media"));
    m_pairs = new PairModel(this);
    m_pairTable = plainTable(m_pairs, "pairs", tr("Differences between media"));
    m_pairTable->horizontalHeader()->setStretchLastSection(true);
    card->body()->addWidget(m_pairTable);
    return card;
}

QWidget* SeasonPage::buildTable()
{
    auto* card = new Card(tr("The numbers as weighed, medium by medium"));
    m_model = new SeasonModel(this);
    m_table = plainTable(m_model, "numbers", tr("The season's numbers"));
    m_leftOut = label(QString(), "muted");
    m_leftOut->setObjectName("leftOut");
    m_leftOut->setWordWrap(true);
    card->body()->addWidget(m_table);
    card->body()->addWidget(m_leftOut);
    return card;
}

void SeasonPage::wireSignals()
{
    connect(m_metric, &Segmented::chosenByHand, this, &SeasonPage::reload);
    for (QDateEdit* field : {m_from, m_to}) {
        connect(field, &QDateEdit::dateChanged, this, [this] {
            m_filter.from = fromQDate(m_from->date());
            m_filter.to = fromQDate(m_to->date());
            reload();
        });
    }
    connect(m_varietyMenu, &QMenu::triggered, this, [this](const QAction* chosen) {
        if (!chosen->data().isValid()) {
            m_filter.varieties.clear();
        } else if (chosen->isChecked()) {
            m_filter.varieties.push_back(VarietyId{chosen->data().toLongLong()});
        } else {
            std::erase(m_filter.varieties, VarietyId{chosen->data().toLongLong()});
        }
        reload();
    });
}

void SeasonPage::setFilter(const SeasonFilter& filter)
{
    m_filter = filter;
    const QSignalBlocker noFrom(m_from);
    const QSignalBlocker noTo(m_to);
    m_from->setDate(toQDate(filter.from));
    m_to->setDate(toQDate(filter.to));
    noteChange();
}

void SeasonPage::fillVarieties()
{
    const auto varieties = journal().varieties().all(true);
    if (!varieties) {
        return;
    }
    m_varietyMenu->clear();
    m_varietyMenu->addAction(tr("All varieties"));
    m_varietyMenu->addSeparator();
    QStringList chosenNames;
    for (const Variety& variety : *varieties) {
        const QString varietyName = QString::fromStdString(variety.name);
        QAction* choice = m_varietyMenu->addAction(varietyName);
        choice->setCheckable(true);
        choice->setData(static_cast<qlonglong>(variety.id.value));
        const bool isChosen = std::find(m_filter.varieties.begin(), m_filter.varieties.end(),
                                        variety.id) != m_filter.varieties.end();
        choice->setChecked(isChosen);
        if (isChosen) {
            chosenNames << varietyName;
        }
    }
    m_varieties->setText(chosenNames.isEmpty()    ? tr("All varieties")
                         : chosenNames.size() < 3 ? chosenNames.join(", ")
                                                  : tr("%1 varieties").arg(chosenNames.size()));
}

void SeasonPage::reload()
{
    fillVarieties();
    const int number = ++m_asked;
    const auto path = journal().path();
    const Clock& clock = journal().clock();
    services().tasks.run(
        tr("Reviewing the season"),
        [path, &clock, filter = m_filter,
         asked = response()](const Progress& progress) -> Result<SeasonAnswer> {
            const auto opened = Journal::open(path, clock, Access::ReadOnly);
            if (!opened) {
                return tl::unexpected<Error>(opened.error());
            }
            return answerFor(**opened, filter, asked, progress);
        },
        this,
        [this, number](const Result<SeasonAnswer>& answer) {
            if (number == m_asked) {
                show(answer);
            }
        });
}

Response SeasonPage::response() const
{
    switch (static_cast<Metric>(m_metric->chosen())) {
    case Metric::CostPerGram:
        return Response::CostPerGram;
    case Metric::Height:
        return Response::HeightOnDay;
    case Metric::Yield:
        break;
    }
    return Response::YieldPerTray;
}

void SeasonPage::show(const Result<SeasonAnswer>& answer)
{
    if (!accept(answer)) {
        return;
    }
    m_shown = *answer;
    const SeasonReview& review = m_shown->review;
    const QStringList counts{tr("%n tray(s)", nullptr, review.trays),
                             review.varieties == 1 ? tr("1 variety")
                                                   : tr("%1 varieties").arg(review.varieties),
                             tr("%n trial(s)", nullptr, review.trials)};
    m_head->setSubtitle(tr("%1 – %2  ·  %3  ·  %4")
                            .arg(longDateText(m_filter.from), longDateText(m_filter.to),
                                 counts.join(", "), modelWords(m_shown->comparison.model)));
    showWords();
    showTables();
    showCharts();
}

void SeasonPage::showWords()
{
    const SeasonComparison& comparison = m_shown->comparison;
    // Where nothing can be told apart, why comes first.
    const bool hasPairs = std::any_of(m_shown->review.media.begin(), m_shown->review.media.end(),
                                      [](const MediumSeason& each) { return each.yield.n >= 2; });
    const auto told = verdictWords(comparison);
    const auto plain = wordsFor(m_shown->review);
    const bool isTold = hasPairs && !comparison.pairs.empty();
    m_headline->setText(isTold ? told.headline : plain.headline);
    QStringList detail{isTold ? told.detail : plain.detail + ' ' + told.headline};
    detail << checkWords(comparison.checks);
    m_detail->setText(detail.join(' ').trimmed());
    QStringList fairness = fairnessWords(comparison);
    const QStringList advice = adviceWords(comparison.suggestions);
    if (!fairness.isEmpty() && !advice.isEmpty()) {
        fairness << tr("For a fairer trial next time: %1.").arg(advice.join("; "));
    }
    m_fairnessWords->setText(fairness.join('\n'));
    m_fairness->setVisible(!fairness.isEmpty());
}

void SeasonPage::showTables()
{
    m_pairs->show(m_shown->comparison);
    m_model->show(m_shown->review);
    fitHeight(*m_pairTable);
    fitHeight(*m_table);
    m_leftOut->setText(leftOutText(m_shown->review));
}

void SeasonPage::showMetric(Metric metric)
{
    m_metric->choose(static_cast<int>(metric));
    reload();
}

void SeasonPage::showCharts()
{
    const auto put = [](Card& card, ChartView& chart, const ChartSpec& spec) {
        card.setHeading(chartTitle(spec));
        chart.draw(spec);
    };
    put(*m_leftCard, *m_left, adjustedMeansChart(m_shown->comparison));
    if (response() != Response::HeightOnDay) {
        const ChartSpec byUses = costByUsesChart(m_shown->review);
        m_rightCard->setVisible(!byUses.series.empty());
        put(*m_rightCard, *m_right, byUses);
        return;
    }
    m_rightCard->show();
    const auto variety = mostReadVariety(m_shown->heights);
    put(*m_rightCard, *m_right,
        variety ? heightFitChart(m_shown->heights, *variety) : heightChart(m_shown->review));
}

void SeasonPage::saveChart(ChartView& chart)
{
    services().ask.fileToSave(this, tr("Save this chart"),
                              QString::fromStdString(chart.spec().key) + ".png",
                              tr("Pictures (*.png);;Drawings (*.svg);;Pages (*.pdf)"),
                              [this, &chart](const QString& path) {
                                  if (chart.saveTo(path)) {
                                      services().messages.tell(tr("Saved %1.").arg(path));
                                  } else {
                                      services().messages.refuse(sentence(
                                          {ErrorKind::NotWritable, "file", path.toStdString()}));
                                  }
                              });
}

void SeasonPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    m_charts->setDirection(width() >= scaled(960) ? QBoxLayout::LeftToRight
                                                  : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui
