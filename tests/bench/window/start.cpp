#include "tests/bench/window/start.h"

#include "core/journal/journal.h"
#include "tests/bench/life/present_moment.h"
#include "tests/bench/life/process.h"
#include "tests/ui/support/ui_fixture.h"
#include "ui/widget/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QMainWindow>
#include <QProcess>

#include <cstdio>
#include <iostream>

namespace plumule::bench {
namespace {

constexpr int kStarts = 9;
constexpr double kMostTimesBare = 3;
constexpr double kMostMb = 100;

// Notes when an event was over within which a widget of that class was painted.
class PaintWatch : public QApplication
{
public:
    PaintWatch(int& count, char** words, const char* painted)
        : QApplication(count, words)
        , m_painted(painted)
    {}

    bool notify(QObject* receiver, QEvent* event) override
    {
        ++m_depth;
        const bool isTaken = QApplication::notify(receiver, event);
        --m_depth;
        m_isPainted = m_isPainted ||
                      (event->type() == QEvent::Paint && receiver->inherits(m_painted.constData()));
        if (m_isPainted && m_depth == 0 && m_ms == 0) {
            m_ms = cpuMs();
            m_mb = residentMb();
        }
        return isTaken;
    }
    int tellWhenPainted()
    {
        while (m_ms == 0) {
            processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents);
        }
        std::printf("%.3f %.3f\n", m_ms, m_mb);
        return EXIT_SUCCESS;
    }

private:
    QByteArray m_painted;
    int m_depth = 0;
    bool m_isPainted = false;
    double m_ms = 0;
    double m_mb = 0;
};

struct Start
{
    double ms = 0;
    double mb = 0;
};

Start started(const char* self, const QStringList& words)
{
    QProcess program;
    program.start(QString::fromLocal8Bit(self), words);
    program.waitForFinished(-1);
    const QList<QByteArray> told = program.readAllStandardOutput().simplified().split(' ');
    if (told.size() != 2) {
        throw std::runtime_error("a start told nothing");
    }
    return {told[0].toDouble(), told[1].toDouble()};
}

} // namespace

int startBare(int count, char** words)
{
    PaintWatch application(count, words, "QMainWindow");
    QMainWindow window;
    window.resize(1440, 900);
    window.show();
    return application.tellWhenPainted();
}

int startOurs(int count, char** words, const std::filesystem::path& journal)
{
    PaintWatch application(count, words, "plumule::ui::TrayRow");
    ui::applyTheme(application, ui::Ground::Light);
    const FixedClock clock(presentMoment());
    const auto opened = Journal::open(journal, clock);
    if (!opened) {
        return EXIT_FAILURE;
    }
    ui::ScriptedAsk ask;
    ui::PassingPreferences preferences;
    ui::MainWindow window(**opened, ask, preferences);
    window.resize(1440, 900);
    window.show();
    return application.tellWhenPainted();
}

std::vector<Measured> startWorks(const char* self, const std::filesystem::path& journal)
{
    std::cerr << "starts …\n";
    const QString file = QString::fromStdString(journal.string());
    std::vector<double> bareMs, bareMb, ourMs, ourMb;
    for (int i = 0; i < kStarts; ++i) {
        const Start bare = started(self, {kBareWindow});
        bareMs.push_back(bare.ms);
        bareMb.push_back(bare.mb);
        const Start ours = started(self, {kOurWindow, file});
        ourMs.push_back(ours.ms);
        ourMb.push_back(ours.mb);
    }
    return {judged({"start to a painted Round", median(ourMs), median(bareMs),
                    kMostTimesBare * median(bareMs)}),
            judged({"MB resident then", median(ourMb), median(bareMb), kMostMb})};
}

} // namespace plumule::bench
