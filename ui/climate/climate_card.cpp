#include "ui/climate/climate_card.h"

#include "ui/chart/chart_view.h"
#include "ui/climate/climate_text.h"
#include "ui/widget/theme.h"

#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {

ClimateCard::ClimateCard(QWidget* parent)
    : Card(tr("Climate, by day of growth"), "card", parent)
{
    setObjectName("climateCard");
    wrapHeading();
    m_line = new Segmented({tr("Temperature"), tr("Humidity"), tr("Deficit"), tr("Light")});
    m_line->setObjectName("climateLine");
    m_line->choose(0);
    m_chart = new ChartView;
    m_chart->setObjectName("climateChart");
    m_chart->setMinimumHeight(scaled(190));
    m_nothing = label(tr("No logger told enough of it on these days."), "muted");
    m_nothing->setObjectName("climateNothing");
    m_nothing->setWordWrap(true);
    m_words = label(QString(), "muted");
    m_words->setObjectName("climateWords");
    m_words->setWordWrap(true);
    body()->addWidget(m_line);
    body()->addWidget(m_chart, 1);
    body()->addWidget(m_nothing);
    body()->addWidget(m_words);
    setVisible(false);
    connect(m_line, &Segmented::chosenByHand, this, &ClimateCard::draw);
}

QString ClimateCard::growthWords(const TrayClimate& climate, const UnitText& units)
{
    QStringList means;
    const GrowthClimate& growth = climate.growth;
    if (growth.temperature) {
        means << units.temperature(*growth.temperature);
    }
    if (growth.vpd) {
        means << tr("a deficit of %1 kPa").arg(numberText(*growth.vpd, 2));
    }
    if (growth.dli) {
        means << tr("light of %1 mol/m² a day").arg(numberText(*growth.dli, 1));
    }
    return means.isEmpty() ? tr("Too few of its days are known for a mean.")
                           : tr("It grew in a mean of %1.").arg(means.join(", "));
}

void ClimateCard::show(const Result<TrayClimate>& climate, int lastDay, UnitSystem units)
{
    setVisible(climate && !climate->isEmpty());
    if (!climate || climate->isEmpty()) {
        return;
    }
    QStringList words{growthWords(*climate, UnitText(units)), sourceWords(*climate)};
    words << missingWords(climate->days) << ruleWords();
    words.removeAll(QString());
    m_words->setText(words.join(' '));
    showTracks({{std::string(), climate->days}}, climate->tray.sownOn, lastDay);
}

void ClimateCard::show(const Result<TrialClimate>& climate)
{
    setVisible(climate && !climate->isEmpty());
    if (!climate || climate->isEmpty()) {
        return;
    }
    m_words->setText(
        tr("Days count from the trial's first sowing. A curve is named after the loggers that tell "
           "it, the nearest to its shelves first. %1")
            .arg(ruleWords()));
    showTracks(climate->tracks, climate->sownOn, 0);
}

void ClimateCard::showTracks(std::vector<ClimateTrack> tracks, Date sownOn, int lastDay)
{
    m_tracks = std::move(tracks);
    m_sownOn = sownOn;
    m_lastDay = lastDay;
    draw();
}

void ClimateCard::draw()
{
    const auto line = kClimateLines.at(static_cast<std::size_t>(std::max(0, m_line->chosen())));
    ChartSpec spec = climateChart(line, m_tracks, m_sownOn);
    spec.x.high = std::max(spec.x.high.value_or(0), double(m_lastDay));
    const bool hasNothing = plumule::isEmpty(spec);
    m_chart->setVisible(!hasNothing);
    m_nothing->setVisible(hasNothing);
    m_chart->draw(spec);
}

} // namespace plumule::ui

#include "moc_climate_card.cpp"
