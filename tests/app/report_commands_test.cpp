#include "tests/app/program_run.h"

#include <QFile>
#include <QXmlStreamReader>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

// The sample room is written once and only read.
class ReportCommands : public ProgramTest
{
protected:
    static void SetUpTestSuite()
    {
        s_folder = new QTemporaryDir;
        ASSERT_EQ(run({"sample", sample()}).exitCode, 0);
    }
    static void TearDownTestSuite()
    {
        delete s_folder;
        s_folder = nullptr;
    }
    static QString sample() { return s_folder->filePath("sample.plumule"); }
    static QByteArray bytesOf(const QString& name)
    {
        QFile file(name);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name.toStdString();
        return file.readAll();
    }
    static void expectWellFormed(const QByteArray& html)
    {
        QXmlStreamReader reader(html);
        while (!reader.atEnd()) {
            reader.readNext();
        }
        EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
    }

private:
    static QTemporaryDir* s_folder;
};

QTemporaryDir* ReportCommands::s_folder = nullptr;

TEST_F(ReportCommands, PrintATrialAsDocumented)
{
    const Answer answer = run({"trial", sample(), "t6", "--json"});
    ASSERT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    const ordered_json json = answer.json();
    EXPECT_EQ(keysOf(json), "code name question state design draw_number trays lacks yield "
                            "headline comparison");
    EXPECT_EQ(json.at("code"), "T6");
    EXPECT_EQ(json.at("state"), "ended");
    ASSERT_EQ(json.at("trays").size(), 16U);
    for (const auto& tray : json.at("trays")) {
        EXPECT_EQ(keysOf(tray), "code block position medium feeding place state yield_g residue_g");
    }
    const ordered_json& yield = json.at("yield");
    EXPECT_EQ(keysOf(yield), "n mean_g spread_g spread_df variation_percent margin_g "
                             "tukey_difference_g terms means pairs");
    EXPECT_NEAR(yield.at("variation_percent").get<double>(),
                100 * yield.at("spread_g").get<double>() / yield.at("mean_g").get<double>(), 1e-9);
    ASSERT_EQ(yield.at("means").size(), 4U);
    ASSERT_EQ(yield.at("pairs").size(), 6U);
    for (const auto& term : yield.at("terms")) {
        EXPECT_EQ(keysOf(term), "term place f df1 df2 p");
    }
    for (const auto& mean : yield.at("means")) {
        EXPECT_EQ(keysOf(mean), "medium n mean_g se_g lower_g upper_g");
    }
    for (const auto& pair : yield.at("pairs")) {
        EXPECT_EQ(keysOf(pair), "a b difference_g lower_g upper_g p_tukey verdict");
    }
    const ordered_json& comparison = json.at("comparison");
    EXPECT_EQ(comparison.at("scope"), "these_trials");
    EXPECT_EQ(comparison.at("trials"), 1);
    EXPECT_EQ(comparison.at("pairs").size(), 6U);
    ASSERT_EQ(comparison.at("by_trial").size(), 1U);
    EXPECT_EQ(comparison.at("by_trial")[0].at("trial"), "T6");
}

TEST_F(ReportCommands, ATrialsHeadlineNamesItAndSaysWhatTheWordsSay)
{
    const ordered_json json = run({"trial", sample(), "T7", "--json"}).json();
    const auto headline = json.at("headline").get<std::string>();
    EXPECT_TRUE(headline.starts_with("In trial T7 ")) << headline;
    const Answer words = run({"trial", sample(), "T7"});
    EXPECT_TRUE(words.out.contains(QString::fromStdString(headline)))
        << headline << " is not what is said in words: " << words.out.toStdString();
    int named = 0;
    for (const auto& mean : json.at("yield").at("means")) {
        named += headline.find(mean.at("medium").get<std::string>()) != std::string::npos ? 1 : 0;
    }
    EXPECT_EQ(named, 2) << headline;
    const ordered_json open = run({"trial", sample(), "T6", "--json"}).json();
    EXPECT_TRUE(open.at("headline").get<std::string>().starts_with("T6: ")) << open.at("headline");
}

TEST_F(ReportCommands, SayWhatAGrowingTrialLacks)
{
    const ordered_json json = run({"trial", sample(), "T9", "--json"}).json();
    EXPECT_EQ(json.at("state"), "growing");
    EXPECT_EQ(json.at("design"), "randomized_blocks");
    ASSERT_FALSE(json.at("lacks").empty());
    for (const auto& lack : json.at("lacks")) {
        EXPECT_EQ(keysOf(lack), "code what date");
    }
    const Answer words = run({"trial", sample(), "T9"});
    EXPECT_EQ(words.exitCode, 0);
    EXPECT_TRUE(words.out.contains("T9 ")) << words.out.toStdString();
    EXPECT_TRUE(words.out.contains("no height on"));
}

TEST_F(ReportCommands, WriteATrialAsPagesAndAsHtml)
{
    const Answer pdf = run({"trial", sample(), "T3", "--pdf", path("t3.pdf")});
    EXPECT_EQ(pdf.exitCode, 0) << pdf.error.toStdString();
    EXPECT_TRUE(bytesOf(path("t3.pdf")).startsWith("%PDF"));
    EXPECT_EQ(run({"trial", sample(), "T3", "--html", path("t3.html")}).exitCode, 0);
    expectWellFormed(bytesOf(path("t3.html")));
}

TEST_F(ReportCommands, WriteASeasonAsPagesAndAsHtml)
{
    const Answer pdf = run({"season", sample(), "--pdf", path("season.pdf")});
    EXPECT_EQ(pdf.exitCode, 0) << pdf.error.toStdString();
    const QByteArray pages = bytesOf(path("season.pdf"));
    EXPECT_TRUE(pages.contains("/MediaBox [0 0 595"));
    EXPECT_FALSE(pages.contains("/Subtype /Image")) << "charts are vectors";
    EXPECT_EQ(
        run({"season", sample(), "--variety", "Mustard", "--html", path("season.html")}).exitCode,
        0);
    const QByteArray html = bytesOf(path("season.html"));
    expectWellFormed(html);
    EXPECT_TRUE(html.contains("Only Mustard."));
    EXPECT_FALSE(html.contains("<script"));
}

TEST_F(ReportCommands, RefuseBadCalls)
{
    expectBadCall({"trial", sample()}, "CODE is missing");
    expectBadCall({"trial", sample(), "T4711"}, "No trial has the code");
    expectBadCall({"trial", sample(), "T3", "--json", "--pdf", path("x.pdf")},
                  "do not go together");
    expectBadCall({"season", sample(), "--html", path("x.html"), "--pdf", path("x.pdf")},
                  "do not go together");
    const Answer lost = run({"trial", sample(), "T3", "--pdf", path("none/t3.pdf")});
    EXPECT_EQ(lost.exitCode, 1);
    EXPECT_FALSE(lost.error.isEmpty());
}

} // namespace
} // namespace plumule::app
