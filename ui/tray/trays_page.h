#pragma once

#include "core/tray/tray_list_row.h"
#include "ui/page/aside.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

#include <QModelIndexList>

class QComboBox;
class QLineEdit;
class QTableView;
class QTimer;

namespace plumule::ui {

class PageStack;
class TrayListModel;
class TraySheetView;

// Every tray there was, to search and filter; and the sheet of the one that is looked up.
class TraysPage : public Page
{
    Q_OBJECT

public:
    TraysPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;
    [[nodiscard]] bool hasUnsaved() const override;
    bool find() override;
    bool print() override;

    void openSheet(TrayId tray);
    void openSowing();
    void openList();
    void openLabels();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* buildList();
    void buildHead();
    void buildTable();
    QWidget* buildFilters();
    void wireSignals();
    void fillChoices();
    [[nodiscard]] TrayFilter filter() const;
    void noteTyping();
    // What fits the filter, from the top.
    void narrowList();
    // As many rows of what is shown.
    void readList(int rows);
    void count(const TrayListing& listing);
    void showCounts(const TrayCounts& counts);
    [[nodiscard]] bool isListInFront() const;
    [[nodiscard]] QModelIndexList selected() const;
    [[nodiscard]] std::vector<TrayId> traysToLabel() const;
    void showLabels();

    PageHead* m_head = nullptr;
    PageStack* m_stack = nullptr;
    QLineEdit* m_search = nullptr;
    QComboBox* m_state = nullptr;
    QComboBox* m_variety = nullptr;
    QComboBox* m_medium = nullptr;
    QComboBox* m_trial = nullptr;
    TrayListModel* m_model = nullptr;
    QTableView* m_table = nullptr;
    QPushButton* m_labels = nullptr;
    QLabel* m_empty = nullptr;
    QLabel* m_damaged = nullptr;
    TraySheetView* m_sheet = nullptr;
    QTimer* m_typingPause = nullptr; // without an interval the list is read at each key
    TrayFilter m_shown;
    TrayCounts m_counts;
    Aside m_counting;
    bool m_isListStale = true;
};

} // namespace plumule::ui
