#pragma once

#include "ui/widget/key_clock.h"

#include <QObject>
#include <QTimer>

namespace plumule::ui {

// Tells a key that a person presses from one that a label scanner types (less than 40 ms from the
// next): what a letter does waits until it is plain that no other follows as fast.
class LoneKey : public QObject
{
    Q_OBJECT

public:
    explicit LoneKey(QObject* parent = nullptr);

    // To be told of each key once. What waits is dropped: it was not alone.
    [[nodiscard]] bool isInABurst(const QKeyEvent& key);
    // A plain letter or figure, by itself or with Shift, waits to stand alone, with the key as its
    // meaning; false of any other key, which is nothing to this.
    bool hear(const QKeyEvent& key);
    // Emits stoodAlone(meaning) unless another key comes before.
    void waitFor(int meaning);
    void drop() { m_wait.stop(); }
    [[nodiscard]] bool isWaiting() const { return m_wait.isActive(); }
    // For tests.
    [[nodiscard]] KeyClock& clock() { return m_clock; }

Q_SIGNALS:
    void stoodAlone(int meaning);

private:
    KeyClock m_clock;
    QTimer m_wait;
    qint64 m_lastAt = -1'000'000;
    int m_meaning = 0;
};

} // namespace plumule::ui
