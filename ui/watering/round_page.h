#pragma once

#include "core/watering/round_key.h"
#include "ui/page/page.h"
#include "ui/watering/tray_panel.h"

#include <set>

class QBoxLayout;
class QFrame;
class QLabel;
class QScrollArea;

namespace plumule::ui {

class DecisionRow;
class ForgottenBar;
class HandBar;
class LoneKey;
class RoundHead;
class RoundList;
class RoundSide;
class ShelfCard;
class TrayRow;
class WorkTimerButton;
enum class TickedBy;

// The rack, twice a day: what this round needs in walking order, ticked with one touch or key. It
// shows the round that was due when it was opened, or the one that was chosen, until another is
// asked for: a tick goes to the round that is looked at. When a newer one is due it says so.
class RoundPage : public Page
{
    Q_OBJECT

public:
    RoundPage(Journal& journal, Services services, QWidget* parent = nullptr);
    ~RoundPage() override;

    [[nodiscard]] QString name() const override { return tr("Round"); }
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    // To the top of the round that is due now.
    void begin() override;
    void followClock() override;
    bool print() override;
    [[nodiscard]] bool hasUnsaved() const override;

    // Makes it the tray in hand and scrolls to it; says so where this round asks nothing of it.
    void takeInHand(TrayId tray);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    enum class Answer
    {
        Ready,
        NotYet
    };

    void build();
    [[nodiscard]] QWidget* buildDueBar();
    void wireSignals();
    void wireList();
    void wireHand();
    void arrange();

    // round_page.cpp: showing
    [[nodiscard]] RoundKey shownKey() const { return {m_round.date, m_round.slot}; }
    [[nodiscard]] RoundKey presentKey() const;
    [[nodiscard]] QString nothingText() const;
    void choose(RoundKey key);
    void askLowStock();
    void showLowStock();
    void showDue();
    void showHand();
    void showAlone(bool isAlone);
    void showUndo();
    void readRound();
    void take(const Round& round);
    // Whether these are waterings of shown rows alone: then those rows are read again.
    [[nodiscard]] bool areOfRows(const std::vector<Change>& changes);
    // What counts the trays that are done.
    void showCounts();
    void showBadge(const Round& present);
    void noteBadge();
    void showInView(QWidget* part);

    // round_acts.cpp: acting
    [[nodiscard]] bool mayTick();
    [[nodiscard]] Moment momentOfAct() const;
    void tick(TrayId tray, TickedBy by);
    // A tick changes nothing else of the round; false where it does.
    [[nodiscard]] bool showTicked(TrayId tray);
    void untick(TrayRow& row);
    void needNothing(const std::vector<TrayId>& trays);
    void tickShelf(ShelfCard* shelf);
    // On these of the decision's trays.
    void beReady(const DecisionRow* row, const std::vector<TrayId>& trays);
    void putOff(const DecisionRow* row, const std::vector<TrayId>& trays);
    void decide(Answer answer);
    void tickInHand();
    void needNothingInHand();
    void putDown();
    void giveBetween();
    [[nodiscard]] std::optional<TrayId> trayInHand() const;
    [[nodiscard]] QString codeOf(TrayId tray);
    void openDetails(TrayId tray, TrayPanel::Part part);
    void openDetailsByKey(TrayPanel::Part part);
    // Closes the panel, after a question where something in it isn't saved.
    void leaveDetails();
    // Closes the panel whose tray is no longer shown, and keeps what can be kept of it.
    void dropDetails();
    void closeDetails();
    void saveDetails();
    [[nodiscard]] bool keepReading(WaterKind water, std::optional<double> ph,
                                   std::optional<double> ec);
    [[nodiscard]] bool keepRemark(TrayRemark remark);
    void photographInHand();
    void attachPhoto(TrayId tray);
    void pressLetter(int key);
    void offerSheet();
    void saveSheet();
    void printSheet();

    Room m_room;
    RoomLayout m_layout;
    Round m_round;
    std::optional<int> m_secondsATray;          // as the grower reckons its watering
    std::optional<RoundKey> m_shown;            // none before the first look
    std::set<TrayId> m_ticked;                  // on this page since it read the round
    std::map<std::int64_t, TrayId> m_waterings; // of the shown round, by their ids
    bool m_isTicking = false;
    bool m_isBehind = false; // something else changed since then
    bool m_isStockStale = true;
    bool m_isLowStockAsked = false; // to be read when the page was painted
    std::optional<RoundKey> m_stockReadFor;
    bool m_isPresent = true; // it was the present one when it was opened
    TrayId m_scanned;        // in hand by its label
    int m_listener = 0;
    bool m_isBadgeQueued = false;
    LoneKey* m_letter = nullptr; // of a label's code it is no command

    RoundHead* m_head = nullptr;
    WorkTimerButton* m_timer = nullptr;
    QScrollArea* m_scroll = nullptr;
    QBoxLayout* m_columns = nullptr;
    RoundList* m_list = nullptr;
    RoundSide* m_side = nullptr;
    TrayPanel* m_panel = nullptr;
    ForgottenBar* m_forgotten = nullptr;
    HandBar* m_hand = nullptr;
    QFrame* m_due = nullptr;
    QLabel* m_dueWords = nullptr;
    QLabel* m_damaged = nullptr;
};

} // namespace plumule::ui
