#pragma once

#include "core/tray/tray_id.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

namespace plumule {
struct ChartSpec;
}

namespace plumule::ui {

class ChartView;

// A chart on a card under its title, with a button that saves it as a picture, a drawing, a page or
// the numbers behind it.
class ChartCard : public Card
{
    Q_OBJECT

public:
    // `name` is the chart's object name.
    ChartCard(const Services& services, const char* name, QWidget* parent = nullptr);

    // Hides itself where the chart has nothing to show.
    void draw(const ChartSpec& spec);
    [[nodiscard]] ChartView* chart() const { return m_chart; }

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);

private:
    void save();

    Services m_services;
    ChartView* m_chart = nullptr;
};

} // namespace plumule::ui
