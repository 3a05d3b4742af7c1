#include "core/exchange/tray_import.h"

#include "core/base/bounds_reason.h"
#include "core/exchange/row_fault.h"
#include "tests/core/exchange/tray_preview.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const std::string kHeader = "code,variety,medium,sown,seed_g,harvested,net_g,trial,block,rack,"
                            "shelf,place,seed_lot,residue_g,height_mm,note\n";

// The faults of one row behind the full header.
std::vector<Error> faultsOf(const std::string& row, const KnownNames& known = {})
{
    return previewOf(kHeader + row + "\n", known).faults;
}

TEST(TrayImport, ReadsAFullRow)
{
    const ImportPreview preview = previewOf(
        kHeader + "RD001,\"Radish, rose\",Coir mix,2026-03-02,30,2026-03-11,289.5,T1,2,A,3,4,L7,"
                  "1120,84.5,Even all over\n");
    EXPECT_THAT(preview.faults, IsEmpty());
    ASSERT_EQ(preview.trays.size(), 1U);
    const ImportedTray& tray = preview.trays.front();
    EXPECT_EQ(tray.line, 2);
    EXPECT_EQ(tray.code, "RD001");
    EXPECT_EQ(tray.variety, "Radish, rose");
    EXPECT_EQ(tray.sown, date(2026, 3, 2));
    EXPECT_EQ(tray.seed, grams(30));
    EXPECT_EQ(tray.harvested, date(2026, 3, 11));
    EXPECT_EQ(tray.net, grams(289.5));
    EXPECT_EQ(tray.trial, "T1");
    EXPECT_EQ(tray.block, 2);
    EXPECT_EQ(tray.place, 4);
    EXPECT_EQ(tray.residue, grams(1120));
    EXPECT_EQ(tray.height, millimetres(84.5));
    EXPECT_EQ(tray.note, "Even all over");
}

TEST(TrayImport, TakesEmptyCellsForMissingAndNeverForNothing)
{
    const ImportPreview preview =
        previewOf(kHeader + "RD001,Radish,Coir mix,2026-03-02,,,,,,,,,,,,\n");
    EXPECT_THAT(preview.faults, IsEmpty());
    const ImportedTray& tray = preview.trays.at(0);
    EXPECT_FALSE(tray.seed);
    EXPECT_FALSE(tray.harvested);
    EXPECT_FALSE(tray.net);
    EXPECT_FALSE(tray.block);
    EXPECT_FALSE(tray.residue);
    EXPECT_FALSE(tray.height);
}

TEST(TrayImport, NamesUnknownColumnsAndLeavesThemOut)
{
    const ImportPreview preview =
        previewOf("code,variety,medium,sown,seed_g,harvested,net_g,Colour,smell\n"
                  "RD001,Radish,Coir mix,2026-03-02,30,,,red,none\n");
    EXPECT_THAT(preview.unknownColumns, ElementsAre("Colour", "smell"));
    EXPECT_TRUE(preview.isClean());
    EXPECT_EQ(preview.trays.size(), 1U);
}

TEST(TrayImport, FaultsEachMissingNeededColumn)
{
    const ImportPreview preview = previewOf("code,variety,sown,seed_g,harvested\nRD001,a,b,c,d\n");
    ASSERT_EQ(preview.faults.size(), 2U);
    EXPECT_EQ(preview.faults[0],
              faultAt("", 1, ErrorKind::Missing, ExchangeReason::ColumnMissing, "medium").value());
    EXPECT_EQ(preview.faults[1],
              faultAt("", 1, ErrorKind::Missing, ExchangeReason::ColumnMissing, "net_g").value());
}

struct FaultCase
{
    const char* row;
    Reason reason;
    std::vector<std::string> values;
};

const FaultCase kFaults[] = {
    {",Radish,Coir,2026-03-02,,,,,,,,,,,,", ExchangeReason::CellMissing, {"code"}},
    {"RD1,,Coir,2026-03-02,,,,,,,,,,,,", ExchangeReason::CellMissing, {"variety"}},
    {"RD1,Radish,,2026-03-02,,,,,,,,,,,,", ExchangeReason::CellMissing, {"medium"}},
    {"RD1,Radish,Coir,,,,,,,,,,,,,", ExchangeReason::CellMissing, {"sown"}},
    {"RD1,Radish,Coir,2 March,,,,,,,,,,,,", ExchangeReason::CellForm, {"sown", "2 March"}},
    {"RD1,Radish,Coir,02/03/2026,,,,,,,,,,,,",
     ExchangeReason::DayAmbiguous,
     {"sown", "02/03/2026"}},
    {"RD1,Radish,Coir,1066-03-02,,,,,,,,,,,,", BoundsReason::Day, {"1066-03-02"}},
    {"RD1,Radish,Coir,2026-03-02,0.0004,,,,,,,,,,,",
     ExchangeReason::CellTooFine,
     {"seed_g", "0.0004", "0.001"}},
    {"RD1,Radish,Coir,2026-02-30,,,,,,,,,,,,", ExchangeReason::CellForm, {"sown", "2026-02-30"}},
    {"RD1,Radish,Coir,2026-03-02,30 g,,,,,,,,,,,", ExchangeReason::CellForm, {"seed_g", "30 g"}},
    {"RD1,Radish,Coir,2026-03-02,0,,,,,,,,,,,", ExchangeReason::CellForm, {"seed_g", "0"}},
    {"RD1,Radish,Coir,2026-03-02,1.2.3,,,,,,,,,,,", ExchangeReason::CellForm, {"seed_g", "1.2.3"}},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-01,280,,,,,,,,,",
     ExchangeReason::HarvestBeforeSowing,
     {"2026-03-01"}},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-11,,,,,,,,,,", ExchangeReason::CellMissing, {"net_g"}},
    {"RD1,Radish,Coir,2026-03-02,,,280,,,,,,,,,", ExchangeReason::CellMissing, {"harvested"}},
    {"RD1,Radish,Coir,2026-03-02,,,,,,,,,,900,,", ExchangeReason::CellMissing, {"harvested"}},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-11,-3,,,,,,,,,",
     ExchangeReason::CellForm,
     {"net_g", "-3"}},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-11,50001,,,,,,,,,",
     ExchangeReason::CellForm,
     {"net_g", "50001"}},
    {"RD1,Radish,Coir,2026-03-02,,,,T1,0,,,,,,,", ExchangeReason::CellForm, {"block", "0"}},
    {"RD1,Radish,Coir,2026-03-02,,,,T1,1.5,,,,,,,", ExchangeReason::CellForm, {"block", "1.5"}},
    {"RD1,Radish,Coir,2026-03-02,,,,,,A,1,,,,,", ExchangeReason::CellMissing, {"place"}},
    {"RD1,Radish,Coir,2026-03-02,,,,,,,1,2,,,,", ExchangeReason::CellMissing, {"rack"}},
    {"RD1,Radish,Coir,2026-03-02,,,,,,A,1,101,,,,", ExchangeReason::CellForm, {"place", "101"}},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-11,280,,,,,,,,1001,",
     ExchangeReason::CellForm,
     {"height_mm", "1001"}},
};

TEST(TrayImport, FaultsABadCellByItsLineAndColumn)
{
    for (const FaultCase& expected : kFaults) {
        const auto faults = faultsOf(expected.row);
        ASSERT_EQ(faults.size(), 1U) << expected.row;
        EXPECT_EQ(faults[0].reason, expected.reason) << expected.row;
        EXPECT_EQ(faults[0].values, expected.values) << expected.row;
        EXPECT_EQ(faults[0].row, (RowAt{"", 2})) << expected.row;
    }
}

TEST(TrayImport, FaultsACodeUsedTwiceInTheFileOrTheJournal)
{
    KnownNames known;
    known.codes = {"RD001"};
    const ImportPreview preview = previewOf(kHeader + "rd001 ,Radish,Coir,2026-03-02,,,,,,,,,,,,\n"
                                                      "RD002,Radish,Coir,2026-03-02,,,,,,,,,,,,\n"
                                                      "Rd002,Radish,Felt,2026-03-02,,,,,,,,,,,,\n",
                                            known);
    ASSERT_EQ(preview.faults.size(), 2U);
    EXPECT_EQ(preview.faults[0],
              faultAt("", 2, ErrorKind::Duplicate, ExchangeReason::CodeTaken, "rd001").value());
    EXPECT_EQ(preview.faults[1],
              faultAt("", 4, ErrorKind::Duplicate, ExchangeReason::CodeTaken, "Rd002").value());
}

TEST(TrayImport, HoldsBackARowThatStandsTwice)
{
    const ImportPreview preview = previewOf(kHeader + "RD002,Radish,Coir,2026-03-02,,,,,,,,,,,,\n"
                                                      "RD003,Radish,Coir,2026-03-02,,,,,,,,,,,,\n"
                                                      "rd002,radish,Coir,2026-03-02,,,,,,,,,,,,\n");
    EXPECT_TRUE(preview.isClean());
    EXPECT_EQ(preview.rows, 2);
    EXPECT_EQ(preview.trays.size(), 2U);
    EXPECT_THAT(preview.held, ElementsAre(HeldRow{4, 2}));
}

TEST(TrayImport, FaultsAPlaceWhereAnotherTrayGrows)
{
    KnownNames known;
    known.places = {"A/1/1", "A/1/2"};
    known.taken = {"A/1/1"};
    const ImportPreview preview =
        previewOf(kHeader + "RD1,Radish,Coir,2026-03-02,,,,,,A,1,1,,,,\n"
                            "RD2,Radish,Coir,2026-03-02,,,,,,A,1,2,,,,\n"
                            "RD3,Radish,Coir,2026-03-02,,,,,,A,1,2,,,,\n"
                            "RD4,Radish,Coir,2026-03-02,,2026-03-11,280,,,A,1,1,,,,\n",
                  known);
    ASSERT_EQ(preview.faults.size(), 2U);
    EXPECT_EQ(preview.faults[0],
              faultAt("", 2, ErrorKind::Conflict, ExchangeReason::PlaceTaken, "A/1/1").value());
    EXPECT_EQ(preview.faults[1],
              faultAt("", 4, ErrorKind::Conflict, ExchangeReason::PlaceTaken, "A/1/2").value());
}

TEST(TrayImport, ListsWhatWouldBeMadeOnceEach)
{
    KnownNames known;
    known.varieties = {"Radish"};
    known.media = {"Coir mix"};
    known.places = {"A/1/1"};
    const ImportPreview preview =
        previewOf(kHeader + "RD1,radish,COIR MIX,2026-03-02,,,,T1,1,A,1,3,L1,,,\n"
                            "PE1,Pea,Felt,2026-03-02,,,,T1,1,B,9,1,L1,,,\n"
                            "PE2,pea,felt,2026-03-02,,,,t1,2,,,,L1,,,\n",
                  known);
    EXPECT_THAT(preview.faults, IsEmpty());
    EXPECT_THAT(preview.newVarieties, ElementsAre("Pea"));
    EXPECT_THAT(preview.newMedia, ElementsAre("Felt"));
    EXPECT_THAT(preview.newTrials, ElementsAre("T1"));
    EXPECT_THAT(preview.newSeedLots, ElementsAre("radish/L1", "Pea/L1"));
    EXPECT_THAT(preview.newPlaces, ElementsAre("A/1/2", "A/1/3", "B/9/1"));
}

TEST(TrayImport, ReadsDecimalCommasOfASemicolonTable)
{
    const ImportPreview preview = previewOf(
        "code;variety;medium;sown;seed_g;harvested;net_g\nRD1;Radish;Coir;2026-03-02;30,5;;\n");
    EXPECT_THAT(preview.faults, IsEmpty());
    EXPECT_EQ(preview.trays.at(0).seed, grams(30.5));
}

TEST(TrayImport, NeverReadsAPointAsAGroupOfThousands)
{
    const ImportPreview preview =
        previewOf(kHeader + "RD1,Radish,Coir,2026-03-02,,2026-03-11,1.234,,,,,,,,,\n");
    EXPECT_EQ(preview.trays.at(0).net, grams(1.234));
}

TEST(TrayImport, FaultsACommaThatMayPartThousandsOrDecimalsWithItsRow)
{
    const auto faults = faultsOf("RD1,Radish,Coir,2026-03-02,,2026-03-11,\"1,234\",,,,,,,,,");
    ASSERT_EQ(faults.size(), 1U);
    EXPECT_EQ(faults.front().kind, ErrorKind::Ambiguous);
    EXPECT_TRUE(faults.front().is(ExchangeReason::CellAmbiguous));
    EXPECT_THAT(faults.front().values, ElementsAre("net_g", "1,234"));
    EXPECT_EQ(faults.front().row->number, 2);
}

std::string weightsOf(const std::string& first, const std::string& second,
                      const std::string& separator)
{
    std::string text = "code;variety;medium;sown;seed_g;harvested;net_g\n"
                       "RD1;Radish;Coir;2026-03-02;;2026-03-11;\"" +
                       first +
                       "\"\n"
                       "RD2;Radish;Coir;2026-03-02;;2026-03-11;\"" +
                       second + "\"\n";
    for (std::size_t at = text.find(';'); at != std::string::npos; at = text.find(';', at + 1)) {
        text.replace(at, 1, separator);
    }
    return text;
}

TEST(TrayImport, ReadsAColumnByTheOneNumberInItThatHasOneReading)
{
    const ImportPreview comma = previewOf(weightsOf("1.234", "331,5", ";"));
    EXPECT_THAT(comma.faults, IsEmpty());
    EXPECT_EQ(comma.trays.at(0).net, grams(1234));
    EXPECT_EQ(comma.trays.at(1).net, grams(331.5));
    const ImportPreview point = previewOf(weightsOf("1,234", "331.5", ","));
    EXPECT_THAT(point.faults, IsEmpty());
    EXPECT_EQ(point.trays.at(0).net, grams(1234));
    EXPECT_EQ(point.trays.at(1).net, grams(331.5));
}

TEST(TrayImport, FaultsAPointThatMayPartThousandsInATablePartedBySemicolons)
{
    const ImportPreview preview = previewOf(weightsOf("1.234", "331", ";"));
    ASSERT_EQ(preview.faults.size(), 1U);
    EXPECT_TRUE(preview.faults.front().is(ExchangeReason::CellAmbiguous));
    EXPECT_THAT(preview.faults.front().values, ElementsAre("net_g", "1.234"));
    EXPECT_EQ(preview.faults.front().row->number, 2);
}

} // namespace
} // namespace plumule
