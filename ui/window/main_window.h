#pragma once

#include "ui/page/page.h"

#include <QMainWindow>

class QPushButton;
class QStackedWidget;
class QVBoxLayout;
class QProgressBar;

namespace plumule::ui {

class BurstReader;

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
    [[nodiscard]] Page* page(const QString& name) const;
    [[nodiscard]] MessageBar& messages() { return *m_messages; }
    [[nodiscard]] Tasks& tasks() { return *m_tasks; }

Q_SIGNALS:
    void journalAsked(const QString& path); // open another one instead
    void lookChanged();                     // light or dark, or the size of type

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

protected:
    void showEvent(QShowEvent* event) override;

private:
    void buildFrame();
    void buildPages();
    void addPage(Page* page);
    void wireKeys();
    void wireWork();
    void showPageAt(int index);
    void showHeader();
    void setBadge(int index, int count);
    void openTray(TrayId tray);
    void weigh(const QString& code);

    Journal& m_journal;
    Ask& m_ask;
    Preferences& m_preferences;
    Tasks* m_tasks = nullptr;
    MessageBar* m_messages = nullptr;
    QVBoxLayout* m_navigation = nullptr;
    QLabel* m_roomName = nullptr;
    QLabel* m_readOnly = nullptr;
    QStackedWidget* m_stack = nullptr;
    QWidget* m_work = nullptr;
    QProgressBar* m_progress = nullptr;
    QLabel* m_workName = nullptr;
    std::vector<Page*> m_pages;
    std::vector<QPushButton*> m_buttons;
    std::vector<QLabel*> m_badges;
    BurstReader* m_scanner = nullptr;
    int m_listener = 0;
};

} // namespace plumule::ui
