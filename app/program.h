#pragma once

namespace plumule::app {

// Exit codes: done; refused (a journal that can't be opened, a check that found faults); a bad
// call.
inline constexpr int kDone = 0;
inline constexpr int kRefused = 1;
inline constexpr int kBadCall = 2;

// Runs a headless command, or the window when the first argument names none.
int runProgram(int argc, char** argv);

} // namespace plumule::app
