#pragma once

namespace plumule::app {

// Opens the window: on the journal named, on a fresh sample with --sample, on the last journal, or
// on the first-start dialog where there is none. Returns an exit code.
int runWindow(int argc, char** argv);

} // namespace plumule::app
