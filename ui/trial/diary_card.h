#pragma once

#include "core/base/result.h"
#include "core/trial/trial_progress.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

#include <filesystem>

class QComboBox;
class QGridLayout;

namespace plumule::ui {

// What was written and photographed of each medium on one day, side by side, or why that can't be
// told. Hidden where there is nothing.
class DiaryCard : public Card
{
    Q_OBJECT

public:
    explicit DiaryCard(std::filesystem::path photoFolder, QWidget* parent = nullptr);

    void show(const Result<std::vector<TrialDay>>& days);

private:
    void showDay(int index);
    [[nodiscard]] QWidget* columnOf(const TrialDayOfMedium& medium) const;

    std::filesystem::path m_photoFolder;
    std::vector<TrialDay> m_days;
    QComboBox* m_day = nullptr;
    QLabel* m_failed = nullptr;
    QGridLayout* m_columns = nullptr;
};

} // namespace plumule::ui
