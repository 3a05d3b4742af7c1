#include "ui/cost/work_timer_button.h"

#include "core/cost/cost_reason.h"
#include "core/journal/cost/work_time_entries.h"
#include "ui/cost/work_text.h"
#include "ui/cost/work_time_dialog.h"
#include "ui/page/undoing.h"
#include "ui/widget/widgets.h"

#include <QTimer>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kBetweenLooksMs = 20'000; // a minute is shown soon after it is full

} // namespace

WorkTimerButton::WorkTimerButton(Journal& journal, Services services, LabourKind task,
                                 QWidget* parent)
    : KeyButton(tr("Work timer"), QStringLiteral("F8"), "", parent)
    , m_journal(journal)
    , m_services(services)
    , m_task(task)
{
    setObjectName("workTimer");
    setFocusPolicy(Qt::TabFocus);
    m_minute = new QTimer(this);
    m_minute->setInterval(kBetweenLooksMs);
    connect(m_minute, &QTimer::timeout, this, &WorkTimerButton::showState);
    connect(this, &QPushButton::clicked, this, &WorkTimerButton::press);
    m_listener = journal.addListener([this](const std::vector<Change>& changes) {
        const bool isMine = std::any_of(changes.begin(), changes.end(), [](const Change& each) {
            return each.about == Concept::Cost;
        });
        if (isMine) {
            reload();
        }
    });
    reload();
}

WorkTimerButton::~WorkTimerButton()
{
    m_journal.removeListener(m_listener);
}

void WorkTimerButton::setTask(LabourKind task)
{
    m_task = task;
    showState();
}

void WorkTimerButton::reload()
{
    m_running = m_journal.workTimes().running().value_or(std::nullopt);
    m_running ? m_minute->start() : m_minute->stop();
    showState();
}

void WorkTimerButton::showState()
{
    if (!m_running) {
        setText(tr("Work timer"));
        setToolTip(tr("Starts the timer of %1").arg(nameOf(m_task)));
        setRole(this, "");
        return;
    }
    const WorkMoment now = workMomentOf(m_journal.clock());
    const bool wasForgotten = isForgotten(*m_running, now);
    setText(wasForgotten ? tr("Timer since %1?").arg(begunText(*m_running, now.moment.date))
                         : tr("Stop, %1").arg(durationText(secondsUntil(*m_running, now))));
    setToolTip(wasForgotten ? tr("Asks how long %1 took").arg(nameOf(m_running->task))
                            : tr("Stops the timer of %1").arg(nameOf(m_running->task)));
    setRole(this, wasForgotten ? "danger" : "primary");
}

void WorkTimerButton::press()
{
    reload();
    m_running ? end(*m_running) : begin();
}

void WorkTimerButton::begin()
{
    const auto begun = m_journal.workTimes().begin(m_task);
    if (!begun) {
        m_services.messages.refuse(sentence(begun.error()));
        return;
    }
    tellLast(m_journal, m_services);
}

void WorkTimerButton::end(const WorkTime& running)
{
    const auto ended = m_journal.workTimes().end();
    if (ended) {
        tellLast(m_journal, m_services);
        return;
    }
    const Error& error = ended.error();
    if (error.is(CostReason::TimerForgotten) || error.is(CostReason::WorkTimesMissing) ||
        error.is(CostReason::WorkTimeWrong)) {
        ask(running);
        return;
    }
    m_services.messages.refuse(sentence(error));
}

void WorkTimerButton::ask(const WorkTime& running)
{
    auto* dialog = new WorkTimeDialog(m_journal, m_services, running, window());
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

} // namespace plumule::ui

#include "moc_work_timer_button.cpp"
