#include "app/end_request.h"

#include <QCoreApplication>
#include <QTimer>

#include <csignal>
#include <gtest/gtest.h>

namespace plumule::app {
namespace {

class EndRequestTest : public testing::TestWithParam<int>
{};

TEST_P(EndRequestTest, LeavesTheEventLoopInGoodOrder)
{
    const EndRequest request;
    bool isOver = false;
    QTimer::singleShot(0, [] { ::raise(GetParam()); });
    QTimer::singleShot(20'000, [&] {
        isOver = true;
        QCoreApplication::exit(1);
    });
    EXPECT_EQ(QCoreApplication::exec(), 0);
    EXPECT_FALSE(isOver);
}

INSTANTIATE_TEST_SUITE_P(Signal, EndRequestTest, testing::Values(SIGTERM, SIGINT, SIGHUP));

} // namespace
} // namespace plumule::app
