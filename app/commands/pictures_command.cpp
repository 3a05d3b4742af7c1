#include "app/commands/command.h"

#include "core/base/file_reason.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "ui/harvest/weigh_page.h"
#include "ui/review/season_page.h"
#include "ui/setup/setup_page.h"
#include "ui/text/text.h"
#include "ui/tray/trays_page.h"
#include "ui/trial/trial_view.h"
#include "ui/trial/trials_page.h"
#include "ui/widget/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QTimer>

namespace plumule::app {
namespace {

struct Frame
{
    QSize size{1440, 900};
    ui::Ground ground = ui::Ground::Light;
    double fontScale = 1.0;
};

// What is drawn; nullopt, and a line said, where an option is off.
std::optional<Frame> frameOf(const QCommandLineParser& parser)
{
    Frame frame;
    if (parser.isSet("size")) {
        const QStringList parts = parser.value("size").split('x');
        const QSize size = parts.size() == 2 ? QSize(parts[0].toInt(), parts[1].toInt()) : QSize();
        if (size.width() < 640 || size.height() < 480 || size.width() > 8000 ||
            size.height() > 8000) {
            badCall(QStringLiteral("--size wants WIDTHxHEIGHT from 640x480 on, not \"%1\".")
                        .arg(parser.value("size")));
            return std::nullopt;
        }
        frame.size = size;
    }
    if (parser.isSet("font-scale")) {
        bool isNumber = false;
        frame.fontScale = parser.value("font-scale").toDouble(&isNumber);
        if (!isNumber || frame.fontScale < 0.8 || frame.fontScale > 2.0) {
            badCall(QStringLiteral("--font-scale wants a number from 0.8 to 2, not \"%1\".")
                        .arg(parser.value("font-scale")));
            return std::nullopt;
        }
    }
    frame.ground = parser.isSet("dark") ? ui::Ground::Dark : ui::Ground::Light;
    return frame;
}

// One picture: what to show, and the file's name.
struct Shot
{
    QString name;
    std::function<void()> arrange;
};

void addSetupShots(std::vector<Shot>& shots, ui::MainWindow& window, ui::SetupPage& setup)
{
    for (const QString& part : setup.partNames()) {
        shots.push_back(
            {"set-up-" + QString(part).toLower().replace(' ', '-'), [&window, &setup, part] {
                 window.showPage(setup.name());
                 setup.showPart(part);
             }});
    }
}

void addSheetShot(std::vector<Shot>& shots, ui::MainWindow& window, ui::TraysPage& trays,
                  Journal& journal)
{
    TrayFilter harvested;
    harvested.state = TrayState::Harvested;
    const auto rows = journal.trays().list(harvested);
    if (rows && !rows->empty()) {
        shots.push_back({"tray-sheet", [&window, &trays, id = rows->front().record.tray.id] {
                             window.showPage(trays.name());
                             trays.openSheet(id);
                         }});
    }
}

void addTrialShots(std::vector<Shot>& shots, ui::MainWindow& window, ui::TrialsPage& trials,
                   Journal& journal)
{
    shots.push_back({"trial-plan", [&window, &trials] {
                         window.showPage(trials.name());
                         trials.openNew();
                     }});
    const auto rows = journal.trials().list().value_or(std::vector<TrialRow>());
    const auto add = [&](const char* name, TrialState state, ui::TrialView::Part part) {
        const auto row = std::find_if(rows.begin(), rows.end(),
                                      [&](const TrialRow& each) { return each.state == state; });
        if (row != rows.end()) {
            shots.push_back({name, [&window, &trials, id = row->trial.id, part] {
                                 window.showPage(trials.name());
                                 trials.openTrial(id);
                                 trials.trial().showPart(part);
                             }});
        }
    };
    add("trial-progress", TrialState::Growing, ui::TrialView::Progress);
    add("trial-tasting", TrialState::Growing, ui::TrialView::Tasting);
    add("trial-answer", TrialState::Ended, ui::TrialView::Answer);
}

void addSeasonShots(std::vector<Shot>& shots, ui::MainWindow& window, ui::SeasonPage& season)
{
    const std::pair<const char*, Response> metrics[] = {{"season-cost", Response::CostPerGram},
                                                        {"season-height", Response::HeightOnDay},
                                                        {"season-evenness", Response::Evenness}};
    for (const auto& [name, response] : metrics) {
        shots.push_back({name, [&window, &season, metric = response] {
                             window.showPage(season.name());
                             season.showMetric(metric);
                         }});
    }
    shots.push_back({"season-ratings", [&window, &season] {
                         window.showPage(season.name());
                         season.showRatings();
                     }});
}

std::vector<Shot> shotsOf(ui::MainWindow& window, Journal& journal)
{
    std::vector<Shot> shots;
    for (const QString& name : window.pageNames()) {
        ui::Page* page = window.page(name);
        if (auto* setup = qobject_cast<ui::SetupPage*>(page)) {
            addSetupShots(shots, window, *setup);
            continue;
        }
        shots.push_back(
            {QString(name).toLower().replace(' ', '-'), [&window, &journal, name, page] {
                 window.showPage(name);
                 auto* scale = qobject_cast<ui::WeighPage*>(page);
                 const auto due = journal.harvests().weighIn(journal.clock().today());
                 if (scale != nullptr && due && !due->due.empty()) {
                     scale->take(QString::fromStdString(due->due.front().code));
                 }
             }});
        if (auto* trays = qobject_cast<ui::TraysPage*>(page)) {
            addSheetShot(shots, window, *trays, journal);
        } else if (auto* trials = qobject_cast<ui::TrialsPage*>(page)) {
            addTrialShots(shots, window, *trials, journal);
        } else if (auto* season = qobject_cast<ui::SeasonPage*>(page)) {
            addSeasonShots(shots, window, *season);
        }
    }
    return shots;
}

// Takes one picture after the other, each once the page has come to rest.
class Photographer : public QObject
{
public:
    Photographer(ui::MainWindow& window, std::vector<Shot> shots, const QDir& folder)
        : m_window(window)
        , m_shots(std::move(shots))
        , m_folder(folder)
    {}
    void next()
    {
        if (m_index == m_shots.size()) {
            QCoreApplication::exit(kDone);
            return;
        }
        m_shots[m_index].arrange();
        m_waited.start();
        QTimer::singleShot(60, this, [this] { takeWhenAtRest(); });
    }

private:
    void takeWhenAtRest()
    {
        if (m_window.tasks().isBusy() && m_waited.elapsed() < 30'000) {
            QTimer::singleShot(30, this, [this] { takeWhenAtRest(); });
            return;
        }
        // One more turn of the loop, for what the work's answer has yet to lay out.
        QTimer::singleShot(60, this, [this] { take(); });
    }
    void take()
    {
        const QString file = m_folder.filePath(m_shots[m_index].name + ".png");
        if (!m_window.grab().save(file)) {
            QCoreApplication::exit(refused(
                fail(ErrorKind::NotWritable, FileReason::NotWritten, file.toStdString()).value()));
            return;
        }
        print(file);
        ++m_index;
        next();
    }

    ui::MainWindow& m_window;
    std::vector<Shot> m_shots;
    QDir m_folder;
    std::size_t m_index = 0;
    QElapsedTimer m_waited;
};

} // namespace

int runPictures(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"size", "", "size"});
    parser.addOption({"dark", ""});
    parser.addOption({"font-scale", "", "scale"});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL", "DIR"});
    if (!given) {
        return kBadCall;
    }
    const auto frame = frameOf(parser);
    if (!frame) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto opened = Journal::open((*given)[0].toStdString(), clock);
    if (!opened) {
        return refused(opened.error());
    }
    QDir folder((*given)[1]);
    if (!folder.mkpath(".")) {
        return refused(
            fail(ErrorKind::NotWritable, FileReason::NotWritten, (*given)[1].toStdString())
                .value());
    }
    ui::applyTheme(*qApp, frame->ground, frame->fontScale);
    ui::DialogAsk ask;
    ui::PassingPreferences preferences;
    ui::MainWindow window(**opened, ask, preferences);
    window.resize(frame->size);
    window.show();
    Photographer photographer(window, shotsOf(window, **opened), folder);
    QTimer::singleShot(0, &photographer, [&] { photographer.next(); });
    return QCoreApplication::exec();
}

} // namespace plumule::app
