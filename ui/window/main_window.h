#pragma once

#include "core/tray/tray.h"
#include "ui/page/page.h"

#include <QMainWindow>

class QPushButton;
class QScrollArea;
class QVBoxLayout;
class QProgressBar;

namespace plumule::ui {

class PageStack;
class BeginBar;
class BurstReader;
class ClockWatch;

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
    [[nodiscard]] Page* page(const QString& name) const;
    [[nodiscard]] MessageBar& messages() { return *m_messages; }
    [[nodiscard]] Tasks& tasks() { return *m_tasks; }

Q_SIGNALS:
    void journalAsked(const QString& path); // open another one instead
    void lookChanged();                     // light or dark, or the size of type

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void closeEvent(QCloseEvent* event) override;

private:
    void buildFrame();
    QWidget* buildSidebar();
    QWidget* buildBeside();
    void wireBegin();
    void showBegin();
    void buildPages();
    void addPage(Page* page);
    void wireKeys();
    void wireScanner();
    void wireWork();
    void showPageAt(int index);
    void showHeader();
    void setBadge(int index, int count);
    void restorePlace();
    // Goes on at once, or after asking where something typed would be lost.
    void leaveThen(std::function<void()> go);
    [[nodiscard]] Page& inFront() const;
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
    PageStack* m_stack = nullptr;
    QScrollArea* m_area = nullptr; // that the pages stand in
    QWidget* m_work = nullptr;
    QProgressBar* m_progress = nullptr;
    QLabel* m_workName = nullptr;
    std::vector<Page*> m_pages;
    std::vector<QPushButton*> m_buttons;
    std::vector<QLabel*> m_badges;
    BurstReader* m_scanner = nullptr;
    ClockWatch* m_clock = nullptr;
    int m_listener = 0;
    bool m_mayClose = false;
};

} // namespace plumule::ui
