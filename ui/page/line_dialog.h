#pragma once

#include "ui/page/form_dialog.h"

class QLineEdit;

namespace plumule::ui {

// Asks for one line: a name, a reason.
class LineDialog : public FormDialog
{
    Q_OBJECT

public:
    // The button that answers says what the title does.
    LineDialog(Ask& ask, const QString& title, const QString& question, const QString& preset,
               QWidget* parent = nullptr);

Q_SIGNALS:
    void answered(const QString& text); // without blanks round it, and never empty

private:
    void answer();

    QLineEdit* m_field = nullptr;
};

} // namespace plumule::ui
