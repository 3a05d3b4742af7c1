#include "app/program.h"

#include "app/commands/command.h"
#include "app/window_program.h"
#include "ui/widget/theme.h"

#include <QApplication>
#include <QLocale>

#include <csignal>
#include <cstdio>

namespace plumule::app {
namespace {

const Command* commandNamed(const QString& name)
{
    for (const Command& command : commands()) {
        if (name == QLatin1String(command.name)) {
            return &command;
        }
    }
    return nullptr;
}

void printHelp()
{
    std::puts("plumule [JOURNAL]                 open the window on a journal");
    std::puts(
        "plumule --sample                  open it on a fresh copy of the invented sample room");
    for (const Command& command : commands()) {
        std::printf("plumule %s %s\n", command.name, command.usage);
    }
}

// A script reads a command's one line on standard error: Qt's own remarks on the desktop stay out.
void keepQuiet(QtMsgType type, const QMessageLogContext&, const QString& text)
{
    if (type == QtCriticalMsg || type == QtFatalMsg) {
        std::fprintf(stderr, "%s\n", text.toUtf8().constData());
    }
}

int runCommand(const Command& command, int argc, char** argv)
{
    qInstallMessageHandler(keepQuiet);
    // A command never needs a display; those that draw do so off the screen.
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QLocale::setDefault(QLocale::c());
    QApplication application(argc, argv);
    // What is printed has the program's own font and plurals too.
    ui::applyTheme(application, ui::Ground::Light);
    QStringList arguments = QCoreApplication::arguments();
    arguments.removeAt(1);
    return command.run(arguments);
}

} // namespace

int runProgram(int argc, char** argv)
{
    // Where files may only grow so large, a write is refused and said, instead of ending the
    // program.
    std::signal(SIGXFSZ, SIG_IGN);
    QCoreApplication::setApplicationName(QStringLiteral("Plumule"));
    QCoreApplication::setApplicationVersion(QStringLiteral(PLUMULE_VERSION));
    const QString first = argc > 1 ? QString::fromLocal8Bit(argv[1]) : QString();
    if (first == QLatin1String("--help") || first == QLatin1String("help")) {
        printHelp();
        return kDone;
    }
    if (first == QLatin1String("--version")) {
        std::puts("Plumule " PLUMULE_VERSION);
        return kDone;
    }
    if (const Command* command = commandNamed(first)) {
        return runCommand(*command, argc, argv);
    }
    return runWindow(argc, argv);
}

} // namespace plumule::app
