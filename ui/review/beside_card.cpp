#include "ui/review/beside_card.h"

#include "core/base/whole_file.h"
#include "ui/chart/chart_view.h"
#include "ui/medium/marker.h"
#include "ui/page/saving.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"

#include <QHBoxLayout>
#include <QTableView>
#include <QVBoxLayout>

#include <map>

namespace plumule::ui {
namespace {

constexpr int kRowOfChart = 30;

QString yieldText(const MeanInterval& yield)
{
    const QString mean = numberText(yield.mean, 0);
    return yield.lower && yield.upper
               ? BesideCard::tr("%1 g (%2 to %3), %n trays", nullptr, yield.n)
                     .arg(mean, numberText(*yield.lower, 0), numberText(*yield.upper, 0))
               : BesideCard::tr("%1 g, one tray").arg(mean);
}

QString spanText(const SeasonFilter& filter)
{
    return QStringLiteral("%1 – %2").arg(longDateText(filter.from), longDateText(filter.to));
}

} // namespace

BesideCard::BesideCard(const Services& services, QWidget* parent)
    : Card(tr("Seasons side by side: yield by medium, as weighed"), "card", parent)
    , m_services(services)
{
    wrapHeading();
    m_chart = new ChartView;
    m_chart->setObjectName("besideChart");
    m_model = new TextTable(this);
    m_table = plainTable(m_model, "besideTable", tr("Seasons side by side"));
    auto* keep = button(tr("Save…"), "quiet");
    keep->setObjectName("besideSave");
    headingRow()->addWidget(keep);
    body()->addWidget(m_chart);
    body()->addWidget(m_table);
    auto* words = label(tr("Means of one season are not adjusted for another's varieties and "
                           "trials: choose one variety to compare like with like."),
                        "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
    connect(keep, &QPushButton::clicked, this, &BesideCard::saveTable);
}

void BesideCard::show(const std::vector<SeasonBeside>& seasons)
{
    setVisible(seasons.size() > 1);
    if (seasons.size() < 2) {
        return;
    }
    const ChartSpec spec = seasonsChart(seasons);
    m_chart->setMinimumHeight(scaled(90 + kRowOfChart * static_cast<int>(spec.rows.size())));
    m_chart->draw(spec);
    QStringList header{tr("Medium")};
    std::map<MediumId, TextRow> rows;
    for (std::size_t i = 0; i < seasons.size(); ++i) {
        header << spanText(seasons[i].filter);
        for (const MediumSeason& season : seasons[i].review.media) {
            TextRow& row = rows[season.medium.id];
            row.icon = markerIcon(season.medium.marker);
            if (row.cells.isEmpty()) {
                row.cells << QString::fromStdString(season.medium.name);
            }
            while (row.cells.size() <= static_cast<qsizetype>(i)) {
                row.cells << QStringLiteral("–");
            }
            row.cells << yieldText(season.yield);
        }
    }
    std::vector<TextRow> shown;
    for (auto& [id, row] : rows) {
        while (row.cells.size() < header.size()) {
            row.cells << QStringLiteral("–");
        }
        shown.push_back(std::move(row));
    }
    m_model->show(header, std::move(shown));
    fitHeight(*m_table);
}

void BesideCard::saveTable()
{
    saveAs(this, m_services, tr("Save these seasons"), "seasons.csv",
           tr("Tables (*.csv);;Pictures (*.png);;Drawings (*.svg)"), [this](const QString& path) {
               return path.endsWith(".csv", Qt::CaseInsensitive)
                          ? writeWhole(path.toStdString(), tableCsv(*m_model))
                          : m_chart->saveTo(path);
           });
}

} // namespace plumule::ui

#include "moc_beside_card.cpp"
