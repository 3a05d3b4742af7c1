#pragma once

#include "core/tray/tray_id.h"
#include "ui/page/page.h"

#include <QMainWindow>

class QPushButton;
class QScrollArea;
class QVBoxLayout;
class QProgressBar;

namespace plumule::ui {

class BeginBar;
class BurstReader;
class ClockWatch;
class SeatStack;

inline constexpr std::size_t kNumberedPages = 9; // that Ctrl and a figure open

// The window: pages at the left, the chosen one beside them, the message bar below. It tells pages
// of changes and leads from one to another; what a page shows is the page's own.
class MainWindow : public QMainWindow
{
    Q_OBJECT

public:
    MainWindow(Journal& journal, Ask& ask, Preferences& preferences, QWidget* parent = nullptr);
    ~MainWindow() override;

    // By the name shown in the list, "Round".
    void showPage(const QString& name);
    [[nodiscard]] QStringList pageNames() const;
    [[nodiscard]] QString pageShown() const;
    // Built where it was not shown yet; none of that name: null.
    [[nodiscard]] Page* page(const QString& name);
    [[nodiscard]] bool isBuilt(const QString& name) const;
    [[nodiscard]] MessageBar& messages() { return *m_messages; }
    [[nodiscard]] Tasks& tasks() { return *m_tasks; }

Q_SIGNALS:
    void journalAsked(const QString& path); // open another one instead
    void lookChanged();                     // light or dark, or the size of type

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void closeEvent(QCloseEvent* event) override;

private:
    bool pressByEnter(QObject* watched, const QEvent& event) const;
    [[nodiscard]] Services services() const
    {
        return {m_ask, *m_messages, m_preferences, *m_tasks};
    }
    void buildFrame();
    QWidget* buildSidebar();
    QWidget* buildBeside();
    void wireBegin();
    void showBegin();
    enum class Built
    {
        WhenShown,
        Soon // its badge is seen before it is
    };
    // A page's place in the stack and in the list at the left, before there is a page.
    struct Seat
    {
        QString name;
        Built when = Built::WhenShown;
        std::function<Page*(QWidget* within)> build;
        QWidget* widget = nullptr;
        QPushButton* button = nullptr;
        QLabel* badge = nullptr;
        Page* page = nullptr; // none: not built yet
    };
    void buildPages();
    // The kind of page, of that name.
    template <class Kind>
    void addPage(const QString& name, Built when = Built::WhenShown)
    {
        addSeat({name, when,
                 [this](QWidget* within) { return new Kind(m_journal, services(), within); }});
    }
    void addSeat(Seat seat);
    QPushButton* buttonOf(const Seat& seat, std::size_t index);
    Page& pageAt(std::size_t index);
    void wirePage(Page& page, std::size_t index);
    void buildSoon();
    // Those that are built.
    [[nodiscard]] std::vector<Page*> pages() const;
    template <class Kind>
    Kind& pageOf(const QString& name)
    {
        return *qobject_cast<Kind*>(page(name));
    }
    void wireKeys();
    void wireScanner();
    void wireWork();
    void showPageAt(std::size_t index);
    void showBeside(int steps); // from the page in front, round at the ends
    void showHeader();
    void setBadge(std::size_t index, int count);
    void restorePlace();
    // Goes on at once, or after asking where something typed would be lost.
    void leaveThen(std::function<void()> go);
    [[nodiscard]] Page& inFront();
    void find();
    void print();
    void readAgain();
    void help();
    // A scanned label: the tray in hand, on the scale, or to look at.
    void follow(const QString& code);
    void refuseScan(const QString& words);
    void giveBetween(TrayId tray);
    void openTray(TrayId tray);
    void weigh(const QString& code);

    Journal& m_journal;
    Ask& m_ask;
    Preferences& m_preferences;
    Tasks* m_tasks = nullptr;
    MessageBar* m_messages = nullptr;
    BeginBar* m_begin = nullptr;
    QVBoxLayout* m_navigation = nullptr;
    QLabel* m_roomName = nullptr;
    QLabel* m_readOnly = nullptr;
    SeatStack* m_stack = nullptr;
    QScrollArea* m_area = nullptr; // that the pages stand in
    QWidget* m_work = nullptr;
    QProgressBar* m_progress = nullptr;
    QLabel* m_workName = nullptr;
    std::vector<Seat> m_seats;
    BurstReader* m_scanner = nullptr;
    ClockWatch* m_clock = nullptr;
    int m_listener = 0;
    bool m_isSeen = false; // was painted once
    bool m_mayClose = false;
};

} // namespace plumule::ui
