#include "ui/widget/wide_drop_downs.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QEvent>
#include <QScreen>
#include <QScrollBar>

#include <algorithm>

namespace plumule::ui {
namespace {

// `list` is the window that the box opens.
void widen(QWidget& list, const QComboBox& box)
{
    const QAbstractItemView* view = box.view();
    int missing = view->sizeHintForColumn(0) - view->viewport()->width();
    if (box.count() > box.maxVisibleItems() && !view->verticalScrollBar()->isVisible()) {
        missing += view->verticalScrollBar()->sizeHint().width();
    }
    if (missing > 0) {
        const QRect screen = list.screen()->availableGeometry();
        const int wide = std::min(screen.width(), list.width() + missing);
        list.setGeometry(std::max(screen.left(), std::min(list.x(), screen.right() + 1 - wide)),
                         list.y(), wide, list.height());
    }
}

class WideDropDowns : public QObject
{
public:
    using QObject::QObject;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() == QEvent::Show && watched->inherits("QComboBoxPrivateContainer")) {
            auto* list = static_cast<QWidget*>(watched);
            if (const auto* box = qobject_cast<QComboBox*>(list->parentWidget())) {
                widen(*list, *box);
            }
        }
        return QObject::eventFilter(watched, event);
    }
};

} // namespace

void showWholeRows(QApplication& application)
{
    application.installEventFilter(new WideDropDowns(&application));
}

} // namespace plumule::ui
