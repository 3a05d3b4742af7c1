#pragma once

#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/support/told.h"
#include "tests/ui/support/ui_fixture.h"

#include <QApplication>
#include <QLabel>
#include <QPointer>
#include <QPushButton>

#include <algorithm>
#include <functional>

namespace plumule::ui {

// A room of 32 places and the starter library's broccoli: three days under weight, one in blackout,
// eight in light (common practice, no source).
class GrowingTest : public UiTest
{
protected:
    const Moment kTwelveDaysAgo{date(2026, 2, 28), 7 * 60 + 30};
    const Moment kTwoDaysAgo{date(2026, 3, 10), 7 * 60 + 30};

    [[nodiscard]] VarietyId varietyNamed(const std::string& name)
    {
        const auto varieties = journal->varieties().all();
        for (const Variety& each : *varieties) {
            if (each.name == name) {
                return each.id;
            }
        }
        ADD_FAILURE() << "no variety " << name;
        return {};
    }
    // The first single-use medium without nutrients, or the first reusable one.
    [[nodiscard]] Medium inertMedium(bool isReusable = false)
    {
        const auto media = journal->media().all();
        for (const Medium& each : *media) {
            if (each.isReusable == isReusable && !each.isNutrientBearing) {
                return each;
            }
        }
        ADD_FAILURE() << "no such medium";
        return {};
    }
    // On the first free places.
    [[nodiscard]] SowingDraft broccoli(int count, Moment at)
    {
        SowingDraft draft;
        draft.variety = varietyNamed("Broccoli");
        draft.medium = inertMedium().id;
        draft.count = count;
        draft.at = at;
        const auto spots = journal->room().freeSpots();
        for (const Spot& spot : *spots) {
            if (static_cast<int>(draft.places.size()) < count) {
                draft.places.push_back(spot.place);
            }
        }
        return draft;
    }
    // Leaves the clock as it stands.
    std::vector<TrayId> sow(const SowingDraft& draft)
    {
        const Moment now = clock.now();
        clock.set(draft.at);
        const auto sown = journal->trays().sow(draft);
        clock.set(now);
        EXPECT_TRUE(sown.has_value()) << (sown ? "" : told(sown.error()));
        return sown.value_or(std::vector<TrayId>());
    }
    void bringIntoLight(const std::vector<TrayId>& trays, Moment sown)
    {
        for (const TrayId tray : trays) {
            ASSERT_TRUE(journal->trays().moveOn(tray, sown + 3 * kMinutesPerDay));
            ASSERT_TRUE(journal->trays().moveOn(tray, sown + 4 * kMinutesPerDay));
        }
    }
    // In light and due to be cut today: BR001, BR002, …
    std::vector<TrayId> growDueTrays(int count)
    {
        auto trays = sow(broccoli(count, kTwelveDaysAgo));
        bringIntoLight(trays, kTwelveDaysAgo);
        return trays;
    }
    [[nodiscard]] TrayId trayOf(const char* code)
    {
        return journal->trays().find(code).value_or(TrayId());
    }
    [[nodiscard]] TraySheet sheetOf(TrayId tray) { return journal->trays().sheet(tray).value(); }
    [[nodiscard]] TraySheet sheetOf(const char* code) { return sheetOf(trayOf(code)); }

    // Shows a page that is told of changes, as the window does.
    template <class PageType>
    std::unique_ptr<PageType> openPage(QSize size = {1232, 900})
    {
        // A bar that belongs to no window here must not take the focus from the page.
        messages.setWindowFlags(Qt::ToolTip);
        auto page = std::make_unique<PageType>(*journal, services());
        journal->addListener(
            [told = QPointer<PageType>(page.get())](const std::vector<Change>& changes) {
                const bool isMine =
                    told && std::any_of(changes.begin(), changes.end(), [&](const Change& each) {
                        return told->concerns(each.about);
                    });
                if (isMine) {
                    told->noteChange();
                }
            });
        show(*page, size);
        page->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(page.get()));
        page->begin();
        return page;
    }

    // The keyboard, at whatever has the focus.
    static void press(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        ASSERT_NE(QApplication::focusWidget(), nullptr) << "nothing has the focus";
        QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(key), modifiers);
    }
    static void type(const QString& text)
    {
        ASSERT_NE(QApplication::focusWidget(), nullptr) << "nothing has the focus";
        QTest::keyClicks(QApplication::focusWidget(), text);
    }
    static void enter(const QString& text)
    {
        type(text);
        press(Qt::Key_Return);
    }
    static QString nameOfFocus()
    {
        const QWidget* focus = QApplication::focusWidget();
        return focus == nullptr ? QString() : focus->objectName();
    }
    static QStringList textsIn(const QWidget& within)
    {
        QStringList texts;
        for (const QLabel* each : within.findChildren<QLabel*>()) {
            texts << each->text();
        }
        return texts;
    }
};

} // namespace plumule::ui
