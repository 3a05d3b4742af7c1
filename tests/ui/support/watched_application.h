#pragma once

#include <QApplication>
#include <QEvent>

#include <ctime>
#include <functional>

namespace plumule::ui {

// The application of the tests. It tells how long one event held the window's thread, in CPU time
// of that thread, so that a machine busy with other things doesn't count.
class WatchedApplication : public QApplication
{
public:
    using QApplication::QApplication;

    struct Held
    {
        double ms = 0;
        QString by; // whom the event was for, and which it was
    };

    // The longest of the events while `work` ran; what it calls by itself is none.
    static Held longestIn(const std::function<void()>& work)
    {
        auto* self = static_cast<WatchedApplication*>(qApp);
        self->m_longest = {};
        work();
        return self->m_longest;
    }

    bool notify(QObject* receiver, QEvent* event) override
    {
        if (m_isWithin) {
            return QApplication::notify(receiver, event);
        }
        bool isTaken = false;
        const QString by = QStringLiteral("%1 “%2”, event %3")
                               .arg(QString::fromLatin1(receiver->metaObject()->className()),
                                    receiver->objectName())
                               .arg(static_cast<int>(event->type()));
        m_isWithin = true;
        measure(by, [&] { isTaken = QApplication::notify(receiver, event); });
        m_isWithin = false;
        return isTaken;
    }

private:
    static double threadMs()
    {
        timespec now{};
        clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
        return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
    }
    void measure(const QString& by, const std::function<void()>& work)
    {
        const double before = threadMs();
        work();
        const double held = threadMs() - before;
        if (held > m_longest.ms) {
            m_longest = {held, by};
        }
    }

    Held m_longest;
    bool m_isWithin = false;
};

} // namespace plumule::ui
