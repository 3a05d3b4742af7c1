#pragma once

#include "core/trace/trace.h"
#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

class QComboBox;

namespace plumule::ui {

class DateField;
class Segmented;

// Which lot, piece, mix or person is to be followed.
class TraceDialog : public FormDialog
{
    Q_OBJECT

public:
    TraceDialog(Journal& journal, Services services, QWidget* parent = nullptr);

Q_SIGNALS:
    void chosen(const plumule::TraceFrom& from);

private:
    void fillList();
    void fillLots();
    void fillPieces();
    void take();

    Journal& m_journal;
    Segmented* m_kind = nullptr;
    QComboBox* m_list = nullptr;
    QWidget* m_days = nullptr;
    DateField* m_from = nullptr;
    DateField* m_to = nullptr;
};

} // namespace plumule::ui
