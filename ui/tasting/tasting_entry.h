#pragma once

#include "core/journal/tasting/tasting_entries.h"
#include "ui/page/page.h"
#include "ui/widget/text_table.h"
#include "ui/widget/widgets.h"

class QLineEdit;
class QTableView;

namespace plumule::ui {

// Types the scores of an open tasting in by code, by the keyboard alone: the code, Enter, a value
// for each attribute, each with Enter, the next code. It is never told what is under a code.
class TastingEntry : public QWidget
{
    Q_OBJECT

public:
    TastingEntry(Journal& journal, Services services, QWidget* parent = nullptr);

    // What is being typed stays.
    void show(const PanelRecord& record);
    // To the field of the code.
    void begin();

private:
    void buildFields();
    void buildTable();
    void buildValues();
    void takeCode();
    void takeValue(std::size_t attribute);
    // True when the value, or its absence, was kept.
    bool keepValue(std::size_t attribute);
    bool clearValue(std::size_t attribute);
    void finishCode();
    void goTo(std::size_t attribute);
    void showServing(const Serving& serving);
    void nameOddOne(const Serving& serving);
    void say(const QString& words, bool isWrong);
    void showTable();
    [[nodiscard]] std::vector<TextRow> tableRows() const;
    void showMissing();
    [[nodiscard]] bool isTriangle() const;

    Journal& m_journal;
    Services m_services;
    PanelRecord m_shown;
    std::string m_code; // whose values are being typed
    QLineEdit* m_codeField = nullptr;
    QWidget* m_values = nullptr;
    std::vector<QLineEdit*> m_valueFields;
    QLabel* m_who = nullptr;
    QLabel* m_said = nullptr;
    QLabel* m_count = nullptr;
    QLabel* m_missing = nullptr;
    TextTable* m_model = nullptr;
    QTableView* m_table = nullptr;
};

} // namespace plumule::ui
