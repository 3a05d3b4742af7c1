#include "core/journal/room/room_entries.h"
#include "tests/ui/support/growing.h"
#include "ui/page/aside.h"

#include <atomic>
#include <thread>

namespace plumule::ui {
namespace {

class AsideTest : public GrowingTest
{};

TEST_F(AsideTest, HandsOnTheAnswerToTheLatestQuestionAlone)
{
    QObject receiver;
    Aside aside(*journal, tasks, &receiver);
    std::vector<int> answers;
    for (const int number : {1, 2, 3}) {
        aside.ask(
            "Counting", [number](Journal&, const Progress&) -> Result<int> { return number; },
            [&](const Result<int>& answer) { answers.push_back(*answer); });
    }
    ASSERT_TRUE(soon([&] { return !tasks.isBusy(); }));
    settleDown();
    EXPECT_EQ(answers, std::vector<int>{3});
}

TEST_F(AsideTest, ReadsOnAnotherThreadByAHandThatCannotWrite)
{
    QObject receiver;
    std::optional<Result<bool>> answer;
    const auto here = std::this_thread::get_id();
    askAside(
        tasks, "Looking", *journal,
        [here](Journal& elsewhere, const Progress&) -> Result<bool> {
            EXPECT_EQ(elsewhere.room().addRack("Z", 1, 1).error().kind, ErrorKind::ReadOnly);
            return std::this_thread::get_id() != here;
        },
        &receiver, [&](const Result<bool>& given) { answer = given; });
    ASSERT_TRUE(soon([&] { return answer.has_value(); }));
    EXPECT_TRUE(answer->value());
}

TEST_F(AsideTest, TellsNobodyWhoIsGone)
{
    auto receiver = std::make_unique<QObject>();
    std::atomic<bool> mayEnd = false;
    bool isTold = false;
    askAside(
        tasks, "Waiting", *journal,
        [&mayEnd](Journal&, const Progress&) -> Result<bool> {
            while (!mayEnd) {
                std::this_thread::yield();
            }
            return true;
        },
        receiver.get(), [&](const Result<bool>&) { isTold = true; });
    receiver.reset();
    mayEnd = true;
    ASSERT_TRUE(soon([&] { return !tasks.isBusy(); }));
    settleDown();
    EXPECT_FALSE(isTold);
}

} // namespace
} // namespace plumule::ui
