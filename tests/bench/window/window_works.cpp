#include "tests/bench/window/window_works.h"

#include "core/journal/journal.h"
#include "tests/bench/life/present_moment.h"
#include "tests/ui/support/ui_fixture.h"
#include "tests/ui/support/watched_application.h"
#include "ui/window/main_window.h"

#include <QTimer>

#include <functional>
#include <iostream>
#include <stdexcept>

namespace plumule::bench {
namespace {

constexpr int kRuns = 7;
constexpr double kFrame = 16;
constexpr double kMostHeld = 100;

// The window on a journal, with a person at its keys.
class Person
{
public:
    explicit Person(const std::filesystem::path& journal)
        : m_clock(presentMoment())
        , m_journal(Journal::open(journal, m_clock).value())
        , m_window(std::make_unique<ui::MainWindow>(*m_journal, m_ask, m_preferences))
    {
        m_window->resize(1440, 900);
        m_window->show();
        m_window->activateWindow();
        const bool isUp = QTest::qWaitForWindowActive(m_window.get()) &&
                          QTest::qWaitFor([] { return QApplication::focusWidget() != nullptr; });
        if (!isUp) {
            throw std::runtime_error("the window did not come up");
        }
        rest();
    }

    void goTo(const char* page)
    {
        m_window->showPage(page);
        rest();
    }
    void press(int key, Qt::KeyboardModifiers with = Qt::NoModifier)
    {
        QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(key), with);
        rest();
    }
    // In the list of trays, without the pause that it waits for.
    void search(const QString& text)
    {
        QWidget& trays = *m_window->page("Trays");
        trays.findChild<QTimer*>("typingPause")->setInterval(0);
        auto* field = trays.findChild<QLineEdit*>("search");
        field->setFocus();
        field->selectAll();
        QTest::keyClicks(field, text);
        rest();
    }
    // Until nothing is queued and nothing runs beside the window.
    void rest()
    {
        for (int round = 0; round < 4; ++round) {
            bool isThrough = false;
            QTimer::singleShot(0, qApp, [&isThrough] { isThrough = true; });
            while (!isThrough || m_window->tasks().isBusy()) {
                QApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents);
            }
        }
    }

private:
    FixedClock m_clock;
    ui::ScriptedAsk m_ask;
    ui::PassingPreferences m_preferences;
    std::unique_ptr<Journal> m_journal;
    std::unique_ptr<ui::MainWindow> m_window;
};

Measured held(const std::string& name, double aimMs, const std::function<void()>& before,
              const std::function<void()>& work)
{
    std::cerr << name << " …\n";
    std::vector<double> longest;
    for (int run = 0; run < kRuns; ++run) {
        before();
        longest.push_back(ui::WatchedApplication::longestIn(work).ms);
    }
    return judged({name, median(longest), 0, aimMs});
}

} // namespace

std::vector<Measured> windowWorks(const std::filesystem::path& journal)
{
    Person person(journal);
    const auto tick = [&person] { person.press(Qt::Key_Space); };
    const auto onTrays = [&person] { person.goTo("Trays"); };
    person.goTo("Round");
    std::vector<Measured> works = {
        held(
            "tick, and the page after it", kFrame, [] {}, tick),
        held("take it back", kFrame, tick, [&] { person.press(Qt::Key_Z, Qt::ControlModifier); }),
        held(
            "Trays, gone to after a tick", kFrame,
            [&] {
                person.goTo("Round");
                tick();
            },
            onTrays),
        held(
            "a letter in its search", kFrame, [&] { person.search(" "); },
            [&] { person.search("b"); }),
        held(
            "a code in its search", kFrame, [&] { person.search(" "); },
            [&] { person.search("BR00012"); }),
    };
    for (const char* page : {"Weigh-in", "Racks", "Week", "Orders", "Forecast", "Trials", "Season",
                             "Costs", "Stock", "History", "Set-up"}) {
        person.goTo(page); // made now
        works.push_back(held(
            std::string(page) + ", gone to after a tick", kMostHeld,
            [&] {
                person.goTo("Round");
                tick();
            },
            [&] { person.goTo(page); }));
    }
    return works;
}

} // namespace plumule::bench
