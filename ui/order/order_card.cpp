#include "ui/order/order_card.h"

#include "core/forecast/forecast_sums.h"
#include "core/order/order_chart.h"
#include "ui/chart/chart_view.h"
#include "ui/order/order_text.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"

#include <QBoxLayout>
#include <QGridLayout>

namespace plumule::ui {
namespace {

constexpr int kLeastWidth = 230;
constexpr int kChartHeight = 200;

QString rangeText(Mass low, Mass high, const UnitText& units)
{
    return OrderCard::tr("%1 to %2").arg(units.mass(low, 0), units.mass(high, 0));
}

// Of the trays that stand for the promise, as many as a line holds.
QString traysText(const OrderLine& line)
{
    QStringList trays;
    for (const GrowingFor& tray : line.growing) {
        trays << OrderCard::tr("%1 (due %2)")
                     .arg(QString::fromStdString(tray.code), weekdayText(tray.due));
    }
    return trays.isEmpty() ? QString() : OrderCard::tr("Growing for it: %1.").arg(trays.join(", "));
}

} // namespace

OrderCard::OrderCard(QWidget* parent)
    : Card(QString(), "card", parent)
{
    setObjectName("orderCard");
    wrapHeading();
    m_standing = label(QString(), "muted");
    headingRow()->addWidget(m_standing);
    m_plan = label(QString());
    m_plan->setObjectName("orderPlan");
    m_plan->setWordWrap(true);
    m_lacks = label(QString(), "warning");
    m_lacks->setObjectName("orderLacks");
    m_lacks->setWordWrap(true);
    m_growing = label(QString(), "muted");
    m_growing->setObjectName("orderGrowing");
    m_growing->setWordWrap(true);
    m_body = buildFacts();
    m_sow = new KeyButton(tr("Sow…"), QStringLiteral("Enter"), "primary");
    m_sow->setObjectName("orderSow");
    m_change = button(tr("Change the order…"));
    m_change->setObjectName("orderChange");
    auto* acts = new QWidget;
    auto* row = new FlowLayout(acts);
    row->addWidget(m_sow);
    row->addWidget(m_change);
    body()->addWidget(m_plan);
    body()->addWidget(m_lacks);
    body()->addWidget(m_growing);
    body()->addWidget(m_body);
    body()->addStretch(1);
    body()->addWidget(acts);
    connect(m_sow, &QPushButton::clicked, this, &OrderCard::sowAsked);
    connect(m_change, &QPushButton::clicked, this, &OrderCard::changeAsked);
    showNothing();
}

QWidget* OrderCard::buildFacts()
{
    auto* both = new QWidget;
    m_beside = new QBoxLayout(QBoxLayout::LeftToRight, both);
    m_beside->setContentsMargins(0, 0, 0, 0);
    m_beside->setSpacing(scaled(14));
    m_chart = new ChartView;
    m_chart->setObjectName("orderChart");
    m_chart->setMinimumSize(scaled(kLeastWidth), scaled(kChartHeight));
    m_chart->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    auto* facts = new QWidget;
    // A form's rows don't grow with words that wrap.
    m_facts = new QGridLayout;
    m_facts->setContentsMargins(0, 0, 0, 0);
    m_facts->setHorizontalSpacing(scaled(14));
    m_facts->setVerticalSpacing(scaled(7));
    m_facts->setColumnStretch(1, 1);
    facts->setLayout(m_facts);
    m_beside->addWidget(m_chart, 1, Qt::AlignTop);
    m_beside->addWidget(facts, 1, Qt::AlignTop);
    return both;
}

void OrderCard::resizeEvent(QResizeEvent* event)
{
    Card::resizeEvent(event);
    const bool wasBeside = m_beside->direction() == QBoxLayout::LeftToRight;
    m_beside->setDirection(standsBeside(width(), scaled(2 * kLeastWidth), wasBeside)
                               ? QBoxLayout::LeftToRight
                               : QBoxLayout::TopToBottom);
}

void OrderCard::addFact(const QString& name, const QString& value)
{
    auto* words = label(value);
    words->setWordWrap(true);
    const int row = m_facts->count() / 2;
    m_facts->addWidget(label(name, "muted"), row, 0, Qt::AlignTop);
    m_facts->addWidget(words, row, 1, Qt::AlignTop);
}

void OrderCard::showFacts(const OrderLine& line, const UnitText& units)
{
    clearLayout(m_facts);
    addFact(tr("expected"), units.mass(line.planned.mean, 0));
    addFact(tr("8 in 10"), rangeText(line.planned.low, line.planned.high, units));
    if (!line.sowing) {
        return;
    }
    const SowingNeed& need = *line.sowing;
    const YieldForecast tray = yieldOf(need.model);
    addFact(tr("medium"), QString::fromStdString(need.medium.name));
    addFact(tr("a tray gives"),
            tr("%1, 8 in 10 %2")
                .arg(units.mass(tray.middle, 0), rangeText(tray.low, tray.high, units)));
    addFact(tr("known from"), basisText(need.model));
    if (need.times.soak) {
        addFact(tr("soak"), weekdayText(need.times.soak->date));
    }
    if (!need.isLate) {
        addFact(tr("places"), placesText(line));
        addFact(tr("seed"), seedText(line, units));
    }
}

void OrderCard::show(const OrderLine& line, const UnitText& units, Date today, bool mayChange)
{
    setHeading(tr("%1: %2 of %3")
                   .arg(promiseText(line.promise), units.mass(line.promise.order.amount, 0),
                        line.variety.empty() ? QString() : QString::fromStdString(line.variety)));
    m_standing->setText(standingText(line.promise.order));
    m_plan->setText(planText(line));
    const QStringList lacks = lackTexts(line, units);
    m_lacks->setVisible(!lacks.isEmpty());
    m_lacks->setText(lacks.join(' '));
    const QString note = QString::fromStdString(line.promise.order.note);
    QStringList more{traysText(line), note};
    more.removeAll(QString());
    m_growing->setText(more.join(' '));
    m_growing->setVisible(!m_growing->text().isEmpty());
    showFacts(line, units);
    m_chart->setVisible(!line.chances.empty());
    if (line.sowing) {
        m_chart->draw(chanceChart(line.chances, line.sowing->medium.marker));
    }
    m_body->show();
    const bool isTime = isTimeToSow(line, today);
    m_sow->setVisible(line.sowing && !line.sowing->isLate);
    m_sow->setEnabled(mayChange && isTime);
    if (line.sowing) {
        m_sow->setText(isTime ? tr("Sow %n tray(s)…", nullptr, line.sowing->trays)
                              : tr("To be sown %1").arg(weekdayText(beginOf(*line.sowing).date)));
    }
    m_change->show();
    m_change->setEnabled(mayChange);
}

void OrderCard::showNothing()
{
    setHeading(tr("Nothing is promised"));
    m_standing->clear();
    m_plan->setText(tr("Write down what was promised: how much of what, for which day. Plumule "
                       "says how many trays that takes, on what, and when to sow them."));
    for (QWidget* part : {static_cast<QWidget*>(m_lacks), static_cast<QWidget*>(m_growing), m_body,
                          static_cast<QWidget*>(m_sow), static_cast<QWidget*>(m_change)}) {
        part->hide();
    }
}

bool isTimeToSow(const OrderLine& line, Date today)
{
    return line.sowing && !line.sowing->isLate && beginOf(*line.sowing).date <= today;
}

} // namespace plumule::ui

#include "moc_order_card.cpp"
