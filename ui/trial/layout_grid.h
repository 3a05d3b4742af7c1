#pragma once

#include "core/medium/medium.h"
#include "core/room/room.h"
#include "core/trial/trial_plan.h"

#include <QPushButton>

#include <vector>

class QGridLayout;

namespace plumule::ui {

// One place of a layout: the tray's code, its medium's marker, and what is special about it.
class LayoutTile : public QPushButton
{
    Q_OBJECT

public:
    struct Content
    {
        QString code;
        int marker = 0;
        QString feeding; // "+ nutrient"; empty where the protocol's
        QString words;   // below: "moved", a stage
        QString accessibleName;
        bool isWarned = false;
    };

    explicit LayoutTile(Content content, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void droppedOn(LayoutTile* other);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    Content m_content;
};

// Tiles in rows under the names of shelves or blocks; a row goes on in the next line where the
// window is narrow.
class LayoutGrid : public QWidget
{
    Q_OBJECT

public:
    struct Row
    {
        QString name;
        std::vector<LayoutTile::Content> tiles;
    };

    explicit LayoutGrid(QWidget* parent = nullptr);

    enum class Press
    {
        Opens,    // a tile is pressed()
        Exchanges // it is chosen, and changed about with another by a second press or by dragging
    };
    // Tiles are numbered through all rows.
    void show(const std::vector<Row>& rows, Press press);
    [[nodiscard]] int chosen() const; // −1 for none
    // Of a name and one tile: the rows go on below where there is no room beside.
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void pressed(int tile);
    void chosenChanged(int tile);
    void exchangeAsked(int tile, int other);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void arrange();
    void takePress(int tile);

    QGridLayout* m_grid = nullptr;
    std::vector<QWidget*> m_names;
    std::vector<std::vector<LayoutTile*>> m_rows;
    std::vector<LayoutTile*> m_tiles;
    Press m_press = Press::Opens;
    int m_chosen = -1;
    int m_columns = 0;
};

} // namespace plumule::ui
