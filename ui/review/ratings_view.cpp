#include "ui/review/ratings_view.h"

#include "ui/shared/theme.h"

#include <QScrollArea>
#include <QVBoxLayout>

namespace plumule::ui {

RatingsView::RatingsView(Journal& journal, const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(scrolling(m_panels));
}

void RatingsView::show(const SeasonFilter&)
{
    clearLayout(m_panels);
}

} // namespace plumule::ui
