#pragma once

#include "core/journal/order/order_book.h"
#include "ui/text/text.h"
#include "ui/widget/widgets.h"

class QTableView;

namespace plumule::ui {

class KeptDots;
class TextTable;

// Promises whose day has passed: promised, weighed, kept or short.
class KeptCard : public Card
{
    Q_OBJECT

public:
    explicit KeptCard(QWidget* parent = nullptr);

    void show(const std::vector<PastPromise>& past, const UnitText& units);

Q_SIGNALS:
    // The grower wants to say which cuts went to it.
    void cutsAsked(int row);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QLabel* m_words = nullptr;
    KeptDots* m_dots = nullptr;
    TextTable* m_model = nullptr;
    QTableView* m_table = nullptr;
    QLabel* m_rule = nullptr;
};

} // namespace plumule::ui
