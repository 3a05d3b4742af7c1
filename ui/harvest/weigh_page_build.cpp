// Part of ui/harvest/weigh_page.h: how it is made up.
#include "ui/harvest/weigh_page.h"

#include "core/cost/cost.h"
#include "ui/chart/chart_view.h"
#include "ui/cost/work_timer_button.h"
#include "ui/harvest/due_list.h"
#include "ui/harvest/range_strip.h"
#include "ui/harvest/weigh_card.h"
#include "ui/harvest/weigh_question.h"
#include "ui/harvest/weighed_model.h"
#include "ui/widget/theme.h"

#include <QHeaderView>
#include <QTableView>
#include <QVBoxLayout>

namespace plumule::ui {

void WeighPage::buildHead()
{
    m_head = new PageHead(tr("Weigh-in"));
    m_mode = new Segmented({tr("Harvest"), tr("Residue")});
    m_mode->setObjectName("mode");
    m_unit = new Segmented({tr("g"), tr("oz")});
    m_unit->setObjectName("unit");
    m_timer = new WorkTimerButton(journal(), services(), LabourKind::Harvesting);
    m_head->addControl(m_timer);
    m_head->addControl(m_mode);
    m_head->addControl(m_unit);
}

void WeighPage::buildColumns()
{
    auto* left = new QVBoxLayout;
    left->setSpacing(scaled(16));
    m_card = new WeighCard;
    m_card->setObjectName("weighCard");
    left->addWidget(m_card);
    left->addWidget(buildWeighed(), 1);
    m_columns->addLayout(left, 7);
    m_columns->addWidget(buildSide(), 4);
}

QWidget* WeighPage::buildWeighed()
{
    auto* card = new Card(tr("Just weighed"));
    m_weighed = new WeighedModel(this);
    m_weighedView = new QTableView;
    m_weighedView->setObjectName("weighed");
    m_weighedView->setAccessibleName(tr("Just weighed"));
    m_weighedView->setModel(m_weighed);
    m_weighedView->setShowGrid(false);
    m_weighedView->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_weighedView->setSelectionMode(QAbstractItemView::SingleSelection);
    m_weighedView->setTabKeyNavigation(false);
    m_weighedView->verticalHeader()->hide();
    m_weighedView->verticalHeader()->setDefaultSectionSize(scaled(36));
    m_weighedView->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_weighedView->horizontalHeader()->setSectionResizeMode(WeighedModel::MediumName,
                                                            QHeaderView::Stretch);
    m_weighedView->horizontalHeader()->setHighlightSections(false);
    m_weighedView->setMinimumHeight(scaled(190));
    card->body()->addWidget(m_weighedView, 1);
    auto* hint = label(tr("F2 corrects the last one, Ctrl+Z takes it back."), "muted");
    hint->setWordWrap(true);
    card->body()->addWidget(hint);
    return card;
}

QWidget* WeighPage::buildSide()
{
    auto* side = new QWidget;
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(16));
    m_rangeCard = new Card(tr("Where the range comes from"));
    m_rangeWords = label(QString(), "muted");
    m_rangeWords->setObjectName("rangeWords");
    m_rangeWords->setWordWrap(true);
    m_range = new RangeStrip;
    m_rangeCard->body()->addWidget(m_rangeWords);
    m_rangeCard->body()->addWidget(m_range);
    m_trialCard = new Card(tr("This trial so far"));
    m_trialChart = new ChartView;
    m_trialChart->setMinimumHeight(scaled(200));
    m_trialWords = label(QString(), "muted");
    m_trialWords->setObjectName("trialWords");
    m_trialWords->setWordWrap(true);
    m_trialCard->body()->addWidget(m_trialChart, 1);
    m_trialCard->body()->addWidget(m_trialWords);
    m_due = new DueList;
    column->addWidget(m_rangeCard);
    column->addWidget(m_due);
    column->addWidget(m_trialCard);
    column->addStretch(1);
    return side;
}

void WeighPage::wireSignals()
{
    connect(m_mode, &Segmented::chosenByHand, this,
            [this](int index) { setMode(index == 1 ? Weighing::Residue : Weighing::Cut); });
    connect(m_unit, &Segmented::chosenByHand, this, [this](int index) {
        services().preferences.set(Preference::ScaleUnit, index == 1 ? "oz" : "g");
        setUnit(index == 1 ? MassUnit::Ounce : MassUnit::Gram);
        begin();
    });
    connect(m_card, &WeighCard::codeEntered, this, &WeighPage::take);
    connect(m_card, &WeighCard::recordAsked, this, &WeighPage::record);
    connect(m_card, &WeighCard::edited, this, [this] {
        // What was accepted was accepted for the weight that stood there.
        m_accepted.clear();
        leaveQuestion();
        m_range->setOnScale(typedNet());
        showTrial();
    });
    connect(&m_card->question(), &WeighQuestion::answered, this, &WeighPage::takeAnswer);
    connect(m_due, &DueList::taken, this, &WeighPage::take);
    connect(m_weighedView, &QTableView::clicked, this, [this](const QModelIndex& index) {
        if (index.column() == WeighedModel::Correct) {
            beginCorrection(index.row());
        }
    });
    connect(m_weighedView, &QTableView::activated, this,
            [this](const QModelIndex& index) { beginCorrection(index.row()); });
    connect(m_trialChart, &ChartView::pointChosen, this,
            [this](qint64 tray) { Q_EMIT trayAsked(TrayId{tray}); });
}

} // namespace plumule::ui
