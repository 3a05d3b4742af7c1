#pragma once

#include "core/review/answer/costs_answer.h"
#include "ui/cost/costs_text.h"
#include "ui/widget/widgets.h"

class QGridLayout;
class QTimer;

namespace plumule::ui {

class WhatIfSlider;

// What if work, power, seed or a medium cost more or less, or a piece were used more often? A
// slider a thing, each with today's value marked; nothing is stored.
class WhatIfSliders : public Card
{
    Q_OBJECT

public:
    explicit WhatIfSliders(QWidget* parent = nullptr);

    // Sliders stay where they stand while the things stay the same.
    void show(const CostsAnswer& answer);
    // Only what was moved.
    [[nodiscard]] WhatIf whatIf() const;

Q_SIGNALS:
    void changed();

private:
    enum class Of
    {
        Item,
        MediumPrice,
        Uses,
        Seed
    };
    struct Lever
    {
        Of of = Of::Item;
        PriceItem item = PriceItem::Labour;
        MediumId medium;
        QString name;
        double today = 0;
        PricedUnit unit;
        WhatIfSlider* slider = nullptr;
        QLabel* value = nullptr;
    };

    [[nodiscard]] static std::vector<Lever> leversOf(const CostsAnswer& answer);
    static void addMedium(std::vector<Lever>& levers, const Medium& medium,
                          const std::vector<PriceHistory>& histories, const CostsAnswer& answer);
    void build();
    void say(const Lever& lever);
    void goBack();

    std::vector<Lever> m_levers;
    QGridLayout* m_grid = nullptr;
    QPushButton* m_back = nullptr;
    QTimer* m_later = nullptr;
};

} // namespace plumule::ui
