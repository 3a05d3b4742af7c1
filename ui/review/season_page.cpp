#include "ui/review/season_page.h"

#include "ui/chart/chart_text.h"
#include "ui/chart/chart_view.h"
#include "ui/review/season_model.h"
#include "ui/review/season_words.h"
#include "ui/shared/flow_layout.h"
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
    inner->addLayout(m_charts, 1);
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
    row->addWidget(label(tr("Harvested from"), "muted"));
    row->addWidget(m_from);
    row->addWidget(label(tr("to"), "muted"));
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

QWidget* SeasonPage::buildTable()
{
    auto* card = new Card(tr("The numbers, medium by medium"));
    m_model = new SeasonModel(this);
    m_table = new QTableView;
    m_table->setObjectName("numbers");
    m_table->setAccessibleName(tr("The season's numbers"));
    m_table->setModel(m_model);
    m_table->setShowGrid(false);
    m_table->setSelectionMode(QAbstractItemView::NoSelection);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(scaled(36));
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_leftOut = label(QString(), "muted");
    m_leftOut->setObjectName("leftOut");
    m_leftOut->setWordWrap(true);
    card->body()->addWidget(m_table);
    card->body()->addWidget(m_leftOut);
    return card;
}

void SeasonPage::wireSignals()
{
    connect(m_metric, &Segmented::chosenByHand, this, [this] { showCharts(); });
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
        [path, &clock, filter = m_filter](const Progress& progress) -> Result<SeasonReview> {
            const auto opened = Journal::open(path, clock, Access::ReadOnly);
            if (!opened) {
                return tl::unexpected<Error>(opened.error());
            }
            return (*opened)->review().season(filter, progress);
        },
        this,
        [this, number](const Result<SeasonReview>& review) {
            if (number == m_asked) {
                show(review);
            }
        });
}

void SeasonPage::show(const Result<SeasonReview>& review)
{
    if (!accept(review)) {
        return;
    }
    m_review = *review;
    m_head->setSubtitle(tr("%1 – %2  ·  %3 trays, %4 varieties, %5 trials")
                            .arg(longDateText(m_filter.from), longDateText(m_filter.to))
                            .arg(review->trays)
                            .arg(review->varieties)
                            .arg(review->trials));
    const SeasonWords words = wordsFor(*m_review);
    m_headline->setText(words.headline);
    m_detail->setText(words.detail);
    m_model->show(*m_review);
    m_table->setFixedHeight(m_table->horizontalHeader()->sizeHint().height() +
                            scaled(36) * m_model->rowCount() + scaled(14));
    m_leftOut->setText(leftOutText(*m_review));
    showCharts();
}

void SeasonPage::showMetric(Metric metric)
{
    m_metric->choose(static_cast<int>(metric));
    showCharts();
}

void SeasonPage::showCharts()
{
    if (!m_review) {
        return;
    }
    const auto put = [](Card& card, ChartView& chart, const ChartSpec& spec) {
        card.setHeading(chartTitle(spec));
        chart.draw(spec);
    };
    m_rightCard->setVisible(m_metric->chosen() != static_cast<int>(Metric::Height));
    switch (static_cast<Metric>(m_metric->chosen())) {
    case Metric::Yield:
        put(*m_leftCard, *m_left, yieldChart(*m_review));
        put(*m_rightCard, *m_right, costByUsesChart(*m_review));
        break;
    case Metric::CostPerGram:
        put(*m_leftCard, *m_left, costPerGramChart(*m_review));
        put(*m_rightCard, *m_right, costByUsesChart(*m_review));
        break;
    case Metric::Height:
        put(*m_leftCard, *m_left, heightChart(*m_review));
        break;
    }
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
