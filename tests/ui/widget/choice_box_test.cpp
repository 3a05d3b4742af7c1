#include "core/medium/medium.h"
#include "ui/widget/check_list.h"
#include "ui/widget/choice_box.h"

#include <QSignalSpy>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

void fillMedia(QComboBox& box, std::initializer_list<qint64> ids)
{
    refill(box, [&] {
        box.addItem("All media");
        for (const qint64 id : ids) {
            addChoice(box, QString::number(id), MediumId{id});
        }
    });
}

TEST(ChoiceBox, ARowWithoutAValueStandsForNone)
{
    QComboBox box;
    EXPECT_EQ(chosen<MediumId>(box), std::nullopt) << "an empty list";
    fillMedia(box, {7, 9});
    EXPECT_EQ(chosen<MediumId>(box), std::nullopt);
    EXPECT_EQ(chosenOf<MediumId>(box), MediumId());
    choose(box, MediumId{9});
    EXPECT_EQ(chosen<MediumId>(box), MediumId{9});
    choose(box, std::optional<MediumId>());
    EXPECT_EQ(box.currentText(), "All media");
    choose(box, MediumId{9});
    choose(box, MediumId{12});
    EXPECT_EQ(box.currentText(), "All media") << "what is not in the list";
}

TEST(ChoiceBox, HoldsEnumerationsAndTruths)
{
    QComboBox forms;
    addChoice(forms, "mat", MediumForm::Mat);
    addChoice(forms, "mesh", MediumForm::Mesh);
    choose(forms, MediumForm::Mesh);
    EXPECT_EQ(chosenOf<MediumForm>(forms), MediumForm::Mesh);
    QComboBox truths;
    addChoice(truths, "by protocol", false);
    addChoice(truths, "both ways", true);
    EXPECT_EQ(chosen<bool>(truths), false);
    choose(truths, true);
    EXPECT_EQ(truths.currentText(), "both ways");
}

TEST(ChoiceBox, KeepsWhatIsChosenWhileItIsFilledAnewAndSaysNothing)
{
    QComboBox box;
    fillMedia(box, {7, 9});
    choose(box, MediumId{9});
    const QSignalSpy changed(&box, &QComboBox::currentIndexChanged);
    fillMedia(box, {3, 5, 7, 9});
    EXPECT_EQ(chosen<MediumId>(box), MediumId{9});
    fillMedia(box, {3, 5});
    EXPECT_EQ(chosen<MediumId>(box), std::nullopt);
    EXPECT_EQ(changed.count(), 0);
}

TEST(CheckList, GivesTheIdsThatAreTickedInOrder)
{
    CheckList list("places");
    list.addCheck("A1", 11);
    list.addCheck("A2", 12, true);
    list.addCheck("A3", 13, true);
    EXPECT_EQ(list.objectName(), "places");
    EXPECT_EQ(list.checked<MediumId>(), (std::vector<MediumId>{MediumId{12}, MediumId{13}}));
    list.checkFirst(1);
    EXPECT_EQ(list.checked<MediumId>(), (std::vector<MediumId>{MediumId{11}}));
    list.checkFirst(0);
    EXPECT_TRUE(list.checked<MediumId>().empty());
    list.checkFirst(9);
    EXPECT_EQ(list.checked<MediumId>().size(), 3U);
}

} // namespace
} // namespace plumule::ui
