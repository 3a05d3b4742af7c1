#pragma once

#include "ui/widget/key_clock.h"

#include <QObject>
#include <QPointer>
#include <QString>

#include <functional>
#include <memory>

class QKeyEvent;

namespace plumule::ui {

class HeldField;

// Sees a label scanner that types faster than a person (under 30 ms between keys, ended by Enter or
// Tab) and gives the field that has the focus back what it held before, so that its letters land in
// no field. Put on the application as an event filter. A page that takes single letters as commands
// waits for the key after.
class BurstReader : public QObject
{
    Q_OBJECT

public:
    enum class Kind
    {
        Ours,    // a code that the journal knows
        Strange, // a code of something else
        Typed    // no code: a weight from a scale, or words
    };
    using Judge = std::function<Kind(const QString&)>;
    // What a scanner may send before and after each code.
    struct Marks
    {
        QString before;
        QString after;
    };

    explicit BurstReader(Judge judge, QObject* parent = nullptr);
    ~BurstReader() override;

    // Asked at every burst. Without the marks a code is read too, and so is one after a symbology
    // identifier of ISO/IEC 15424 ("]C1").
    void setMarks(std::function<Marks()> marks);
    // For tests.
    [[nodiscard]] KeyClock& clock() { return m_clock; }

    bool eventFilter(QObject* watched, QEvent* event) override;

Q_SIGNALS:
    void scanned(const QString& code);
    // A code that nothing here has; without its marks.
    void strangerScanned(const QString& code);

private:
    [[nodiscard]] bool endBurst();
    void take(const QKeyEvent& key, QObject* watched, bool isFast);
    void restore();

    KeyClock m_clock;
    std::function<Marks()> m_marks;
    Judge m_judge;
    const QEvent* m_seen = nullptr;
    qint64 m_lastAt = -1'000'000;
    QString m_text;
    std::unique_ptr<HeldField> m_held;
};

} // namespace plumule::ui
