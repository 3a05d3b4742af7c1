#pragma once

#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/support/told.h"
#include "tests/ui/support/key_time.h"
#include "tests/ui/support/ui_fixture.h"
#include "ui/watering/decision_row.h"
#include "ui/watering/round_page.h"
#include "ui/watering/tray_row.h"

#include <QPushButton>
#include <QSignalSpy>

namespace plumule::ui {

// A room of 32 places with broccoli at its stages: three days under weight, one in blackout, eight
// in light (common practice, no source).
class RoundTest : public UiTest
{
protected:
    KeyTime keys;

    [[nodiscard]] Medium looseMix()
    {
        const auto media = journal->media().all();
        for (const Medium& medium : *media) {
            if (!medium.isReusable && !medium.isNutrientBearing) {
                return medium;
            }
        }
        ADD_FAILURE() << "no inert single-use medium";
        return {};
    }

    // Sows on the first free places and leaves the clock as it stands.
    std::vector<TrayId> sowBroccoli(int count, Moment at)
    {
        const Moment now = clock.now();
        clock.set(at);
        SowingDraft draft;
        const auto varieties = journal->varieties().all();
        for (const Variety& variety : *varieties) {
            if (variety.name == "Broccoli") {
                draft.variety = variety.id;
            }
        }
        draft.medium = looseMix().id;
        draft.count = count;
        draft.at = at;
        const auto spots = journal->room().freeSpots();
        for (const Spot& spot : *spots) {
            if (static_cast<int>(draft.places.size()) < count) {
                draft.places.push_back(spot.place);
            }
        }
        const auto sown = journal->trays().sow(draft);
        clock.set(now);
        EXPECT_TRUE(sown.has_value()) << (sown ? "" : told(sown.error()));
        return sown.value_or(std::vector<TrayId>());
    }

    // From the next sowing on.
    void makeAsNeeded(Stage which)
    {
        const auto varieties = journal->varieties().all();
        for (const Variety& variety : *varieties) {
            if (variety.name != "Broccoli") {
                continue;
            }
            Protocol protocol = journal->varieties().protocol(variety.id).value();
            for (ProtocolStage& stage : protocol.stages) {
                stage.wateringsPerDay = stage.stage == which ? 0 : stage.wateringsPerDay;
            }
            ASSERT_TRUE(journal->varieties().save(protocol));
        }
    }

    // Begins each stage on its day, up to light.
    void bringIntoLight(const std::vector<TrayId>& trays, Moment sown)
    {
        for (const TrayId tray : trays) {
            ASSERT_TRUE(journal->trays().moveOn(tray, sown + 3 * kMinutesPerDay));
            ASSERT_TRUE(journal->trays().moveOn(tray, sown + 4 * kMinutesPerDay));
        }
    }

    std::unique_ptr<RoundPage> openPage(QSize size = {1232, 900})
    {
        // A bar that belongs to no window here must not take the focus from the page.
        messages.setWindowFlags(Qt::ToolTip);
        auto page = std::make_unique<RoundPage>(*journal, services());
        keys.rule(*page);
        show(*page, size);
        page->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(page.get()));
        page->begin();
        return page;
    }

    // The row that is shown, not one that is about to go.
    static TrayRow* shownRow(const QWidget& page, const char* name)
    {
        for (TrayRow* row : page.findChildren<TrayRow*>(QString::fromLatin1(name))) {
            if (row->isVisible()) {
                return row;
            }
        }
        return nullptr;
    }
    [[nodiscard]] int doneCount() { return journal->watering().roundNow()->doneCount(); }
    [[nodiscard]] StagePlan planOf(TrayId tray) { return journal->trays().sheet(tray)->plan; }
    static void press(Qt::Key key) { QTest::keyClick(QApplication::focusWidget(), key); }
    static TrayRow* rowInHand() { return qobject_cast<TrayRow*>(QApplication::focusWidget()); }
    static bool soon(const std::function<bool()>& holds) { return QTest::qWaitFor(holds, 3000); }
};

} // namespace plumule::ui
