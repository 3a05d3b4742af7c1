#include "ui/harvest/weigh_page.h"

#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_view.h"
#include "ui/harvest/doubt_text.h"
#include "ui/harvest/due_list.h"
#include "ui/harvest/weigh_card.h"
#include "ui/harvest/weighed_model.h"
#include "ui/widget/theme.h"

#include <QHeaderView>
#include <QScrollArea>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {

WeighPage::WeighPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(14));
    buildHead();
    column->addWidget(m_head);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner), 1);
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight);
    m_columns->setSpacing(scaled(16));
    inner->addLayout(m_columns, 1);
    buildColumns();
    wireSignals();
    setUnit(services.preferences.get(Preference::ScaleUnit).toString() == "oz" ? MassUnit::Ounce
                                                                               : MassUnit::Gram);
    m_card->setTare(milligrams(services.preferences.get(Preference::LastTare).toLongLong()));
    m_listener = journal.addListener([this](const std::vector<Change>& changes) {
        const bool isMine = std::any_of(changes.begin(), changes.end(), [this](const Change& each) {
            return concerns(each.about);
        });
        if (isMine) {
            noteBadge();
        }
    });
    noteBadge();
}

WeighPage::~WeighPage()
{
    journal().removeListener(m_listener);
}

QString WeighPage::name() const
{
    return tr("Weigh-in");
}

bool WeighPage::concerns(Concept about) const
{
    return about == Concept::Harvest || about == Concept::Tray || about == Concept::Room ||
           about == Concept::Medium || about == Concept::Trial;
}

void WeighPage::buildHead()
{
    m_head = new PageHead(tr("Weigh-in"));
    m_mode = new Segmented({tr("Harvest"), tr("Residue")});
    m_mode->setObjectName("mode");
    m_unit = new Segmented({tr("g"), tr("oz")});
    m_unit->setObjectName("unit");
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
    card->body()->addWidget(label(tr("F2 corrects the last one, Ctrl+Z takes it back."), "muted"));
    return card;
}

QWidget* WeighPage::buildSide()
{
    auto* side = new QWidget;
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(16));
    m_trialCard = new Card(tr("This trial so far"));
    m_trialChart = new ChartView;
    m_trialChart->setMinimumHeight(scaled(200));
    m_trialWords = label(QString(), "muted");
    m_trialWords->setObjectName("trialWords");
    m_trialWords->setWordWrap(true);
    m_trialCard->body()->addWidget(m_trialChart, 1);
    m_trialCard->body()->addWidget(m_trialWords);
    m_due = new DueList;
    column->addWidget(m_trialCard);
    column->addWidget(m_due);
    column->addStretch(1);
    return side;
}

void WeighPage::wireSignals()
{
    connect(m_mode, &Segmented::chosenByHand, this, [this](int index) { setMode(index == 1); });
    connect(m_unit, &Segmented::chosenByHand, this,
            [this](int index) { setUnit(index == 1 ? MassUnit::Ounce : MassUnit::Gram); });
    connect(m_card, &WeighCard::codeEntered, this, &WeighPage::take);
    connect(m_card, &WeighCard::recordAsked, this, &WeighPage::record);
    connect(m_card, &WeighCard::edited, this, [this] {
        // What was accepted was accepted for the weight that stood there.
        if (!m_asked.empty()) {
            m_asked.clear();
            sayExpected();
        }
        showTrial();
    });
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

void WeighPage::reload()
{
    const Date today = journal().clock().today();
    const auto weighIn = journal().harvests().weighIn(today);
    if (!accept(weighIn)) {
        return;
    }
    m_weighIn = *weighIn;
    m_residuesDue = journal().harvests().residuesDue(today).value_or(std::vector<DueRow>());
    m_weighed->show(m_weighIn.done, units());
    const int open = static_cast<int>(m_weighIn.due.size());
    const int all = open + static_cast<int>(m_weighIn.done.size());
    m_head->setSubtitle(
        m_isResidue
            ? tr("%1  ·  %n residue(s) to weigh", nullptr, static_cast<int>(m_residuesDue.size()))
                  .arg(dayText(today))
            : tr("%1  ·  %2 of %3 trays still to weigh").arg(dayText(today)).arg(open).arg(all));
    Q_EMIT badgeChanged(open);
    m_due->setHeading(m_isResidue ? tr("Residues to weigh") : tr("Still to weigh"));
    m_due->show(m_isResidue ? m_residuesDue : m_weighIn.due,
                m_tray ? QString::fromStdString(m_tray->record.tray.code) : QString(),
                m_isResidue ? tr("No residue is waiting.") : tr("No tray is due to be cut today."));
    if (m_tray && !m_correcting) {
        // It may have been weighed, discarded or undone meanwhile.
        const auto again = journal().harvests().atScale(m_tray->record.tray.code);
        if (again) {
            m_tray = *again;
            m_trial =
                journal().harvests().trialSoFar(m_tray->record.tray.id).value_or(std::nullopt);
        } else {
            m_tray.reset();
            m_card->showNoTray();
        }
        sayExpected();
    }
    showTrial();
}

// How many are due is in sight where the page is not.
void WeighPage::noteBadge()
{
    if (m_isBadgeQueued) {
        return;
    }
    m_isBadgeQueued = true;
    QMetaObject::invokeMethod(
        this,
        [this] {
            m_isBadgeQueued = false;
            const auto weighIn = journal().harvests().weighIn(journal().clock().today());
            if (weighIn && !isVisible()) { // else reload() tells it
                Q_EMIT badgeChanged(static_cast<int>(weighIn->due.size()));
            }
        },
        Qt::QueuedConnection);
}

void WeighPage::followClock()
{
    noteChange();
    noteBadge();
}

void WeighPage::begin()
{
    m_tray ? m_card->focusWeight() : m_card->focusCode();
}

void WeighPage::take(const QString& code)
{
    leaveCorrection();
    m_asked.clear();
    const auto found = journal().harvests().atScale(code.toStdString());
    if (!found) {
        m_tray.reset();
        m_card->showNoTray();
        m_card->setCode(code);
        m_card->say(found.error().kind == ErrorKind::NotFound
                        ? tr("No tray is called %1. Check the label.").arg(code)
                        : tr("%1 was discarded and can't be weighed.").arg(code),
                    "warning");
        m_card->focusCode();
        showTrial();
        return;
    }
    m_tray = *found;
    m_trial = journal().harvests().trialSoFar(m_tray->record.tray.id).value_or(std::nullopt);
    m_card->showTray(*m_tray, m_isResidue);
    sayExpected();
    showTrial();
}

void WeighPage::sayExpected()
{
    if (!m_tray) {
        m_card->say(QString(), "muted");
        return;
    }
    if (m_isResidue) {
        m_card->say(tr("The residue is what is left in the tray after cutting, weighed wet."),
                    "muted");
        return;
    }
    QString words = expectedText(m_tray->expected, units());
    if (!m_tray->cuts.empty()) {
        Mass before;
        for (const Harvest& cut : m_tray->cuts) {
            before += cut.net;
        }
        words += ' ' + tr("%n cut(s) before: %1.", nullptr, static_cast<int>(m_tray->cuts.size()))
                           .arg(units().mass(before));
    }
    m_card->say(words, "muted");
}

void WeighPage::showTrial()
{
    m_trialCard->setVisible(m_trial.has_value() && !m_isResidue);
    if (!m_trial) {
        return;
    }
    TrialSoFar shown = *m_trial;
    int weighed = 0;
    const auto typed = m_card->bowls();
    for (TrialSoFar::Dot& dot : shown.dots) {
        weighed += dot.yield ? 1 : 0;
        if (m_tray && dot.tray == m_tray->record.tray.id && !dot.yield && typed) {
            dot.yield = draftOf(*typed).net();
        }
    }
    ChartSpec spec = trialSoFarChart(shown);
    if (weighed < static_cast<int>(shown.dots.size())) {
        // Means of half a trial would be read as its answer.
        std::erase_if(spec.series, [](const ChartSeries& series) {
            return series.form == SeriesForm::Intervals;
        });
    }
    for (ChartSeries& series : spec.series) {
        for (ChartPoint& point : series.points) {
            point.isHollow = m_tray && point.target == m_tray->record.tray.id.value;
        }
    }
    m_trialChart->draw(spec);
    m_trialWords->setText(
        weighed == static_cast<int>(shown.dots.size())
            ? tr("All %1 trays are weighed: the season page has the answer.").arg(weighed)
            : tr("%1 of %2 weighed. A verdict needs all the blocks.")
                  .arg(weighed)
                  .arg(shown.dots.size()));
}

void WeighPage::setMode(bool isResidue)
{
    m_isResidue = isResidue;
    m_mode->choose(isResidue ? 1 : 0);
    leaveCorrection();
    m_tray.reset();
    m_trial.reset();
    m_asked.clear();
    m_card->showNoTray();
    reload();
    m_card->focusCode();
}

void WeighPage::setUnit(MassUnit unit)
{
    m_unit->choose(unit == MassUnit::Ounce ? 1 : 0);
    m_card->setUnit(unit);
    services().preferences.set(Preference::ScaleUnit, unit == MassUnit::Ounce ? "oz" : "g");
    begin();
}

void WeighPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    const bool isWide = width() >= scaled(960);
    m_columns->setDirection(isWide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui

#include "moc_weigh_page.cpp"
