#pragma once

#include "core/rack/carry.h"
#include "ui/rack/rack_plan.h"
#include "ui/rack/tray_tile.h"

#include <QWidget>

#include <set>

namespace plumule::ui {

// The racks as they stand, painted; trays are opened, chosen and carried about by hand or by keys.
// A carried tray shows where it comes from and where it would land; nothing is moved before it is
// put down, and then by whoever is told of movesAsked().
class RackView : public QWidget
{
    Q_OBJECT

public:
    explicit RackView(QWidget* parent = nullptr);

    // What is carried stays so, as far as it is still there.
    void show(const RoomRacks& room, Moment now);
    void showBy(ShownBy by);
    [[nodiscard]] const RoomRacks& room() const { return m_room; }

    // Empty where nothing is carried.
    [[nodiscard]] const Carry& carry() const { return m_carry; }
    [[nodiscard]] bool isCarrying() const { return !m_carry.trays.empty(); }

    // Trays that were chosen, to be moved together.
    [[nodiscard]] std::vector<TrayId> chosen() const { return {m_chosen.begin(), m_chosen.end()}; }

    // What the keys do, for buttons. Picking up takes what is chosen, else what the cursor is at.
    void pickUp();
    void putDown();
    void leave();
    // What is carried changes places with what is in its way; two chosen trays with each other.
    void swap();
    // What is carried, chosen or at the cursor, off the racks.
    void takeOff();

    // Places in walking order, then trays off the racks: for those who read the screen out.
    [[nodiscard]] int cellCount() const { return static_cast<int>(m_plan.cells.size()); }
    [[nodiscard]] QString wordsOf(int cell) const;
    [[nodiscard]] QRect areaOf(int cell) const;
    [[nodiscard]] int cursor() const { return m_cursor; }

    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);
    void movesAsked(const std::vector<plumule::TrayMove>& moves);
    void carryChanged();
    void cursorMoved(const QRect& area);

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    enum class Reach
    {
        Places,
        Everything
    };

    void layOut();
    [[nodiscard]] const RackCell* at(int cell) const;
    [[nodiscard]] int cellAt(QPointF point) const; // −1 for none
    [[nodiscard]] int cellOf(PlaceId place) const;
    [[nodiscard]] int next(int from, int key, Reach reach) const;
    [[nodiscard]] int inOtherRack(int from, int step, Reach reach) const;
    void setCursor(int cell);
    [[nodiscard]] std::vector<TrayId> trays() const;
    void begin(const std::vector<TrayId>& trays, PlaceId at);
    void carryTo(PlaceId at);
    void toggle(TrayId tray);
    void press(int cell, Qt::KeyboardModifiers modifiers);
    void drag(QPointF point);
    void drop(QPointF point);
    void step(const QKeyEvent& key);
    void enter();

    void paintRacks(QPainter& painter) const;
    void paintShelf(QPainter& painter, const ShelfBox& shelf) const;
    void paintCell(QPainter& painter, int cell) const;
    void paintLanding(QPainter& painter) const;
    [[nodiscard]] TileLook lookOf(int cell) const;

    RoomRacks m_room;
    Moment m_now;
    ShownBy m_by = ShownBy::Stage;
    RackPlan m_plan;
    int m_cursor = 0;
    std::set<TrayId> m_chosen;
    Carry m_carry;
    std::optional<PlaceId> m_at; // where the first carried tray would land
    int m_pressed = -1;          // the cell that the button went down on
    QPointF m_pressedAt;
    bool m_isDragging = false;
};

} // namespace plumule::ui
