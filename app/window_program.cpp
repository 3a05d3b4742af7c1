#include "app/window_program.h"

#include "app/crash_note.h"
#include "app/end_request.h"
#include "app/program.h"
#include "app/system_clock.h"
#include "core/journal/room/room_entries.h"
#include "ui/backup/backup_keeper.h"
#include "ui/exchange/sample_room.h"
#include "ui/widget/theme.h"
#include "ui/window/first_start.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QCommandLineParser>
#include <QDateTime>
#include <QDir>
#include <QLocale>
#include <QStandardPaths>

#include <cstdio>

namespace plumule::app {

WindowProgram::WindowProgram(const Clock& clock, ui::Ask& ask, ui::Preferences& preferences,
                             const std::filesystem::path& records)
    : m_clock(clock)
    , m_ask(ask)
    , m_preferences(preferences)
    , m_records(records)
    , m_log(records)
{}

WindowProgram::~WindowProgram() = default;

Done WindowProgram::openFile(const QString& path)
{
    auto opened = Journal::open(path.toStdString(), m_clock);
    if (!opened) {
        m_log.write(LogEvent::NotOpened, m_clock.utcMilliseconds(), path.toStdString(), {},
                    opened.error());
        return passOn(opened);
    }
    take(std::move(*opened));
    return {};
}

Done WindowProgram::openSample()
{
    const QString folder =
        QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) + "/sample";
    QDir().mkpath(folder);
    const QString name = QDateTime::currentDateTime().toString("yyyyMMdd-HHmmss");
    auto made = ui::makeSampleJournal(folder + "/sample-" + name + ".plumule", m_clock);
    if (!made) {
        return passOn(made);
    }
    take(std::move(*made));
    return {};
}

void WindowProgram::start()
{
    const QString last = m_preferences.get(ui::Preference::LastJournal).toString();
    const Done opened = last.isEmpty() ? Done() : openFile(last);
    if (!last.isEmpty() && opened) {
        return;
    }
    showFirstStart();
    if (!opened) {
        m_firstStart->explain(last, opened.error());
    }
}

void WindowProgram::applyLook()
{
    const bool isDark = m_preferences.get(ui::Preference::Look).toString() == "dark";
    ui::applyTheme(*qApp, isDark ? ui::Ground::Dark : ui::Ground::Light,
                   m_preferences.get(ui::Preference::FontScale).toDouble());
}

void WindowProgram::showFirstStart()
{
    m_firstStart = std::make_unique<ui::FirstStart>(m_clock, m_ask);
    QObject::connect(m_firstStart.get(), &ui::FirstStart::chosen, this,
                     [this](const QString& path) {
                         if (const auto done = openFile(path); !done) {
                             m_firstStart->refuse(ui::sentence(done.error()));
                         }
                     });
    m_firstStart->show();
}

void WindowProgram::take(std::unique_ptr<Journal> journal)
{
    if (m_window) {
        m_window->hide();
    }
    m_keeper.reset();
    m_window.reset();
    m_journal = std::move(journal);
    markOpen();
    m_preferences.set(ui::Preference::LastJournal,
                      QString::fromStdString(m_journal->path().string()));
    buildWindow();
    if (m_firstStart) {
        m_firstStart->hide();
    }
    sayAtStart();
}

// Who may write holds the journal's lock: a mark that stands now is nobody's.
void WindowProgram::markOpen()
{
    m_mark.reset();
    const auto note = [this](LogEvent event, const std::optional<Error>& why = std::nullopt) {
        m_log.write(event, m_clock.utcMilliseconds(), m_journal->path(), {}, why);
    };
    if (m_journal->isReadOnly()) {
        note(LogEvent::OpenedToRead, m_journal->readOnlyBecause());
        return;
    }
    m_mark = std::make_unique<OpenMark>(m_records, m_journal->path());
    if (m_mark->wasLeft()) {
        note(LogEvent::EndedUnexpectedly);
    }
    note(LogEvent::Opened);
    m_journal->setRefusalListener([this](Intention what, const Error& why) {
        m_log.write(LogEvent::Refused, m_clock.utcMilliseconds(), m_journal->path(), toText(what),
                    why);
    });
}

void WindowProgram::sayAtStart()
{
    const QString folder = ui::explanationOf(m_journal->folder());
    if (m_journal->readOnlyBecause()) {
        m_window->messages().refuse(ui::sentence(*m_journal->readOnlyBecause()));
    } else if (m_mark && m_mark->wasLeft()) {
        const auto layout = m_journal->room().layout();
        m_window->messages().tell(
            ui::unexpectedEnd(m_journal->nextUndo(),
                              layout ? layout->room.units : UnitSystem::Metric, m_clock.today()));
    } else if (!folder.isEmpty()) {
        m_window->messages().tell(folder);
    }
}

void WindowProgram::buildWindow()
{
    m_window = std::make_unique<ui::MainWindow>(*m_journal, m_ask, m_preferences);
    // Queued: the window that asks is replaced by the answer.
    QObject::connect(
        m_window.get(), &ui::MainWindow::journalAsked, this,
        [this](const QString& path) {
            if (const auto done = openFile(path); !done && m_window) {
                m_window->messages().refuse(ui::sentence(done.error()));
            }
        },
        Qt::QueuedConnection);
    QObject::connect(
        m_window.get(), &ui::MainWindow::lookChanged, this,
        [this] {
            const QString page = m_window->pageShown();
            m_window->hide();
            applyLook();
            m_window.reset();
            buildWindow();
            m_window->showPage(page);
        },
        Qt::QueuedConnection);
    m_window->show();
    keepBackups();
}

void WindowProgram::keepBackups()
{
    m_keeper = std::make_unique<ui::BackupKeeper>(*m_journal, m_preferences);
    QObject::connect(m_keeper.get(), &ui::BackupKeeper::warned, m_window.get(),
                     [this](const QString& sentence) { m_window->messages().refuse(sentence); });
    m_keeper->lookAtStart();
}

int runWindow(int argc, char** argv)
{
    QLocale::setDefault(QLocale::c());
    QApplication application(argc, argv);
    // The window is replaced when another journal is opened: that must not end the program.
    QApplication::setQuitOnLastWindowClosed(true);
    QCommandLineParser parser;
    parser.addOption({"sample", ""});
    if (!parser.parse(QCoreApplication::arguments()) || parser.positionalArguments().size() > 1) {
        const QString why = parser.errorText().isEmpty() ? QStringLiteral("One journal at a time.")
                                                         : parser.errorText();
        std::fprintf(stderr, "plumule: %s\n", why.toUtf8().constData());
        return kBadCall;
    }
    const SystemClock clock;
    ui::DialogAsk ask;
    ui::StoredPreferences preferences;
    const std::filesystem::path records = preferences.folder().toStdString();
    WindowProgram program(clock, ask, preferences, records);
    noteCrashesIn(EventLog(records).file());
    const EndRequest endRequest;
    program.applyLook();
    Done opened;
    if (parser.isSet("sample")) {
        opened = program.openSample();
    } else if (!parser.positionalArguments().isEmpty()) {
        opened = program.openFile(parser.positionalArguments().front());
    } else {
        program.start();
    }
    if (!opened) {
        std::fprintf(stderr, "plumule: %s\n", ui::sentence(opened.error()).toUtf8().constData());
        return kRefused;
    }
    return QApplication::exec();
}

} // namespace plumule::app
