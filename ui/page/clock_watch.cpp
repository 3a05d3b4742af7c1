#include "ui/page/clock_watch.h"

#include "core/journal/journal.h"
#include "core/journal/room/room_entries.h"

#include <QTimer>

namespace plumule::ui {
namespace {

constexpr int kClockStep = 15'000; // ms

} // namespace

ClockWatch::ClockWatch(Journal& journal, QObject* parent)
    : QObject(parent)
    , m_journal(journal)
    , m_seen(present())
{
    auto* timer = new QTimer(this);
    timer->setInterval(kClockStep);
    connect(timer, &QTimer::timeout, this, &ClockWatch::look);
    timer->start();
}

RoundKey ClockWatch::present() const
{
    const auto layout = m_journal.room().layout();
    return roundOf(layout ? layout->room : Room(), m_journal.clock().now());
}

void ClockWatch::look()
{
    if (const RoundKey now = present(); now != std::exchange(m_seen, now)) {
        Q_EMIT turned();
    }
}

} // namespace plumule::ui

#include "moc_clock_watch.cpp"
