#include "ui/cost/costs_page.h"

#include "core/journal/review/review_answers.h"
#include "core/review/charts/season_charts.h"
#include "ui/chart/chart_card.h"
#include "ui/cost/costs_text.h"
#include "ui/cost/price_dialog.h"
#include "ui/cost/price_rows_card.h"
#include "ui/cost/what_if_sliders.h"
#include "ui/cost/work_card.h"
#include "ui/cost/work_timer_button.h"
#include "ui/widget/choice_box.h"

#include <QComboBox>
#include <QKeyEvent>

namespace plumule::ui {

CostsPage::CostsPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
    , m_aside(journal, services.tasks, this)
{
    build();
    connect(m_whatIf, &WhatIfSliders::changed, this, &CostsPage::reload);
    connect(m_prices, &PriceRowsCard::priceAsked, this, &CostsPage::askPrice);
    connect(m_span, &QComboBox::activated, this, &CostsPage::reload);
    connect(m_variety, &QComboBox::activated, this, [this] {
        m_hasVariety = true;
        reload();
    });
}

QString CostsPage::name() const
{
    return tr("Costs");
}

bool CostsPage::concerns(Concept about) const
{
    return about != Concept::Climate;
}

CostsQuestion CostsPage::question() const
{
    CostsQuestion asked;
    asked.filter = m_spans[static_cast<std::size_t>(std::max(0, m_span->currentIndex()))];
    if (const auto variety = chosen<VarietyId>(*m_variety)) {
        asked.filter.varieties = {*variety};
    }
    asked.whatIf = m_whatIf->whatIf();
    return asked;
}

void CostsPage::reload()
{
    fillChoices();
    m_work->reload();
    m_aside.ask(
        tr("Reckoning costs"),
        [asked = question()](Journal& journal, const Progress& progress) {
            return journal.review().costs(asked, progress);
        },
        [this](const Result<CostsAnswer>& answer) { show(answer); });
}

// Spans end with the day.
void CostsPage::followClock()
{
    noteChange();
}

QString CostsPage::varietyShown() const
{
    return chosen<VarietyId>(*m_variety) ? m_variety->currentText() : QString();
}

// Grams of unlike varieties make a poor sum: until a variety was chosen the one grown most is.
bool CostsPage::chooseMostGrown()
{
    std::map<std::string, int> trays;
    for (const MediumSeason& season : m_shown->review.media) {
        for (const SeasonTray& tray : season.trays) {
            ++trays[tray.variety];
        }
    }
    m_hasVariety = m_hasVariety || !trays.empty();
    if (trays.size() < 2) {
        return false;
    }
    const auto most =
        std::max_element(trays.begin(), trays.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    const int row = m_variety->findText(QString::fromStdString(most->first));
    m_variety->setCurrentIndex(std::max(0, row));
    return row > 0;
}

void CostsPage::show(const Result<CostsAnswer>& answer)
{
    if (!accept(answer)) {
        return;
    }
    const bool wasChosen = m_hasVariety;
    m_shown = *answer;
    if (!wasChosen && chooseMostGrown()) {
        reload();
        return;
    }
    const SeasonFilter& filter = m_shown->review.filter;
    m_head->setSubtitle(tr("%1 – %2  ·  %3, %4 thrown away")
                            .arg(longDateText(filter.from), longDateText(filter.to),
                                 tr("%n tray(s) cut", nullptr, m_shown->harvested))
                            .arg(m_shown->failed));
    showHeadline();
    showParts();
    showPayback();
    m_prices->show(*m_shown, varietyShown());
    m_whatIf->show(*m_shown);
}

void CostsPage::askPrice(std::optional<PriceItem> item, std::optional<MediumId> medium)
{
    auto* dialog = new PriceDialog(journal(), services(), item, medium, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

void CostsPage::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_F8) {
        m_work->timer()->press();
        return;
    }
    Page::keyPressEvent(event);
}

void CostsPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    layOut();
}

} // namespace plumule::ui

#include "moc_costs_page.cpp"
