#pragma once

#include "ui/page/aside.h"
#include "ui/page/page.h"
#include "ui/widget/rows_model.h"

#include "core/journal/order/order_book.h"

class QBoxLayout;
class QTableView;

namespace plumule::ui {

class ChanceBar;
class KeptCard;
class LoneKey;
class OrderCard;
class PageHead;

// Promises: grams of a variety by a day, the trays that they take and when, against places and
// seed; kept or short.
class OrderPage : public Page
{
    Q_OBJECT

public:
    OrderPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    enum Column
    {
        For,
        Whom,
        VarietyName,
        Promised,
        Growing,
        Trays,
        Sow,
        Places,
        Seed,
        Met,
        Columns
    };

    void buildTable();
    void wireSignals();
    [[nodiscard]] static std::vector<RowColumn<OrderLine>> columnsIn(const UnitText& units);
    static void addNeeds(std::vector<RowColumn<OrderLine>>& columns, const UnitText& units);
    void showBook();
    void showChosen();
    void hideWhatDoesNotFit();
    [[nodiscard]] int rowOf(PromiseKey promise) const;
    [[nodiscard]] const OrderLine* chosenLine() const;
    // Whether it was the key for a new order.
    bool takeLetter(const QKeyEvent& key);
    void writeNew();
    void change();
    void sow();
    void sayCuts(int row);

    PageHead* m_head = nullptr;
    QPushButton* m_new = nullptr;
    LoneKey* m_letter = nullptr;
    QWidget* m_tableCard = nullptr;
    RowsModel<OrderLine>* m_model = nullptr;
    QTableView* m_table = nullptr;
    ChanceBar* m_chance = nullptr;
    QBoxLayout* m_below = nullptr;
    OrderCard* m_card = nullptr;
    KeptCard* m_kept = nullptr;
    OrderBook m_book;
    Aside m_aside;
};

} // namespace plumule::ui
