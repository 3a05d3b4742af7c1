#include "ui/window/main_window.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/chart/chart_view.h"
#include "ui/cost/costs_page.h"
#include "ui/exchange/import_dialog.h"
#include "ui/exchange/sample_room.h"
#include "ui/forecast/forecast_page.h"
#include "ui/harvest/weigh_page.h"
#include "ui/history/history_page.h"
#include "ui/order/order_page.h"
#include "ui/page/clock_watch.h"
#include "ui/page/undoing.h"
#include "ui/rack/racks_page.h"
#include "ui/review/season_page.h"
#include "ui/setup/setup_page.h"
#include "ui/stock/stock_page.h"
#include "ui/tray/trays_page.h"
#include "ui/trial/trials_page.h"
#include "ui/watering/between_dialog.h"
#include "ui/watering/round_page.h"
#include "ui/watering/water_part.h"
#include "ui/week/week_page.h"
#include "ui/widget/burst.h"
#include "ui/widget/widgets.h"
#include "ui/window/begin_bar.h"
#include "ui/window/help_dialog.h"
#include "ui/window/seat_stack.h"

#include <QApplication>
#include <QCloseEvent>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>

#include <algorithm>

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
        for (Page* page : pages()) {
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
        for (Page* each : pages()) {
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
        showPage(tr("Trays"));
        pageOf<TraysPage>(tr("Trays")).openSowing();
    });
    connect(m_begin, &BeginBar::importAsked, this,
            [this] { ImportDialog::begin(m_journal, services(), this); });
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
    addPage<RoundPage>(tr("Round"), Built::Soon);
    addPage<WeighPage>(tr("Weigh-in"), Built::Soon);
    addPage<RacksPage>(tr("Racks"));
    addPage<WeekPage>(tr("Week"));
    addPage<OrderPage>(tr("Orders"));
    addPage<ForecastPage>(tr("Forecast"));
    addPage<TraysPage>(tr("Trays"));
    addPage<TrialsPage>(tr("Trials"));
    addPage<SeasonPage>(tr("Season"));
    addPage<CostsPage>(tr("Costs"));
    addPage<StockPage>(tr("Stock"), Built::Soon);
    addPage<HistoryPage>(tr("History"));
    addPage<SetupPage>(tr("Set-up"));
}

// The page in front has read its rows only now, so that work can begin on them.
void MainWindow::showEvent(QShowEvent* event)
{
    QMainWindow::showEvent(event);
    QMetaObject::invokeMethod(
        this, [this] { inFront().begin(); }, Qt::QueuedConnection);
}

// What stands in the window is painted after itself; what is not seen yet comes after that.
void MainWindow::paintEvent(QPaintEvent* event)
{
    QMainWindow::paintEvent(event);
    if (!m_isSeen) {
        m_isSeen = true;
        QTimer::singleShot(0, this, &MainWindow::buildSoon);
    }
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
    for (const Page* each : pages()) {
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

void MainWindow::showPageAt(std::size_t index)
{
    Page& page = pageAt(index);
    m_seats[index].button->setChecked(true);
    bringIntoView(*m_seats[index].button);
    m_stack->setCurrentIndex(static_cast<int>(index));
    showBegin();
    // Where the last page was scrolled to is nothing to this one.
    m_area->verticalScrollBar()->setValue(0);
    page.begin();
}

void MainWindow::showBeside(int steps)
{
    const int count = m_stack->count();
    showPageAt(static_cast<std::size_t>((m_stack->currentIndex() + steps + count) % count));
}

void MainWindow::showPage(const QString& name)
{
    if (const qsizetype index = pageNames().indexOf(name); index >= 0) {
        showPageAt(static_cast<std::size_t>(index));
    }
}

QStringList MainWindow::pageNames() const
{
    QStringList names;
    for (const Seat& seat : m_seats) {
        names << seat.name;
    }
    return names;
}

Page* MainWindow::page(const QString& name)
{
    const qsizetype index = pageNames().indexOf(name);
    return index < 0 ? nullptr : &pageAt(static_cast<std::size_t>(index));
}

bool MainWindow::isBuilt(const QString& name) const
{
    return std::any_of(m_seats.begin(), m_seats.end(),
                       [&](const Seat& seat) { return seat.name == name && seat.page != nullptr; });
}

Page& MainWindow::inFront()
{
    return pageAt(static_cast<std::size_t>(m_stack->currentIndex()));
}

QString MainWindow::pageShown() const
{
    return m_seats[static_cast<std::size_t>(m_stack->currentIndex())].name;
}

void MainWindow::setBadge(std::size_t index, int count)
{
    QLabel* badge = m_seats[index].badge;
    badge->setText(QString::number(count));
    badge->setVisible(count > 0);
}

void MainWindow::giveBetween(TrayId tray)
{
    auto* dialog = new BetweenDialog(m_journal, m_ask, {tray}, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &BetweenDialog::given, this, [this] { tellLast(m_journal, services()); });
    dialog->open();
}

void MainWindow::openTray(TrayId tray)
{
    showPage(tr("Trays"));
    pageOf<TraysPage>(tr("Trays")).openSheet(tray);
}

void MainWindow::find()
{
    if (inFront().find()) {
        return;
    }
    showPage(tr("Trays"));
    pageOf<TraysPage>(tr("Trays")).find();
}

void MainWindow::print()
{
    if (!inFront().print()) {
        m_messages->tell(
            tr("There is no sheet to print of this page. The round, the racks, the week, a "
               "trial's plan, the season and labels of trays have one."));
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
    showPage(tr("Weigh-in"));
    pageOf<WeighPage>(tr("Weigh-in")).take(code);
}

} // namespace plumule::ui

#include "moc_main_window.cpp"
