#pragma once

#include "core/rack/rack.h"
#include "core/tray/tray_move.h"
#include "ui/page/page.h"

class QBoxLayout;
class QScrollArea;
class QVBoxLayout;

namespace plumule::ui {

class Card;
class FreeChart;
class KeyButton;
class LegendCard;
class LoneKey;
class MoveCard;
class PageHead;
class RackView;
class Segmented;
class TightCard;

// What stands where: racks, shelves and places with their trays, which are opened and moved about
// here; the light of the shelves; and the places that come free.
class RacksPage : public Page
{
    Q_OBJECT

public:
    RacksPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override { return tr("Racks"); }
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;
    bool print() override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    void buildHead();
    [[nodiscard]] QWidget* buildRacks();
    [[nodiscard]] QWidget* buildSide();
    void wireSignals();
    void arrange();
    void showWords();
    void showMove();
    void move(const std::vector<TrayMove>& moves);
    void pressLetter(int key);
    void sow();
    void rearrange();
    void offerSheet();
    void saveSheet();
    void printSheet();

    RoomRacks m_racks;
    Room m_room;
    PageHead* m_head = nullptr;
    Segmented* m_by = nullptr;
    KeyButton* m_print = nullptr;
    QPushButton* m_arrange = nullptr;
    KeyButton* m_sow = nullptr;
    QLabel* m_damaged = nullptr;
    QBoxLayout* m_columns = nullptr;
    QScrollArea* m_scroll = nullptr;
    QVBoxLayout* m_main = nullptr;
    QScrollArea* m_sideScroll = nullptr;
    QVBoxLayout* m_side = nullptr;
    QVBoxLayout* m_foot = nullptr;
    QLabel* m_none = nullptr;
    RackView* m_view = nullptr;
    Card* m_free = nullptr;
    FreeChart* m_chart = nullptr;
    MoveCard* m_move = nullptr;
    LegendCard* m_legend = nullptr;
    TightCard* m_tight = nullptr;
    LoneKey* m_letter = nullptr; // of a label's code it is no command
    bool m_isNarrow = false;
};

} // namespace plumule::ui
