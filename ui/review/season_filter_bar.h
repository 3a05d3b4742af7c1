#pragma once

#include "core/review/season/season_spans.h"
#include "ui/page/page.h"

class QComboBox;

namespace plumule::ui {

class ChoiceMenu;
class DateField;

// Which trays are reviewed together, and which seasons stand beside them.
class SeasonFilterBar : public QWidget
{
    Q_OBJECT

public:
    SeasonFilterBar(Journal& journal, QWidget* parent = nullptr);

    void setFilter(const SeasonFilter& filter);
    [[nodiscard]] SeasonFilter filter() const;
    // The spans to show beside; empty for none.
    [[nodiscard]] std::vector<SeasonFilter> beside() const;
    // Reads varieties, trials and shelves again.
    void reload();

Q_SIGNALS:
    void changed();

private:
    Journal& m_journal;
    std::pair<Date, Date> m_span; // as last set, for a day that can't be read
    DateField* m_from = nullptr;
    DateField* m_to = nullptr;
    ChoiceMenu* m_varieties = nullptr;
    ChoiceMenu* m_trials = nullptr;
    ChoiceMenu* m_shelves = nullptr;
    QComboBox* m_beside = nullptr;
};

} // namespace plumule::ui
