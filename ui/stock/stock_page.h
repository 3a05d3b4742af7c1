#pragma once

#include "core/stock/stock.h"
#include "ui/page/page.h"
#include "ui/widget/rows_model.h"

class QBoxLayout;
class QTableView;
class QVBoxLayout;

namespace plumule::ui {

class Card;
class KeyButton;
class LoneKey;
class PageHead;
class TableCard;
class TraceCard;

// What is on the shelf, what runs low, how pieces stand; and where a lot, a piece, a mix or a
// person's work went, or a tray came from.
class StockPage : public Page
{
    Q_OBJECT

public:
    StockPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;
    bool print() override;
    void followClock() override;

protected:
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    // The pieces of one reusable medium.
    struct PieceTable
    {
        TableCard* card = nullptr;
        RowsModel<PieceLine>* model = nullptr;
    };

    // Before it is shown: what runs low is seen at the side from the start, and on a new day.
    void noteBadge();
    void buildHead();
    void buildTables(QVBoxLayout* column);
    QWidget* buildCaution();
    void wireTables();
    void showStock();
    void showPieces();
    void showHead();
    PieceTable addPieceTable();
    void pressLetter(int key);
    // Of a key that a table would take for itself.
    [[nodiscard]] bool takesKey(QKeyEvent& event);
    void openCount();
    void openBought();
    void openMarks();
    void openSanitising();

    PageHead* m_head = nullptr;
    QBoxLayout* m_beside = nullptr;
    TableCard* m_seedCard = nullptr;
    RowsModel<SeedLine>* m_seed = nullptr;
    QLabel* m_seedNote = nullptr;
    QVBoxLayout* m_pieceColumn = nullptr;
    std::vector<PieceTable> m_pieces;
    KeyButton* m_sanitised = nullptr;
    TableCard* m_supplyCard = nullptr;
    RowsModel<StockLine>* m_supplies = nullptr;
    TraceCard* m_trace = nullptr;
    LoneKey* m_letter = nullptr;
    bool m_followsRows = true; // a row that becomes the present one is traced
    Stock m_stock;
};

} // namespace plumule::ui
