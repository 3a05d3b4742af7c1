#pragma once

#include "core/stock/stock.h"
#include "ui/page/record_dialog.h"

class QComboBox;

namespace plumule::ui {

class CheckList;
class NumberField;

// Which pieces were sanitised, with what, how strong, how long, and by whom. What was entered last
// is proposed.
class SanitiseDialog : public RecordDialog
{
    Q_OBJECT

public:
    SanitiseDialog(Journal& journal, Services services, const Stock& stock,
                   QWidget* parent = nullptr);

private:
    std::optional<QString> save() override;
    void buildFields();
    void fill(const Stock& stock);
    void propose(const SanitisingDraft& how);

    CheckList* m_pieces = nullptr;
    QComboBox* m_agent = nullptr;
    NumberField* m_strength = nullptr;
    QComboBox* m_unit = nullptr;
    NumberField* m_minutes = nullptr;
    QComboBox* m_by = nullptr;
};

} // namespace plumule::ui
