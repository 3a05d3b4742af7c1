#pragma once

#include "ui/page/page.h"

#include <set>

class QBoxLayout;
class QComboBox;
class QLineEdit;
class QTableView;

namespace plumule::ui {

class DateField;
class PageHead;
class TakeBackCard;
class TextTable;

// Everything that was done, newest first: looked for by words or kind, and taken back, also out of
// its turn, where nothing rests on it.
class HistoryPage : public Page
{
    Q_OBJECT

public:
    HistoryPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;
    bool find() override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildCopyButtons();
    QWidget* buildFilters();
    QWidget* buildList();
    void wireSignals();
    // Reads on until the day that is looked for was reached, or the first act.
    [[nodiscard]] Result<std::vector<HistoryEntry>> actsWanted();
    // Where a tray's code stands in the search: acts on many trays name none.
    [[nodiscard]] std::set<HistoryId> actsOnTheTray();
    [[nodiscard]] bool isWanted(const HistoryEntry& act, const QString& words) const;
    // The rows that fit the search, of the acts read.
    void showActs();
    void fillActs();
    void showChosen();
    void readMore();

    PageHead* m_head = nullptr;
    QLineEdit* m_search = nullptr;
    QComboBox* m_kind = nullptr;
    DateField* m_day = nullptr;
    TextTable* m_model = nullptr;
    QTableView* m_table = nullptr;
    QLabel* m_empty = nullptr;
    QPushButton* m_more = nullptr;
    QBoxLayout* m_beside = nullptr;
    TakeBackCard* m_card = nullptr;
    UnitText m_units;
    std::vector<HistoryEntry> m_acts;  // read, newest first
    std::vector<HistoryEntry> m_shown; // a row each
    std::set<HistoryId> m_about;       // those on the tray that is searched for
    int m_wanted = 0;
};

} // namespace plumule::ui
