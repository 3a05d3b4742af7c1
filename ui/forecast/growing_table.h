#pragma once

#include "core/forecast/forecast_sums.h"
#include "ui/text/text.h"
#include "ui/widget/rows_model.h"
#include "ui/widget/widgets.h"

class QTableView;

namespace plumule::ui {

class ForecastScale;
class ScaleHeader;

// One growing tray with what it is called.
struct GrowingRow
{
    TrayForecast forecast;
    int marker = 0; // of its medium
    int day = 1;    // of growth, today
    QString variety;
    QString medium;
};

// A tray a row: its harvest day and its yield drawn along scales, with the figures. What was worked
// out from the library is drawn hollow. What the chosen row rests on is said below.
class GrowingTable : public Card
{
    Q_OBJECT

public:
    explicit GrowingTable(QWidget* parent = nullptr);
    ~GrowingTable() override;

    void show(std::vector<GrowingRow> rows, Date today, const UnitText& units);
    [[nodiscard]] QTableView* table() const { return m_table; }

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void fit();
    void showBasis();
    void showLegend(const std::vector<GrowingRow>& rows);

    std::unique_ptr<ForecastScale> m_scale;
    RowsModel<GrowingRow>* m_model = nullptr;
    QTableView* m_table = nullptr;
    ScaleHeader* m_header = nullptr;
    QWidget* m_legend = nullptr;
    QLabel* m_basis = nullptr;
};

} // namespace plumule::ui
