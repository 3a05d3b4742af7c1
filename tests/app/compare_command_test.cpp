#include "tests/app/program_run.h"

#include <cmath>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

QStringList comparing(const QString& file, const QString& response, const QString& medium,
                      const QStringList& more = {})
{
    return QStringList{"compare", file, "--response", response, "--medium", medium} + more;
}

ordered_json compared(const QString& file, const QString& response, const QString& medium,
                      const QStringList& more = {})
{
    const Answer answer = run(comparing(file, response, medium, more + QStringList{"--json"}));
    EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    EXPECT_EQ(answer.error.toStdString(), "");
    return answer.json();
}

ordered_json plantWeights(const QStringList& more = {})
{
    return compared(reference("plantgrowth.csv"), "weight", "group", more);
}

std::string verdictsOf(const ordered_json& json)
{
    std::string verdicts;
    for (const auto& pair : json.at("pairs")) {
        verdicts += (verdicts.empty() ? "" : " ") + pair.at("verdict").get<std::string>();
    }
    return verdicts;
}

std::string warningsOf(const ordered_json& json)
{
    std::string all;
    for (const auto& warning : json.at("warnings")) {
        all += warning.get<std::string>() + '\n';
    }
    return all;
}

void expectTerms(const ordered_json& terms, const nlohmann::json& expected)
{
    ASSERT_EQ(terms.size() + 1, expected.at("term").size()); // theirs ends in the residuals
    for (std::size_t i = 0; i < terms.size(); ++i) {
        EXPECT_EQ(terms[i].at("term"), expected.at("term")[i]);
        expectClose(terms[i].at("df"), expected.at("df")[i], 1e-9);
        expectClose(terms[i].at("ss"), expected.at("ss")[i], 1e-9);
        expectClose(terms[i].at("f"), expected.at("F")[i], 1e-9);
        expectClose(terms[i].at("p"), expected.at("p")[i], 1e-7);
    }
}

} // namespace

class CompareCommand : public ProgramTest
{
protected:
    QString table(const QByteArray& text) { return write("table.csv", text); }
    void expectRefused(const QByteArray& text, const QString& words, const QStringList& more = {})
    {
        expectBadCall(comparing(table(text), "y", "m", more), words);
    }
};

// Of the three pairs only trt1 and trt2 differ at 5 % (Tukey); at 30 % trt2 and ctrl do too.
TEST(CompareTheCommand, GivesMeansThatCannotBeToldApartALetterInCommon)
{
    const auto lettersAt = [](const char* level) {
        const ordered_json json = plantWeights({"--level", level});
        std::string letters;
        for (const auto& mean : json.at("means")) {
            letters += mean.at("letters").get<std::string>() + ' ';
        }
        return letters;
    };
    EXPECT_EQ(lettersAt("0.95"), "ab b a ");
    EXPECT_EQ(lettersAt("0.7"), "b b a ");
    const QString text = run(comparing(reference("plantgrowth.csv"), "weight", "group")).out;
    EXPECT_TRUE(text.contains("letter in common"));
    EXPECT_TRUE(text.contains("10 rows) ab\n"));
}

// Dobson 1983, table 7.1: F 4.846, p 0.0159; trt2 - trt1 0.865, Tukey p 0.0120.
TEST(CompareTheCommand, AnswersForThePlantWeights)
{
    const ordered_json json = plantWeights();
    EXPECT_EQ(json.at("n"), 30);
    EXPECT_EQ(json.at("response"), "weight");
    for (const char* type : {"terms_type1", "terms_type2", "terms_type3"}) {
        EXPECT_NEAR(json.at(type)[0].at("f").get<double>(), 4.846, 0.0005);
        EXPECT_NEAR(json.at(type)[0].at("p").get<double>(), 0.0159, 0.00005);
    }
    const auto& pair = json.at("pairs")[2];
    EXPECT_EQ(pair.at("a"), "trt2");
    EXPECT_EQ(pair.at("b"), "trt1");
    EXPECT_NEAR(pair.at("difference").get<double>(), 0.865, 1e-9);
    EXPECT_NEAR(pair.at("p_tukey").get<double>(), 0.0120, 0.00005);
    EXPECT_EQ(verdictsOf(json), "cant_tell_yet cant_tell_yet more");
    EXPECT_TRUE(json.at("warnings").empty());
}

TEST(CompareTheCommand, AgreesWithTheReferenceInItsChecks)
{
    const ordered_json json =
        plantWeights({"--control", "ctrl", "--contrast", "trt1=0.5,trt2=0.5,ctrl=-1"});
    const auto& expected = expectedOf("plantgrowth_oneway");
    expectClose(json.at("welch").at("f"), expected.at("welch_anova").at("F"), 1e-9);
    expectClose(json.at("welch").at("df2"), expected.at("welch_anova").at("df2"), 1e-9);
    expectClose(json.at("kruskal").at("h"), expected.at("kruskal").at("H"), 1e-9);
    expectClose(json.at("kruskal").at("p"), expected.at("kruskal").at("p"), 1e-9);
    expectClose(json.at("spread_check").at("p"), expected.at("brown_forsythe_median").at("p"),
                1e-9);
    expectClose(json.at("normality").at("w"), expected.at("shapiro_residuals").at("W"), 1e-6);
    const auto& dunnett = expected.at("dunnett").at("comparisons");
    for (std::size_t i = 0; i < 2; ++i) {
        const auto& one = json.at("against_control")[i];
        EXPECT_EQ(one.at("level"), dunnett.at("treatment")[i]);
        expectClose(one.at("p_dunnett"), dunnett.at("p_dunnett")[i], 1e-6);
        expectClose(one.at("lower"), dunnett.at("ci_lo")[i], 1e-6);
    }
    expectClose(json.at("contrasts")[0].at("p"), expected.at("custom_contrast").at("p"), 1e-9);
    const auto& pairs = expected.at("pairwise").at("pairs");
    for (std::size_t i = 0; i < 3; ++i) {
        expectClose(json.at("pairs")[i].at("upper"), pairs.at("ci_hi_tukey")[i], 1e-7);
        expectClose(json.at("pairs")[i].at("p_holm"), pairs.at("p_holm")[i], 1e-9);
    }
}

TEST(CompareTheCommand, NamesItsKeysInTheDocumentedOrder)
{
    const std::string front = "n response terms_type1 terms_type2 terms_type3 residual r_squared "
                              "means pairs against_control contrasts welch kruskal spread_check "
                              "normality ";
    const ordered_json json = plantWeights({"--control", "ctrl", "--contrast", "trt1=1,ctrl=-1"});
    EXPECT_EQ(keysOf(json), front + "warnings");
    EXPECT_EQ(keysOf(json.at("terms_type1")[0]), "term df ss ms f p");
    EXPECT_EQ(keysOf(json.at("residual")), "df ss sd");
    EXPECT_EQ(keysOf(json.at("means")[0]), "level n mean se df lower upper estimable letters");
    EXPECT_EQ(keysOf(json.at("pairs")[0]),
              "a b difference se df t p p_tukey p_holm lower upper estimable verdict");
    EXPECT_EQ(keysOf(json.at("against_control")[0]), "level difference se t p_dunnett lower upper");
    EXPECT_EQ(keysOf(json.at("contrasts")[0]), "estimate se df t p lower upper");
    EXPECT_EQ(keysOf(json.at("welch")), "f df1 df2 p");
    EXPECT_EQ(keysOf(json.at("kruskal")), "h df p");
    EXPECT_EQ(keysOf(json.at("normality")), "w p");
    const ordered_json mixed =
        compared(reference("oats.csv"), "yield", "variety", {"--random", "block"});
    EXPECT_EQ(keysOf(mixed), front + "random kenward_roger warnings");
    EXPECT_EQ(keysOf(mixed.at("random")), "variance_group variance_residual reml singular");
    EXPECT_EQ(keysOf(mixed.at("kenward_roger")), "f df1 df2 p");
}

TEST(CompareTheCommand, TakesFactorsInTheOrderOfTheOptions)
{
    const auto& expected = expectedOf("npk_unbal");
    const Answer answer =
        run({"compare", reference("npk_unbal.csv"), "--response", "yield", "--factor", "block",
             "--medium", "N", "--factor", "P", "--factor", "K", "--json"});
    ASSERT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    const ordered_json json = answer.json();
    expectTerms(json.at("terms_type1"), expected.at("anova_type1"));
    expectTerms(json.at("terms_type2"), expected.at("anova_type2"));
    expectTerms(json.at("terms_type3"), expected.at("anova_type3"));
    expectClose(json.at("r_squared"), expected.at("r_squared"), 1e-9);
    const auto& pairs = expected.at("pairs");
    expectClose(json.at("pairs")[0].at("difference"), pairs.at("diff")[0], 1e-9);
    expectClose(json.at("pairs")[0].at("p_tukey"), pairs.at("p_tukey")[0], 1e-7);
}

TEST_F(CompareCommand, PutsACovariateWhereItsOptionStands)
{
    const QString file = table("m,seed,y\nA,10,5\nA,12,7\nA,11,6\nB,14,9\nB,15,8\nB,13,9\n");
    const Answer answer =
        run({"compare", file, "--response", "y", "--covariate", "seed", "--medium", "m", "--json"});
    ASSERT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    EXPECT_EQ(answer.json().at("terms_type1")[0].at("term"), "seed");
    EXPECT_EQ(answer.json().at("terms_type1")[1].at("term"), "m");
}

TEST(CompareTheCommand, TestsARandomBlockByKenwardRoger)
{
    const ordered_json json = compared(reference("oats.csv"), "yield", "variety",
                                       {"--factor", "nitro", "--random", "block"});
    const auto& expected = expectedOf("oats_lmm_variety");
    const auto& test = expected.at("F_focal_kenward_roger");
    expectClose(json.at("random").at("variance_group"), expected.at("var_group"), 1e-6);
    expectClose(json.at("random").at("variance_residual"), expected.at("var_residual"), 1e-6);
    expectClose(json.at("random").at("reml"), expected.at("reml_criterion_minus2logL"), 1e-6);
    EXPECT_EQ(json.at("random").at("singular"), false);
    expectClose(json.at("kenward_roger").at("f"), test.at("F"), 1e-5);
    expectClose(json.at("kenward_roger").at("df2"), test.at("df2"), 1e-5);
    expectClose(json.at("kenward_roger").at("p"), test.at("p"), 1e-5);
    const auto& roger = expected.at("kenward_roger");
    for (std::size_t i = 0; i < 3; ++i) {
        expectClose(json.at("means")[i].at("df"), roger.at("emmeans").at("df")[i], 1e-5);
        expectClose(json.at("pairs")[i].at("p_tukey"), roger.at("pairs").at("p_tukey")[i], 1e-5);
    }
    EXPECT_TRUE(json.at("terms_type1").empty());
    EXPECT_TRUE(json.at("residual").at("df").is_null());
}

TEST(CompareTheCommand, SaysThatATrialsVarianceIsNought)
{
    const ordered_json json =
        compared(reference("sim_singular_a.csv"), "yield_g", "medium", {"--random", "trial"});
    EXPECT_EQ(json.at("random").at("singular"), true);
    EXPECT_EQ(json.at("random").at("variance_group"), 0);
    EXPECT_NE(warningsOf(json).find("trial"), std::string::npos);
}

TEST(CompareTheCommand, GivesNoNumberToWhatIsConfounded)
{
    const ordered_json json =
        compared(reference("sim_confounded_a.csv"), "yield_g", "medium", {"--factor", "trial"});
    const auto& expected = expectedOf("sim_confounded_a").at("pairs");
    // Theirs and ours come in another order: by the later level here.
    EXPECT_EQ(verdictsOf(json), "cant_tell_yet cant_tell_yet not_comparable cant_tell_yet "
                                "not_comparable not_comparable");
    EXPECT_EQ(json.at("pairs")[2].at("estimable"), false);
    EXPECT_TRUE(json.at("pairs")[2].at("difference").is_null());
    EXPECT_TRUE(json.at("pairs")[2].at("p_tukey").is_null());
    expectClose(json.at("pairs")[0].at("difference"), expected.at("diff")[0], 1e-9);
    EXPECT_EQ(json.at("means")[0].at("estimable"), false);
    EXPECT_TRUE(json.at("means")[0].at("letters").is_null());
    EXPECT_TRUE(json.at("means")[0].at("mean").is_null());
    EXPECT_NE(warningsOf(json).find("D - A"), std::string::npos);
}

TEST(CompareTheCommand, JudgesAPairByTheMargin)
{
    EXPECT_EQ(verdictsOf(plantWeights({"--margin", "1"})),
              "same_within_margin same_within_margin more");
    EXPECT_EQ(verdictsOf(plantWeights({"--margin", "2"})),
              "same_within_margin same_within_margin real_but_too_small");
    EXPECT_EQ(verdictsOf(plantWeights({"--margin", "0.1"})), "cant_tell_yet cant_tell_yet more");
}

TEST_F(CompareCommand, SaysLessWhereTheLaterLevelGaveLess)
{
    EXPECT_EQ(verdictsOf(compared(table("m,y\nA,9\nA,9.5\nB,1\nB,1.2\n"), "y", "m")), "less");
}

TEST_F(CompareCommand, GivesNoVerdictOnALevelWithOneRow)
{
    const ordered_json json = compared(table("m,y\nA,9\nA,9.5\nB,1\n"), "y", "m");
    EXPECT_EQ(verdictsOf(json), "no_verdict");
    EXPECT_NE(warningsOf(json).find("\"B\" has one row only"), std::string::npos);
}

TEST(CompareTheCommand, NarrowsIntervalsWithTheLevel)
{
    const auto wide = plantWeights({"--level", "0.99"}).at("pairs")[0];
    const auto narrow = plantWeights({"--level", "0.8"}).at("pairs")[0];
    EXPECT_LT(wide.at("lower").get<double>(), narrow.at("lower").get<double>());
}

TEST_F(CompareCommand, LeavesRowsWithoutResponseOutAndCountsThem)
{
    const ordered_json json = compared(table("m,y\nB,1\nB,\nA,2\nA,NA\nA,4\nB,3\n"), "y", "m");
    EXPECT_EQ(json.at("n"), 4);
    EXPECT_EQ(warningsOf(json), "Rows without y, left out: 2.\n");
    EXPECT_EQ(json.at("means")[0].at("level"), "B");
}

TEST_F(CompareCommand, TakesNumbersInAFactorAsCategories)
{
    const ordered_json json = compared(table("m,y\n10,1\n10,2\n2,3\n2,4\n3,9\n3,8\n"), "y", "m");
    EXPECT_EQ(json.at("terms_type1")[0].at("df"), 2);
    EXPECT_EQ(json.at("means")[0].at("level"), "10");
    EXPECT_EQ(json.at("means")[1].at("level"), "2");
}

TEST_F(CompareCommand, GivesNullWhereThereIsNoSpread)
{
    const ordered_json json = compared(table("m,y\nA,1\nA,1\nB,1\nB,1\n"), "y", "m");
    EXPECT_TRUE(json.at("terms_type1")[0].at("f").is_null());
    EXPECT_TRUE(json.at("welch").is_null());
    EXPECT_TRUE(json.at("normality").is_null());
    EXPECT_EQ(verdictsOf(json), "no_verdict");
}

TEST(CompareTheCommand, CanBeReadWithoutJson)
{
    const Answer answer = run(comparing(reference("plantgrowth.csv"), "weight", "group"));
    EXPECT_EQ(answer.exitCode, 0);
    EXPECT_TRUE(answer.out.contains("group: F 4.8461 on 2 df, p 0.0159"));
    EXPECT_TRUE(answer.out.contains("trt2 - trt1: 0.865 (0.17378 to 1.5562), p 0.0120: more"));
    const Answer confounded = run(
        comparing(reference("sim_confounded_a.csv"), "yield_g", "medium", {"--factor", "trial"}));
    EXPECT_TRUE(confounded.out.contains("D - A: not comparable"));
}

TEST_F(CompareCommand, RefusesATableThatIsNone)
{
    expectRefused("", "table.csv: The table is empty");
    expectRefused("m,y\n", "no rows");
    expectRefused("m,y\nA,1\nA\n", "Line 3");
    expectRefused("m,y,m\nA,1,2\n", "The column m is there twice");
    expectRefused("m,y\nA,\"1\n", "Line 2");
    expectBadCall(comparing(path("none.csv"), "y", "m"), "can't be read");
    expectBadCall(comparing(path("."), "y", "m"), "can't be read");
}

TEST_F(CompareCommand, RefusesWhatIsNoNumberWithItsRow)
{
    expectRefused("m,y\nA,1\nA,2\nB,x\nB,3\n", "row 3 (line 4): “y” wants a number, not “x”");
    expectRefused("m,y\nA,1\nA,NaN\nB,1\n", "row 2 (line 3): “y” wants a number, not “NaN”");
    expectRefused("m,y\nA,1\n\nA,inf\nB,1\n", "row 2 (line 4)");
    expectRefused("m,y,c\nA,1,1\nA,2,some\nB,2,1\n", "“c” wants a number", {"--covariate", "c"});
}

TEST_F(CompareCommand, RefusesOneLevelAndTooFewRows)
{
    expectRefused("m,y\nA,1\nA,2\n", "“m” has one level only");
    expectRefused("m,y\nA,1\nB,2\n", "too few rows");
    expectRefused("m,y,f\nA,1,a\nA,2,a\nB,2,a\n", "“f” has one level only", {"--factor", "f"});
    expectRefused("m,y\nA,\nB,\n", "Too few rows have a value");
}

TEST(CompareTheCommand, RefusesWhatItCannotUnderstand)
{
    const QString file = reference("plantgrowth.csv");
    const auto off = [&](const QStringList& more, const QString& words) {
        expectBadCall(comparing(file, "weight", "group", more), words);
    };
    expectBadCall({"compare"}, "FILE.csv is missing");
    expectBadCall({"compare", file}, "--response is missing");
    expectBadCall({"compare", file, "--response", "weight"}, "--medium is missing");
    expectBadCall(
        comparing(file, "w", "group"),
        "no column “w” of the kind that is needed: check its name. The file has group, weight.");
    expectBadCall(comparing(file, "weight", "g"), "no column “g”");
    expectBadCall(comparing(file, "weight", "weight"), "two parts");
    off({"more.csv"}, "one argument too many");
    off({"--bogus"}, "bogus");
    off({"--factor", "nix"}, "no column “nix”");
    off({"--covariate", "group"}, "two parts");
    off({"--random", "group"}, "two parts");
    off({"--control", "nix"}, "“nix” is no level of “group”");
    off({"--margin", "0"}, "--margin wants");
    off({"--level", "95"}, "--level wants");
    off({"--contrast", "nix"}, "--contrast wants");
    off({"--contrast", "ctrl=1,trt1=1"}, "sum to 0");
    off({"--contrast", "ctrl=1,nix=-1"}, "“nix” is no level");
}

TEST_F(CompareCommand, SaysWhereTheNumbersHoldNoAnswer)
{
    const QString file = table("m,y,r\nA,1,1\nA,2,2\nB,4,3\nB,3,4\n");
    expectNoAnswer(comparing(file, "y", "m", {"--random", "r"}), "can't be told apart");
}

// Two media in three trials: the paired t over the trials' mean logs at level 4 %/3, worked out by
// hand: log ratios log 1.10, log 1.12 and log 1.08.
TEST_F(CompareCommand, ByTrialsTakesTrialsForWhatRepeats)
{
    const QString file = write("trials.csv", "trial,medium,grams\n"
                                             "1,A,100\n1,A,100\n1,B,110\n1,B,110\n"
                                             "2,A,200\n2,A,200\n2,B,224\n2,B,224\n"
                                             "3,A,300\n3,A,300\n3,B,324\n3,B,324\n");
    const auto asked = [&](const QStringList& more) {
        return comparing(file, "grams", "medium", QStringList{"--trial", "trial"} + more);
    };
    const Answer answer = run(asked({"--json"}));
    ASSERT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    const ordered_json json = answer.json();
    EXPECT_EQ(json.at("scope"), "next_sowing");
    EXPECT_NEAR(json.at("level").get<double>(), 0.04 / 3, 1e-12);
    const ordered_json& pair = json.at("pairs").at(0);
    EXPECT_EQ(pair.at("a"), "B");
    const double logs[] = {std::log(1.10), std::log(1.12), std::log(1.08)};
    const double mean = (logs[0] + logs[1] + logs[2]) / 3;
    double ss = 0;
    for (const double one : logs) {
        ss += (one - mean) * (one - mean);
    }
    // t(1 − 0.04/6; 2) = 8.5734098, from verdict_cases.json.
    const double half = 8.5734098 * std::sqrt(ss / 2 / 3);
    EXPECT_NEAR(pair.at("difference_percent").get<double>(), 100 * std::expm1(mean), 1e-9);
    EXPECT_NEAR(pair.at("lower_percent").get<double>(), 100 * std::expm1(mean - half), 1e-5);
    EXPECT_NEAR(pair.at("upper_percent").get<double>(), 100 * std::expm1(mean + half), 1e-5);
    EXPECT_EQ(pair.at("verdict"), "more");
    EXPECT_TRUE(run(asked({})).out.contains("B over A"));
    EXPECT_TRUE(run(asked({})).out.contains(" 3 trials: "));
    expectBadCall(asked({"--factor", "trial"}), "don't go together");
    expectBadCall(comparing(file, "grams", "medium", {"--trial", "plot"}), "no column \"plot\"");
}

} // namespace plumule::app
