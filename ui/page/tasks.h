#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/journal/ledger/journal_reason.h"

#include <QFutureWatcher>
#include <QObject>
#include <QPointer>
#include <QtConcurrentRun>

#include <exception>
#include <memory>

namespace plumule::ui {

// Runs long work off the window's thread. One bar shows how far it is; it can be stopped.
class Tasks : public QObject
{
    Q_OBJECT

public:
    explicit Tasks(QObject* parent = nullptr);
    // Stops what runs and waits for it.
    ~Tasks() override;

    // Runs `work(const Progress&) -> Result<T>` on another thread, then calls `done(Result<T>)` on
    // this one, unless `receiver` is gone by then. `work` must not touch widgets nor this thread's
    // journal; an exception of its own is Damaged.
    template <class Work, class DoneCall>
    void run(const QString& name, Work work, QObject* receiver, DoneCall done)
    {
        using Answer = std::invoke_result_t<Work, const Progress&>;
        auto stop = std::make_shared<std::stop_source>();
        const Progress progress = begin(name, stop);
        auto* watcher = new QFutureWatcher<Answer>(this);
        connect(watcher, &QFutureWatcher<Answer>::finished, this,
                [this, watcher, stop, guard = QPointer<QObject>(receiver), done] {
                    end(stop);
                    watcher->deleteLater();
                    if (guard) {
                        done(watcher->result());
                    }
                });
        m_running.append(watcher);
        watcher->setFuture(QtConcurrent::run([work, progress]() -> Answer {
            try {
                return work(progress);
            } catch (const std::exception& failure) {
                return fail(ErrorKind::Damaged, JournalReason::Unexpected,
                            std::string(failure.what()));
            }
        }));
    }

    [[nodiscard]] bool isBusy() const { return !m_stops.empty(); }
    void stopAll();

Q_SIGNALS:
    void started(const QString& name);
    void progressed(double fraction);
    void idle();

private:
    Progress begin(const QString& name, const std::shared_ptr<std::stop_source>& stop);
    void end(const std::shared_ptr<std::stop_source>& stop);

    std::vector<std::shared_ptr<std::stop_source>> m_stops;
    QList<QPointer<QFutureWatcherBase>> m_running;
};

} // namespace plumule::ui
