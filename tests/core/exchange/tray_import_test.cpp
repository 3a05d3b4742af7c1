#include "core/exchange/tray_import.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const std::string kHeader = "code,variety,medium,sown,seed_g,harvested,net_g,trial,block,rack,"
                            "shelf,place,seed_lot,residue_g,height_mm,note\n";

ImportPreview previewOfText(const std::string& text, const KnownNames& known = {})
{
    const auto table = csvFrom(text);
    EXPECT_TRUE(table) << text;
    return table ? previewOf(*table, known) : ImportPreview{};
}

// The faults of one row behind the full header, as "column kind".
std::vector<std::pair<std::string, ErrorKind>> faultsOf(const std::string& row,
                                                        const KnownNames& known = {})
{
    std::vector<std::pair<std::string, ErrorKind>> faults;
    for (const Error& fault : previewOfText(kHeader + row + "\n", known).faults) {
        faults.emplace_back(fault.subject, fault.kind);
    }
    return faults;
}

TEST(TrayImport, ReadsAFullRow)
{
    const ImportPreview preview = previewOfText(
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
        previewOfText(kHeader + "RD001,Radish,Coir mix,2026-03-02,,,,,,,,,,,,\n");
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
        previewOfText("code,variety,medium,sown,seed_g,harvested,net_g,Colour,smell\n"
                      "RD001,Radish,Coir mix,2026-03-02,30,,,red,none\n");
    EXPECT_THAT(preview.unknownColumns, ElementsAre("Colour", "smell"));
    EXPECT_TRUE(preview.isClean());
    EXPECT_EQ(preview.trays.size(), 1U);
}

TEST(TrayImport, FaultsEachMissingNeededColumn)
{
    const ImportPreview preview =
        previewOfText("code,variety,sown,seed_g,harvested\nRD001,a,b,c,d\n");
    ASSERT_EQ(preview.faults.size(), 2U);
    EXPECT_EQ(preview.faults[0].subject, "line 1: medium");
    EXPECT_EQ(preview.faults[1].subject, "line 1: net_g");
    EXPECT_EQ(preview.faults[0].kind, ErrorKind::Missing);
}

struct FaultCase
{
    const char* row;
    const char* subject;
    ErrorKind kind;
};

constexpr FaultCase kFaults[] = {
    {",Radish,Coir,2026-03-02,,,,,,,,,,,,", "line 2: code", ErrorKind::Missing},
    {"RD1,,Coir,2026-03-02,,,,,,,,,,,,", "line 2: variety", ErrorKind::Missing},
    {"RD1,Radish,,2026-03-02,,,,,,,,,,,,", "line 2: medium", ErrorKind::Missing},
    {"RD1,Radish,Coir,,,,,,,,,,,,,", "line 2: sown", ErrorKind::Missing},
    {"RD1,Radish,Coir,02.03.2026,,,,,,,,,,,,", "line 2: sown", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-02-30,,,,,,,,,,,,", "line 2: sown", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,30 g,,,,,,,,,,,", "line 2: seed_g", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,0,,,,,,,,,,,", "line 2: seed_g", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,1.2.3,,,,,,,,,,,", "line 2: seed_g", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-01,280,,,,,,,,,", "line 2: harvested",
     ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-11,,,,,,,,,,", "line 2: net_g", ErrorKind::Missing},
    {"RD1,Radish,Coir,2026-03-02,,,280,,,,,,,,,", "line 2: harvested", ErrorKind::Missing},
    {"RD1,Radish,Coir,2026-03-02,,,,,,,,,,900,,", "line 2: harvested", ErrorKind::Missing},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-11,-3,,,,,,,,,", "line 2: net_g", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-11,50001,,,,,,,,,", "line 2: net_g", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,,,,T1,0,,,,,,,", "line 2: block", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,,,,T1,1.5,,,,,,,", "line 2: block", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,,,,,,A,1,,,,,", "line 2: place", ErrorKind::Missing},
    {"RD1,Radish,Coir,2026-03-02,,,,,,,1,2,,,,", "line 2: rack", ErrorKind::Missing},
    {"RD1,Radish,Coir,2026-03-02,,,,,,A,1,101,,,,", "line 2: place", ErrorKind::Invalid},
    {"RD1,Radish,Coir,2026-03-02,,2026-03-11,280,,,,,,,,1001,", "line 2: height_mm",
     ErrorKind::Invalid},
};

TEST(TrayImport, FaultsABadCellByItsLineAndColumn)
{
    for (const FaultCase& expected : kFaults) {
        EXPECT_THAT(faultsOf(expected.row),
                    ElementsAre(std::pair<std::string, ErrorKind>(expected.subject, expected.kind)))
            << expected.row;
    }
}

TEST(TrayImport, FaultsACodeUsedTwiceInTheFileOrTheJournal)
{
    KnownNames known;
    known.codes = {"RD001"};
    const ImportPreview preview =
        previewOfText(kHeader + "rd001 ,Radish,Coir,2026-03-02,,,,,,,,,,,,\n"
                                "RD002,Radish,Coir,2026-03-02,,,,,,,,,,,,\n"
                                "Rd002,Radish,Coir,2026-03-02,,,,,,,,,,,,\n",
                      known);
    ASSERT_EQ(preview.faults.size(), 2U);
    EXPECT_EQ(preview.faults[0], (Error{ErrorKind::Duplicate, "line 2: code", "rd001"}));
    EXPECT_EQ(preview.faults[1], (Error{ErrorKind::Duplicate, "line 4: code", "Rd002"}));
}

TEST(TrayImport, FaultsAPlaceWhereAnotherTrayGrows)
{
    KnownNames known;
    known.places = {"A/1/1", "A/1/2"};
    known.taken = {"A/1/1"};
    const ImportPreview preview =
        previewOfText(kHeader + "RD1,Radish,Coir,2026-03-02,,,,,,A,1,1,,,,\n"
                                "RD2,Radish,Coir,2026-03-02,,,,,,A,1,2,,,,\n"
                                "RD3,Radish,Coir,2026-03-02,,,,,,A,1,2,,,,\n"
                                "RD4,Radish,Coir,2026-03-02,,2026-03-11,280,,,A,1,1,,,,\n",
                      known);
    ASSERT_EQ(preview.faults.size(), 2U);
    EXPECT_EQ(preview.faults[0], (Error{ErrorKind::Conflict, "line 2: place", "A/1/1"}));
    EXPECT_EQ(preview.faults[1], (Error{ErrorKind::Conflict, "line 4: place", "A/1/2"}));
}

TEST(TrayImport, ListsWhatWouldBeMadeOnceEach)
{
    KnownNames known;
    known.varieties = {"Radish"};
    known.media = {"Coir mix"};
    known.places = {"A/1/1"};
    const ImportPreview preview =
        previewOfText(kHeader + "RD1,radish,COIR MIX,2026-03-02,,,,T1,1,A,1,3,L1,,,\n"
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
    const ImportPreview preview = previewOfText(
        "code;variety;medium;sown;seed_g;harvested;net_g\nRD1;Radish;Coir;2026-03-02;30,5;;\n");
    EXPECT_THAT(preview.faults, IsEmpty());
    EXPECT_EQ(preview.trays.at(0).seed, grams(30.5));
}

TEST(TrayImport, NeverReadsAPointAsAGroupOfThousands)
{
    const ImportPreview preview =
        previewOfText(kHeader + "RD1,Radish,Coir,2026-03-02,,2026-03-11,1.234,,,,,,,,,\n");
    EXPECT_EQ(preview.trays.at(0).net, grams(1.234));
}

} // namespace
} // namespace plumule
