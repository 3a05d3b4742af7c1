#pragma once

#include "core/watering/round_key.h"
#include "ui/page/page.h"
#include "ui/watering/tray_panel.h"

#include <QElapsedTimer>

class QBoxLayout;
class QLabel;
class QScrollArea;
class QTimer;

namespace plumule::ui {

class DecisionRow;
class KeyButton;
class RoundHead;
class RoundList;
class RoundSide;

// The rack, twice a day: what this round needs in walking order, ticked with one touch or key. It
// follows the clock unless another round was chosen; coming to the page leads back to the present.
class RoundPage : public Page
{
    Q_OBJECT

public:
    RoundPage(Journal& journal, Services services, QWidget* parent = nullptr);
    ~RoundPage() override;

    [[nodiscard]] QString name() const override { return tr("Round"); }
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    [[nodiscard]] QWidget* buildRowBar();
    void wireSignals();
    void wireList();
    void arrange();

    // round_page.cpp: showing
    [[nodiscard]] RoundKey shownKey() const { return {m_round.date, m_round.slot}; }
    [[nodiscard]] RoundKey presentKey() const;
    [[nodiscard]] QString nothingText() const;
    void choose(RoundKey key);
    void showUndo();
    void showBadge(const Round& present);
    void noteBadge();
    void showRowBar(QWidget* current);
    void showInView(QWidget* part);
    void followClock();

    // round_acts.cpp: acting
    [[nodiscard]] bool mayTick();
    [[nodiscard]] Moment momentOfAct() const;
    void tick(TrayId tray, bool isByKey);
    void tickShelf(const std::vector<TrayId>& trays);
    void beReady(TrayId tray);
    void putOff(TrayId tray);
    void decideByKey(bool isReady);
    void openDetails(TrayId tray, TrayPanel::Part part);
    void openDetailsByKey(TrayPanel::Part part);
    void closeDetails();
    void saveDetails();
    [[nodiscard]] bool keepWater(TrayId tray, Volume given);
    [[nodiscard]] bool keepReading(WaterKind water, std::optional<TrayId> tray,
                                   std::optional<double> ph, std::optional<double> ec);
    [[nodiscard]] bool keepRemark(const TrayRemark& remark);
    void attachPhoto(TrayId tray);
    void pressLetter(int key);
    void offerSheet();
    void saveSheet();
    void printSheet();

    Room m_room;
    RoomLayout m_layout;
    Round m_round;
    std::optional<RoundKey> m_chosen;
    int m_listener = 0;
    bool m_isBadgeQueued = false;
    int m_letter = 0; // waits to be pressed
    QTimer* m_letterTimer = nullptr;
    QElapsedTimer m_sinceKey;

    RoundHead* m_head = nullptr;
    QScrollArea* m_scroll = nullptr;
    QBoxLayout* m_columns = nullptr;
    RoundList* m_list = nullptr;
    RoundSide* m_side = nullptr;
    TrayPanel* m_panel = nullptr;
    QLabel* m_inHand = nullptr;
    QLabel* m_hint = nullptr;
    std::vector<KeyButton*> m_rowButtons;
};

} // namespace plumule::ui
