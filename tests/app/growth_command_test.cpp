#include "tests/app/program_run.h"

#include <cmath>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

} // namespace

class GrowthCommand : public ProgramTest
{
protected:
    static QStringList growing(const QString& file, const QStringList& more = {})
    {
        return QStringList{"growth", file, "--x", "x", "--y", "y"} + more;
    }
    static ordered_json grown(const QString& file, const QStringList& more)
    {
        const Answer answer = run(growing(file, more + QStringList{"--json"}));
        EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
        EXPECT_EQ(answer.error.toStdString(), "");
        return answer.json();
    }
    static QString pasture() { return reference("nist_Rat42.csv"); }
};

// NIST StRD Rat42, certified, as b1/(1+exp(b2-b3 x)): tm = b2/b3, s = 1/b3.
TEST_F(GrowthCommand, AgreesWithTheCertifiedPasture)
{
    const ordered_json json = grown(pasture(), {"--curve", "logistic", "--at", "10", "--at", "90"});
    const auto& expected = expectedOf("nist_Rat42");
    const auto& certified = expected.at("certified");
    const auto& b = certified.at("parameters").at("estimate");
    EXPECT_EQ(json.at("curve"), "logistic");
    EXPECT_EQ(json.at("n"), 9);
    EXPECT_EQ(json.at("df"), 6);
    expectClose(json.at("rss"), certified.at("rss"), 1e-9);
    expectClose(json.at("residual_sd"), certified.at("residual_sd"), 1e-9);
    const auto& parameters = json.at("parameters");
    EXPECT_EQ(parameters[0].at("name"), "A");
    expectClose(parameters[0].at("estimate"), b[0], 1e-8);
    expectClose(parameters[0].at("se"), certified.at("parameters").at("se")[0], 1e-6);
    EXPECT_EQ(parameters[1].at("name"), "tm");
    EXPECT_NEAR(parameters[1].at("estimate").get<double>(), b[1].get<double>() / b[2].get<double>(),
                1e-6);
    EXPECT_EQ(parameters[2].at("name"), "s");
    EXPECT_NEAR(parameters[2].at("estimate").get<double>(), 1 / b[2].get<double>(), 1e-6);
    const auto& curve = expected.at("mean_curve");
    for (const auto& [place, at] : {std::pair(0, 0), std::pair(1, 4)}) {
        const auto& point = json.at("at")[static_cast<std::size_t>(place)];
        const auto i = static_cast<std::size_t>(at);
        expectClose(point.at("fit"), curve.at("fit")[i], 1e-6);
        expectClose(point.at("lower"), curve.at("ci_lo")[i], 1e-6);
        expectClose(point.at("upper"), curve.at("ci_hi")[i], 1e-6);
    }
    // Steepest at A/(4 s); nine tenths at tm + s ln 9.
    const double s = parameters[2].at("estimate").get<double>();
    EXPECT_NEAR(json.at("top_rate").at("estimate").get<double>(),
                parameters[0].at("estimate").get<double>() / 4 / s, 1e-9);
    EXPECT_NEAR(json.at("x_at_90pct").at("estimate").get<double>(),
                parameters[1].at("estimate").get<double>() + s * std::log(9.0), 1e-9);
}

// The logistic curve turned round: x = tm + s ln(y / (A - y)), with the certified A, b2 and b3.
TEST_F(GrowthCommand, TellsWhenAHeightIsReached)
{
    const QStringList asked{"--curve", "logistic", "--to-height", "40", "--to-height", "80"};
    const ordered_json json = grown(pasture(), asked);
    const auto& b = expectedOf("nist_Rat42").at("certified").at("parameters").at("estimate");
    const double day =
        (b[1].get<double>() + std::log(40 / (b[0].get<double>() - 40))) / b[2].get<double>();
    const auto& reached = json.at("to_height")[0];
    EXPECT_EQ(reached.at("height"), 40);
    EXPECT_NEAR(reached.at("x").at("estimate").get<double>(), day, 1e-6);
    EXPECT_LT(reached.at("x").at("lower").get<double>(), day);
    EXPECT_GT(reached.at("x").at("upper").get<double>(), day);
    EXPECT_TRUE(json.at("to_height")[1].at("x").is_null());
    const QString text = run(growing(pasture(), asked)).out;
    EXPECT_TRUE(text.contains("40 is reached at: "));
    EXPECT_TRUE(text.contains("80 is reached at: never, by this curve"));
}

TEST_F(GrowthCommand, FitsRichardsByItsOwnNames)
{
    const ordered_json json = grown(pasture(), {"--curve", "richards"});
    const auto& expected = expectedOf("rat42_richards").at("parameters");
    const char* names[] = {"A", "b", "c", "d"};
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_EQ(json.at("parameters")[i].at("name"), names[i]);
        expectClose(json.at("parameters")[i].at("estimate"), expected.at("estimate")[i], 1e-6);
        expectClose(json.at("parameters")[i].at("upper"), expected.at("ci_hi_wald_t")[i], 1e-6);
    }
}

TEST_F(GrowthCommand, NamesItsKeysInTheDocumentedOrder)
{
    const ordered_json json = grown(pasture(), {"--at", "20", "--to-height", "30"});
    EXPECT_EQ(keysOf(json),
              "curve n df rss residual_sd aicc parameters at to_height top_rate x_at_90pct "
              "foretold replicate trays trials");
    EXPECT_EQ(keysOf(json.at("parameters")[0]), "name estimate se lower upper");
    EXPECT_EQ(keysOf(json.at("at")[0]), "x fit se lower upper foretold");
    EXPECT_EQ(keysOf(json.at("to_height")[0]), "height x foretold");
    EXPECT_EQ(keysOf(json.at("to_height")[0].at("x")), "estimate se lower upper");
    EXPECT_EQ(keysOf(json.at("top_rate")), "estimate se lower upper");
    EXPECT_EQ(keysOf(json.at("x_at_90pct")), "estimate se lower upper");
}

TEST_F(GrowthCommand, TakesTheBestCurveUnlessToldOtherwise)
{
    const ordered_json best = grown(pasture(), {});
    EXPECT_EQ(best, grown(pasture(), {"--curve", "best"}));
    for (const char* curve : {"logistic", "gompertz", "richards"}) {
        EXPECT_LE(best.at("aicc").get<double>(),
                  grown(pasture(), {"--curve", curve}).at("aicc").get<double>() + 1e-9);
    }
}

// Orange tree 3 by itself equals its rows picked out of the whole table.
TEST_F(GrowthCommand, TakesOnlyTheRowsAskedFor)
{
    const Answer answer =
        run({"growth", reference("orange.csv"), "--x", "age", "--y", "circumference", "--where",
             "Tree=3", "--curve", "logistic", "--json"});
    ASSERT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    const auto& expected = expectedOf("orange_tree3_logistic").at("parameters");
    EXPECT_EQ(answer.json().at("n"), 7);
    expectClose(answer.json().at("parameters")[0].at("estimate"), expected.at("estimate")[0], 1e-6);
}

TEST_F(GrowthCommand, LeavesEmptyReadingsOutAndMindsOnlyTheRowsAskedFor)
{
    const QString file = write("h.csv", "x,y,what\n1,2,h\n2,5,h\nx,nothing,leaf\n3,,h\n4,20,h\n"
                                        "5,31,h\n6,38,h\n7,41,h\n");
    const Answer answer = run(growing(file, {"--where", "what=h", "--curve", "logistic"}));
    EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    EXPECT_TRUE(answer.out.contains("6 readings"));
    EXPECT_TRUE(answer.out.contains("left out: 1"));
    expectBadCall(growing(file), "row 3 (line 4): “x” wants a number, not “x”");
    expectBadCall(growing(file, {"--where", "what=leaf"}), "row 3 (line 4)");
}

TEST_F(GrowthCommand, SaysThatFullHeightIsForetold)
{
    const QString file = write("young.csv", "x,y\n1,1\n2,2.1\n3,4.2\n4,8\n5,15.5\n6,27\n");
    const Answer answer = run(growing(file, {"--curve", "logistic"}));
    EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    EXPECT_TRUE(answer.out.contains("foretold"));
    EXPECT_FALSE(run(growing(pasture(), {"--curve", "logistic"})).out.contains("foretold"));
}

// The five trees of Draper and Smith: read on the same days, they differ more than readings of one
// tree do from its curve.
TEST_F(GrowthCommand, TakesTreesForWhatRepeatsWhereTheyAreNamed)
{
    const QStringList call = {"growth",  reference("orange.csv"),
                              "--x",     "age",
                              "--y",     "circumference",
                              "--curve", "logistic",
                              "--at",    "1000",
                              "--at",    "2000",
                              "--json"};
    const Answer pooled = run(call);
    const Answer byTree = run(call + QStringList{"--tray", "Tree"});
    ASSERT_EQ(byTree.exitCode, 0) << byTree.error.toStdString();
    EXPECT_EQ(pooled.json().at("replicate"), "reading");
    EXPECT_TRUE(pooled.json().at("trays").is_null());
    EXPECT_EQ(byTree.json().at("replicate"), "tray");
    EXPECT_EQ(byTree.json().at("trays"), 5);
    EXPECT_EQ(byTree.json().at("trials"), 1);
    const auto width = [](const Answer& answer) {
        const ordered_json at = answer.json().at("at")[0];
        return at.at("upper").get<double>() - at.at("lower").get<double>();
    };
    EXPECT_GT(width(byTree), 1.5 * width(pooled));
    EXPECT_FALSE(byTree.json().at("at")[0].at("foretold"));
    EXPECT_TRUE(byTree.json().at("at")[1].at("foretold"));
    // The pooled curve (Pinheiro and Bates 2000: 192.7, 728.8, 353.5) is at 90 % on day 1,505 of
    // 1,582.
    EXPECT_FALSE(byTree.json().at("foretold"));

    const Answer words = run({"growth", reference("orange.csv"), "--x", "age", "--y",
                              "circumference", "--tray", "Tree"});
    EXPECT_TRUE(words.out.contains("Intervals are over trays, in these trials (trays: 5"));
    expectBadCall({"growth", reference("orange.csv"), "--x", "age", "--y", "circumference",
                   "--trial", "Tree"},
                  "--trial wants --tray");
}

TEST_F(GrowthCommand, RefusesWhatItCannotUnderstand)
{
    expectBadCall({"growth"}, "FILE.csv is missing");
    expectBadCall({"growth", pasture()}, "--x is missing");
    expectBadCall({"growth", pasture(), "--x", "x"}, "--y is missing");
    expectBadCall({"growth", pasture(), "--x", "x", "--y", "x"}, "the same column");
    expectBadCall({"growth", pasture(), "--x", "x", "--y", "z"}, "no column “z”");
    expectBadCall(growing(pasture(), {"--curve", "line"}), "--curve wants");
    expectBadCall(growing(pasture(), {"--at", "noon"}), "--at wants a number");
    expectBadCall(growing(pasture(), {"--to-height", "tall"}), "--to-height wants a number");
    expectBadCall(growing(pasture(), {"--where", "x"}), "--where wants");
    expectBadCall(growing(pasture(), {"--where", "z=1"}), "no column “z”");
    expectBadCall(growing(pasture(), {"--where", "x=1"}), "no row");
    expectBadCall(growing(path("none.csv")), "can't be read");
    expectBadCall(growing(write("empty.csv", "")), "is empty");
    expectBadCall(growing(write("nan.csv", "x,y\n1,NaN\n")), "row 1 (line 2)");
}

TEST_F(GrowthCommand, SaysWhyThereIsNoCurve)
{
    expectBadCall(growing(write("few.csv", "x,y\n1,2\n2,4\n")), "too few readings");
    expectBadCall(growing(write("places.csv", "x,y\n1,2\n1,3\n2,4\n2,5\n1,2\n")),
                  "at too few different x");
    expectBadCall(growing(write("flat.csv", "x,y\n1,2\n2,2\n3,2\n4,2\n5,2\n")),
                  "All readings are alike");
    expectNoAnswer(growing(write("wild.csv", "x,y\n1,2\n2,9\n3,2\n4,7\n5,1\n6,9\n")),
                   "did not converge");
}

} // namespace plumule::app
