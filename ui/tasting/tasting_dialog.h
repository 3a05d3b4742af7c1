#pragma once

#include "ui/page/page.h"

#include <QDialog>

class QComboBox;
class QDateEdit;
class QLineEdit;
class QPlainTextEdit;
class QVBoxLayout;

namespace plumule::ui {

class CheckList;

// Plans a blind tasting, or changes one that has no scores yet.
class TastingDialog : public QDialog
{
    Q_OBJECT

public:
    TastingDialog(Journal& journal, Services services, const PanelDraft& draft,
                  QWidget* parent = nullptr);

Q_SIGNALS:
    void saved(plumule::PanelId panel);

private:
    void buildFields(QVBoxLayout& column);
    void buildButtons(QVBoxLayout& column);
    void wireSignals();
    void fill();
    // What the fields say.
    [[nodiscard]] PanelDraft typed() const;
    void showFacts();
    void save();

    Journal& m_journal;
    Services m_services;
    PanelDraft m_draft;
    QLineEdit* m_name = nullptr;
    QDateEdit* m_on = nullptr;
    QComboBox* m_method = nullptr;
    QLabel* m_methodWords = nullptr;
    CheckList* m_media = nullptr;
    QPlainTextEdit* m_attributes = nullptr;
    QPlainTextEdit* m_tasters = nullptr;
    QLineEdit* m_note = nullptr;
    QLabel* m_facts = nullptr;
    QLabel* m_refusal = nullptr;
    QPushButton* m_save = nullptr;
    QPushButton* m_leave = nullptr;
};

} // namespace plumule::ui
