#include "ui/window/main_window.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/chart/chart_view.h"
#include "ui/cost/costs_page.h"
#include "ui/exchange/import_dialog.h"
#include "ui/exchange/sample_room.h"
#include "ui/harvest/weigh_page.h"
#include "ui/history/history_page.h"
#include "ui/page/clock_watch.h"
#include "ui/page/undoing.h"
#include "ui/review/season_page.h"
#include "ui/setup/setup_page.h"
#include "ui/tray/trays_page.h"
#include "ui/trial/trials_page.h"
#include "ui/watering/between_dialog.h"
#include "ui/watering/round_page.h"
#include "ui/watering/water_part.h"
#include "ui/widget/burst.h"
#include "ui/widget/page_stack.h"
#include "ui/widget/widgets.h"
#include "ui/window/begin_bar.h"
#include "ui/window/help_dialog.h"

#include <QApplication>
#include <QCloseEvent>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>

namespace plumule::ui {
namespace {

constexpr QSize kSmallestWindow{900, 600};
constexpr QSize kUsualWindow{1440, 900};
constexpr QSize kWindowFrame{4, 40}; // what the desktop puts round a window

} // namespace

MainWindow::MainWindow(Journal& journal, Ask& ask, Preferences& preferences, QWidget* parent)
    : QMainWindow(parent)
    , m_journal(journal)
    , m_ask(ask)
    , m_preferences(preferences)
{
    setWindowTitle(tr("Plumule"));
    setWindowIcon(QIcon(QStringLiteral(":/icons/plumule.svg")));
    m_tasks = new Tasks(this);
    WaterPart::applySmallVolumes(m_preferences);
    buildFrame();
    buildPages();
    m_clock = new ClockWatch(m_journal, this);
    wireKeys();
    wireWork();
    m_listener = m_journal.addListener([this](const std::vector<Change>& changes) {
        for (Page* page : m_pages) {
            for (const Change& change : changes) {
                if (page->concerns(change.about)) {
                    page->noteChange();
                    break;
                }
            }
        }
        showHeader();
    });
    connect(m_clock, &ClockWatch::turned, this, [this] {
        for (Page* each : m_pages) {
            each->followClock();
        }
    });
    showHeader();
    showPageAt(0);
    restorePlace();
}

MainWindow::~MainWindow()
{
    m_journal.removeListener(m_listener);
    qApp->removeEventFilter(m_scanner);
    qApp->removeEventFilter(this);
}

void MainWindow::wireBegin()
{
    connect(m_begin, &BeginBar::sowAsked, this, [this] {
        for (Page* each : m_pages) {
            if (auto* trays = qobject_cast<TraysPage*>(each)) {
                showPage(trays->name());
                trays->openSowing();
            }
        }
    });
    connect(m_begin, &BeginBar::importAsked, this, [this] {
        ImportDialog::begin(m_journal, {m_ask, *m_messages, m_preferences, *m_tasks}, this);
    });
    connect(m_begin, &BeginBar::sampleAsked, this, [this] {
        m_ask.fileToSave(this, tr("Where shall the sample be kept?"), tr("Sample room.plumule"),
                         tr("Plumule journals (*.plumule)"), [this](const QString& path) {
                             auto made = makeSampleJournal(path, m_journal.clock());
                             if (!made) {
                                 m_messages->refuse(sentence(made.error()));
                                 return;
                             }
                             made->reset();
                             Q_EMIT journalAsked(path);
                         });
    });
}

// Only where the page in front has nothing to show because nothing was ever grown for it.
void MainWindow::showBegin()
{
    const QString page = pageShown();
    const bool isRound = page == tr("Round");
    const bool isSeason = page == tr("Season");
    QString words;
    if (isRound && !m_journal.trays().hasAny(TrayState::Growing)) {
        words = tr("Nothing grows here yet.");
    } else if (isSeason && !m_journal.trays().hasAny(TrayState::Harvested)) {
        words = tr("No tray was harvested yet, so there is nothing to compare.");
    }
    m_begin->say(words);
}

void MainWindow::buildPages()
{
    const Services services{m_ask, *m_messages, m_preferences, *m_tasks};
    addPage(new RoundPage(m_journal, services));
    addPage(new WeighPage(m_journal, services));
    addPage(new TraysPage(m_journal, services));
    addPage(new TrialsPage(m_journal, services));
    addPage(new SeasonPage(m_journal, services));
    addPage(new CostsPage(m_journal, services));
    addPage(new HistoryPage(m_journal, services));
    auto* setup = new SetupPage(m_journal, services);
    connect(setup, &SetupPage::journalAsked, this, [this](const QString& path) {
        leaveThen([this, path] { Q_EMIT journalAsked(path); });
    });
    connect(setup, &SetupPage::lookChanged, this,
            [this] { leaveThen([this] { Q_EMIT lookChanged(); }); });
    addPage(setup);
}

// The page in front has read its rows only now, so that work can begin on them.
void MainWindow::showEvent(QShowEvent* event)
{
    QMainWindow::showEvent(event);
    QMetaObject::invokeMethod(
        this, [this] { inFront().begin(); }, Qt::QueuedConnection);
}

void MainWindow::restorePlace()
{
    const QByteArray place = m_preferences.get(Preference::WindowPlace).toByteArray();
    if (place.isEmpty() || !restoreGeometry(place)) {
        const QSize most = screen()->availableSize() - kWindowFrame;
        resize(kUsualWindow.boundedTo(most).expandedTo(kSmallestWindow));
    }
}

void MainWindow::hideEvent(QHideEvent* event)
{
    m_preferences.set(Preference::WindowPlace, saveGeometry());
    QMainWindow::hideEvent(event);
}

void MainWindow::leaveThen(std::function<void()> go)
{
    QStringList unsaved;
    for (const Page* each : m_pages) {
        if (each->hasUnsaved()) {
            unsaved << each->name();
        }
    }
    if (unsaved.isEmpty()) {
        go();
        return;
    }
    m_ask.confirm(
        this, tr("Not saved"),
        tr("What you typed under %1 is not saved. Leave it all the same?").arg(unsaved.join(", ")),
        tr("Leave without saving"), std::move(go));
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    if (m_mayClose) {
        QMainWindow::closeEvent(event);
        return;
    }
    event->ignore();
    leaveThen([this] {
        m_mayClose = true;
        // Queued: an answer may come from within the question's own close.
        QMetaObject::invokeMethod(this, &QWidget::close, Qt::QueuedConnection);
    });
}

void MainWindow::showHeader()
{
    if (const auto layout = m_journal.room().layout()) {
        ChartView::showUnits(layout->room.units);
        m_roomName->setText(QString::fromStdString(layout->room.name));
    }
    m_readOnly->setVisible(m_journal.isReadOnly());
    showBegin();
}

void MainWindow::showPageAt(int index)
{
    m_buttons[static_cast<std::size_t>(index)]->setChecked(true);
    m_stack->setCurrentIndex(index);
    showBegin();
    // Where the last page was scrolled to is nothing to this one.
    m_area->verticalScrollBar()->setValue(0);
    m_pages[static_cast<std::size_t>(index)]->begin();
}

void MainWindow::showPage(const QString& name)
{
    for (std::size_t i = 0; i < m_pages.size(); ++i) {
        if (m_pages[i]->name() == name) {
            showPageAt(static_cast<int>(i));
        }
    }
}

QStringList MainWindow::pageNames() const
{
    QStringList names;
    for (const Page* page : m_pages) {
        names << page->name();
    }
    return names;
}

Page* MainWindow::page(const QString& name) const
{
    for (Page* page : m_pages) {
        if (page->name() == name) {
            return page;
        }
    }
    return nullptr;
}

Page& MainWindow::inFront() const
{
    return *m_pages[static_cast<std::size_t>(m_stack->currentIndex())];
}

QString MainWindow::pageShown() const
{
    return inFront().name();
}

void MainWindow::setBadge(int index, int count)
{
    QLabel* badge = m_badges[static_cast<std::size_t>(index)];
    badge->setText(QString::number(count));
    badge->setVisible(count > 0);
}

void MainWindow::giveBetween(TrayId tray)
{
    auto* dialog = new BetweenDialog(m_journal, m_ask, {tray}, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &BetweenDialog::given, this, [this] { tellLast(m_journal, *m_messages); });
    dialog->open();
}

void MainWindow::openTray(TrayId tray)
{
    for (Page* each : m_pages) {
        if (auto* trays = qobject_cast<TraysPage*>(each)) {
            showPage(trays->name());
            trays->openSheet(tray);
        }
    }
}

void MainWindow::find()
{
    if (inFront().find()) {
        return;
    }
    for (Page* each : m_pages) {
        if (auto* trays = qobject_cast<TraysPage*>(each)) {
            showPage(trays->name());
            trays->find();
        }
    }
}

void MainWindow::print()
{
    if (!inFront().print()) {
        m_messages->tell(tr("There is no sheet to print of this page. The round, a trial's plan, "
                            "the season and labels of trays have one."));
    }
}

void MainWindow::readAgain()
{
    inFront().reload();
    m_messages->tell(tr("Read again from the journal."));
}

void MainWindow::help()
{
    auto* help = new HelpDialog(m_ask, this);
    help->setAttribute(Qt::WA_DeleteOnClose);
    help->open();
}

void MainWindow::weigh(const QString& code)
{
    for (Page* each : m_pages) {
        if (auto* scale = qobject_cast<WeighPage*>(each)) {
            showPage(scale->name());
            scale->take(code);
        }
    }
}

} // namespace plumule::ui

#include "moc_main_window.cpp"
