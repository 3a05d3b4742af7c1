#pragma once

#include "core/base/date.h"
#include "ui/page/form_dialog.h"

namespace plumule::ui {

class DateField;
class TimeField;

// Asks when something really began.
class StartDialog : public FormDialog
{
    Q_OBJECT

public:
    StartDialog(Ask& ask, const QString& what, Moment present, QWidget* parent = nullptr);

Q_SIGNALS:
    void chosen(plumule::Date on, int minute);

private:
    void save();

    DateField* m_day = nullptr;
    TimeField* m_time = nullptr;
};

} // namespace plumule::ui
