#pragma once

#include "core/review/facts/season.h"
#include "core/review/season/what_if.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

#include <vector>

class QTimer;

namespace plumule::ui {

class FlowLayout;
class NumberField;

// What if a price were another, or a piece were used more often? Every field holds nothing until
// something is typed: then the answer is worked out as if it were so. Nothing is stored.
class WhatIfCard : public Card
{
    Q_OBJECT

public:
    WhatIfCard(Journal& journal, QWidget* parent = nullptr);

    // Fields for the media of the review; what is typed stays.
    void show(const SeasonReview& review);
    [[nodiscard]] const WhatIf& whatIf() const { return m_whatIf; }
    void clear();

Q_SIGNALS:
    void changed();

private:
    struct Field
    {
        NumberField* field = nullptr;
        std::function<void(WhatIf&, double)> put;
    };

    void build(const SeasonReview& review);
    void add(const QString& name, const QString& unit, const QString& present, const QString& key,
             std::function<void(WhatIf&, double)> put);
    void read();

    Journal& m_journal;
    std::vector<MediumId> m_media; // that the fields are for
    std::vector<Field> m_fields;
    FlowLayout* m_flow = nullptr;
    QLabel* m_words = nullptr;
    QPushButton* m_back = nullptr;
    QTimer* m_later = nullptr;
    WhatIf m_whatIf;
};

} // namespace plumule::ui
