#include "ui/chart/chart_card.h"

#include "core/base/whole_file.h"
#include "core/tray/tray.h"
#include "ui/chart/chart_csv.h"
#include "ui/chart/chart_text.h"
#include "ui/chart/chart_view.h"
#include "ui/page/saving.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/theme.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace plumule::ui {

ChartCard::ChartCard(const Services& services, const char* name, QWidget* parent)
    : Card(QStringLiteral(" "), "card", parent)
    , m_services(services)
{
    wrapHeading();
    m_chart = new ChartView;
    m_chart->setObjectName(name);
    m_chart->setMinimumHeight(scaled(250));
    auto* keep = button(tr("Save…"), "quiet");
    keep->setAccessibleName(tr("Save this chart"));
    headingRow()->addWidget(keep);
    body()->addWidget(m_chart, 1);
    connect(keep, &QPushButton::clicked, this, &ChartCard::save);
    connect(m_chart, &ChartView::pointChosen, this,
            [this](qint64 tray) { Q_EMIT trayAsked(TrayId{tray}); });
}

void ChartCard::draw(const ChartSpec& spec)
{
    setVisible(!spec.series.empty());
    setHeading(chartTitle(spec));
    m_chart->draw(spec);
}

void ChartCard::save()
{
    saveAs(this, m_services, tr("Save this chart"),
           QString::fromStdString(m_chart->spec().key) + ".png",
           tr("Pictures (*.png);;Drawings (*.svg);;Pages (*.pdf);;Numbers (*.csv)"),
           [this](const QString& path) {
               return path.endsWith(".csv", Qt::CaseInsensitive)
                          ? writeWhole(path.toStdString(), chartCsv(m_chart->spec()))
                          : m_chart->saveTo(path);
           });
}

} // namespace plumule::ui

#include "moc_chart_card.cpp"
