#pragma once

#include "core/review/season/season.h"
#include "ui/page/record_dialog.h"

class QComboBox;
class QLineEdit;

namespace plumule::ui {

class DateField;

// Declares a season or changes one: its name and first day, how many trials were planned, and which
// metric is the main one.
class SeasonDialog : public RecordDialog
{
    Q_OBJECT

public:
    // A new season where its id is not stored and it has no name.
    SeasonDialog(Journal& journal, Services services, const Season& season,
                 QWidget* parent = nullptr);

private:
    void buildFields();
    void fill();
    [[nodiscard]] std::optional<QString> save() override;

    Season m_season;
    QLineEdit* m_name = nullptr;
    DateField* m_startsOn = nullptr;
    QLineEdit* m_planned = nullptr;
    QComboBox* m_metric = nullptr;
};

} // namespace plumule::ui
