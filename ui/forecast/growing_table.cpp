#include "ui/forecast/growing_table.h"

#include "ui/forecast/forecast_scale.h"
#include "ui/forecast/forecast_text.h"
#include "ui/medium/marker.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/theme.h"

#include <QBoxLayout>
#include <QEvent>
#include <QScrollBar>
#include <QTableView>

#include <map>

namespace plumule::ui {
namespace {

constexpr int kRowHigh = 26;
constexpr int kLeastWidth = 240;
constexpr int kLeastScale = 170; // where there is less, the table is scrolled sideways
constexpr int kBothScales = 560; // in a narrower one the figures say the yield
constexpr int kLeastWithAge = 360;

std::vector<RowColumn<GrowingRow>> columnsOf(const UnitText& units)
{
    RowColumn<GrowingRow> tray{GrowingTable::tr("Tray"), [](const GrowingRow& row) {
                                   return QString::fromStdString(row.forecast.code);
                               }};
    tray.isStrong = true;
    tray.icon = [](const GrowingRow& row) { return markerIcon(row.marker); };
    RowColumn<GrowingRow> age{GrowingTable::tr("day"),
                              [](const GrowingRow& row) { return QString::number(row.day); },
                              Qt::AlignRight};
    RowColumn<GrowingRow> day{GrowingTable::tr("Harvest day, 8 in 10 within the bar"),
                              [](const GrowingRow& row) { return dayWords(row.forecast); }};
    RowColumn<GrowingRow> yield{
        GrowingTable::tr("Yield, %1 a tray").arg(units.massUnit()), [units](const GrowingRow& row) {
            return GrowingTable::tr("%1 (%2) %3")
                .arg(yieldMiddle(row.forecast.yield, units), yieldRange(row.forecast.yield, units),
                     units.massUnit());
        }};
    RowColumn<GrowingRow> middle{
        units.massUnit(),
        [units](const GrowingRow& row) { return yieldMiddle(row.forecast.yield, units); },
        Qt::AlignRight};
    middle.isStrong = true;
    RowColumn<GrowingRow> range{
        GrowingTable::tr("8 in 10"),
        [units](const GrowingRow& row) { return yieldRange(row.forecast.yield, units); },
        Qt::AlignRight};
    return {tray, age, day, yield, middle, range};
}

} // namespace

GrowingTable::GrowingTable(QWidget* parent)
    : Card(QStringLiteral(" "), "card", parent)
{
    m_model = new RowsModel<GrowingRow>({}, this);
    m_legend = new QWidget;
    new FlowLayout(m_legend);
    body()->addWidget(m_legend);
    m_table = plainTable(m_model, "growingForecasts",
                         tr("Growing trays, with the harvest day and the yield foretold"));
    m_header = new ScaleHeader(m_scale, m_table);
    m_table->setHorizontalHeader(m_header);
    m_table->setItemDelegate(new ScaleDelegate(*m_model, m_scale, m_table));
    m_table->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    body()->addWidget(m_table);
    m_basis = label(QString(), "muted");
    m_basis->setObjectName("forecastBasis");
    m_basis->setWordWrap(true);
    body()->addWidget(m_basis);
    connect(m_table, &QTableView::activated, this, [this](const QModelIndex& index) {
        Q_EMIT trayAsked(m_model->row(index.row()).forecast.tray);
    });
    connect(m_model, &QAbstractItemModel::modelReset, this, &GrowingTable::showBasis);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &GrowingTable::showBasis);
}

GrowingTable::~GrowingTable() = default;

void GrowingTable::show(std::vector<GrowingRow> rows, Date today, const UnitText& units)
{
    setHeading(tr("Growing now: %n tray(s)", nullptr, static_cast<int>(rows.size())));
    m_scale = std::make_unique<ForecastScale>(rows, today, units);
    showLegend(rows);
    m_model->show(columnsOf(units), std::move(rows));
    fit();
}

// As high as its rows; the two scales share what is left of the width.
void GrowingTable::fit()
{
    m_table->verticalHeader()->setDefaultSectionSize(scaled(kRowHigh));
    m_table->setMinimumWidth(scaled(kLeastWidth));
    bool fits = true;
    if (m_model->columnCount() > 0) {
        m_header->setSectionResizeMode(QHeaderView::ResizeToContents);
        m_header->setSectionResizeMode(DayColumn, QHeaderView::Stretch);
        m_header->setSectionResizeMode(YieldColumn, QHeaderView::Stretch);
        m_table->setColumnHidden(YieldColumn, width() < scaled(kBothScales));
        m_table->setColumnHidden(AgeColumn, width() < scaled(kLeastWithAge));
        fits = m_header->sectionSize(DayColumn) >= scaled(kLeastScale);
        if (!fits) {
            m_header->setSectionResizeMode(DayColumn, QHeaderView::Fixed);
            m_header->resizeSection(DayColumn, scaled(kLeastScale));
        }
    }
    const int bar = fits ? 0 : m_table->horizontalScrollBar()->sizeHint().height();
    m_table->setFixedHeight(m_header->sizeHint().height() + scaled(kRowHigh) * m_model->rowCount() +
                            scaled(6) + bar);
}

void GrowingTable::showLegend(const std::vector<GrowingRow>& rows)
{
    std::map<QString, int> media;
    for (const GrowingRow& row : rows) {
        media[row.medium] = row.marker;
    }
    clearLayout(m_legend->layout());
    for (const auto& [name, marker] : media) {
        auto* entry = new QWidget;
        auto* line = new QHBoxLayout(entry);
        line->setContentsMargins(0, 0, 0, 0);
        line->setSpacing(scaled(6));
        line->addWidget(new MarkerDot(marker));
        line->addWidget(label(name, "muted"));
        m_legend->layout()->addWidget(entry);
    }
}

void GrowingTable::showBasis()
{
    const int row = m_table->currentIndex().row();
    if (row < 0 || row >= m_model->rowCount()) {
        m_basis->setText(
            tr("From this room's past of the variety, the medium and the season, and "
               "from each stage as it began; where that is too little, from the library, "
               "drawn hollow. A stroke marks the protocol's day where the forecast "
               "differs. All of the first cut. Choose a tray to see what its forecast "
               "rests on."));
        return;
    }
    const GrowingRow& shown = m_model->row(row);
    m_basis->setText(tr("%1, %2 on %3. %4")
                         .arg(QString::fromStdString(shown.forecast.code), shown.variety,
                              shown.medium, basisWords(shown.forecast)));
}

void GrowingTable::resizeEvent(QResizeEvent* event)
{
    Card::resizeEvent(event);
    fit();
}

void GrowingTable::changeEvent(QEvent* event)
{
    Card::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && m_table != nullptr) {
        m_table->viewport()->update();
        m_header->viewport()->update();
    }
}

} // namespace plumule::ui

#include "moc_growing_table.cpp"
