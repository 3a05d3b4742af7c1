#include "ui/harvest/weigh_page.h"

#include "core/journal/harvest/harvest_entries.h"
#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_view.h"
#include "ui/cost/work_timer_button.h"
#include "ui/harvest/due_list.h"
#include "ui/harvest/range_strip.h"
#include "ui/harvest/weigh_card.h"
#include "ui/harvest/weigh_question.h"
#include "ui/harvest/weigh_text.h"
#include "ui/harvest/weighed_model.h"
#include "ui/widget/theme.h"

#include <QScrollArea>
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
    m_card->setTare(milligrams(services.preferences.get(Preference::LastTare).toLongLong()));
    readPreferences();
    showRange();
    showTrial();
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

// Until a unit is chosen by hand, the scale's is the room's.
void WeighPage::readPreferences()
{
    const QString chosen = services().preferences.get(Preference::ScaleUnit).toString();
    const bool isRoomMetric = units().units() == UnitSystem::Metric;
    const bool isOunces = chosen.isEmpty() ? !isRoomMetric : chosen == QLatin1String("oz");
    const MassUnit unit = isOunces ? MassUnit::Ounce : MassUnit::Gram;
    // A reading of what did not change must not touch what is typed.
    if (unit != scaleUnit()) {
        setUnit(unit);
    }
}

void WeighPage::reload()
{
    const Date today = journal().clock().today();
    const auto weighIn = journal().harvests().weighIn(today);
    if (!accept(weighIn)) {
        return;
    }
    m_weighIn = *weighIn;
    if (m_what == Weighing::Residue) {
        m_residuesDue = journal().harvests().residuesDue(today).value_or(std::vector<DueRow>());
    }
    readPreferences();
    m_weighed->show(m_weighIn.done, scaleUnits());
    Q_EMIT badgeChanged(static_cast<int>(m_weighIn.due.size()));
    if (m_tray && !m_correcting) {
        // It may have been weighed, discarded or undone meanwhile.
        const auto again = journal().harvests().atScale(m_tray->record.tray.code, m_what);
        if (again) {
            m_tray = *again;
            if (!m_card->question().isOpen()) {
                sayExpected();
            }
        } else {
            const QString code = codeOnScale();
            clearTray();
            m_card->say(cannotWeighText(code, again.error()), "warning");
        }
        showTray();
    }
    showHead();
    showDue();
    showTrial();
}

void WeighPage::showHead()
{
    const QString today = dayText(journal().clock().today());
    const int open = static_cast<int>(m_weighIn.due.size());
    const int all = open + static_cast<int>(m_weighIn.done.size());
    m_head->setSubtitle(
        m_what == Weighing::Residue
            ? tr("%1  ·  %n residue(s) to weigh", nullptr, static_cast<int>(m_residuesDue.size()))
                  .arg(today)
            : tr("%1  ·  %2 of %n tray(s) still to weigh", nullptr, all).arg(today).arg(open));
}

void WeighPage::showDue()
{
    const bool isResidue = m_what == Weighing::Residue;
    m_due->setHeading(isResidue ? tr("Residues to weigh") : tr("Still to weigh"));
    m_due->show(isResidue ? m_residuesDue : m_weighIn.due, codeOnScale(),
                isResidue ? tr("No residue is waiting.") : tr("No tray is due to be cut today."));
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
            if (isVisible()) { // reload() tells it
                return;
            }
            if (const auto weighIn = journal().harvests().weighIn(journal().clock().today())) {
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
    if (m_card->question().isOpen()) {
        m_card->question().setFocus();
    } else if (m_tray) {
        m_card->focusWeight();
    } else {
        m_card->focusCode();
    }
}

void WeighPage::take(const QString& code)
{
    nameUnrecorded(code);
    clearTray();
    const auto found = journal().harvests().atScale(code.toStdString(), m_what);
    if (!found) {
        m_card->setCode(code);
        m_card->say(cannotWeighText(code, found.error()), "warning");
        m_card->focusCode();
        showTray();
        return;
    }
    m_tray = *found;
    m_card->showTray(*m_tray, m_what);
    sayExpected();
    showTray();
}

// The first of those still to weigh but that one.
void WeighPage::takeNext(const QString& after)
{
    const bool isResidue = m_what == Weighing::Residue;
    for (const DueRow& row : isResidue ? m_residuesDue : m_weighIn.due) {
        if (QString::fromStdString(row.code) != after) {
            take(QString::fromStdString(row.code));
            return;
        }
    }
    m_card->say(isResidue ? tr("That was the last residue.")
                          : tr("That was the last tray due today."),
                "good");
    m_card->focusCode();
}

// What depends on which tray is on the scale.
void WeighPage::showTray()
{
    showRange();
    showTrial();
    showDue();
}

void WeighPage::sayExpected()
{
    if (!m_tray) {
        m_card->say(QString(), "muted");
        return;
    }
    QString words = expectedText(*m_tray, m_what, scaleUnit());
    if (m_what == Weighing::Residue) {
        words =
            tr("The residue is what is left in the tray after cutting, weighed wet.") + ' ' + words;
    } else if (!m_tray->cuts.empty() && !m_correcting) {
        Mass before;
        for (const Harvest& cut : m_tray->cuts) {
            before += cut.net;
        }
        words += ' ' + tr("%n cut(s) before: %1.", nullptr, static_cast<int>(m_tray->cuts.size()))
                           .arg(scaleUnits().mass(before));
    }
    m_card->say(words, "muted");
}

void WeighPage::showRange()
{
    m_rangeCard->setVisible(m_tray.has_value() && m_tray->facts.expected.isKnown());
    if (!m_tray) {
        return;
    }
    QString words = rangeSourceText(*m_tray, m_what);
    words.replace(0, 1, words.left(1).toUpper());
    m_rangeWords->setText(words);
    m_range->show(m_tray->facts.expected, scaleUnit());
    m_range->setOnScale(typedNet());
}

void WeighPage::showTrial()
{
    const bool isShown = m_tray && m_tray->trial && m_what == Weighing::Cut;
    m_trialCard->setVisible(isShown);
    if (!isShown) {
        return;
    }
    TrialSoFar shown = *m_tray->trial;
    int weighed = 0;
    const auto net = typedNet();
    for (TrialSoFar::Dot& dot : shown.dots) {
        weighed += dot.yield ? 1 : 0;
        if (dot.tray == m_tray->record.tray.id && !dot.yield) {
            dot.yield = net;
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
            point.isHollow = point.target == m_tray->record.tray.id.value;
        }
    }
    m_trialChart->draw(spec);
    m_trialWords->setText(
        weighed == static_cast<int>(shown.dots.size())
            ? tr("All %n trays are weighed: the season page has the answer.", nullptr, weighed)
            : tr("%1 of %2 weighed. A verdict needs all the blocks.")
                  .arg(weighed)
                  .arg(shown.dots.size()));
}

void WeighPage::setMode(Weighing what)
{
    nameUnrecorded(QString());
    m_what = what;
    m_mode->choose(what == Weighing::Residue ? 1 : 0);
    m_timer->setTask(what == Weighing::Residue ? LabourKind::ClearingOut : LabourKind::Harvesting);
    clearTray();
    readAgain();
    showTray();
    m_card->focusCode();
}

MassUnit WeighPage::scaleUnit() const
{
    return m_card->unit();
}

UnitText WeighPage::scaleUnits() const
{
    return UnitText(scaleUnit() == MassUnit::Gram ? UnitSystem::Metric : UnitSystem::UsCustomary);
}

void WeighPage::setUnit(MassUnit unit)
{
    m_unit->choose(unit == MassUnit::Ounce ? 1 : 0);
    m_card->setUnit(unit);
    m_weighed->show(m_weighIn.done, scaleUnits());
    if (m_tray && !m_card->question().isOpen()) {
        sayExpected();
    }
    showRange();
}

QString WeighPage::codeOnScale() const
{
    return m_tray ? QString::fromStdString(m_tray->record.tray.code) : QString();
}

std::optional<Mass> WeighPage::typedNet() const
{
    const auto bowls = m_card->bowls();
    return bowls ? std::optional(netOf(*bowls)) : std::nullopt;
}

void WeighPage::layOut()
{
    const bool isWide = width() >= scaled(960);
    m_columns->setDirection(isWide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_card->setWide((isWide ? width() * 7 / 11 : width()) >= scaled(560));
}

void WeighPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    layOut();
}

} // namespace plumule::ui

#include "moc_weigh_page.cpp"
