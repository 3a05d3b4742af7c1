#pragma once

#include "core/journal/tray/tray_entries.h"
#include "tests/ui/watering/round_fixture.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QLabel>
#include <QLineEdit>

namespace plumule::ui {

// The round's page with a hand on its keys: a letter is pressed slower than a scanner types.
class RoundPartTest : public RoundTest
{
protected:
    const Moment kUnderWeight{date(2026, 3, 10), 7 * 60 + 30}; // sown then, it is two days there
    const Moment kDueNow{date(2026, 3, 9), 7 * 60 + 30};       // its three days are over
    const Moment kInLight{date(2026, 3, 4), 7 * 60 + 30};      // with bringIntoLight()
    std::unique_ptr<RoundPage> page;

    void open(QSize size = {1300, 900}) { page = openPage(size); }
    void letter(Qt::Key key, const std::function<bool()>& isDone)
    {
        constexpr int kSlowerThanAScanner = 45; // ms
        ASSERT_NE(QApplication::focusWidget(), nullptr);
        EXPECT_TRUE(soon([this] {
            return !m_sinceLetter.isValid() || m_sinceLetter.hasExpired(kSlowerThanAScanner);
        }));
        press(key);
        EXPECT_TRUE(soon(isDone)) << char(key);
        m_sinceLetter.start();
    }
    void openPanelBy(Qt::Key key, const char* field)
    {
        letter(key, [&] { return find<QLineEdit>(*page, field)->hasFocus(); });
        ASSERT_TRUE(panel().isVisible());
    }
    [[nodiscard]] QWidget& panel() { return *find<QWidget>(*page, "trayPanel"); }
    [[nodiscard]] QString words(const char* name) { return find<QLabel>(*page, name)->text(); }
    void pressButton(const char* name)
    {
        auto* found = find<QPushButton>(*page, name);
        ASSERT_NE(found, nullptr);
        ASSERT_TRUE(found->isVisible() && found->isEnabled()) << name;
        click(found);
    }
    [[nodiscard]] bool isShown(const char* name)
    {
        const auto* found = page->findChild<QWidget*>(name);
        return found != nullptr && found->isVisible();
    }
    [[nodiscard]] TraySheet sheetOf(TrayId tray) { return journal->trays().sheet(tray).value(); }
    [[nodiscard]] std::size_t acts() { return journal->latestEntries(1000)->size(); }
    static QString nameOfFocus()
    {
        const QWidget* focus = QApplication::focusWidget();
        return focus == nullptr ? QString() : focus->objectName();
    }

private:
    QElapsedTimer m_sinceLetter;
};

} // namespace plumule::ui
