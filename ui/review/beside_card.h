#pragma once

#include "core/review/season/season_spans.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QTableView;

namespace plumule::ui {

class ChartView;
class TextTable;

// Several seasons side by side: the mean yields of each medium with their intervals. Hidden where
// only one season is asked for.
class BesideCard : public Card
{
    Q_OBJECT

public:
    explicit BesideCard(const Services& services, QWidget* parent = nullptr);

    void show(const std::vector<SeasonBeside>& seasons);

private:
    void saveTable();

    Services m_services;
    ChartView* m_chart = nullptr;
    TextTable* m_model = nullptr;
    QTableView* m_table = nullptr;
};

} // namespace plumule::ui
