#pragma once

#include "ui/page/record_dialog.h"

class QComboBox;
class QLineEdit;
class QPlainTextEdit;

namespace plumule::ui {

class CheckList;
class DateField;

// Plans a blind tasting, or changes one that has no scores yet.
class TastingDialog : public RecordDialog
{
    Q_OBJECT

public:
    TastingDialog(Journal& journal, Services services, const PanelDraft& draft,
                  QWidget* parent = nullptr);

Q_SIGNALS:
    void saved(plumule::PanelId panel);

private:
    void makeFields();
    void buildRows();
    void wireSignals();
    void fill();
    // What the fields say.
    [[nodiscard]] PanelDraft typed() const;
    void showFacts();
    [[nodiscard]] std::optional<QString> save() override;

    PanelDraft m_draft;
    QLineEdit* m_name = nullptr;
    DateField* m_on = nullptr;
    QComboBox* m_method = nullptr;
    QLabel* m_methodWords = nullptr;
    CheckList* m_media = nullptr;
    QPlainTextEdit* m_attributes = nullptr;
    QPlainTextEdit* m_tasters = nullptr;
    QLineEdit* m_note = nullptr;
    QLabel* m_facts = nullptr;
};

} // namespace plumule::ui
