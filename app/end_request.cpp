#include "app/end_request.h"

#include <QCoreApplication>
#include <QSocketNotifier>

#include <array>
#include <csignal>
#include <fcntl.h>
#include <unistd.h>

namespace plumule::app {
namespace {

constexpr std::array kSignals = {SIGTERM, SIGINT, SIGHUP};

// Read by the event loop, written by the handler; −1: not open.
std::array<int, 2> thePipe = {-1, -1};

// Only what a signal handler may call (signal-safety(7)).
void ask(int)
{
    const char byte = 0;
    if (::write(thePipe[1], &byte, 1) < 0) {
        // It was asked already.
    }
}

void handle(void (*handler)(int))
{
    struct sigaction action = {};
    action.sa_handler = handler;
    action.sa_flags = static_cast<int>(SA_RESTART);
    for (const int signal : kSignals) {
        ::sigaction(signal, &action, nullptr);
    }
}

} // namespace

EndRequest::EndRequest(QObject* parent)
    : QObject(parent)
{
    if (::pipe2(thePipe.data(), O_CLOEXEC | O_NONBLOCK) != 0) {
        return;
    }
    m_notifier = new QSocketNotifier(thePipe[0], QSocketNotifier::Read, this);
    connect(m_notifier, &QSocketNotifier::activated, this, [this] {
        m_notifier->setEnabled(false);
        QCoreApplication::exit(0);
    });
    handle(ask);
}

EndRequest::~EndRequest()
{
    if (m_notifier == nullptr) {
        return;
    }
    handle(SIG_DFL);
    delete m_notifier;
    for (int& end : thePipe) {
        ::close(end);
        end = -1;
    }
}

} // namespace plumule::app
