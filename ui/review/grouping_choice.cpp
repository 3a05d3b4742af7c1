#include "ui/review/grouping_choice.h"

#include "ui/widget/choice_box.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class GroupingTr
{
    Q_DECLARE_TR_FUNCTIONS(Grouping)
};

} // namespace

QComboBox* groupingChoice()
{
    auto* box = new QComboBox;
    box->setObjectName("groups");
    box->setAccessibleName(GroupingTr::tr("Media in groups"));
    box->addItem(GroupingTr::tr("Each medium"));
    addChoice(*box, GroupingTr::tr("By form"), Grouping::Form);
    addChoice(*box, GroupingTr::tr("Nutrient-bearing and inert"), Grouping::Nutrients);
    addChoice(*box, GroupingTr::tr("Reusable and single-use"), Grouping::Reuse);
    addChoice(*box, GroupingTr::tr("Your own groups"), Grouping::Own);
    return box;
}

std::optional<Grouping> chosenGrouping(const QComboBox& box)
{
    return chosen<Grouping>(box);
}

} // namespace plumule::ui
