#include "ui/window/main_window.h"

#include "core/harvest/scale_text.h"
#include "ui/chart/chart_view.h"
#include "ui/exchange/import_dialog.h"
#include "ui/exchange/sample_room.h"
#include "ui/harvest/weigh_page.h"
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
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"
#include "ui/window/begin_bar.h"
#include "ui/window/help_dialog.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QProgressBar>
#include <QScreen>
#include <QScrollArea>
#include <QShortcut>
#include <QStackedWidget>
#include <QToolTip>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr QSize kSmallestWindow{900, 600};
constexpr QSize kUsualWindow{1440, 900};
constexpr int kLeastPageHeight = 400;
constexpr QSize kWindowFrame{4, 40};     // what the desktop puts round a window
constexpr int kMostFiguresOfAWeight = 7; // an article number has eight or more

bool isWeight(const QString& text)
{
    const bool isLongNumber =
        text.size() > kMostFiguresOfAWeight &&
        std::all_of(text.begin(), text.end(), [](QChar letter) { return letter.isDigit(); });
    return !isLongNumber && scaleReadingFrom(text.toStdString(), MassUnit::Gram).has_value();
}

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

void MainWindow::buildFrame()
{
    auto* frame = new QWidget;
    auto* row = new QHBoxLayout(frame);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(buildSidebar());
    row->addWidget(buildBeside(), 1);
    setCentralWidget(frame);
    setMinimumSize(kSmallestWindow);
}

QWidget* MainWindow::buildSidebar()
{
    auto* sidebar = new QWidget;
    sidebar->setProperty("role", "sidebar");
    sidebar->setAttribute(Qt::WA_StyledBackground);
    // Large type needs the room beside it more than here.
    sidebar->setFixedWidth(std::min(scaled(208), 272));
    auto* side = new QVBoxLayout(sidebar);
    side->setContentsMargins(scaled(12), scaled(20), scaled(12), scaled(16));
    auto* name = label(tr("Plumule"), "strong");
    name->setFont(uiFont(1.15, QFont::DemiBold));
    name->setContentsMargins(scaled(10), 0, 0, 0);
    m_roomName = label(QString(), "muted");
    m_roomName->setContentsMargins(scaled(10), 0, 0, scaled(14));
    m_roomName->setObjectName("roomName");
    m_roomName->setWordWrap(true);
    m_navigation = new QVBoxLayout;
    m_navigation->setSpacing(scaled(2));
    m_readOnly = label(tr("open to read only"), "muted");
    m_readOnly->setObjectName("readOnly");
    m_readOnly->setWordWrap(true);
    m_readOnly->setContentsMargins(scaled(10), 0, 0, 0);
    side->addWidget(name);
    side->addWidget(m_roomName);
    side->addLayout(m_navigation);
    side->addStretch(1);
    side->addWidget(m_readOnly);
    return sidebar;
}

QWidget* MainWindow::buildBeside()
{
    auto* beside = new QWidget;
    beside->setProperty("role", "page");
    beside->setAttribute(Qt::WA_StyledBackground);
    auto* column = new QVBoxLayout(beside);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_stack = new QStackedWidget;
    m_messages = new MessageBar;
    m_work = new QWidget;
    auto* foot = new QVBoxLayout;
    foot->setContentsMargins(scaled(28), 0, scaled(28), scaled(12));
    foot->addWidget(m_work);
    foot->addWidget(m_messages);
    auto* top = new QVBoxLayout;
    top->setContentsMargins(scaled(28), scaled(14), scaled(28), 0);
    m_begin = new BeginBar;
    top->addWidget(m_begin);
    column->addLayout(top);
    QVBoxLayout* inner = nullptr;
    auto* area = scrolling(inner);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->addWidget(m_stack);
    // Large type in a small window scrolls the whole page before anything in it is squeezed.
    m_stack->setMinimumHeight(scaled(kLeastPageHeight));
    column->addWidget(area, 1);
    column->addLayout(foot);
    wireBegin();
    return beside;
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
    auto* setup = new SetupPage(m_journal, services);
    connect(setup, &SetupPage::journalAsked, this, [this](const QString& path) {
        leaveThen([this, path] { Q_EMIT journalAsked(path); });
    });
    connect(setup, &SetupPage::lookChanged, this,
            [this] { leaveThen([this] { Q_EMIT lookChanged(); }); });
    addPage(setup);
}

void MainWindow::addPage(Page* page)
{
    const int index = static_cast<int>(m_pages.size());
    auto* choose = button(page->name(), "nav");
    choose->setCheckable(true);
    choose->setAutoExclusive(true);
    choose->setObjectName("nav" + page->name());
    choose->setToolTip(tr("Ctrl+%1").arg(index + 1));
    auto* badgeRow = new QHBoxLayout(choose);
    badgeRow->setContentsMargins(0, 0, scaled(10), 0);
    badgeRow->addStretch(1);
    auto* badge = label(QString(), "badge");
    badge->setObjectName("badge" + page->name());
    badge->setAttribute(Qt::WA_TransparentForMouseEvents);
    badge->hide();
    badge->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Maximum);
    badgeRow->addWidget(badge, 0, Qt::AlignVCenter);
    m_navigation->addWidget(choose);
    m_stack->addWidget(page);
    m_pages.push_back(page);
    m_buttons.push_back(choose);
    m_badges.push_back(badge);
    connect(choose, &QPushButton::clicked, this, [this, index] { showPageAt(index); });
    connect(page, &Page::trayAsked, this, &MainWindow::openTray);
    connect(page, &Page::weighingAsked, this, &MainWindow::weigh);
    connect(page, &Page::wateringAsked, this, &MainWindow::giveBetween);
    connect(page, &Page::badgeChanged, this, [this, index](int count) { setBadge(index, count); });
}

void MainWindow::wireKeys()
{
    for (int i = 0; i < static_cast<int>(m_pages.size()); ++i) {
        auto* key =
            new QShortcut(QKeySequence(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_1 + i)), this);
        connect(key, &QShortcut::activated, this, [this, i] { showPageAt(i); });
    }
    const auto act = [this](const QKeySequence& keys, auto done) {
        connect(new QShortcut(keys, this), &QShortcut::activated, this, done);
    };
    act(QKeySequence::Find, [this] { find(); });
    act(QKeySequence::Print, [this] { print(); });
    act(QKeySequence::Refresh, [this] { readAgain(); });
    act(QKeySequence::HelpContents, [this] { help(); });
    act(QKeySequence::Undo, [this] { takeBack(m_journal, *m_messages); });
    // As the help says, and as the desktop calls it.
    QList<QKeySequence> again = QKeySequence::keyBindings(QKeySequence::Redo);
    if (const QKeySequence usual(Qt::CTRL | Qt::SHIFT | Qt::Key_Z); !again.contains(usual)) {
        again << usual;
    }
    auto* redo = new QShortcut(this);
    redo->setKeys(again);
    connect(redo, &QShortcut::activated, this, [this] { doAgain(m_journal, *m_messages); });
    wireScanner();
    qApp->installEventFilter(this);
    qApp->installEventFilter(m_scanner);
}

void MainWindow::wireScanner()
{
    m_scanner = new BurstReader(
        [this](const QString& text) {
            if (m_journal.trays().find(text.toStdString())) {
                return BurstReader::Kind::Ours;
            }
            return isWeight(text) ? BurstReader::Kind::Typed : BurstReader::Kind::Strange;
        },
        this);
    m_scanner->setMarks([this] {
        return BurstReader::Marks{m_preferences.get(Preference::ScanBefore).toString(),
                                  m_preferences.get(Preference::ScanAfter).toString()};
    });
    connect(m_scanner, &BurstReader::scanned, this, &MainWindow::follow);
    connect(m_scanner, &BurstReader::strangerScanned, this, [this](const QString& code) {
        refuseScan(tr("No tray is called “%1”, which was scanned. It may be the barcode of "
                      "something else.")
                       .arg(code));
    });
}

void MainWindow::follow(const QString& code)
{
    const auto tray = m_journal.trays().find(code.toStdString());
    if (!tray) {
        return;
    }
    // The page under a dialog stays as it is, and so does what is typed in the dialog.
    if (QApplication::activeModalWidget() != nullptr) {
        refuseScan(tr("%1 was scanned. Finish this first, then scan it again.").arg(code));
        return;
    }
    if (m_stack->currentWidget() == page(tr("Weigh-in"))) {
        weigh(code);
    } else if (auto* round = qobject_cast<RoundPage*>(m_stack->currentWidget())) {
        round->takeInHand(*tray);
    } else {
        openTray(*tray);
    }
}

// The bar may stand under a dialog, so that the words are shown there too.
void MainWindow::refuseScan(const QString& words)
{
    m_messages->refuse(words);
    if (const QWidget* dialog = QApplication::activeModalWidget()) {
        QToolTip::showText(dialog->mapToGlobal(QPoint(0, 0)), words);
    }
}

// A field that has nothing typed to take back would keep these keys to itself all the same.
bool MainWindow::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::WindowActivate && watched == this) {
        m_clock->look(); // the computer may have slept meanwhile
    }
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* field = qobject_cast<QLineEdit*>(watched);
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool isIdle =
            field != nullptr && ((key->matches(QKeySequence::Undo) && !field->isUndoAvailable()) ||
                                 (key->matches(QKeySequence::Redo) && !field->isRedoAvailable()));
        if (isIdle) {
            event->ignore();
            return true;
        }
    }
    return QMainWindow::eventFilter(watched, event);
}

void MainWindow::wireWork()
{
    auto* row = new QHBoxLayout(m_work);
    row->setContentsMargins(0, scaled(6), 0, scaled(6));
    m_workName = label(QString(), "muted");
    m_progress = new QProgressBar;
    m_progress->setObjectName("workProgress");
    m_progress->setRange(0, 1000);
    auto* stop = button(tr("Stop"));
    stop->setObjectName("workStop");
    row->addWidget(m_workName);
    row->addWidget(m_progress, 1);
    row->addWidget(stop);
    m_work->hide();
    connect(stop, &QPushButton::clicked, m_tasks, &Tasks::stopAll);
    connect(m_tasks, &Tasks::started, this, [this](const QString& name) {
        m_workName->setText(name);
        m_progress->setValue(0);
        m_work->show();
    });
    connect(m_tasks, &Tasks::progressed, m_progress,
            [this](double fraction) { m_progress->setValue(qRound(fraction * 1000)); });
    connect(m_tasks, &Tasks::idle, m_work, &QWidget::hide);
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
    auto* dialog = new BetweenDialog(m_journal, {tray}, this);
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
