#include "ui/page/page.h"

#include "core/journal/room/room_entries.h"
#include "ui/page/undoing.h"

#include <QEvent>

namespace plumule::ui {

Page::Page(Journal& journal, Services services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    setProperty("role", "page");
    setAttribute(Qt::WA_StyledBackground);
}

void Page::begin() {}

void Page::followClock()
{
    noteChange();
}

void Page::noteChange()
{
    m_isStale = true;
    if (m_isQueued || !isVisible()) {
        return;
    }
    // Queued: the change may come from inside one of this page's own buttons.
    m_isQueued = true;
    QMetaObject::invokeMethod(
        this,
        [this] {
            m_isQueued = false;
            if (isVisible()) {
                reloadIfStale();
            }
        },
        Qt::QueuedConnection);
}

void Page::reloadIfStale()
{
    if (m_isStale) {
        m_isStale = false;
        reload();
    }
}

void Page::readAgain()
{
    m_isStale = false;
    reload();
}

void Page::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    reloadIfStale();
}

void Page::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        noteChange();
    }
}

UnitText Page::units() const
{
    const auto layout = m_journal.room().layout();
    return UnitText(layout ? layout->room.units : UnitSystem::Metric);
}

void Page::tellLast()
{
    ui::tellLast(m_journal, m_services);
}

void Page::tellDone(const QString& done)
{
    ui::tellDone(m_journal, m_services, done);
}

void Page::undoLast()
{
    takeBack(m_journal, m_services);
}

} // namespace plumule::ui

#include "moc_page.cpp"
