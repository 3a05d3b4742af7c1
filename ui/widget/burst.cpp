#include "ui/widget/burst.h"

#include "ui/widget/held_field.h"

#include <QApplication>
#include <QKeyEvent>
#include <QRegularExpression>
#include <QWidget>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr qint64 kFastestPerson = 30; // ms between two keys
constexpr qint64 kLongestToEnd = 100; // before Enter, which a busy computer may hand on late
constexpr int kShortestCode = 4;
constexpr int kShortestStranger = 6;
constexpr int kLongestCode = 500;

bool isEnd(const QKeyEvent& key)
{
    return key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter || key.key() == Qt::Key_Tab;
}

// A scanner presses these between the letters of a code.
bool isShiftKey(const QKeyEvent& key)
{
    return key.key() == Qt::Key_Shift || key.key() == Qt::Key_CapsLock ||
           key.key() == Qt::Key_AltGr || key.key() == Qt::Key_NumLock;
}

bool isPlain(const QKeyEvent& key)
{
    const QString typed = key.text();
    return typed.size() == 1 && typed.front().isPrint() &&
           (key.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == Qt::NoModifier;
}

QString withoutMarks(QString text, const BurstReader::Marks& marks)
{
    if (!marks.before.isEmpty() && text.startsWith(marks.before)) {
        text.remove(0, marks.before.size());
    }
    if (!marks.after.isEmpty() && text.endsWith(marks.after)) {
        text.chop(marks.after.size());
    }
    return text;
}

QString withoutSymbology(const QString& text)
{
    static const QRegularExpression identifier(QStringLiteral("^\\][A-Za-z][0-9A-Za-z]"));
    return QString(text).remove(identifier);
}

// Labels of goods and addresses have figures and no blanks; fast words have blanks.
bool mayBeACode(const QString& text)
{
    const bool hasFigure =
        std::any_of(text.begin(), text.end(), [](QChar letter) { return letter.isDigit(); });
    return text.size() >= kShortestStranger && hasFigure && !text.contains(' ');
}

} // namespace

BurstReader::BurstReader(Judge judge, QObject* parent)
    : QObject(parent)
    , m_marks([] { return Marks(); })
    , m_judge(std::move(judge))
{}

BurstReader::~BurstReader() = default;

void BurstReader::setMarks(std::function<Marks()> marks)
{
    m_marks = std::move(marks);
}

bool BurstReader::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride || event->type() == QEvent::KeyRelease) {
        m_seen = nullptr;
    }
    // A list that dropped down takes its choice at this already, before the key is pressed.
    if (event->type() == QEvent::ShortcutOverride && QApplication::activePopupWidget() != nullptr) {
        const auto& key = *static_cast<QKeyEvent*>(event);
        if (isEnd(key) && m_text.size() >= kShortestCode &&
            m_clock.timeOf(key) - m_lastAt < kLongestToEnd) {
            event->accept();
            return true;
        }
    }
    if (event->type() != QEvent::KeyPress || !watched->isWidgetType()) {
        return false;
    }
    // A key that a widget leaves alone is offered to its parents too: it is one key all the same.
    if (std::exchange(m_seen, event) == event) {
        return false;
    }
    const auto& key = *static_cast<QKeyEvent*>(event);
    const qint64 now = m_clock.timeOf(key);
    const qint64 since = now - std::exchange(m_lastAt, now);
    if (since < kLongestToEnd && isEnd(key) && m_text.size() >= kShortestCode) {
        return endBurst();
    }
    take(key, watched, since < kFastestPerson);
    return false;
}

void BurstReader::take(const QKeyEvent& key, QObject* watched, bool isFast)
{
    if (isShiftKey(key)) {
        m_text = isFast ? m_text : QString();
        return;
    }
    if (!isPlain(key) || m_text.size() > kLongestCode) {
        m_text.clear();
        return;
    }
    if (!isFast || m_text.isEmpty()) {
        m_text.clear();
        m_held = std::make_unique<HeldField>(watched);
    }
    m_text += key.text();
}

bool BurstReader::endBurst()
{
    const QString raw = std::exchange(m_text, QString());
    const QString bare = withoutMarks(raw, m_marks());
    for (const QString& each : {raw, bare, withoutSymbology(raw), withoutSymbology(bare)}) {
        if (!each.isEmpty() && m_judge(each) == Kind::Ours) {
            restore();
            Q_EMIT scanned(each);
            return true;
        }
    }
    if (!mayBeACode(bare) || m_judge(bare) != Kind::Strange) {
        return false;
    }
    restore();
    Q_EMIT strangerScanned(bare);
    return true;
}

void BurstReader::restore()
{
    // A list that had dropped down took the letters for itself.
    if (QWidget* popup = QApplication::activePopupWidget()) {
        popup->close();
    }
    if (m_held != nullptr) {
        m_held->giveBack();
        m_held.reset();
    }
}

} // namespace plumule::ui

#include "moc_burst.cpp"
