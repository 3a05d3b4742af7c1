#include "ui/widget/page_stack.h"

#include <QLayout>

namespace plumule::ui {

PageStack::PageStack(QWidget* parent)
    : QStackedWidget(parent)
{
    connect(this, &QStackedWidget::currentChanged, this, &PageStack::fit);
}

void PageStack::addPage(QWidget* page)
{
    addWidget(page);
    fit();
}

void PageStack::fit()
{
    for (int i = 0; i < count(); ++i) {
        const auto policy = i == currentIndex() ? QSizePolicy::Preferred : QSizePolicy::Ignored;
        widget(i)->setSizePolicy(policy, policy);
    }
    // A hidden page does not say that it asks for less now.
    layout()->invalidate();
    updateGeometry();
}

} // namespace plumule::ui
