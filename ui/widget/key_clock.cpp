#include "ui/widget/key_clock.h"

#include <QKeyEvent>

namespace plumule::ui {

qint64 KeyClock::timeOf(const QKeyEvent& key) const
{
    if (m_source) {
        return m_source();
    }
    return key.timestamp() > 0 ? static_cast<qint64>(key.timestamp()) : m_timer.elapsed();
}

} // namespace plumule::ui
