#pragma once

#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QComboBox;
class QLineEdit;
class QTableView;

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
    void reloadList();
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
};

} // namespace plumule::ui
