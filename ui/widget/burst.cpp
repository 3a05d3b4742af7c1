#include "ui/widget/burst.h"

#include <QKeyEvent>
#include <QMetaProperty>
#include <QWidget>

namespace plumule::ui {
namespace {

constexpr qint64 kFastestPerson = 30; // ms between two keys
constexpr int kShortestCode = 4;

} // namespace

BurstReader::BurstReader(Knows knows, QObject* parent)
    : QObject(parent)
    , m_knows(std::move(knows))
{
    m_timer.start();
    m_time = [this] { return m_timer.elapsed(); };
}

void BurstReader::setTimeSource(std::function<qint64()> milliseconds)
{
    m_time = std::move(milliseconds);
}

// What a field held before the keys that may be a burst: its text, number, day or choice.
void BurstReader::remember(QObject* field)
{
    m_field = field;
    m_held = field->metaObject()->userProperty().read(field);
}

void BurstReader::restore()
{
    if (m_field && m_held.isValid()) {
        m_field->metaObject()->userProperty().write(m_field, m_held);
    }
    m_field.clear();
}

bool BurstReader::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride || event->type() == QEvent::KeyRelease) {
        m_seen = nullptr;
    }
    if (event->type() != QEvent::KeyPress || !watched->isWidgetType()) {
        return false;
    }
    // A key that a widget leaves alone is offered to its parents too: it is one key all the same.
    if (std::exchange(m_seen, event) == event) {
        return false;
    }
    auto* key = static_cast<QKeyEvent*>(event);
    const qint64 now = m_time();
    const bool isFast = now - m_lastAt < kFastestPerson;
    const bool isEnter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
    if (isEnter && isFast && m_text.size() >= kShortestCode && m_knows(m_text)) {
        const QString text = std::exchange(m_text, QString());
        restore();
        Q_EMIT scanned(text);
        return true;
    }
    const QString typed = key->text();
    const bool isPlain = typed.size() == 1 && typed.front().isPrint() &&
                         (key->modifiers() & ~Qt::ShiftModifier) == Qt::NoModifier;
    if (isPlain && !(isFast && !m_text.isEmpty())) {
        remember(watched);
    }
    m_text = isPlain ? (isFast ? m_text + typed : typed) : QString();
    m_lastAt = now;
    return false;
}

} // namespace plumule::ui

#include "moc_burst.cpp"
