#pragma once

#include "core/review/answer/costs_answer.h"
#include "ui/page/aside.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QBoxLayout;
class QComboBox;

namespace plumule::ui {

class ChartCard;
class FlowLayout;
class PriceRowsCard;
class TableCard;
class TextTable;
class WhatIfSliders;
class WorkCard;

// Where the money goes: the parts of a gram's cost by medium, what is missing, prices from day to
// day, the minutes of work and their timer, when a piece pays back, and what if. It is worked out
// off the window's thread on a connection of its own.
class CostsPage : public Page
{
    Q_OBJECT

public:
    CostsPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void followClock() override;

    // What is shown now; none before the first answer.
    [[nodiscard]] const std::optional<CostsAnswer>& answer() const { return m_shown; }

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    // costs_page_build.cpp
    void build();
    void buildHead();
    QWidget* buildHeadline();
    QWidget* buildParts();
    QWidget* buildColumns();
    void layOut();
    void showHeadline();
    void showParts();
    void showPayback();

    void fillChoices();
    [[nodiscard]] CostsQuestion question() const;
    [[nodiscard]] QString varietyShown() const;
    void show(const Result<CostsAnswer>& answer);
    [[nodiscard]] bool chooseMostGrown();
    void askPrice(std::optional<PriceItem> item, std::optional<MediumId> medium);

    PageHead* m_head = nullptr;
    QComboBox* m_variety = nullptr;
    QComboBox* m_span = nullptr;
    std::vector<SeasonFilter> m_spans; // as m_span lists them
    QLabel* m_headline = nullptr;
    QLabel* m_lacks = nullptr;
    FlowLayout* m_lackButtons = nullptr;
    QBoxLayout* m_columns = nullptr;
    ChartCard* m_bars = nullptr;
    TextTable* m_table = nullptr;
    TableCard* m_parts = nullptr;
    ChartCard* m_payback = nullptr;
    QLabel* m_paybackWords = nullptr;
    PriceRowsCard* m_prices = nullptr;
    WhatIfSliders* m_whatIf = nullptr;
    WorkCard* m_work = nullptr;
    std::optional<CostsAnswer> m_shown;
    bool m_hasVariety = false; // chosen by hand, or by what was grown most
    Aside m_aside;
};

} // namespace plumule::ui
