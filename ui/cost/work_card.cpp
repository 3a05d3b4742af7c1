#include "ui/cost/work_card.h"

#include "core/journal/cost/cost_entries.h"
#include "core/journal/cost/work_time_entries.h"
#include "ui/cost/work_text.h"
#include "ui/cost/work_time_dialog.h"
#include "ui/cost/work_timer_button.h"
#include "ui/page/undoing.h"
#include "ui/text/text.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kLatestShown = 5;

} // namespace

WorkCard::WorkCard(Journal& journal, Services services, QWidget* parent)
    : Card(tr("Minutes of work"), "card", parent)
    , m_journal(journal)
    , m_services(services)
{
    buildTimer();
    auto* words = label(tr("Costs are reckoned with these minutes. What timers measured in twelve "
                           "months stands beside them and counts once you take it."),
                        "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
    auto* rows = new QWidget;
    m_grid = new QGridLayout(rows);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(scaled(12));
    m_grid->setVerticalSpacing(scaled(2));
    m_grid->setColumnStretch(2, 1);
    body()->addWidget(rows);
    m_latest = new QVBoxLayout;
    m_latest->setSpacing(0);
    body()->addLayout(m_latest);
}

void WorkCard::buildTimer()
{
    m_task = new QComboBox;
    m_task->setObjectName("timerTask");
    m_task->setAccessibleName(tr("What the timer is started for"));
    for (const LabourKind task : kLabourKinds) {
        addChoice(*m_task, nameOf(task), task);
    }
    m_timer = new WorkTimerButton(m_journal, m_services, kLabourKinds.front());
    auto* byHand = button(tr("Write a time down…"), "quiet");
    byHand->setObjectName("writeTime");
    auto* row = new FlowLayout;
    row->addWidget(m_task);
    row->addWidget(m_timer);
    row->addWidget(byHand);
    body()->addLayout(row);
    connect(m_task, &QComboBox::currentIndexChanged, this,
            [this] { m_timer->setTask(chosenOf<LabourKind>(*m_task)); });
    connect(byHand, &QPushButton::clicked, this, &WorkCard::writeDown);
}

void WorkCard::reload()
{
    const auto tasks = m_journal.costs().labour();
    const auto measured = m_journal.workTimes().measured();
    if (!tasks || !measured) {
        m_services.messages.refuse(sentence(tasks ? measured.error() : tasks.error()));
        return;
    }
    clearLayout(m_grid);
    for (std::size_t i = 0; i < tasks->size(); ++i) {
        addTask(static_cast<int>(i), (*tasks)[i], *measured);
    }
    showLatest();
    m_timer->reload();
}

void WorkCard::addTask(int row, const LabourTask& task, const std::vector<MeasuredTask>& measured)
{
    const int line = isTypeLarge() ? 2 * row : row; // what was measured stands in the next one
    auto* name = label(nameOf(task.kind));
    name->setWordWrap(true);
    m_grid->addWidget(name, line, 0);
    m_grid->addWidget(label(minutesText(task.seconds), "strong"), line, 1,
                      Qt::AlignRight | Qt::AlignVCenter);
    const auto found =
        std::find_if(measured.begin(), measured.end(),
                     [&](const MeasuredTask& each) { return each.task == task.kind; });
    auto* words =
        label(found == measured.end() ? tr("not measured yet") : measuredText(*found), "muted");
    words->setObjectName(QStringLiteral("measured_") + QLatin1String(toText(task.kind)));
    words->setWordWrap(true);
    m_grid->addWidget(words, isTypeLarge() ? line + 1 : line, isTypeLarge() ? 0 : 2, 1,
                      isTypeLarge() ? 4 : 1);
    const auto mean = found == measured.end() ? std::nullopt : found->mean();
    if (!mean || qRound(*mean) == task.seconds) {
        return;
    }
    auto* take = button(tr("Take it"), "quiet");
    take->setObjectName(QStringLiteral("take_") + QLatin1String(toText(task.kind)));
    take->setToolTip(
        tr("Reckons %1 with %2 from now on").arg(nameOf(task.kind), minutesText(*mean)));
    m_grid->addWidget(take, line, 3);
    connect(take, &QPushButton::clicked, this,
            [this, task, seconds = qRound(*mean)] { this->take(task, seconds); });
}

void WorkCard::take(const LabourTask& task, int seconds)
{
    LabourTask changed = task;
    changed.seconds = seconds;
    const auto done = m_journal.costs().changeLabour(changed);
    if (!done) {
        m_services.messages.refuse(sentence(done.error()));
        return;
    }
    tellLast(m_journal, m_services);
}

QWidget* WorkCard::timedLine(const QString& words, const WorkTime& work)
{
    auto* line = new QWidget;
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    auto* said = label(words);
    said->setWordWrap(true);
    auto* correct = button(tr("Correct…"), "quiet");
    correct->setObjectName("timed");
    correct->setAccessibleName(tr("Correct %1").arg(words));
    row->addWidget(said, 1);
    row->addWidget(correct, 0, Qt::AlignTop);
    connect(correct, &QPushButton::clicked, this, [this, work] { open(work); });
    return line;
}

void WorkCard::showLatest()
{
    clearLayout(m_latest);
    const auto latest = m_journal.workTimes().latest(kLatestShown);
    if (!latest || latest->empty()) {
        return;
    }
    m_latest->addWidget(label(tr("Timed last"), "muted"));
    const Date today = m_journal.clock().today();
    for (const WorkTime& work : *latest) {
        m_latest->addWidget(timedLine(
            tr("%1: %2, %3, %n time(s)", nullptr, *work.times)
                .arg(begunText(work, today), nameOf(work.task), durationText(*work.seconds)),
            work));
    }
}

void WorkCard::writeDown()
{
    WorkTime work;
    work.task = chosenOf<LabourKind>(*m_task);
    const WorkMoment now = workMomentOf(m_journal.clock());
    work.on = now.moment.date;
    work.minute = now.moment.minute;
    open(work);
}

void WorkCard::open(const WorkTime& work)
{
    auto* dialog = new WorkTimeDialog(m_journal, m_services, work, window());
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

} // namespace plumule::ui

#include "moc_work_card.cpp"
