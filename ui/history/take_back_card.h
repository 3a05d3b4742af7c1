#pragma once

#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QGridLayout;

namespace plumule::ui {

// One act of the history: what taking it back comes to, or why it stays; and the way to do it.
class TakeBackCard : public Card
{
    Q_OBJECT

public:
    TakeBackCard(Journal& journal, const Services& services, QWidget* parent = nullptr);

    // Nothing chosen: says how the list is used.
    void showNothing();
    // Amounts in these units.
    void show(const HistoryEntry& act, const UnitText& units);
    // Puts the focus on what can be done with it, so that one more Enter does it.
    void begin();

private:
    void act();
    void offer(const HistoryEntry& act, const UnitText& units);
    void showEffects(const HistoryEntry& act, const UnitText& units,
                     const Result<std::vector<RowEffect>>& effects);
    void explain(const QString& title, const QString& words);
    void addValues(const std::vector<RowEffect>& effects, const UnitText& units);

    Journal& m_journal;
    Services m_services;
    QLabel* m_deed = nullptr;
    QWidget* m_values = nullptr;
    QGridLayout* m_grid = nullptr;
    QLabel* m_words = nullptr;
    QPushButton* m_act = nullptr;
    std::optional<HistoryEntry> m_shown;
    bool m_isRedo = false;
};

} // namespace plumule::ui
