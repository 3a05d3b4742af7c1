#pragma once

#include "tests/ui/support/growing.h"
#include "ui/widget/burst.h"
#include "ui/window/main_window.h"

#include <QLineEdit>
#include <QStackedWidget>

namespace plumule::ui {

// The whole window, with a person at the keyboard (a key each 120 ms) or a scanner (each 5 ms).
class WindowTest : public GrowingTest
{
protected:
    std::unique_ptr<MainWindow> window;
    qint64 keyGap = 120;

    void openWindow(QSize size = {1440, 900})
    {
        window = std::make_unique<MainWindow>(*journal, ask, preferences);
        auto* scanner = window->findChild<BurstReader*>();
        ASSERT_NE(scanner, nullptr);
        scanner->setTimeSource([this] { return m_now += keyGap; });
        show(*window, size);
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        // Work begins when the window has come up.
        ASSERT_TRUE(soon([] { return QApplication::focusWidget() != nullptr; }));
        settleDown();
    }
    void scan(const QString& code)
    {
        m_now += 2000;
        keyGap = 5;
        enter(code);
        keyGap = 120;
    }
    static void pressCtrl(int key) { press(key, Qt::ControlModifier); }

    [[nodiscard]] QString shownPage()
    {
        for (const QString& name : window->pageNames()) {
            if (window->page(name)->isVisible()) {
                return name;
            }
        }
        return {};
    }
    [[nodiscard]] QString badgeOf(const QString& pageName)
    {
        auto* badge = window->findChild<QLabel*>("badge" + pageName);
        return badge == nullptr || badge->isHidden() ? QString() : badge->text();
    }
    [[nodiscard]] QWidget& pageOf(const char* name) { return *window->page(name); }
    [[nodiscard]] QString fieldText(const char* pageName, const char* field)
    {
        return find<QLineEdit>(pageOf(pageName), field)->text();
    }
    [[nodiscard]] bool sheetShows(const QString& code)
    {
        auto* sheet = find<QWidget>(*window, "traySheet");
        return sheet->isVisible() && textsIn(*sheet).contains(code);
    }

private:
    qint64 m_now = 0;
};

} // namespace plumule::ui
