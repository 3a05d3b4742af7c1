#include "app/window_program.h"

#include "app/program.h"
#include "app/system_clock.h"
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
#include <memory>

namespace plumule::app {
namespace {

// Holds what the window needs and swaps the journal when another one is asked for.
class WindowProgram : public QObject
{
public:
    Result<void> openFile(const QString& path)
    {
        auto opened = Journal::open(path.toStdString(), m_clock);
        if (!opened) {
            return passOn(opened);
        }
        take(std::move(*opened));
        return {};
    }

    Result<void> openSample()
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

    void start()
    {
        const QString last = m_preferences.get(ui::Preference::LastJournal).toString();
        const auto opened = last.isEmpty() ? Result<void>() : openFile(last);
        if (!last.isEmpty() && opened) {
            return;
        }
        showFirstStart();
        if (!opened) {
            m_firstStart->explain(last, opened.error());
        }
    }

    void applyLook()
    {
        ui::applyTheme(*qApp, m_preferences.get(ui::Preference::Look).toString() == "dark",
                       m_preferences.get(ui::Preference::FontScale).toDouble());
    }

private:
    void showFirstStart()
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

    void take(std::unique_ptr<Journal> journal)
    {
        if (m_window) {
            m_window->hide();
        }
        m_window.reset();
        m_journal = std::move(journal);
        m_preferences.set(ui::Preference::LastJournal,
                          QString::fromStdString(m_journal->path().string()));
        buildWindow();
        if (m_firstStart) {
            m_firstStart->hide();
        }
        if (m_journal->readOnlyBecause()) {
            m_window->messages().refuse(ui::sentence(*m_journal->readOnlyBecause()));
        }
    }

    void buildWindow()
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
    }

    SystemClock m_clock;
    ui::DialogAsk m_ask;
    ui::StoredPreferences m_preferences;
    std::unique_ptr<Journal> m_journal;
    std::unique_ptr<ui::MainWindow> m_window;
    std::unique_ptr<ui::FirstStart> m_firstStart;
};

} // namespace

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
    WindowProgram program;
    program.applyLook();
    Result<void> opened;
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
