#pragma once

#include "ui/watering/tray_row.h"

#include <QWidget>

class QVBoxLayout;

namespace plumule::ui {

class Card;
class DecisionRow;
class ShelfCard;

// The round in walking order: the shelves with their trays, then the decisions. Shown again it
// keeps its rows where the same trays stand in it, and always the current row and the panel.
class RoundList : public QWidget
{
    Q_OBJECT

public:
    explicit RoundList(QWidget* parent = nullptr);

    // `nothing` is said where no tray is to water.
    void showRound(const Round& round, const UnitText& units, const QString& nothing);

    // The row that had the focus last.
    [[nodiscard]] TrayRow* currentRow() const;
    [[nodiscard]] DecisionRow* currentDecision() const;
    [[nodiscard]] TrayRow* row(TrayId tray) const;
    [[nodiscard]] DecisionRow* decision(TrayId tray) const;
    [[nodiscard]] DecisionRow* firstDecision() const;
    // What "tick the shelf" would tick.
    [[nodiscard]] std::vector<TrayId> openOnCurrentShelf() const;

    // To the current row.
    void regainFocus();
    // Makes the first row current, without the focus unless the list had it.
    void setFirstCurrent();
    // On the first tray not done, else the first decision, else the first row.
    void focusFirstOpen();
    // On the next tray not done after this one, round again from the first; else on a decision.
    void focusNextOpen(TrayId after);

    void openPanel(QWidget* panel, TrayId tray);
    void closePanel();
    [[nodiscard]] bool hasPanel() const { return m_panel != nullptr; }

Q_SIGNALS:
    void tickAsked(plumule::TrayId tray, bool isByKey);
    void shelfAsked(const std::vector<plumule::TrayId>& trays);
    void detailsAsked(plumule::TrayId tray);
    void readyAsked(plumule::TrayId tray);
    void notYetAsked(plumule::TrayId tray);
    // The row now current, to be brought into view; null where there is none.
    void currentChanged(QWidget* row);

private:
    [[nodiscard]] bool hasSameRows(const Round& round, const std::vector<ShelfGroup>& shelves,
                                   const QString& nothing) const;
    void rebuild(const Round& round, const std::vector<ShelfGroup>& shelves, const RowFrame& frame,
                 const QString& nothing);
    void addShelf(const Round& round, const ShelfGroup& shelf, const RowFrame& frame);
    void addDecisions(const Round& round);
    void refresh(const Round& round, const std::vector<ShelfGroup>& shelves, const RowFrame& frame);
    void clearRows();
    void fill(const Round& round, const std::vector<ShelfGroup>& shelves, const RowFrame& frame);
    void wireRow(TrayRow* row);
    void wireDecision(DecisionRow* row);
    void step(QWidget* from, int by);
    void setCurrent(QWidget* row);
    // The row that stood for `before`, or that took its place, becomes current again.
    struct Before
    {
        TrayId row;
        TrayId decision;
        int index = 0; // among its like
        bool hadFocus = false;
    };
    [[nodiscard]] Before rememberCurrent() const;
    void regainCurrent(const Before& before);
    void putPanelBack();

    QVBoxLayout* m_column = nullptr;
    std::vector<ShelfCard*> m_shelves;
    std::vector<TrayRow*> m_rows;
    std::vector<DecisionRow*> m_decisions;
    std::vector<QWidget*> m_walk; // rows, then decisions
    QWidget* m_current = nullptr;
    QWidget* m_panel = nullptr;
    TrayId m_panelTray;
    QString m_nothing;
};

} // namespace plumule::ui
