#include "app/crash_note.h"

#include <csignal>
#include <cstddef>
#include <fcntl.h>
#include <unistd.h>

namespace plumule::app {
namespace {

int theFile = -1;

// Only what a signal handler may call (signal-safety(7)). The system's own handler comes next.
void noteCrash(int signal)
{
    char line[] = "crashed, by signal 00\n";
    constexpr std::size_t kTens = sizeof line - 4;
    line[kTens] = static_cast<char>('0' + signal / 10 % 10);
    line[kTens + 1] = static_cast<char>('0' + signal % 10);
    if (::write(theFile, line, sizeof line - 1) < 0) {
        // Nothing is left to tell.
    }
    ::raise(signal);
}

} // namespace

void noteCrashesIn(const std::filesystem::path& file)
{
    theFile = ::open(file.c_str(), O_CREAT | O_WRONLY | O_APPEND | O_CLOEXEC, 0600);
    if (theFile < 0) {
        return;
    }
    struct sigaction action = {};
    action.sa_handler = noteCrash;
    action.sa_flags = static_cast<int>(SA_RESETHAND | SA_NODEFER);
    for (const int signal : {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT}) {
        ::sigaction(signal, &action, nullptr);
    }
}

} // namespace plumule::app
