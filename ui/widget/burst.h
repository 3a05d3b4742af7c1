#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QPointer>
#include <QString>
#include <QVariant>

#include <functional>

namespace plumule::ui {

// Sees a label scanner that types faster than a person (under 30 ms between keys, ended by Enter)
// and gives the field that has the focus back what it held before, so that they land in no field.
// Put on the application as an event filter. A page that takes single letters as commands waits for
// the key after.
class BurstReader : public QObject
{
    Q_OBJECT

public:
    // Whether a text is one that a scanner sends for us: a tray's code.
    using Knows = std::function<bool(const QString&)>;

    explicit BurstReader(Knows knows, QObject* parent = nullptr);

    // Milliseconds on the reader's own clock; tests set it.
    void setTimeSource(std::function<qint64()> milliseconds);

    bool eventFilter(QObject* watched, QEvent* event) override;

Q_SIGNALS:
    void scanned(const QString& text);

private:
    void remember(QObject* field);
    void restore();

    std::function<qint64()> m_time;
    Knows m_knows;
    QElapsedTimer m_timer;
    const QEvent* m_seen = nullptr;
    qint64 m_lastAt = -1'000'000;
    QString m_text;
    QPointer<QObject> m_field;
    QVariant m_held;
};

} // namespace plumule::ui
