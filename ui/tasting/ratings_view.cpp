#include "ui/tasting/ratings_view.h"

#include "ui/tasting/tasting_answer.h"
#include "ui/widget/theme.h"

#include <QScrollArea>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

bool isWithin(const Panel& panel, const SeasonFilter& filter)
{
    const bool isOfTrial = filter.trials.empty() ||
                           (panel.trial && std::find(filter.trials.begin(), filter.trials.end(),
                                                     *panel.trial) != filter.trials.end());
    return isOfTrial && !(panel.on < filter.from) && !(filter.to < panel.on);
}

} // namespace

RatingsView::RatingsView(Journal& journal, const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(scrolling(m_panels));
}

void RatingsView::show(const SeasonFilter& filter)
{
    clearLayout(m_panels);
    int open = 0;
    int closed = 0;
    const auto rows = m_journal.tastings().list().value_or(std::vector<PanelRow>());
    for (const PanelRow& row : rows) {
        if (isWithin(row.panel, filter)) {
            open += row.panel.isOpen() ? 1 : 0;
            closed += !row.panel.isOpen() && addAnswer(row.panel) ? 1 : 0;
        }
    }
    if (closed == 0) {
        m_panels->addWidget(label(tr("No tasting was closed in this span."), "heading"));
    }
    if (closed == 0 || open > 0) {
        auto* words = label(open > 0 ? tr("%1 still open: what tasters said stays blind until a "
                                          "tasting is closed, on the page of its trial.")
                                           .arg(open)
                                     : tr("Plan one on the page of a trial, under Tasting."),
                            "muted");
        words->setWordWrap(true);
        m_panels->addWidget(words);
    }
    m_panels->addStretch(1);
}

bool RatingsView::addAnswer(const Panel& panel)
{
    const auto result = m_journal.tastings().result(panel.id);
    if (!result) {
        return false;
    }
    m_panels->addWidget(label(
        QStringLiteral("%1  ·  %2").arg(QString::fromStdString(panel.name), longDateText(panel.on)),
        "heading"));
    auto* answer = new TastingAnswer(m_services);
    answer->show(*result);
    m_panels->addWidget(answer);
    return true;
}

} // namespace plumule::ui

#include "moc_ratings_view.cpp"
