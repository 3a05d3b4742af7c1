#pragma once

#include "core/journal/trial/trial_entries.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QComboBox;
class QGridLayout;

namespace plumule::ui {

// What was written and photographed of each medium on one day, side by side. Hidden where there is
// nothing.
class DiaryCard : public Card
{
    Q_OBJECT

public:
    DiaryCard(Journal& journal, QWidget* parent = nullptr);

    void show(TrialId trial);

private:
    void showDay(int index);
    [[nodiscard]] QWidget* columnOf(const TrialDayOfMedium& medium) const;

    Journal& m_journal;
    std::vector<TrialDay> m_days;
    QComboBox* m_day = nullptr;
    QGridLayout* m_columns = nullptr;
};

} // namespace plumule::ui
