#include "ui/widget/still_wheel.h"

#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QEvent>

namespace plumule::ui {
namespace {

class StillWheel : public QObject
{
public:
    using QObject::QObject;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        const bool turnsAValue =
            event->type() == QEvent::Wheel && (qobject_cast<QComboBox*>(watched) != nullptr ||
                                               qobject_cast<QAbstractSpinBox*>(watched) != nullptr);
        if (!turnsAValue) {
            return QObject::eventFilter(watched, event);
        }
        event->ignore(); // so that it goes on to what the field stands in
        return true;
    }
};

} // namespace

void keepValuesFromTheWheel(QApplication& application)
{
    application.installEventFilter(new StillWheel(&application));
}

} // namespace plumule::ui
