#pragma once

#include "ui/watering/tray_row.h"

#include <QWidget>

#include <functional>
#include <set>

class QTimer;
class QVBoxLayout;

namespace plumule::ui {

class Card;
class DecisionRow;
class ShelfCard;

// The round in walking order: shelf by shelf what is to be decided, then its trays. Shown again it
// keeps its rows where the same trays stand in it, and always the current row and the panel. A long
// round is seen before all its rows are made: those further down follow when the first are painted,
// or as soon as one of them is asked for.
class RoundList : public QWidget
{
    Q_OBJECT

public:
    explicit RoundList(QWidget* parent = nullptr);

    // `nothing` is said where no tray is to water.
    void showRound(const Round& round, const UnitText& units, const QString& nothing);
    // Decisions alone, or all; takes effect when it is shown next.
    void setDecisionsAlone(bool isAlone) { m_isDecisionsAlone = isAlone; }

    // The row that had the focus last.
    [[nodiscard]] TrayRow* currentRow() const;
    [[nodiscard]] DecisionRow* currentDecision() const;
    [[nodiscard]] TrayRow* row(TrayId tray);
    [[nodiscard]] DecisionRow* decision(TrayId tray);
    [[nodiscard]] DecisionRow* firstDecision();
    // Shown next, the decision about that tray stands by itself.
    void takeApart(TrayId tray);
    // The shelf of what is in hand, else none.
    [[nodiscard]] ShelfCard* currentShelf() const;
    // That tray as it is now, in its row.
    void showTray(const RoundTray& tray);
    // After rows were ticked.
    void showOpen();

    // To the current row, else to the first that is open.
    void regainFocus();
    // Nothing is in hand.
    void putDown();
    // Makes the first row current, without the focus unless the list had it.
    void setFirstCurrent();
    // On the first that is open in walking order, a tray not done or a decision; else the first
    // row.
    void focusFirstOpen();
    // On the next that is open after this row, round again from the first.
    void focusNextOpen(QWidget* after);

    void openPanel(QWidget* panel, TrayId tray);
    void closePanel();
    [[nodiscard]] bool hasPanel() const { return m_panel != nullptr; }

Q_SIGNALS:
    void tickAsked(plumule::TrayId tray, plumule::ui::TickedBy by);
    void notNeededAsked(plumule::TrayId tray);
    void shelfAsked(plumule::ui::ShelfCard* shelf);
    void detailsAsked(plumule::TrayId tray);
    void readyAsked(plumule::ui::DecisionRow* decision);
    void notYetAsked(plumule::ui::DecisionRow* decision);
    // takeApart() was asked for by hand: to be shown again.
    void takenApart();
    // The row now current, to be brought into view; null where there is none.
    void currentChanged(QWidget* row);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    // What stands where: changes only where rows come, go or move.
    [[nodiscard]] static std::vector<std::int64_t>
    arrangementOf(const Round& round, const std::vector<ShelfGroup>& shelves);
    [[nodiscard]] std::vector<ShelfGroup> shownShelves(const Round& round) const;
    void rebuild(const Round& round, const std::vector<ShelfGroup>& shelves,
                 const QString& nothing);
    void addShelf(const ShelfGroup& shelf);
    void clearRows();
    void fill(const Round& round, const std::vector<ShelfGroup>& shelves);
    // Makes shelves until that many rows more stand there.
    void makeRows(std::size_t count);
    void makeUntil(const std::function<bool()>& isEnough); // or all are made
    void makeRest();
    // Whatever stands on the list about that tray; null: nothing yet.
    [[nodiscard]] TrayRow* madeRow(TrayId tray) const;
    [[nodiscard]] DecisionRow* madeDecision(TrayId tray) const;
    void showKeys();
    void wireRow(TrayRow* row);
    void wireDecision(DecisionRow* row);
    void step(QWidget* from, int by);
    void setCurrent(QWidget* row);
    // The row that stood for `before`, or that took its place, becomes current again.
    struct Before
    {
        TrayId row;
        TrayId decision;
        int index = 0; // in the walk
        bool hadFocus = false;
    };
    [[nodiscard]] Before rememberCurrent() const;
    void regainCurrent(const Before& before);
    void putPanelBack();

    QVBoxLayout* m_column = nullptr;
    std::vector<ShelfCard*> m_shelves;
    std::vector<TrayRow*> m_rows;
    std::vector<DecisionRow*> m_decisions;
    std::vector<QWidget*> m_walk;   // all of them, as they stand
    Round m_round;                  // what the rest is made of
    std::vector<ShelfGroup> m_rest; // whose rows are not made yet
    QTimer* m_further = nullptr;    // makes them, part by part, when the first are seen
    std::vector<std::int64_t> m_arrangement;
    std::set<TrayId> m_apart; // whose decisions are shown one by one
    bool m_isDecisionsAlone = false;
    QWidget* m_current = nullptr;
    QWidget* m_panel = nullptr;
    TrayId m_panelTray;
    QString m_nothing;
    RowFrame m_frame;
};

} // namespace plumule::ui
