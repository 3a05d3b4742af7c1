#include "tests/bench/life/tables.h"
#include "tests/bench/window/start.h"
#include "tests/bench/window/window_works.h"
#include "tests/ui/support/watched_application.h"
#include "ui/widget/theme.h"

#include <QLocale>

#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <string>

namespace plumule::bench {
namespace {

int measureRooms(const char* self, const std::filesystem::path& folder,
                 const std::vector<std::string>& rooms)
{
    for (const std::string& room : rooms) {
        const std::filesystem::path journal = folder / (room + ".plumule");
        std::vector<Measured> works = startWorks(self, journal);
        for (Measured& work : windowWorks(journal)) {
            works.push_back(std::move(work));
        }
        tell("The window on " + room, works, folder / ("window_" + room + ".json"));
    }
    return EXIT_SUCCESS;
}

} // namespace
} // namespace plumule::bench

// plumule_window_bench FOLDER room|farm|giant…: measures the window, off the screen, on the
// journals <room>.plumule that plumule_life_bench made in the folder, and writes window_<room>.json
// there.
int main(int count, char** words)
{
    using namespace plumule;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QLocale::setDefault(QLocale::c());
    const std::vector<std::string> asked(words + 1, words + count);
    if (!asked.empty() && asked.front() == bench::kBareWindow) {
        return bench::startBare(count, words);
    }
    if (asked.size() == 2 && asked.front() == bench::kOurWindow) {
        return bench::startOurs(count, words, asked.back());
    }
    if (asked.size() < 2) {
        std::cerr << "plumule_window_bench FOLDER room|farm|giant…\n";
        return EXIT_FAILURE;
    }
    ui::WatchedApplication application(count, words);
    ui::applyTheme(application, ui::Ground::Light);
    return bench::measureRooms(words[0], asked.front(), {asked.begin() + 1, asked.end()});
}
