#include "tests/core/storage/scratch.h"
#include "tests/soak/soak_script.h"
#include "tests/soak/soak_times.h"

#include <csignal>
#include <ctime>

namespace plumule {
namespace {

// The system kills this process after so many microseconds, as kill -9 does.
void killAfter(int microseconds)
{
    timer_t timer = {};
    struct sigevent event = {};
    event.sigev_notify = SIGEV_SIGNAL;
    event.sigev_signo = SIGKILL;
    struct itimerspec when = {};
    when.it_value.tv_nsec = microseconds * 1'000L;
    if (::timer_create(CLOCK_MONOTONIC, &event, &timer) != 0 ||
        ::timer_settime(timer, 0, &when, nullptr) != 0) {
        ::_exit(3);
    }
}

// When it is killed: after so many steps, and so many microseconds more. Whatever else the machine
// does, some work is done before.
struct Moments
{
    int steps = 0;
    int microseconds = 1;
};

// Goes on with the script from that step, each step told through the pipe once it is acknowledged.
[[noreturn]] void writeUntilKilled(const std::filesystem::path& path, const Clock& clock, int from,
                                   int tellTo, Moments moments)
{
    auto journal = Journal::open(path, clock);
    if (!journal || (*journal)->isReadOnly()) {
        ::_exit(1);
    }
    for (int step = from;; ++step) {
        if (step == from + moments.steps) {
            killAfter(moments.microseconds);
        }
        if (!doStep(**journal, step)) {
            ::_exit(2);
        }
        const char mark = '.';
        if (::write(tellTo, &mark, 1) != 1) {
            ::_exit(3);
        }
    }
}

struct Killed
{
    int acknowledged = 0;
    bool wasKilled = false;
};

Killed killedWhileWriting(const std::filesystem::path& path, const Clock& clock, int from,
                          Moments moments)
{
    int ends[2] = {};
    EXPECT_EQ(::pipe(ends), 0);
    const pid_t child = ::fork();
    if (child == 0) {
        ::close(ends[0]);
        writeUntilKilled(path, clock, from, ends[1], moments);
    }
    ::close(ends[1]);
    Killed killed;
    char mark = 0;
    while (::read(ends[0], &mark, 1) == 1) {
        ++killed.acknowledged;
    }
    ::close(ends[0]);
    int status = 0;
    ::waitpid(child, &status, 0);
    killed.wasKilled = WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL;
    return killed;
}

TEST(Soak, AKilledProgramLosesNothingThatItAcknowledged)
{
    const FixedClock clock({date(2026, 3, 2), 7 * 60 + 30});
    const int kills = soakTimes(20, 440);
    constexpr int kKillsOfAJournal = 20;
    constexpr int kMostSteps = 8;
    constexpr int kLongest = 10'000; // microseconds
    std::mt19937 lot(1);
    Tally tally;
    int steps = 0;
    for (int journals = 0; tally.tries < kills; ++journals) {
        const ScratchFolder folder;
        const auto path = folder / "room.plumule";
        makeScriptJournal(path, clock);
        int acknowledged = 0;
        for (int i = 0; i < kKillsOfAJournal; ++i) {
            const Moments moments = {static_cast<int>(lot() % kMostSteps),
                                     1 + static_cast<int>(lot() % kLongest)};
            const Killed killed = killedWhileWriting(path, clock, acknowledged, moments);
            ASSERT_TRUE(killed.wasKilled);
            acknowledged += killed.acknowledged;
            steps += killed.acknowledged;
            const Found found = lookAt(path, clock);
            tally.count(found, acknowledged);
            acknowledged += found.state == stateAfter(acknowledged) ? 0 : 1;
        }
    }
    sayFigures(tally.text("kills") + ", " + std::to_string(steps) + " steps acknowledged");
    EXPECT_TRUE(tally.isClean());
    EXPECT_GT(steps, kills) << "it was killed before it wrote anything";
}

} // namespace
} // namespace plumule
