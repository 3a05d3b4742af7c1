#include "ui/window/main_window.h"

#include "ui/harvest/weigh_page.h"
#include "ui/page/undoing.h"
#include "ui/review/season_page.h"
#include "ui/setup/setup_page.h"
#include "ui/tray/trays_page.h"
#include "ui/trial/trials_page.h"
#include "ui/watering/round_page.h"
#include "ui/widget/burst.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QProgressBar>
#include <QShortcut>
#include <QStackedWidget>

namespace plumule::ui {

MainWindow::MainWindow(Journal& journal, Ask& ask, Preferences& preferences, QWidget* parent)
    : QMainWindow(parent)
    , m_journal(journal)
    , m_ask(ask)
    , m_preferences(preferences)
{
    setWindowTitle(tr("Plumule"));
    setWindowIcon(QIcon(QStringLiteral(":/icons/plumule.svg")));
    m_tasks = new Tasks(this);
    buildFrame();
    buildPages();
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
    showHeader();
    showPageAt(0);
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

    auto* sidebar = new QWidget;
    sidebar->setObjectName("sidebar");
    sidebar->setAttribute(Qt::WA_StyledBackground);
    // Large type needs the room beside it more than here.
    sidebar->setFixedWidth(std::min(scaled(208), 240));
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

    auto* main = new QWidget;
    main->setObjectName("page");
    main->setAttribute(Qt::WA_StyledBackground);
    auto* column = new QVBoxLayout(main);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_stack = new QStackedWidget;
    m_messages = new MessageBar;
    m_work = new QWidget;
    auto* foot = new QVBoxLayout;
    foot->setContentsMargins(scaled(28), 0, scaled(28), scaled(12));
    foot->addWidget(m_work);
    foot->addWidget(m_messages);
    column->addWidget(m_stack, 1);
    column->addLayout(foot);
    row->addWidget(sidebar);
    row->addWidget(main, 1);
    setCentralWidget(frame);
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
    connect(setup, &SetupPage::journalAsked, this, &MainWindow::journalAsked);
    connect(setup, &SetupPage::lookChanged, this, &MainWindow::lookChanged);
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
    connect(page, &Page::badgeChanged, this, [this, index](int count) { setBadge(index, count); });
}

void MainWindow::wireKeys()
{
    for (int i = 0; i < static_cast<int>(m_pages.size()); ++i) {
        auto* key =
            new QShortcut(QKeySequence(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_1 + i)), this);
        connect(key, &QShortcut::activated, this, [this, i] { showPageAt(i); });
    }
    connect(new QShortcut(QKeySequence::Undo, this), &QShortcut::activated, this,
            [this] { takeBack(m_journal, *m_messages); });
    connect(new QShortcut(QKeySequence::Redo, this), &QShortcut::activated, this,
            [this] { doAgain(m_journal, *m_messages); });
    m_scanner = new BurstReader(
        [this](const QString& text) {
            return m_journal.trays().find(text.toStdString()).has_value();
        },
        this);
    connect(m_scanner, &BurstReader::scanned, this, [this](const QString& code) {
        if (QApplication::activeModalWidget() != nullptr) {
            return; // the page under a dialog stays as it is
        }
        // At the scale a scanned label is the tray to weigh; elsewhere it is the tray to look at.
        if (m_stack->currentWidget() == page(tr("Weigh-in"))) {
            weigh(code);
        } else if (const auto tray = m_journal.trays().find(code.toStdString())) {
            openTray(*tray);
        }
    });
    qApp->installEventFilter(this);
    qApp->installEventFilter(m_scanner);
}

// A field that has nothing typed to take back would keep these keys to itself all the same.
bool MainWindow::eventFilter(QObject* watched, QEvent* event)
{
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
        this, [this] { m_pages[static_cast<std::size_t>(m_stack->currentIndex())]->begin(); },
        Qt::QueuedConnection);
}

void MainWindow::showHeader()
{
    if (const auto layout = m_journal.room().layout()) {
        m_roomName->setText(QString::fromStdString(layout->room.name));
    }
    m_readOnly->setVisible(m_journal.isReadOnly());
}

void MainWindow::showPageAt(int index)
{
    m_buttons[static_cast<std::size_t>(index)]->setChecked(true);
    m_stack->setCurrentIndex(index);
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

void MainWindow::setBadge(int index, int count)
{
    QLabel* badge = m_badges[static_cast<std::size_t>(index)];
    badge->setText(QString::number(count));
    badge->setVisible(count > 0);
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
