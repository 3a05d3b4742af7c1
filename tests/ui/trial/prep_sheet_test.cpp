#include "core/journal/trial/trial_entries.h"
#include "tests/ui/support/growing.h"
#include "ui/trial/prep_sheet.h"

#include <QFile>

namespace plumule::ui {
namespace {

class PrepSheetTest : public GrowingTest
{
protected:
    PrepSheet sheetOfSample()
    {
        useSample();
        auto draft = journal->trials().newDraft();
        EXPECT_TRUE(draft.has_value());
        draft->trial.name = "Which bed?";
        const auto sheet = prepSheetOf(*journal, *draft);
        EXPECT_TRUE(sheet.has_value());
        return sheet.value_or(PrepSheet());
    }
    QByteArray written(const PrepSheet& sheet)
    {
        const QString path = folder.path() + "/prepare.pdf";
        EXPECT_TRUE(writePrepSheet(sheet, path));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }
    static QString allOf(const std::vector<PrepStep>& steps)
    {
        QStringList lines;
        for (const PrepStep& step : steps) {
            lines << step.when + '|' + step.what;
        }
        return lines.join('\n');
    }
};

TEST_F(PrepSheetTest, HasOneOrTwoPages)
{
    const QByteArray pdf = written(sheetOfSample());
    EXPECT_TRUE(pdf.startsWith("%PDF"));
    const auto pages = pdf.count("/Type /Page\n");
    EXPECT_GE(pages, 1);
    EXPECT_LE(pages, 2);
    EXPECT_TRUE(pdf.contains("/MediaBox [0 0 595"));
}

TEST_F(PrepSheetTest, TakesLetterPaperWhereUnitsAreUsCustomary)
{
    PrepSheet sheet = sheetOfSample();
    sheet.units = UnitText(UnitSystem::UsCustomary);
    EXPECT_TRUE(written(sheet).contains("/MediaBox [0 0 612"));
}

TEST_F(PrepSheetTest, StepsFollowTheProtocolFromSowingToTheCut)
{
    PrepSheet sheet = sheetOfSample();
    sheet.draft.plan.sowOn = date(2026, 3, 15);
    sheet.draft.plan.sowMinute = 480;
    sheet.draft.plan.startsWithSoak = false;
    sheet.protocol.stages.clear();
    for (const auto& [stage, days] : {std::pair{Stage::Soak, 1}, std::pair{Stage::UnderWeight, 2},
                                      std::pair{Stage::Blackout, 2}, std::pair{Stage::Light, 6}}) {
        ProtocolStage each;
        each.stage = stage;
        each.lengthMinutes = days * kMinutesPerDay;
        sheet.protocol.stages.push_back(each);
    }
    const auto steps = prepSteps(sheet);
    EXPECT_EQ(steps.back().when, "Wed 25 Mar, 08:00") << "ten days after sowing";
    EXPECT_FALSE(allOf(steps).contains("soak"));
    EXPECT_TRUE(allOf(steps).contains("Tue 17 Mar, 08:00|Due into blackout."));
    sheet.draft.plan.startsWithSoak = true;
    const auto soaked = prepSteps(sheet);
    EXPECT_TRUE(allOf(soaked).contains("Sun 15 Mar, 08:00|Put the seed to soak"));
    EXPECT_EQ(soaked.back().when, "Thu 26 Mar, 08:00") << "the soak comes first";
}

TEST_F(PrepSheetTest, CautionsStandWhereTheyBelong)
{
    PrepSheet sheet = sheetOfSample();
    for (auto& [id, medium] : sheet.media) {
        medium.isReusable = false;
    }
    for (ProtocolStage& stage : sheet.protocol.stages) {
        stage.water = WaterKind::Plain;
    }
    EXPECT_FALSE(prepCautions(sheet).join(' ').contains("chlorine"));
    EXPECT_FALSE(prepCautions(sheet).join(' ').contains("pH adjusters"));
    sheet.media[sheet.draft.treatments.front().medium].isReusable = true;
    sheet.protocol.stages.back().water = WaterKind::Nutrient;
    EXPECT_TRUE(prepCautions(sheet).join(' ').contains("never mix chlorine with acids"));
    EXPECT_TRUE(prepCautions(sheet).join(' ').contains("pH adjusters"));
}

TEST_F(PrepSheetTest, SaysSoWhereTheFileCantBeWritten)
{
    EXPECT_FALSE(writePrepSheet(sheetOfSample(), folder.path() + "/none/prepare.pdf"));
}

} // namespace
} // namespace plumule::ui
