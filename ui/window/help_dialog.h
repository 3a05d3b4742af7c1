#pragma once

#include "ui/page/form_dialog.h"

namespace plumule::ui {

// One page to look something up: the keys, and what the words mean.
class HelpDialog : public FormDialog
{
    Q_OBJECT

public:
    explicit HelpDialog(Ask& ask, QWidget* parent = nullptr);
};

} // namespace plumule::ui
