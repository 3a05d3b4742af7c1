#include "ui/review/ratings_view.h"

#include "ui/tasting/tasting_answer.h"
#include "ui/widget/theme.h"

#include <QScrollArea>
#include <QVBoxLayout>

namespace plumule::ui {

RatingsView::RatingsView(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(scrolling(m_panels));
}

void RatingsView::show(const Result<TastingsOfSpan>& tastings)
{
    clearLayout(m_panels);
    if (tastings) {
        for (const TastingOfSpan& tasting : tastings->closed) {
            addTasting(tasting);
        }
        addOpen(tastings->open, !tastings->closed.empty());
    } else {
        addWords(tr("The tastings can't be told."), "heading");
        addWords(sentence(tastings.error()), "muted");
    }
    m_panels->addStretch(1);
}

void RatingsView::addTasting(const TastingOfSpan& tasting)
{
    addWords(QStringLiteral("%1  ·  %2")
                 .arg(QString::fromStdString(tasting.panel.name), longDateText(tasting.panel.on)),
             "heading");
    if (!tasting.result) {
        addWords(sentence(tasting.result.error()), "muted");
        return;
    }
    auto* answer = new TastingAnswer(m_services);
    answer->show(*tasting.result);
    m_panels->addWidget(answer);
}

void RatingsView::addOpen(int open, bool isAnyClosed)
{
    if (!isAnyClosed) {
        addWords(tr("No tasting was closed in this span."), "heading");
    }
    if (open > 0) {
        addWords(
            tr("%1 still open: what tasters said stays blind until a tasting is closed, on the "
               "page of its trial.")
                .arg(open),
            "muted");
    } else if (!isAnyClosed) {
        addWords(tr("Plan one on the page of a trial, under Tasting."), "muted");
    }
}

void RatingsView::addWords(const QString& text, const char* role)
{
    auto* words = label(text, role);
    words->setWordWrap(true);
    m_panels->addWidget(words);
}

} // namespace plumule::ui

#include "moc_ratings_view.cpp"
