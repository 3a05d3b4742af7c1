#include "ui/widget/lone_key.h"

#include <utility>

namespace plumule::ui {
namespace {

constexpr int kScannerGap = 40; // ms

} // namespace

LoneKey::LoneKey(QObject* parent)
    : QObject(parent)
{
    m_wait.setSingleShot(true);
    m_wait.setInterval(kScannerGap);
    connect(&m_wait, &QTimer::timeout, this, [this] { Q_EMIT stoodAlone(m_meaning); });
}

bool LoneKey::isInABurst(const QKeyEvent& key)
{
    drop();
    const qint64 now = m_clock.timeOf(key);
    return now - std::exchange(m_lastAt, now) < kScannerGap;
}

bool LoneKey::hear(const QKeyEvent& key)
{
    const QString typed = key.text();
    const bool isPlain =
        typed.size() == 1 && typed.front().isPrint() &&
        (key.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == Qt::NoModifier;
    if (isPlain && !isInABurst(key) && !key.isAutoRepeat()) {
        waitFor(key.key());
    }
    return isPlain;
}

void LoneKey::waitFor(int meaning)
{
    m_meaning = meaning;
    m_wait.start();
}

} // namespace plumule::ui

#include "moc_lone_key.cpp"
