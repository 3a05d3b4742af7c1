#pragma once

#include "core/base/date.h"

#include <QDialog>

namespace plumule::ui {

// Asks when something really began.
class StartDialog : public QDialog
{
    Q_OBJECT

public:
    StartDialog(const QString& what, Moment present, QWidget* parent = nullptr);

Q_SIGNALS:
    void chosen(plumule::Date on, int minute);
};

} // namespace plumule::ui
