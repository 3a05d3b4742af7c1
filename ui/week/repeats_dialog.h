#pragma once

#include "core/journal/week/week_entries.h"
#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

class QTableView;

namespace plumule::ui {

class TextTable;

// All repeating sowings: added, changed, ended.
class RepeatsDialog : public FormDialog
{
    Q_OBJECT

public:
    RepeatsDialog(Journal& journal, Services services, QWidget* parent = nullptr);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void fill();
    // The days that it holds from and until stand in its form too.
    void hideWhatDoesNotFit();
    void openOne(const Repeat& repeat);
    void openChosen();

    Journal& m_journal;
    Services m_services;
    TextTable* m_model = nullptr;
    QTableView* m_table = nullptr;
    QLabel* m_none = nullptr;
    QPushButton* m_change = nullptr;
    std::vector<RepeatRow> m_rows;
};

} // namespace plumule::ui
