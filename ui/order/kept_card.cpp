#include "ui/order/kept_card.h"

#include "ui/order/kept_dots.h"
#include "ui/order/order_text.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"

#include <QHeaderView>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr std::size_t kMostShown = 12;

enum Column
{
    For,
    VarietyName,
    Promised,
    Weighed
};
constexpr int kWidthForAll = 430;

} // namespace

KeptCard::KeptCard(QWidget* parent)
    : Card(tr("Afterwards"), "card", parent)
{
    setObjectName("keptCard");
    m_words = label(QString(), "muted");
    m_words->setObjectName("keptWords");
    m_words->setWordWrap(true);
    m_dots = new KeptDots;
    m_model = new TextTable(this);
    m_table = plainTable(m_model, "kept", tr("Promises whose day has passed"));
    m_rule = label(sharingRule(), "muted");
    m_rule->setWordWrap(true);
    body()->addWidget(m_words);
    body()->addWidget(m_dots);
    body()->addWidget(m_table);
    body()->addWidget(m_rule);
    body()->addStretch(1);
    connect(m_table, &QTableView::activated, this,
            [this](const QModelIndex& index) { Q_EMIT cutsAsked(index.row()); });
    connect(m_table, &QTableView::clicked, this,
            [this](const QModelIndex& index) { Q_EMIT cutsAsked(index.row()); });
}

void KeptCard::show(const std::vector<PastPromise>& past, const UnitText& units)
{
    const auto kept = std::count_if(past.begin(), past.end(),
                                    [](const PastPromise& one) { return one.isKept(); });
    m_words->setText(past.empty()
                         ? tr("No promise has passed yet. Here stands then what was promised, "
                              "what was weighed, and whether it was kept.")
                         : tr("%1 of %2 kept in %3 days; aimed at 9 in 10. Hollow: short. Choose "
                              "one to say which cuts went to it.")
                               .arg(kept)
                               .arg(past.size())
                               .arg(kDaysBack));
    std::vector<bool> dots;
    std::transform(past.rbegin(), past.rend(), std::back_inserter(dots),
                   [](const PastPromise& one) { return one.isKept(); });
    m_dots->show(std::move(dots));
    std::vector<TextRow> rows;
    for (const PastPromise& one : past) {
        if (rows.size() == kMostShown) {
            break;
        }
        rows.push_back({{weekdayText(one.promise.day), QString::fromStdString(one.variety),
                         units.mass(one.promise.order.amount, 0), units.mass(one.weighed(), 0),
                         keptText(one, units)},
                        QIcon(),
                        !one.isKept()});
    }
    m_table->setVisible(!rows.empty());
    m_rule->setVisible(!rows.empty());
    m_model->show({tr("For"), tr("Variety"), tr("Promised"), tr("Weighed"), QString()},
                  std::move(rows), Promised);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setSectionResizeMode(VarietyName, QHeaderView::Stretch);
    fitHeight(*m_table);
}

// What is over or short says the rest.
void KeptCard::resizeEvent(QResizeEvent* event)
{
    Card::resizeEvent(event);
    m_table->setColumnHidden(Weighed, width() < scaled(kWidthForAll));
}

} // namespace plumule::ui

#include "moc_kept_card.cpp"
