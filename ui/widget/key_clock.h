#pragma once

#include <QElapsedTimer>

#include <functional>

class QKeyEvent;

namespace plumule::ui {

// When a key came, in milliseconds from any beginning. The event's own stamp tells how fast the
// keys came where the program was busy meanwhile.
class KeyClock
{
public:
    KeyClock() { m_timer.start(); }

    // In place of the stamps; for tests.
    void setSource(std::function<qint64()> milliseconds) { m_source = std::move(milliseconds); }
    [[nodiscard]] qint64 timeOf(const QKeyEvent& key) const;

private:
    std::function<qint64()> m_source;
    QElapsedTimer m_timer;
};

} // namespace plumule::ui
