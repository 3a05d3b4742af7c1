#include "ui/review/what_if_card.h"

#include "core/journal/cost/cost_entries.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"

#include <QHBoxLayout>
#include <QTimer>
#include <QVBoxLayout>

#include <cmath>

namespace plumule::ui {
namespace {

constexpr int kTypingPauseMs = 400;

} // namespace

WhatIfCard::WhatIfCard(Journal& journal, QWidget* parent)
    : Card(tr("What if…"), "card", parent)
    , m_journal(journal)
{
    m_words = label(QString(), "muted");
    m_words->setObjectName("whatIfWords");
    m_words->setWordWrap(true);
    auto* fields = new QWidget;
    m_flow = new FlowLayout(fields);
    m_back = button(tr("Back to what was paid"), "quiet");
    m_back->setObjectName("whatIfBack");
    headingRow()->addWidget(m_back);
    body()->addWidget(m_words);
    body()->addWidget(fields);
    m_later = new QTimer(this);
    m_later->setSingleShot(true);
    m_later->setInterval(kTypingPauseMs);
    connect(m_later, &QTimer::timeout, this, &WhatIfCard::read);
    connect(m_back, &QPushButton::clicked, this, &WhatIfCard::clear);
}

void WhatIfCard::show(const SeasonReview& review)
{
    std::vector<MediumId> media;
    for (const MediumSeason& season : review.media) {
        media.push_back(season.medium.id);
    }
    if (media != m_media) {
        m_media = media;
        build(review);
    }
    m_back->setVisible(!m_whatIf.isEmpty());
    m_words->setText(m_whatIf.isEmpty()
                         ? tr("Type another price, or how often a piece is to be used; the costs "
                              "above follow. Nothing is stored.")
                         : tr("The costs above are as if these prices and uses had held. Nothing "
                              "is stored."));
}

void WhatIfCard::add(const QString& name, const QString& unit, const QString& present,
                     const QString& key, std::function<void(WhatIf&, double)> put)
{
    auto* box = new QWidget;
    auto* stack = new QVBoxLayout(box);
    stack->setContentsMargins(0, 0, 0, 0);
    stack->setSpacing(scaled(4));
    auto* field = new NumberField(unit);
    field->setObjectName("whatIf" + key);
    field->setAccessibleName(name);
    field->setPlaceholderText(present);
    field->setRange(0, 1e6);
    field->setFixedWidth(scaled(170));
    stack->addWidget(label(name, "muted"));
    stack->addWidget(field);
    m_flow->addWidget(box);
    m_fields.push_back({field, std::move(put)});
    connect(field, &QLineEdit::textEdited, m_later, qOverload<>(&QTimer::start));
}

void WhatIfCard::build(const SeasonReview& review)
{
    clearLayout(m_flow);
    m_fields.clear();
    const auto prices = m_journal.costs().prices().value_or(std::vector<Price>());
    const QString currency = QString::fromStdString(review.currency);
    const Date today = m_journal.clock().today();
    const auto present = [&](PriceItem item, std::optional<MediumId> medium) {
        const auto price = priceOn(prices, item, today, medium);
        return price ? numberText(*price, 2) : tr("no price");
    };
    for (const MediumSeason& season : review.media) {
        const Medium& medium = season.medium;
        const QString name = QString::fromStdString(medium.name);
        const QString key = QString::number(medium.id.value);
        const bool isLoose = medium.form == MediumForm::LooseMix;
        add(tr("%1, %2").arg(name, unitOf(PriceItem::Medium, isLoose)), currency,
            present(PriceItem::Medium, medium.id), "Price" + key,
            [id = medium.id](WhatIf& whatIf, double value) {
                whatIf.mediumPrices[id] = money(value);
            });
        if (medium.isReusable) {
            add(tr("%1, planned uses").arg(name), tr("uses"),
                medium.plannedUses ? QString::number(*medium.plannedUses) : tr("not planned"),
                "Uses" + key, [id = medium.id](WhatIf& whatIf, double value) {
                    whatIf.plannedUses[id] = std::max(1, static_cast<int>(std::lround(value)));
                });
        }
    }
    for (const PriceItem item :
         {PriceItem::Labour, PriceItem::Electricity, PriceItem::Washing, PriceItem::Concentrate}) {
        add(tr("%1, %2").arg(nameOf(item), unitOf(item, false)), currency,
            present(item, std::nullopt), QString::fromLatin1(toText(item)),
            [item](WhatIf& whatIf, double value) { whatIf.prices[item] = money(value); });
    }
}

void WhatIfCard::read()
{
    WhatIf typed;
    for (const Field& each : m_fields) {
        const auto number = each.field->number();
        each.field->markWrong(!number);
        if (number && *number) {
            each.put(typed, **number);
        }
    }
    if (!(typed == m_whatIf)) {
        m_whatIf = typed;
        Q_EMIT changed();
    }
}

void WhatIfCard::clear()
{
    for (const Field& each : m_fields) {
        each.field->clear();
    }
    read();
}

} // namespace plumule::ui

#include "moc_what_if_card.cpp"
