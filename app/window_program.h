#pragma once

#include "core/journal/journal.h"
#include "core/log/event_log.h"
#include "core/log/open_mark.h"

#include <QObject>

#include <memory>

namespace plumule::ui {

class Ask;
class BackupKeeper;
class FirstStart;
class MainWindow;
class Preferences;

} // namespace plumule::ui

namespace plumule::app {

// The open journal and its window, and what stands in their place before there is one. Another
// journal, or another look, replaces the window.
class WindowProgram : public QObject
{
public:
    // `records`: the folder of the log and of what says that a journal is open.
    WindowProgram(const Clock& clock, ui::Ask& ask, ui::Preferences& preferences,
                  const std::filesystem::path& records);
    ~WindowProgram() override;

    // As Journal::open(); a refusal leaves the window as it is. The path is remembered for start().
    Done openFile(const QString& path);
    // A new sample room under the user's own data.
    Done openSample();
    // The journal opened last, or the first-start dialog, which says why that could not be opened.
    void start();
    // Light or dark and the size of type, as preferred.
    void applyLook();

    // None before a journal is open; none where start() found one.
    [[nodiscard]] ui::MainWindow* window() const { return m_window.get(); }
    [[nodiscard]] ui::FirstStart* firstStart() const { return m_firstStart.get(); }

private:
    void showFirstStart();
    void take(std::unique_ptr<Journal> journal);
    void markOpen();
    void sayAtStart();
    void buildWindow();
    void keepBackups();

    const Clock& m_clock;
    ui::Ask& m_ask;
    ui::Preferences& m_preferences;
    std::filesystem::path m_records;
    EventLog m_log;
    std::unique_ptr<OpenMark> m_mark; // goes once the journal is closed; none: opened to read
    std::unique_ptr<Journal> m_journal;
    std::unique_ptr<ui::MainWindow> m_window;
    std::unique_ptr<ui::BackupKeeper> m_keeper; // goes before the journal it listens to
    std::unique_ptr<ui::FirstStart> m_firstStart;
};

// Opens the window: on the journal named, on a fresh sample with --sample, on the last journal, or
// on the first-start dialog where there is none. Returns an exit code.
int runWindow(int argc, char** argv);

} // namespace plumule::app
