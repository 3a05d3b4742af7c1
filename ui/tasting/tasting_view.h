#pragma once

#include "core/journal/tasting/tasting_entries.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QComboBox;

namespace plumule::ui {

class PageStack;
class TastingAnswer;
class TastingEntry;

// The tastings of a trial: planned, served and scored blind, and once closed answered.
class TastingView : public QWidget
{
    Q_OBJECT

public:
    TastingView(Journal& journal, Services services, QWidget* parent = nullptr);

    void showTrial(TrialId trial);
    void reload();

private:
    QWidget* buildBar();
    QWidget* buildEmpty();
    void wireSignals();
    void reloadPanels();
    void showPanel();
    void showOpen(const Panel& panel);
    void showClosed(const Panel& panel);
    void plan();
    void change();
    void openDialog(const PanelDraft& draft);
    void writeSheets();
    void writePlating();
    void close();
    void remove();
    void saveTo(const QString& title, const QString& preset,
                std::function<Done(const QString&)> write);
    [[nodiscard]] const PanelRow* chosen() const;
    [[nodiscard]] UnitText units() const;

    Journal& m_journal;
    Services m_services;
    TrialId m_trial;
    PanelId m_panel;
    std::vector<PanelRow> m_panels;
    QWidget* m_bar = nullptr;
    QComboBox* m_choice = nullptr;
    QLabel* m_facts = nullptr;
    QPushButton* m_new = nullptr;
    QPushButton* m_change = nullptr;
    QPushButton* m_sheets = nullptr;
    QPushButton* m_plating = nullptr;
    QPushButton* m_close = nullptr;
    QPushButton* m_remove = nullptr;
    QPushButton* m_first = nullptr;
    PageStack* m_stack = nullptr;
    TastingEntry* m_entry = nullptr;
    TastingAnswer* m_answer = nullptr;
};

} // namespace plumule::ui
