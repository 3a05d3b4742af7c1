#pragma once

#include "core/review/facts/compared_trays.h"
#include "core/review/season/season_spans.h"
#include "ui/page/page.h"

class QComboBox;

namespace plumule::ui {

class ChoiceMenu;
class DateField;

// Which trays are reviewed together, by which margin and in which groups, and which seasons stand
// beside them.
class SeasonFilterBar : public QWidget
{
    Q_OBJECT

public:
    SeasonFilterBar(Journal& journal, QWidget* parent = nullptr);

    void setFilter(const SeasonFilter& filter);
    [[nodiscard]] SeasonFilter filter() const;
    // As the grower asks: margin and groups, of any response.
    [[nodiscard]] ComparisonAsk ask() const;
    // The spans to show beside; empty for none.
    [[nodiscard]] std::vector<SeasonFilter> beside() const;
    // Reads varieties, trials and shelves again.
    void reload();

Q_SIGNALS:
    void changed();
    void newSeasonAsked();
    // The season that is shown is to be changed.
    void seasonChangeAsked();

private:
    void buildSeasons();
    void buildDays();
    void buildMenus();
    void buildAsk();
    void buildBeside();
    void showSeason();
    void takeSeason();

    Journal& m_journal;
    SeasonFilter m_set; // as last set: for a day that can't be read, and a season's own sowings
    std::vector<SeasonFilter> m_seasons; // of the declared ones, newest first
    QComboBox* m_season = nullptr;
    QComboBox* m_margin = nullptr;
    QComboBox* m_groups = nullptr;
    DateField* m_from = nullptr;
    DateField* m_to = nullptr;
    ChoiceMenu* m_varieties = nullptr;
    ChoiceMenu* m_trials = nullptr;
    ChoiceMenu* m_shelves = nullptr;
    QComboBox* m_beside = nullptr;
};

} // namespace plumule::ui
