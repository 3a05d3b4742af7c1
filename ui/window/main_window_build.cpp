// Part of ui/window/main_window.h: the frame, the list of pages, the line of long work.
#include "ui/window/main_window.h"

#include "ui/setup/setup_page.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"
#include "ui/window/begin_bar.h"
#include "ui/window/seat_stack.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QProgressBar>
#include <QScrollArea>
#include <QTimer>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kShortWorkMs = 300; // shorter work says nothing: the page would jump twice for it
constexpr int kWidestEdge = 12;   // beside names and counts of pages, which large type needs itself

} // namespace

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
    const int edge = std::min(scaled(12), kWidestEdge);
    side->setContentsMargins(edge, scaled(20), edge, scaled(16));
    auto* name = label(tr("Plumule"), "strong");
    name->setFont(uiFont(1.15, QFont::DemiBold));
    name->setContentsMargins(scaled(10), 0, 0, 0);
    m_roomName = label(QString(), "muted");
    m_roomName->setContentsMargins(scaled(10), 0, 0, scaled(14));
    m_roomName->setObjectName("roomName");
    m_roomName->setWordWrap(true);
    QScrollArea* area = scrolling(m_navigation);
    m_navigation->setContentsMargins(0, 0, 0, 0);
    m_navigation->setSpacing(scaled(2));
    m_navigation->setAlignment(Qt::AlignTop);
    // A bar would take the room of the names; the page in front is always brought into sight.
    area->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_readOnly = label(tr("open to read only"), "muted");
    m_readOnly->setObjectName("readOnly");
    m_readOnly->setWordWrap(true);
    m_readOnly->setContentsMargins(scaled(10), 0, 0, 0);
    side->addWidget(name);
    side->addWidget(m_roomName);
    side->addWidget(area, 1);
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
    m_stack = new SeatStack;
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
    m_area = scrolling(inner);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->addWidget(m_stack);
    column->addWidget(m_area, 1);
    column->addLayout(foot);
    wireBegin();
    return beside;
}

void MainWindow::addSeat(Seat seat)
{
    seat.widget = new QWidget;
    auto* column = new QVBoxLayout(seat.widget);
    column->setContentsMargins(0, 0, 0, 0);
    seat.badge = label(QString(), "badge");
    seat.badge->setObjectName("badge" + seat.name);
    seat.badge->setAttribute(Qt::WA_TransparentForMouseEvents);
    seat.badge->hide();
    seat.badge->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Maximum);
    seat.button = buttonOf(seat, m_seats.size());
    m_navigation->addWidget(seat.button);
    m_stack->addPage(seat.widget);
    m_seats.push_back(std::move(seat));
}

QPushButton* MainWindow::buttonOf(const Seat& seat, std::size_t index)
{
    auto* choose = button(seat.name, "nav");
    choose->setCheckable(true);
    choose->setAutoExclusive(true);
    choose->setObjectName("nav" + seat.name);
    if (index < kNumberedPages) {
        choose->setToolTip(tr("Ctrl+%1").arg(index + 1));
    }
    auto* badgeRow = new QHBoxLayout(choose);
    badgeRow->setContentsMargins(0, 0, std::min(scaled(10), kWidestEdge), 0);
    badgeRow->addStretch(1);
    badgeRow->addWidget(seat.badge, 0, Qt::AlignVCenter);
    connect(choose, &QPushButton::clicked, this, [this, index] { showPageAt(index); });
    return choose;
}

// Within its seat from the first, so that the style of what is in it is worked out once.
Page& MainWindow::pageAt(std::size_t index)
{
    Seat& seat = m_seats[index];
    if (seat.page == nullptr) {
        seat.page = seat.build(seat.widget);
        seat.widget->layout()->addWidget(seat.page);
        wirePage(*seat.page, index);
    }
    return *seat.page;
}

void MainWindow::wirePage(Page& page, std::size_t index)
{
    connect(&page, &Page::trayAsked, this, &MainWindow::openTray);
    connect(&page, &Page::weighingAsked, this, &MainWindow::weigh);
    connect(&page, &Page::wateringAsked, this, &MainWindow::giveBetween);
    connect(&page, &Page::badgeChanged, this, [this, index](int count) { setBadge(index, count); });
    if (auto* setup = qobject_cast<SetupPage*>(&page)) {
        connect(setup, &SetupPage::journalAsked, this, [this](const QString& path) {
            leaveThen([this, path] { Q_EMIT journalAsked(path); });
        });
        connect(setup, &SetupPage::lookAsked, this, [this](const QString& look, double fontScale) {
            leaveThen([this, look, fontScale] {
                m_preferences.set(Preference::Look, look);
                m_preferences.set(Preference::FontScale, fontScale);
                Q_EMIT lookChanged();
            });
        });
    }
}

void MainWindow::buildSoon()
{
    for (std::size_t i = 0; i < m_seats.size(); ++i) {
        if (m_seats[i].when == Built::Soon) {
            pageAt(i);
        }
    }
}

std::vector<Page*> MainWindow::pages() const
{
    std::vector<Page*> built;
    for (const Seat& seat : m_seats) {
        if (seat.page != nullptr) {
            built.push_back(seat.page);
        }
    }
    return built;
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
    auto* shown = new QTimer(this);
    shown->setSingleShot(true);
    shown->setInterval(kShortWorkMs);
    // Behind a dialog, which shows what it waits for itself, its Stop could not be reached.
    connect(shown, &QTimer::timeout, this, [this, shown] {
        if (QApplication::activeModalWidget() != nullptr) {
            shown->start();
        } else {
            m_work->show();
        }
    });
    connect(m_tasks, &Tasks::started, this, [this, shown](const QString& name) {
        m_workName->setText(name);
        m_progress->setValue(0);
        if (m_work->isHidden() && !shown->isActive()) {
            shown->start();
        }
    });
    connect(m_tasks, &Tasks::idle, shown, &QTimer::stop);
    connect(m_tasks, &Tasks::progressed, m_progress,
            [this](double fraction) { m_progress->setValue(qRound(fraction * 1000)); });
    connect(m_tasks, &Tasks::idle, m_work, &QWidget::hide);
}

} // namespace plumule::ui
