// Part of ui/window/main_window.h: keys, and labels that are scanned.
#include "ui/window/main_window.h"

#include "core/harvest/scale_text.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/page/clock_watch.h"
#include "ui/page/undoing.h"
#include "ui/watering/round_page.h"
#include "ui/widget/burst.h"
#include "ui/widget/plain_words.h"

#include <QAbstractButton>
#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QShortcut>
#include <QToolTip>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kMostFiguresOfAWeight = 7; // an article number has eight or more

bool isWeight(const QString& text)
{
    const bool isLongNumber =
        text.size() > kMostFiguresOfAWeight &&
        std::all_of(text.begin(), text.end(), [](QChar letter) { return letter.isDigit(); });
    return !isLongNumber && scaleReadingFrom(text.toStdString(), MassUnit::Gram).has_value();
}

} // namespace

void MainWindow::wireKeys()
{
    for (std::size_t i = 0; i < std::min(m_seats.size(), kNumberedPages); ++i) {
        auto* key = new QShortcut(
            QKeySequence(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(i))), this);
        connect(key, &QShortcut::activated, this, [this, i] { showPageAt(i); });
    }
    const auto act = [this](const QKeySequence& keys, auto done) {
        connect(new QShortcut(keys, this), &QShortcut::activated, this, done);
    };
    act(Qt::CTRL | Qt::Key_PageDown, [this] { showBeside(1); });
    act(Qt::CTRL | Qt::Key_PageUp, [this] { showBeside(-1); });
    act(QKeySequence::Find, [this] { find(); });
    act(QKeySequence::Print, [this] { print(); });
    act(QKeySequence::Refresh, [this] { readAgain(); });
    act(QKeySequence::HelpContents, [this] { help(); });
    act(QKeySequence::Undo, [this] { takeBack(m_journal, services()); });
    // As the help says, and as the desktop calls it.
    QList<QKeySequence> again = QKeySequence::keyBindings(QKeySequence::Redo);
    if (const QKeySequence usual(Qt::CTRL | Qt::SHIFT | Qt::Key_Z); !again.contains(usual)) {
        again << usual;
    }
    auto* redo = new QShortcut(this);
    redo->setKeys(again);
    connect(redo, &QShortcut::activated, this, [this] { doAgain(m_journal, services()); });
    wireScanner();
    qApp->installEventFilter(this);
    qApp->installEventFilter(m_scanner);
}

void MainWindow::wireScanner()
{
    m_scanner = new BurstReader(
        [this](const QString& text) {
            if (m_journal.trays().find(text.toStdString())) {
                return BurstReader::Kind::Ours;
            }
            return isWeight(text) ? BurstReader::Kind::Typed : BurstReader::Kind::Strange;
        },
        this);
    m_scanner->setMarks([this] {
        return BurstReader::Marks{m_preferences.get(Preference::ScanBefore).toString(),
                                  m_preferences.get(Preference::ScanAfter).toString()};
    });
    connect(m_scanner, &BurstReader::scanned, this, &MainWindow::follow);
    connect(m_scanner, &BurstReader::strangerScanned, this, [this](const QString& code) {
        refuseScan(tr("No tray is called “%1”, which was scanned. It may be the barcode of "
                      "something else.")
                       .arg(code));
    });
}

void MainWindow::follow(const QString& code)
{
    const auto tray = m_journal.trays().find(code.toStdString());
    if (!tray) {
        return;
    }
    // The page under a dialog stays as it is, and so does what is typed in the dialog.
    if (QApplication::activeModalWidget() != nullptr) {
        refuseScan(tr("%1 was scanned. Finish this first, then scan it again.").arg(code));
        return;
    }
    if (pageShown() == tr("Weigh-in")) {
        weigh(code);
    } else if (auto* round = qobject_cast<RoundPage*>(&inFront())) {
        round->takeInHand(*tray);
    } else {
        openTray(*tray);
    }
}

// Enter presses the button that it is typed at, as Space does: Qt leaves that to dialogs. At the
// button alone: a list hands its Enter on, and may have moved the focus by then.
bool MainWindow::pressByEnter(QObject* watched, const QEvent& event) const
{
    auto* button = qobject_cast<QAbstractButton*>(watched);
    if (event.type() != QEvent::KeyPress || button == nullptr || button->window() != this) {
        return false;
    }
    const auto& key = static_cast<const QKeyEvent&>(event);
    const bool isEnter = key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
    if (!isEnter || key.isAutoRepeat()) {
        return false;
    }
    button->click();
    return true;
}

// The bar may stand under a dialog, so that the words are shown there too.
void MainWindow::refuseScan(const QString& words)
{
    m_messages->refuse(words);
    if (const QWidget* dialog = QApplication::activeModalWidget()) {
        QToolTip::showText(dialog->mapToGlobal(QPoint(0, 0)), plainHint(words));
    }
}

// A field that has nothing typed to take back would keep these keys to itself all the same.
bool MainWindow::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::WindowActivate && watched == this) {
        m_clock->look(); // the computer may have slept meanwhile
    }
    if (pressByEnter(watched, *event)) {
        return true;
    }
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* field = qobject_cast<QLineEdit*>(watched);
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool isIdle =
            field != nullptr && ((key->matches(QKeySequence::Undo) && !field->isUndoAvailable()) ||
                                 (key->matches(QKeySequence::Redo) && !field->isRedoAvailable()));
        if (isIdle) {
            event->ignore();
            return true;
        }
    }
    return QMainWindow::eventFilter(watched, event);
}

} // namespace plumule::ui
