#pragma once

#include "core/cost/price_history.h"
#include "ui/widget/widgets.h"

class QGridLayout;
class QLabel;
class QPushButton;

namespace plumule {
struct CostsAnswer;
}

namespace plumule::ui {

// What everything costs now, how that came about in a year, and which price is missing; a button in
// each row opens its form.
class PriceRowsCard : public Card
{
    Q_OBJECT

public:
    explicit PriceRowsCard(QWidget* parent = nullptr);

    // `variety`: whose seed it is.
    void show(const CostsAnswer& answer, const QString& variety);

Q_SIGNALS:
    void priceAsked(plumule::PriceItem item, std::optional<plumule::MediumId> medium);

private:
    struct PriceCells
    {
        QLabel* name = nullptr;
        QWidget* line = nullptr;
        QLabel* now = nullptr;
        QLabel* inAYear = nullptr;
        QPushButton* change = nullptr; // none where it has no form of its own
    };

    void addRow(int row, const PriceHistory& history, const CostsAnswer& answer,
                const QString& name);
    void put(int row, const PriceCells& cells);
    [[nodiscard]] QPushButton* changeButton(const PriceHistory& history, bool hasPrice,
                                            const QString& name);

    QGridLayout* m_grid = nullptr;
};

} // namespace plumule::ui
