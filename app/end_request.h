#pragma once

#include <QObject>

class QSocketNotifier;

namespace plumule::app {

// From here on the signals by which a system asks programs to end (at log-out, from a terminal)
// leave the event loop, so that the journal is closed as by its window. One at a time.
class EndRequest : public QObject
{
public:
    explicit EndRequest(QObject* parent = nullptr);
    ~EndRequest() override;

private:
    QSocketNotifier* m_notifier = nullptr;
};

} // namespace plumule::app
