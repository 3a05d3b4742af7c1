#include "core/exchange/csv.h"

#include "core/exchange/exchange_reason.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <random>

namespace plumule {
namespace {

using ::testing::ElementsAre;

TEST(Csv, ReadsRowsAndTheLinesTheyBeginOn)
{
    const auto table = csvFrom("code,net_g\nRD001,289.5\n\nRD002,301\r\n");
    ASSERT_TRUE(table);
    EXPECT_THAT(table->header, ElementsAre("code", "net_g"));
    EXPECT_THAT(table->rows,
                ElementsAre(ElementsAre("RD001", "289.5"), ElementsAre("RD002", "301")));
    EXPECT_THAT(table->lines, ElementsAre(2, 4));
}

// RFC 4180, section 2, rules 5 to 7.
TEST(Csv, ReadsQuotedFieldsWithSeparatorsQuotesAndLineEnds)
{
    const auto table = csvFrom("code,note\nRD001,\"a, \"\"b\"\"\nc\"\nRD002,\"\"\n");
    ASSERT_TRUE(table);
    EXPECT_THAT(table->rows,
                ElementsAre(ElementsAre("RD001", "a, \"b\"\nc"), ElementsAre("RD002", "")));
    EXPECT_THAT(table->lines, ElementsAre(2, 4));
}

TEST(Csv, TakesTheSeparatorThatTheHeaderHasMost)
{
    EXPECT_THAT(csvFrom("code;net_g\nRD001;289,5\n")->rows,
                ElementsAre(ElementsAre("RD001", "289,5")));
    EXPECT_THAT(csvFrom("code\tnet_g\nRD001\t289,5\n")->rows,
                ElementsAre(ElementsAre("RD001", "289,5")));
    EXPECT_THAT(csvFrom("\"a;b;c\",d\n1,2\n")->header, ElementsAre("a;b;c", "d"));
}

TEST(Csv, SkipsAMarkAtTheStartAndBlanksAroundNames)
{
    const auto table = csvFrom("\xEF\xBB\xBF code , net_g\nRD001,1\n");
    ASSERT_TRUE(table);
    EXPECT_THAT(table->header, ElementsAre("code", "net_g"));
}

TEST(Csv, ReadsALastRowWithoutALineEnd)
{
    EXPECT_THAT(csvFrom("code,note\nRD001,")->rows, ElementsAre(ElementsAre("RD001", "")));
}

TEST(Csv, NamesTheLineThatIsWrong)
{
    const std::pair<const char*, int> kCases[] = {
        {"code,note\nRD001,\"open\nmore\n", 2},
        {"code,note\nRD001\n", 2},
        {"code,note\nRD001,a,b\n", 2},
        {"code,note\n\"a\nb\",1\nRD002\n", 4},
        {"code,note\nRD001,\"a\"b\n", 2},
        {"code,note\nRD001,a\"b\n", 2},
        {"code,code\n", 1},
        {"code,\n", 1},
        {"code,note\nRD001,ok\nRD002,\xE9t\xE9\n", 3},
        {"code,note\nRD001,\xC0\xAF\n", 2},
        {"code,note\nRD001,\xED\xA0\x80\n", 2},
    };
    for (const auto& [text, line] : kCases) {
        const auto table = csvFrom(text);
        ASSERT_FALSE(table) << text;
        EXPECT_EQ(table.error().kind, ErrorKind::Invalid) << text;
        EXPECT_EQ(table.error().row, (RowAt{"", line})) << text;
    }
}

TEST(Csv, TakesTextBeyondAscii)
{
    EXPECT_THAT(csvFrom("code,note\nRD001,Gr\xC3\xBC n \xE2\x9C\x93 \xF0\x9F\x8C\xB1\n")->rows,
                ElementsAre(ElementsAre("RD001", "Gr\xC3\xBC n \xE2\x9C\x93 \xF0\x9F\x8C\xB1")));
}

TEST(Csv, SaysThatAnEmptyFileHasTooFewLines)
{
    EXPECT_EQ(csvFrom("").error().kind, ErrorKind::TooFew);
    EXPECT_EQ(csvFrom("\n\n").error().kind, ErrorKind::TooFew);
}

TEST(Csv, WritesWhatItReads)
{
    const std::vector<std::string> fields = {"RD001",      "",        "a, b", "say \"yes\"",
                                             "two\nlines", " blank ", "a;b",  "\xC3\xBC"};
    std::vector<std::string> header;
    for (std::size_t i = 0; i < fields.size(); ++i) {
        header.push_back("c" + std::to_string(i));
    }
    const auto table = csvFrom(csvLine(header) + csvLine(fields));
    ASSERT_TRUE(table);
    EXPECT_EQ(table->rows.front(), fields);
    EXPECT_EQ(csvLine({"a", "b c"}), "a,b c\n");
}

TEST(Csv, SaysThatAFileCannotBeRead)
{
    EXPECT_EQ(textOfFile("/nowhere/at all.csv").error().kind, ErrorKind::Unreadable);
    EXPECT_EQ(textOfFile(std::filesystem::temp_directory_path().string()).error().kind,
              ErrorKind::Unreadable);
}

std::string anyField(std::mt19937& draw)
{
    static const std::string kPieces[] = {"a",  "7",    "\"", ",", ";", "\t",
                                          "\n", "\r\n", " ",  "é", "🌱"};
    std::string field;
    for (auto i = draw() % 6; i > 0; --i) {
        field += kPieces[draw() % std::size(kPieces)];
    }
    return field;
}

// Seed 4180: whatever stands in the cells, what is written is read back, cell for cell.
TEST(Csv, ReadsBackAnyCellsThatItWrites)
{
    std::mt19937 draw(4180);
    for (int round = 0; round < 400; ++round) {
        const std::size_t columns = 2 + draw() % 4;
        std::vector<std::string> header;
        for (std::size_t i = 0; i < columns; ++i) {
            header.push_back("column " + std::to_string(i));
        }
        std::string text = csvLine(header);
        std::vector<std::vector<std::string>> rows(draw() % 5);
        for (auto& row : rows) {
            for (std::size_t i = 0; i < columns; ++i) {
                row.push_back(anyField(draw));
            }
            text += csvLine(row);
        }
        const auto table = csvFrom(text);
        ASSERT_TRUE(table) << text;
        EXPECT_EQ(table->header, header);
        EXPECT_EQ(table->rows, rows) << text;
    }
}

// Seed 1: bytes of any kind are read or refused, and what is read is a table.
TEST(Csv, ReadsOrRefusesAnyBytes)
{
    std::mt19937 draw(1);
    int read = 0;
    for (int round = 0; round < 4000; ++round) {
        std::string text = draw() % 2 == 0 ? "a,b\n" : "";
        for (auto i = draw() % 30; i > 0; --i) {
            text +=
                draw() % 4 == 0 ? std::string(1, static_cast<char>(draw() % 256)) : anyField(draw);
        }
        const auto table = csvFrom(text);
        if (!table) {
            EXPECT_TRUE(table.error().reason.as<ExchangeReason>()) << text;
            continue;
        }
        ++read;
        ASSERT_EQ(table->lines.size(), table->rows.size());
        EXPECT_TRUE(std::is_sorted(table->lines.begin(), table->lines.end()));
        for (const auto& row : table->rows) {
            EXPECT_EQ(row.size(), table->header.size());
        }
    }
    EXPECT_GT(read, 100) << "nothing was looked at";
}

} // namespace
} // namespace plumule
