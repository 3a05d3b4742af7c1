#pragma once

#include "core/week/week.h"
#include "ui/text/text.h"
#include "ui/widget/widgets.h"

class QGridLayout;

namespace plumule::ui {

// What repeating sowings propose, beside one another where there is room: each is sown, or skipped.
class ProposalCard : public Card
{
    Q_OBJECT

public:
    explicit ProposalCard(QWidget* parent = nullptr);

    enum class Acts
    {
        Allowed,
        ReadOnly
    };
    void show(const std::vector<Proposal>& proposals, const UnitText& units, Date today, Acts acts);

Q_SIGNALS:
    void sowAsked(plumule::RepeatId repeat, plumule::Date due);
    void skipAsked(plumule::RepeatId repeat, plumule::Date due);
    void listAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* buildOne(const Proposal& proposal, int index);
    QWidget* buildButtons(const Proposal& proposal, int index);
    void arrange();

    QGridLayout* m_grid = nullptr;
    QLabel* m_none = nullptr;
    std::vector<QWidget*> m_parts;
    UnitText m_units;
    Date m_today;
    Acts m_acts = Acts::Allowed;
    int m_columns = 0;
};

} // namespace plumule::ui
