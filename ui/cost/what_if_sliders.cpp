#include "ui/cost/what_if_sliders.h"

#include "ui/cost/costs_text.h"
#include "ui/cost/what_if_slider.h"
#include "ui/widget/theme.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kPauseMs = 250; // before what is dragged is worked out

const PriceHistory* historyOf(const std::vector<PriceHistory>& histories, PriceItem item,
                              std::optional<MediumId> medium)
{
    const auto found =
        std::find_if(histories.begin(), histories.end(), [&](const PriceHistory& each) {
            return each.item == item && each.medium == medium;
        });
    return found == histories.end() ? nullptr : &*found;
}

} // namespace

WhatIfSliders::WhatIfSliders(QWidget* parent)
    : Card(tr("What if"), "card", parent)
{
    m_back = button(tr("As it is today"), "quiet");
    m_back->setObjectName("whatIfToday");
    m_back->setEnabled(false);
    headingRow()->addWidget(m_back);
    auto* words =
        label(tr("As if it had held when these trays were sown. What was paid stays beside "
                 "it; nothing is stored."),
              "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
    auto* rows = new QWidget;
    m_grid = new QGridLayout(rows);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(scaled(12));
    m_grid->setColumnStretch(1, 1);
    body()->addWidget(rows);
    m_later = new QTimer(this);
    m_later->setSingleShot(true);
    m_later->setInterval(kPauseMs);
    connect(m_later, &QTimer::timeout, this, &WhatIfSliders::changed);
    connect(m_back, &QPushButton::clicked, this, &WhatIfSliders::goBack);
}

void WhatIfSliders::addMedium(std::vector<Lever>& levers, const Medium& medium,
                              const std::vector<PriceHistory>& histories, const CostsAnswer& answer)
{
    const QString name = QString::fromStdString(medium.name);
    const PriceHistory* history = historyOf(histories, PriceItem::Medium, medium.id);
    const auto price = history == nullptr ? std::nullopt : history->on(answer.madeOn);
    if (price && *price > 0) {
        levers.push_back({Of::MediumPrice, PriceItem::Medium, medium.id, name, *price,
                          unitOfPriced(*history, answer)});
    }
    if (medium.isReusable && medium.plannedUses.value_or(0) > 0) {
        levers.push_back({Of::Uses,
                          PriceItem::Medium,
                          medium.id,
                          tr("%1, uses").arg(name),
                          double(*medium.plannedUses),
                          {tr("planned")}});
    }
}

std::vector<WhatIfSliders::Lever> WhatIfSliders::leversOf(const CostsAnswer& answer)
{
    std::vector<Lever> levers;
    for (const PriceItem item : {PriceItem::Labour, PriceItem::Electricity}) {
        const PriceHistory* history = historyOf(answer.histories, item, std::nullopt);
        const auto price = history == nullptr ? std::nullopt : history->on(answer.madeOn);
        if (price && *price > 0) {
            levers.push_back({Of::Item,
                              item,
                              {},
                              nameOfPriced(*history, {}, {}),
                              *price,
                              unitOfPriced(*history, answer)});
        }
    }
    if (answer.seedPrice) {
        levers.push_back({Of::Seed,
                          PriceItem::Labour,
                          {},
                          tr("Seed"),
                          *answer.seedPrice,
                          unitOfPriced(PriceHistory(), answer)});
    }
    for (const MediumCosts& each : answer.media) {
        addMedium(levers, each.medium, answer.histories, answer);
    }
    return levers;
}

void WhatIfSliders::show(const CostsAnswer& answer)
{
    std::vector<Lever> levers = leversOf(answer);
    const bool isSame = std::equal(levers.begin(), levers.end(), m_levers.begin(), m_levers.end(),
                                   [](const Lever& a, const Lever& b) {
                                       return a.of == b.of && a.item == b.item &&
                                              a.medium == b.medium && a.name == b.name;
                                   });
    if (isSame) {
        for (std::size_t i = 0; i < levers.size(); ++i) {
            m_levers[i].today = levers[i].today;
            m_levers[i].unit = levers[i].unit;
            say(m_levers[i]);
        }
    } else {
        m_levers = std::move(levers);
        build();
    }
    setVisible(!m_levers.empty());
}

void WhatIfSliders::build()
{
    clearLayout(m_grid);
    int row = 0;
    for (Lever& lever : m_levers) {
        auto* name = label(lever.name);
        lever.slider = new WhatIfSlider;
        lever.slider->setObjectName(QStringLiteral("whatIf%1").arg(row));
        lever.slider->setAccessibleName(lever.name);
        lever.value = label(QString());
        lever.value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        m_grid->addWidget(name, row, 0);
        m_grid->addWidget(lever.slider, row, 1);
        m_grid->addWidget(lever.value, row++, 2);
        connect(lever.slider, &QSlider::valueChanged, this, [this, i = row - 1] {
            say(m_levers[static_cast<std::size_t>(i)]);
            m_later->start();
        });
        say(lever);
    }
    m_back->setEnabled(false);
}

// The value as the slider has it; today's stays in sight as its stroke, and beside it.
void WhatIfSliders::say(const Lever& lever)
{
    const double value = lever.today * lever.unit.times * lever.slider->factor();
    const int decimals = lever.of == Of::Uses ? 0 : 2;
    const bool isMoved = lever.slider->value() != 0;
    const QString shown = QStringLiteral("%1 %2").arg(numberText(value, decimals), lever.unit.name);
    lever.value->setText(
        isMoved
            ? tr("%1, today %2").arg(shown, numberText(lever.today * lever.unit.times, decimals))
            : shown);
    setRole(lever.value, isMoved ? "strong" : "muted");
    m_back->setEnabled(std::any_of(m_levers.begin(), m_levers.end(), [](const Lever& each) {
        return each.slider != nullptr && each.slider->value() != 0;
    }));
}

void WhatIfSliders::goBack()
{
    for (const Lever& lever : m_levers) {
        lever.slider->setValue(0);
    }
    m_later->stop();
    Q_EMIT changed();
}

WhatIf WhatIfSliders::whatIf() const
{
    WhatIf whatIf;
    for (const Lever& lever : m_levers) {
        if (lever.slider == nullptr || lever.slider->value() == 0) {
            continue;
        }
        const double value = lever.today * lever.slider->factor();
        switch (lever.of) {
        case Of::Item:
            whatIf.prices[lever.item] = money(value);
            break;
        case Of::MediumPrice:
            whatIf.mediumPrices[lever.medium] = money(value);
            break;
        case Of::Uses:
            whatIf.plannedUses[lever.medium] = std::max(1, qRound(value));
            break;
        case Of::Seed:
            whatIf.seedFactor = lever.slider->factor();
            break;
        }
    }
    return whatIf;
}

} // namespace plumule::ui

#include "moc_what_if_sliders.cpp"
