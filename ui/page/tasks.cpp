#include "ui/page/tasks.h"

#include <algorithm>

namespace plumule::ui {

Tasks::Tasks(QObject* parent)
    : QObject(parent)
{}

Tasks::~Tasks()
{
    stopAll();
    for (const auto& watcher : std::as_const(m_running)) {
        if (watcher) {
            watcher->waitForFinished();
        }
    }
}

void Tasks::stopAll()
{
    for (const auto& stop : m_stops) {
        stop->request_stop();
    }
}

Progress Tasks::begin(const QString& name, const std::shared_ptr<std::stop_source>& stop)
{
    m_stops.push_back(stop);
    Q_EMIT started(name);
    const QPointer<Tasks> self(this);
    return Progress(
        [self](double fraction) {
            QMetaObject::invokeMethod(
                self,
                [self, fraction] {
                    if (self) {
                        Q_EMIT self->progressed(fraction);
                    }
                },
                Qt::QueuedConnection);
        },
        stop->get_token());
}

void Tasks::end(const std::shared_ptr<std::stop_source>& stop)
{
    m_stops.erase(std::remove(m_stops.begin(), m_stops.end(), stop), m_stops.end());
    m_running.removeIf([](const auto& watcher) { return !watcher || watcher->isFinished(); });
    if (m_stops.empty()) {
        Q_EMIT idle();
    }
}

} // namespace plumule::ui

#include "moc_tasks.cpp"
