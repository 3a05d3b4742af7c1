#pragma once

#include "tests/ui/support/growing.h"
#include "tests/ui/support/key_time.h"
#include "ui/window/main_window.h"

#include <QLineEdit>
#include <QStackedWidget>
#include <QTimer>

namespace plumule::ui {

// The whole window, with a person at the keyboard or a scanner.
class WindowTest : public GrowingTest
{
protected:
    std::unique_ptr<MainWindow> window;
    KeyTime keys;

    void openWindow(QSize size = {1440, 900})
    {
        window = std::make_unique<MainWindow>(*journal, ask, preferences);
        // Keys are ruled in what is there.
        for (const QString& name : window->pageNames()) {
            ASSERT_NE(window->page(name), nullptr);
        }
        keys.rule(*window);
        // Nor does a list wait for a pause in typing.
        for (QTimer* pause : window->findChildren<QTimer*>("typingPause")) {
            pause->setInterval(0);
        }
        show(*window, size);
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        // Work begins when the window has come up.
        ASSERT_TRUE(soon([] { return QApplication::focusWidget() != nullptr; }));
        settleDown();
    }
    void scan(const QString& code)
    {
        keys.scan([&] { enter(code); });
    }
    static void pressCtrl(int key) { press(key, Qt::ControlModifier); }
    // By its number, as long as that is one key; else by hand.
    void goTo(const char* page)
    {
        constexpr int kMostByKey = 9;
        const auto index = static_cast<int>(window->pageNames().indexOf(page));
        ASSERT_GE(index, 0) << page;
        if (index < kMostByKey) {
            pressCtrl(Qt::Key_1 + index);
        } else {
            click(window->findChild<QPushButton*>(QStringLiteral("nav") + page));
        }
    }

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
};

} // namespace plumule::ui
