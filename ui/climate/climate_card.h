#pragma once

#include "core/climate/climate_charts.h"
#include "core/journal/climate/climate_answers.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {

class ChartView;

// The climate beside heights, one measure at a time over the same days of growth. Hidden where no
// logger told of any of them.
class ClimateCard : public Card
{
    Q_OBJECT

public:
    explicit ClimateCard(QWidget* parent = nullptr);

    // `lastDay`: of the chart of heights above it.
    void show(const Result<TrayClimate>& climate, int lastDay, UnitSystem units);
    void show(const Result<TrialClimate>& climate);

private:
    void showTracks(std::vector<ClimateTrack> tracks, Date sownOn, int lastDay);
    void draw();
    [[nodiscard]] static QString growthWords(const TrayClimate& climate, const UnitText& units);

    std::vector<ClimateTrack> m_tracks;
    Date m_sownOn;
    int m_lastDay = 0;
    Segmented* m_line = nullptr;
    ChartView* m_chart = nullptr;
    QLabel* m_nothing = nullptr;
    QLabel* m_words = nullptr;
};

} // namespace plumule::ui
