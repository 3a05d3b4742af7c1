#pragma once

#include "core/journal/merge/coming_back.h"
#include "core/merge/merge_plan.h"
#include "core/merge/merge_row.h"
#include "ui/merge/met_words.h"
#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

#include <memory>

namespace plumule::ui {

class Card;
class LoneKey;
class MetRow;

// A copy that was taken along comes back: what met stands side by side, and nothing is written
// before all of it is chosen. Then a backup goes first, and all of it is one act.
class MergeDialog : public FormDialog
{
    Q_OBJECT

public:
    MergeDialog(Journal& journal, const Services& services, std::unique_ptr<ComingBack> coming,
                QWidget* parent = nullptr);

    // Asks for the copy's file, looks at it, and shows the dialog on it.
    static void begin(Journal& journal, const Services& services, QWidget* parent);

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void buildHead();
    void buildButtons();
    // Plans anew by what was chosen, and shows that.
    void showPlan();
    void showHeadline();
    void showRows();
    void showActs();
    void showChecks();
    void choose(const std::vector<Family>& families, Side side);
    void chooseAll(Side side);
    void chooseByKey(int side);
    [[nodiscard]] MetRow* rowInFocus() const;
    void beginAtUnchosen();
    void backUpFirst();
    void bringTogether(const BackupMade& first);

    Journal& m_journal;
    Services m_services;
    std::unique_ptr<ComingBack> m_coming;
    Choices m_choices;
    MergePlan m_plan;
    QLabel* m_headline = nullptr;
    QVBoxLayout* m_rowsLayout = nullptr;
    std::vector<MetRow*> m_rows;
    Card* m_acts = nullptr;
    Card* m_checks = nullptr;
    QPushButton* m_together = nullptr;
    LoneKey* m_key = nullptr;
};

} // namespace plumule::ui
