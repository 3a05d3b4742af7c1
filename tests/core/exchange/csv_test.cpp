#include "core/exchange/csv.h"

#include <filesystem>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

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

} // namespace
} // namespace plumule
