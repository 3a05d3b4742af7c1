#include "ui/widget/page_stack.h"

#include <QEvent>
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
    fitHeight();
}

int PageStack::leastHeight() const
{
    const QWidget* shown = currentWidget();
    if (shown == nullptr) {
        return 0;
    }
    const QLayout* lines = shown->layout();
    return lines != nullptr && lines->hasHeightForWidth() ? lines->totalHeightForWidth(width())
                                                          : shown->minimumSizeHint().height();
}

void PageStack::fitHeight()
{
    setMinimumHeight(leastHeight());
}

bool PageStack::event(QEvent* event)
{
    const bool isDone = QStackedWidget::event(event);
    if (event->type() == QEvent::LayoutRequest || event->type() == QEvent::Resize) {
        fitHeight();
    }
    return isDone;
}

} // namespace plumule::ui
