#include "ui/page/tasks.h"

#include "core/base/file_reason.h"
#include "core/base/work_reason.h"

#include <QSignalSpy>
#include <QTest>
#include <QThread>
#include <gtest/gtest.h>

#include <atomic>

namespace plumule::ui {
namespace {

bool holdsSoon(const std::function<bool()>& condition)
{
    return QTest::qWaitFor(condition, 3000);
}

// Runs until it is stopped, and says whether it was.
Result<int> untilStopped(const Progress& progress)
{
    while (!progress.isStopped()) {
        QThread::yieldCurrentThread();
    }
    return fail(ErrorKind::Cancelled, WorkReason::Stopped);
}

TEST(Tasks, HandBackWhatTheWorkAnswersOnTheWindowsThread)
{
    Tasks tasks;
    QObject receiver;
    QThread* workedOn = nullptr;
    QThread* answeredOn = nullptr;
    std::optional<Result<int>> answer;
    tasks.run(
        "Counting",
        [&workedOn](const Progress&) -> Result<int> {
            workedOn = QThread::currentThread();
            return 42;
        },
        &receiver,
        [&](const Result<int>& result) {
            answeredOn = QThread::currentThread();
            answer = result;
        });
    EXPECT_TRUE(tasks.isBusy());
    EXPECT_FALSE(answer.has_value());
    ASSERT_TRUE(holdsSoon([&] { return answer.has_value(); }));
    EXPECT_EQ(answer->value(), 42);
    EXPECT_EQ(answeredOn, QThread::currentThread());
    EXPECT_NE(workedOn, QThread::currentThread());
    EXPECT_FALSE(tasks.isBusy());
}

TEST(Tasks, HandBackAnErrorAsItIs)
{
    Tasks tasks;
    QObject receiver;
    std::optional<Result<int>> answer;
    tasks.run(
        "Failing",
        [](const Progress&) -> Result<int> {
            return fail(ErrorKind::DiskFull, FileReason::NotWritten, "here");
        },
        &receiver, [&](const Result<int>& result) { answer = result; });
    ASSERT_TRUE(holdsSoon([&] { return answer.has_value(); }));
    ASSERT_FALSE(answer->has_value());
    EXPECT_EQ(answer->error(), fail(ErrorKind::DiskFull, FileReason::NotWritten, "here").value());
}

TEST(Tasks, TellWhenTheyBeginHowFarTheyAreAndWhenTheyEnd)
{
    Tasks tasks;
    QObject receiver;
    const QSignalSpy started(&tasks, &Tasks::started);
    const QSignalSpy progressed(&tasks, &Tasks::progressed);
    const QSignalSpy idle(&tasks, &Tasks::idle);
    bool isDone = false;
    tasks.run(
        "Backing up",
        [](const Progress& progress) -> Done {
            progress.report(0.25);
            progress.report(1.0);
            return {};
        },
        &receiver, [&](const Done&) { isDone = true; });
    ASSERT_EQ(started.count(), 1);
    EXPECT_EQ(started.front().front().toString(), "Backing up");
    ASSERT_TRUE(holdsSoon([&] { return isDone && progressed.count() == 2; }));
    EXPECT_EQ(progressed[0].front().toDouble(), 0.25);
    EXPECT_EQ(progressed[1].front().toDouble(), 1.0);
    EXPECT_EQ(idle.count(), 1);
}

TEST(Tasks, CanBeStopped)
{
    Tasks tasks;
    QObject receiver;
    std::optional<Result<int>> answer;
    tasks.run("Waiting", untilStopped, &receiver,
              [&](const Result<int>& result) { answer = result; });
    EXPECT_TRUE(tasks.isBusy());
    tasks.stopAll();
    ASSERT_TRUE(holdsSoon([&] { return answer.has_value(); }));
    EXPECT_EQ(answer->error().kind, ErrorKind::Cancelled);
    EXPECT_FALSE(tasks.isBusy());
}

TEST(Tasks, AreIdleOnlyWhenTheLastOneHasEnded)
{
    Tasks tasks;
    QObject receiver;
    const QSignalSpy idle(&tasks, &Tasks::idle);
    bool isQuickDone = false;
    tasks.run("Long", untilStopped, &receiver, [](const Result<int>&) {});
    tasks.run(
        "Quick", [](const Progress&) -> Result<int> { return 1; }, &receiver,
        [&](const Result<int>&) { isQuickDone = true; });
    ASSERT_TRUE(holdsSoon([&] { return isQuickDone; }));
    EXPECT_TRUE(tasks.isBusy());
    EXPECT_EQ(idle.count(), 0);
    tasks.stopAll();
    ASSERT_TRUE(holdsSoon([&] { return idle.count() == 1; }));
}

TEST(Tasks, DoNotCallOneWhoIsGone)
{
    Tasks tasks;
    bool wasCalled = false;
    {
        QObject receiver;
        tasks.run("Waiting", untilStopped, &receiver,
                  [&](const Result<int>&) { wasCalled = true; });
    }
    tasks.stopAll();
    ASSERT_TRUE(holdsSoon([&] { return !tasks.isBusy(); }));
    EXPECT_FALSE(wasCalled);
}

TEST(Tasks, StopAndWaitForWhatRunsWhenTheyGo)
{
    std::atomic<bool> hasEnded = false;
    QObject receiver;
    {
        Tasks tasks;
        tasks.run(
            "Waiting",
            [&hasEnded](const Progress& progress) -> Result<int> {
                auto answer = untilStopped(progress);
                hasEnded = true;
                return answer;
            },
            &receiver, [](const Result<int>&) {});
    }
    EXPECT_TRUE(hasEnded);
}

} // namespace
} // namespace plumule::ui
