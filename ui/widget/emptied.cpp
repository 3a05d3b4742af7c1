#include "ui/widget/emptied.h"

#include <QLineEdit>

namespace plumule::ui {

void emptyForGood(QLineEdit& field)
{
    field.setText(QString());
}

} // namespace plumule::ui
