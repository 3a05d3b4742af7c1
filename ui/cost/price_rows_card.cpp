#include "ui/cost/price_rows_card.h"

#include "core/review/answer/costs_answer.h"
#include "ui/chart/step_line.h"
#include "ui/cost/costs_text.h"
#include "ui/widget/theme.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include <cmath>

namespace plumule::ui {
namespace {

constexpr int kDaysShown = 365;

// Small prices are told apart by more figures.
QString priceText(double price)
{
    return numberText(price, price != 0 && std::abs(price) < 0.1 ? 4 : 2);
}

QString changeText(const PriceHistory& history, Date today)
{
    const auto change = history.yearlyChange(today);
    if (!change) {
        return {};
    }
    const int percent = qRound(*change * 100);
    if (percent == 0) {
        return PriceRowsCard::tr("unchanged");
    }
    return PriceRowsCard::tr("%1%2 %").arg(percent > 0 ? QStringLiteral("+") : QString(),
                                           numberText(percent, 0));
}

} // namespace

PriceRowsCard::PriceRowsCard(QWidget* parent)
    : Card(tr("Prices"), "card", parent)
{
    auto* rows = new QWidget;
    m_grid = new QGridLayout(rows);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(scaled(isTypeLarge() ? 6 : 12));
    m_grid->setVerticalSpacing(scaled(2));
    m_grid->setColumnStretch(1, 1);
    body()->addWidget(rows);
}

void PriceRowsCard::show(const CostsAnswer& answer, const QString& variety)
{
    clearLayout(m_grid);
    std::map<MediumId, QString> media;
    for (const MediumCosts& each : answer.media) {
        media[each.medium.id] = QString::fromStdString(each.medium.name);
    }
    if (!isTypeLarge()) {
        m_grid->addWidget(label(tr("twelve months"), "muted"), 0, 1);
        m_grid->addWidget(label(tr("now"), "muted"), 0, 2, Qt::AlignRight);
        m_grid->addWidget(label(tr("in a year"), "muted"), 0, 3, Qt::AlignRight);
    }
    int row = 1;
    for (const PriceHistory& history : answer.histories) {
        addRow(row++, history, answer, nameOfPriced(history, media, variety));
    }
}

void PriceRowsCard::addRow(int row, const PriceHistory& history, const CostsAnswer& answer,
                           const QString& name)
{
    const Date today = answer.madeOn;
    const auto price = history.on(today);
    auto* words = label(name, price ? "" : "warning");
    words->setWordWrap(true);
    auto* line = new StepLine;
    line->draw(priceChart(history, today - kDaysShown, today, answer.review.currency));
    const PricedUnit unit = unitOfPriced(history, answer);
    auto* now = label(price ? QStringLiteral("%1 %2").arg(priceText(*price * unit.times), unit.name)
                            : tr("missing, %1").arg(unit.name),
                      price ? "strong" : "warning");
    auto* inAYear = label(changeText(history, today), "muted");
    if (isTypeLarge() && !inAYear->text().isEmpty()) {
        inAYear->setText(tr("%1 in a year").arg(inAYear->text()));
        inAYear->setWordWrap(true);
    }
    put(row, {words, line, now, inAYear, changeButton(history, price.has_value(), name)});
}

// In large type a price takes two lines: what it is and how much, and how it went.
void PriceRowsCard::put(int row, const PriceCells& cells)
{
    const Qt::Alignment right = Qt::AlignRight | Qt::AlignVCenter;
    if (!isTypeLarge()) {
        m_grid->addWidget(cells.name, row, 0);
        m_grid->addWidget(cells.line, row, 1);
        m_grid->addWidget(cells.now, row, 2, right);
        m_grid->addWidget(cells.inAYear, row, 3, right);
        if (cells.change != nullptr) {
            m_grid->addWidget(cells.change, row, 4, right);
        }
        return;
    }
    const int below = 2 * row + 1;
    m_grid->addWidget(cells.name, 2 * row, 0);
    m_grid->addWidget(cells.now, 2 * row, 1, 1, 2, right);
    m_grid->addWidget(cells.line, below, 0);
    m_grid->addWidget(cells.inAYear, below, 1, right);
    if (cells.change != nullptr) {
        m_grid->addWidget(cells.change, below, 2, right);
    }
}

// None for seed, which has its price with its lot.
QPushButton* PriceRowsCard::changeButton(const PriceHistory& history, bool hasPrice,
                                         const QString& name)
{
    if (!history.item) {
        return nullptr;
    }
    auto* change = button(hasPrice ? tr("Change…") : tr("Add…"), "quiet");
    change->setObjectName(QStringLiteral("price_%1_%2")
                              .arg(QLatin1String(toText(*history.item)))
                              .arg(history.medium ? history.medium->value : 0));
    change->setAccessibleName(tr("The price of %1").arg(name));
    connect(
        change, &QPushButton::clicked, this,
        [this, item = *history.item, medium = history.medium] { Q_EMIT priceAsked(item, medium); });
    return change;
}

} // namespace plumule::ui

#include "moc_price_rows_card.cpp"
