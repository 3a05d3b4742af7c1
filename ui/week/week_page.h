#pragma once

#include "core/week/week.h"
#include "ui/page/aside.h"
#include "ui/page/page.h"

namespace plumule::ui {

class LoneKey;
class PageHead;
class ProposalCard;
class WeekTable;

// What comes in the next fourteen days, printed and as a calendar; repeating sowings are answered
// here.
class WeekPage : public Page
{
    Q_OBJECT

public:
    WeekPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    void begin() override;
    bool print() override;

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void buildHead();
    void wireSignals();
    void show(const Result<Week>& week);
    void pressKey(int key);
    void sow(RepeatId repeat, Date due);
    void skip(RepeatId repeat, Date due);
    void openSowing();
    void openRepeats();
    void saveCalendar();
    void offerSheet();
    void saveSheet();
    void printSheet();

    PageHead* m_head = nullptr;
    QPushButton* m_sheet = nullptr;
    QPushButton* m_sow = nullptr;
    QLabel* m_damaged = nullptr;
    QWidget* m_read = nullptr;
    QLabel* m_words = nullptr;
    WeekTable* m_table = nullptr;
    ProposalCard* m_proposals = nullptr;
    LoneKey* m_letter = nullptr;
    Week m_week;
    RoomLayout m_layout;
    Aside m_aside;
};

} // namespace plumule::ui
