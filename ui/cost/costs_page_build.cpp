// Part of ui/cost/costs_page.h: how it is made up and filled.
#include "core/journal/review/season_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/review/charts/cost_parts_chart.h"
#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_card.h"
#include "ui/chart/chart_view.h"
#include "ui/cost/costs_page.h"
#include "ui/cost/costs_text.h"
#include "ui/cost/payback_text.h"
#include "ui/cost/price_rows_card.h"
#include "ui/cost/what_if_sliders.h"
#include "ui/cost/work_card.h"
#include "ui/page/table_card.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"

#include <QComboBox>
#include <QScrollArea>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kWidthBeside = 900; // from which the cards stand in two columns
constexpr int kDaysOfAYear = 365;
constexpr int kDaysOfAQuarter = 91;

} // namespace

void CostsPage::build()
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(12));
    buildHead();
    QVBoxLayout* inner = nullptr;
    QScrollArea* area = scrolling(inner);
    inner->addWidget(buildHeadline());
    inner->addWidget(buildColumns());
    inner->addStretch(1);
    column->addWidget(m_head);
    column->addWidget(area, 1);
    fillChoices();
    layOut();
}

void CostsPage::buildHead()
{
    m_head = new PageHead(tr("Costs"));
    m_variety = new QComboBox;
    m_variety->setObjectName("costVariety");
    m_variety->setAccessibleName(tr("Which variety"));
    m_variety->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_span = new QComboBox;
    m_span->setObjectName("costSpan");
    m_span->setAccessibleName(tr("Which days"));
    m_span->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    auto* prices = button(tr("Prices…"), "primary");
    prices->setObjectName("addPrice");
    connect(prices, &QPushButton::clicked, this, [this] { askPrice(std::nullopt, std::nullopt); });
    m_head->addControl(m_variety);
    m_head->addControl(m_span);
    m_head->addControl(prices);
}

QWidget* CostsPage::buildHeadline()
{
    auto* card = new Card(QString(), "answer");
    m_headline = label(QString(), "strong");
    m_headline->setObjectName("costsHeadline");
    m_headline->setWordWrap(true);
    m_headline->setFont(uiFont(1.1, QFont::DemiBold));
    m_lacks = label(QString());
    m_lacks->setObjectName("costsLacks");
    m_lacks->setWordWrap(true);
    auto* buttons = new QWidget;
    m_lackButtons = new FlowLayout(buttons);
    card->body()->addWidget(m_headline);
    card->body()->addWidget(m_lacks);
    card->body()->addWidget(buttons);
    return card;
}

QWidget* CostsPage::buildParts()
{
    m_table = new TextTable(this);
    m_parts = new TableCard(services(), tr("Part by part"), m_table, "costParts");
    auto* words = label(tr("* not of every tray: what is left out is said above"), "muted");
    words->setWordWrap(true);
    m_parts->body()->addWidget(words);
    return m_parts;
}

QWidget* CostsPage::buildColumns()
{
    auto* both = new QWidget;
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight, both);
    m_columns->setContentsMargins(0, 0, 0, 0);
    m_columns->setSpacing(scaled(16));
    auto* left = new QVBoxLayout;
    left->setSpacing(scaled(12));
    m_bars = new ChartCard(services(), "costBars");
    m_bars->chart()->setMinimumHeight(scaled(220));
    m_work = new WorkCard(journal(), services());
    left->addWidget(m_bars);
    left->addWidget(buildParts());
    left->addWidget(m_work);
    left->addStretch(1);
    auto* right = new QVBoxLayout;
    right->setSpacing(scaled(12));
    m_payback = new ChartCard(services(), "costPayback");
    m_payback->chart()->setMinimumHeight(scaled(180));
    m_paybackWords = label(QString(), "muted");
    m_paybackWords->setObjectName("costPaybackWords");
    m_paybackWords->setWordWrap(true);
    m_payback->body()->addWidget(m_paybackWords);
    m_prices = new PriceRowsCard;
    m_whatIf = new WhatIfSliders;
    right->addWidget(m_whatIf);
    right->addWidget(m_prices);
    right->addWidget(m_payback);
    right->addStretch(1);
    m_columns->addLayout(left, 11);
    m_columns->addLayout(right, 9);
    return both;
}

void CostsPage::layOut()
{
    const bool isBeside = m_columns->direction() == QBoxLayout::LeftToRight;
    m_columns->setDirection(standsBeside(width(), scaled(kWidthBeside), isBeside)
                                ? QBoxLayout::LeftToRight
                                : QBoxLayout::TopToBottom);
}

void CostsPage::fillChoices()
{
    const Date today = journal().clock().today();
    refill(*m_variety, [this] {
        m_variety->addItem(tr("All varieties"));
        for (const Variety& each :
             journal().varieties().all(Listed::All).value_or(std::vector<Variety>())) {
            addChoice(*m_variety, QString::fromStdString(each.name), each.id);
        }
    });
    const auto seasons = journal().seasons().all().value_or(std::vector<SeasonSpanOfDays>());
    const int kept = std::max(0, m_span->currentIndex());
    const QSignalBlocker quiet(m_span);
    m_span->clear();
    m_spans.clear();
    const auto add = [&](const QString& name, SeasonFilter filter) {
        m_span->addItem(name);
        m_spans.push_back(std::move(filter));
    };
    const auto ofDays = [today](int days) {
        SeasonFilter filter;
        filter.from = today - days + 1;
        filter.to = today;
        return filter;
    };
    add(tr("Twelve months"), ofDays(kDaysOfAYear));
    add(tr("Three months"), ofDays(kDaysOfAQuarter));
    for (auto each = seasons.rbegin(); each != seasons.rend(); ++each) {
        add(tr("Season %1").arg(QString::fromStdString(each->season.name)), filterOf(*each, today));
    }
    m_span->setCurrentIndex(std::min(kept, m_span->count() - 1));
}

void CostsPage::showHeadline()
{
    m_headline->setText(costsHeadline(*m_shown));
    QStringList lines;
    clearLayout(m_lackButtons);
    for (const PriceLack& lack : m_shown->lacks.prices) {
        lines << lackText(lack, *m_shown);
        const auto& media = m_shown->media;
        const auto medium = std::find_if(media.begin(), media.end(), [&](const MediumCosts& each) {
            return lack.medium == each.medium.id;
        });
        const QString what =
            medium == media.end() ? nameOf(lack.item) : QString::fromStdString(medium->medium.name);
        auto* add = button(tr("Add a price of %1…").arg(what));
        add->setObjectName(QStringLiteral("lack_") + QLatin1String(toText(lack.item)));
        connect(add, &QPushButton::clicked, this,
                [this, item = lack.item, of = lack.medium] { askPrice(item, of); });
        m_lackButtons->addWidget(add);
    }
    setRole(m_lacks, lines.isEmpty() ? "muted" : "warning");
    lines << otherLacks(*m_shown);
    lines << tr("What to expect of the next sowing stands on Season.");
    m_lacks->setText(lines.join(' '));
}

void CostsPage::showParts()
{
    ChartSpec spec = costPartsChart(m_shown->media, m_shown->review.currency);
    const CostUnit unit = unitOf(*m_shown);
    ChartColumn today{tr("today").toStdString(), {}};
    ChartColumn whatIf{tr("what if").toStdString(), {}};
    bool hasWhatIf = false;
    const auto cell = [&](std::optional<double> cost) {
        return cost ? numberText(*cost * unit.ofAGram, 2).toStdString() : std::string();
    };
    for (const MediumCosts& each : m_shown->media) {
        today.cells.push_back(cell(each.today.perGram()));
        whatIf.cells.push_back(cell(each.whatIf ? each.whatIf->perGram() : std::nullopt));
        hasWhatIf = hasWhatIf || each.whatIf;
    }
    spec.columns = {today};
    if (hasWhatIf) {
        spec.columns.push_back(whatIf);
    }
    m_bars->draw(spec);
    PartsTable table = partsTable(*m_shown);
    m_table->show(table.header, std::move(table.rows));
    m_parts->fit();
    m_parts->setVisible(!m_shown->media.empty());
}

void CostsPage::showPayback()
{
    m_payback->draw(paybackChart(m_shown->paybacks, m_shown->review));
    QStringList words = paybackWords(m_shown->paybacks) + paybackWords(m_shown->curveLacks);
    if (!m_shown->paybacksIf.empty()) {
        words << tr("As the sliders stand: %1").arg(paybackWords(m_shown->paybacksIf).join(' '));
    }
    m_paybackWords->setText(words.join('\n'));
    m_paybackWords->setVisible(!words.isEmpty());
}

} // namespace plumule::ui
