#pragma once

#include "core/journal/journal.h"
#include "core/tray/tray_id.h"
#include "ui/page/form_dialog.h"
#include "ui/text/text.h"

class QComboBox;

namespace plumule::ui {

class CheckList;
class NumberField;
class TimeField;

// Water as needed, between rounds: which trays, how much of what, and when today.
class BetweenDialog : public FormDialog
{
    Q_OBJECT

public:
    // `trays` are checked at first; the first of them, or none, tells what is proposed.
    BetweenDialog(Journal& journal, Ask& ask, const std::vector<TrayId>& trays,
                  QWidget* parent = nullptr);

Q_SIGNALS:
    void given();

private:
    [[nodiscard]] QWidget* buildTrays(const std::vector<TrayId>& trays);
    [[nodiscard]] QWidget* buildWater();
    void buildButtons();
    void propose(TrayId tray);
    [[nodiscard]] std::vector<TrayId> checkedTrays() const;
    void showCount();
    void give();

    Journal& m_journal;
    UnitText m_units;
    CheckList* m_trays = nullptr;
    NumberField* m_amount = nullptr;
    QComboBox* m_water = nullptr;
    QComboBox* m_method = nullptr;
    TimeField* m_time = nullptr;
    QPushButton* m_give = nullptr;
};

} // namespace plumule::ui
