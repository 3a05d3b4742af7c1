#include "core/review/facts/response.h"
#include "tests/app/program_run.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QProcess>

#include <set>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

QByteArray bytesOf(const QString& path)
{
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return file.readAll();
}

} // namespace

// The sample room is written once and only read.
class JournalCommands : public ProgramTest
{
protected:
    static void SetUpTestSuite()
    {
        s_folder = new QTemporaryDir;
        const Answer made = run({"sample", sample()});
        EXPECT_EQ(made.exitCode, 0) << made.error.toStdString();
        EXPECT_TRUE(made.out.contains("invented"));
    }
    static void TearDownTestSuite()
    {
        delete s_folder;
        s_folder = nullptr;
    }
    static QString sample() { return s_folder->filePath("sample.plumule"); }
    static ordered_json answered(const QStringList& arguments)
    {
        const Answer answer = run(arguments + QStringList{"--json"});
        EXPECT_EQ(answer.exitCode, 0) << answer.error.toStdString();
        EXPECT_EQ(answer.error.toStdString(), "");
        return answer.json();
    }

private:
    static QTemporaryDir* s_folder;
};

QTemporaryDir* JournalCommands::s_folder = nullptr;

TEST_F(JournalCommands, PrintTheRoundAsDocumented)
{
    const ordered_json json = answered({"round", sample(), "--slot", "evening"});
    EXPECT_EQ(keysOf(json), "date slot trays decisions mix tomorrow");
    EXPECT_EQ(json.at("slot"), "evening");
    ASSERT_FALSE(json.at("trays").empty());
    for (const auto& tray : json.at("trays")) {
        EXPECT_EQ(keysOf(tray), "code rack shelf place variety medium stage day action water "
                                "water_ml done as_needed found_wet missed "
                                "days_without_water never_watered between");
    }
    ASSERT_FALSE(json.at("mix").empty());
    for (const auto& line : json.at("mix")) {
        EXPECT_EQ(keysOf(line), "water action litres concentrate_ml trays_without_amount");
    }
    for (const auto& decision : json.at("decisions")) {
        EXPECT_EQ(keysOf(decision), "code rack shelf place variety medium from to cue due_date "
                                    "due_time days_late");
    }
    EXPECT_EQ(keysOf(json.at("tomorrow")),
              "harvests into_light into_blackout to_sow free_places places");
}

TEST_F(JournalCommands, PrintTheRoundOfTheDayAskedFor)
{
    const ordered_json json =
        answered({"round", sample(), "--date", "2020-01-02", "--slot", "morning"});
    EXPECT_EQ(json.at("date"), "2020-01-02");
    EXPECT_TRUE(json.at("trays").empty());
    const Answer text = run({"round", sample(), "--slot", "morning"});
    EXPECT_TRUE(text.out.contains("morning round"));
}

TEST_F(JournalCommands, DrawTheRoundAsAPdf)
{
    const QString file = path("round.pdf");
    EXPECT_EQ(run({"round", sample(), "--pdf", file}).exitCode, 0);
    EXPECT_TRUE(bytesOf(file).startsWith("%PDF-"));
    expectNoAnswer({"round", sample(), "--pdf", path("nowhere/round.pdf")}, "round.pdf");
}

TEST_F(JournalCommands, RefuseARoundThatIsAskedForWrongly)
{
    expectBadCall({"round"}, "JOURNAL is missing");
    expectBadCall({"round", sample(), "--date", "2026-02-30"}, "--date wants a day");
    expectBadCall({"round", sample(), "--slot", "noon"}, "--slot wants");
    expectBadCall({"round", sample(), "--json", "--pdf", "x.pdf"}, "do not go together");
    expectBadCall({"round", sample(), "--bogus"}, "bogus");
    expectBadCall({"round", sample(), "more"}, "one argument too many");
    expectNoAnswer({"round", path("none.plumule")}, "There is no file");
    expectNoAnswer({"round", write("text.plumule", "not a journal\n")}, "not a Plumule journal");
}

TEST_F(JournalCommands, PrintTheClimateAsDocumented)
{
    const std::string days = "date hours temperature_mean_c temperature_low_c temperature_high_c "
                             "humidity_mean_percent humidity_low_percent humidity_high_percent "
                             "vpd_kpa dli_mol_m2 dli_of_lamp light_mean_lux";
    const ordered_json json = answered({"climate", sample()});
    ASSERT_EQ(json.at("loggers").size(), 2U);
    EXPECT_EQ(keysOf(json.at("loggers")[0]), "name rack shelf days");
    EXPECT_EQ(json.at("loggers")[0].at("shelf"), "2");
    EXPECT_TRUE(json.at("loggers")[1].at("rack").is_null());
    for (const auto& logger : json.at("loggers")) {
        ASSERT_FALSE(logger.at("days").empty());
        EXPECT_EQ(keysOf(logger.at("days")[0]), days);
    }
    const ordered_json tray = answered({"climate", sample(), "--tray", "mu035"});
    EXPECT_EQ(keysOf(tray), "code sown_on loggers days growth");
    EXPECT_EQ(tray.at("code"), "MU035");
    EXPECT_EQ(keysOf(tray.at("growth")), "temperature_mean_c vpd_kpa dli_mol_m2_d");
    const Answer text = run({"climate", sample()});
    EXPECT_TRUE(text.out.contains("Clip, shelf A2")) << text.out.toStdString();
    EXPECT_TRUE(text.out.contains("kPa"));
}

TEST_F(JournalCommands, PrintTheWeekAsDocumented)
{
    const ordered_json json = answered({"week", sample()});
    EXPECT_EQ(keysOf(json), "from to days expected proposals");
    ASSERT_EQ(json.at("days").size(), 14U);
    std::set<std::string> tasks;
    for (const auto& day : json.at("days")) {
        EXPECT_EQ(keysOf(day), "date tasks expected free_places");
        for (const auto& task : day.at("tasks")) {
            EXPECT_EQ(keysOf(task),
                      "task what name slot count proposed codes shelves trials further_cuts");
            tasks.insert(task.at("task"));
        }
    }
    for (const char* task : {"soak", "sow", "uncover", "light", "cut"}) {
        EXPECT_TRUE(tasks.contains(task)) << task;
    }
    ASSERT_FALSE(json.at("proposals").empty());
    for (const auto& proposal : json.at("proposals")) {
        EXPECT_EQ(keysOf(proposal), "due variety medium trays sow_date soak_date cut_date "
                                    "moved_because free_places_when_due free_places seed_g "
                                    "seed_left_g");
    }
    EXPECT_TRUE(run({"week", sample()}).out.contains("Radish, rose on Coir mix"));
}

TEST_F(JournalCommands, WriteTheWeekAsACalendarAndAsAPdf)
{
    const QTemporaryDir folder;
    const QString calendar = folder.filePath("week.ics");
    EXPECT_EQ(run({"week", sample(), "--ics", calendar}).exitCode, 0);
    EXPECT_TRUE(bytesOf(calendar).startsWith("BEGIN:VCALENDAR\r\n"));
    EXPECT_TRUE(bytesOf(calendar).endsWith("END:VCALENDAR\r\n"));
    EXPECT_GT(bytesOf(calendar).count("BEGIN:VEVENT"), 5);
    const QString sheet = folder.filePath("week.pdf");
    EXPECT_EQ(run({"week", sample(), "--pdf", sheet}).exitCode, 0);
    EXPECT_TRUE(bytesOf(sheet).startsWith("%PDF"));
}

TEST_F(JournalCommands, RefuseAWeekThatIsAskedForWrongly)
{
    expectBadCall({"week"}, "JOURNAL is missing");
    expectBadCall({"week", sample(), "--json", "--ics", "a.ics"}, "Only one of");
    EXPECT_EQ(run({"week", sample(), "--ics", "/no such folder/a.ics"}).exitCode, 1);
}

TEST_F(JournalCommands, PrintTheForecastAsDocumented)
{
    const std::string basis = "from source span trays sowings widened";
    const ordered_json json = answered({"forecast", sample()});
    EXPECT_EQ(keysOf(json), "date level growing all varieties scored");
    ASSERT_FALSE(json.at("growing").empty());
    for (const auto& tray : json.at("growing")) {
        EXPECT_EQ(keysOf(tray), "code variety medium sown_on harvest yield");
        EXPECT_EQ(keysOf(tray.at("harvest")), "middle low high chance by_protocol basis");
        EXPECT_EQ(keysOf(tray.at("yield")), "middle_g low_g high_g basis");
        EXPECT_EQ(keysOf(tray.at("yield").at("basis")), basis);
    }
    EXPECT_EQ(keysOf(json.at("all")),
              "harvests yield_inside days day_inside yield_widened day_widened");
    ASSERT_FALSE(json.at("varieties").empty());
    EXPECT_EQ(keysOf(json.at("varieties")[0]),
              "variety harvests yield_inside days day_inside yield_widened day_widened");
    ASSERT_FALSE(json.at("scored").empty());
    EXPECT_EQ(keysOf(json.at("scored")[0]), "code variety medium sown_on harvest yield cut_on "
                                            "weighed_g yield_inside day_inside");
    const Answer text = run({"forecast", sample()});
    EXPECT_TRUE(text.out.contains("fell in their 80 % interval")) << text.out.toStdString();
}

TEST_F(JournalCommands, PrintTheForecastOfAPastMorning)
{
    const ordered_json json = answered({"forecast", sample(), "--date", "2020-01-02"});
    EXPECT_EQ(json.at("date"), "2020-01-02");
    EXPECT_TRUE(json.at("growing").empty());
    EXPECT_EQ(json.at("all").at("harvests"), 0);
    expectBadCall({"forecast"}, "JOURNAL is missing");
    expectBadCall({"forecast", sample(), "--date", "soon"}, "--date wants a day");
}

TEST_F(JournalCommands, PrintTheOrdersAsDocumented)
{
    const ordered_json json = answered({"orders", sample()});
    EXPECT_EQ(keysOf(json), "date to_come past");
    ASSERT_FALSE(json.at("to_come").empty());
    const std::string head = "date customer variety promised_g recurs ends_on ";
    bool isAnythingSown = false;
    for (const auto& line : json.at("to_come")) {
        EXPECT_EQ(keysOf(line), head + "cut growing planned sowing chances");
        EXPECT_EQ(keysOf(line.at("planned")), "trays chance low_g mean_g high_g");
        if (!line.at("sowing").is_null()) {
            isAnythingSown = true;
            EXPECT_EQ(keysOf(line.at("sowing")),
                      "trays medium sow_on soak_on too_late free_places free_pieces seed_g "
                      "seed_left_g tray_g known_from");
            EXPECT_EQ(keysOf(line.at("sowing").at("known_from")),
                      "source trays discarded ended library");
        }
    }
    EXPECT_TRUE(isAnythingSown);
    ASSERT_EQ(json.at("past").size(), 8U);
    for (const auto& one : json.at("past")) {
        EXPECT_EQ(keysOf(one), head + "weighed_g over_g kept cuts");
        EXPECT_EQ(one.at("kept"), one.at("over_g").get<double>() >= 0);
    }
    const Answer text = run({"orders", sample()});
    EXPECT_TRUE(text.out.contains("times in 100")) << text.out.toStdString();
    expectBadCall({"orders"}, "JOURNAL is missing");
}

TEST_F(JournalCommands, PrintTheStockAsDocumented)
{
    const ordered_json json = answered({"stock", sample()});
    EXPECT_EQ(keysOf(json), "date last_counted seed supplies media low");
    ASSERT_FALSE(json.at("seed").empty());
    EXPECT_EQ(keysOf(json.at("seed")[0]), "lot variety left_g sown_g planned_g then_left_g "
                                          "days_left low germination_percent");
    ASSERT_FALSE(json.at("supplies").empty());
    EXPECT_EQ(keysOf(json.at("supplies")[0]),
              "name kind unit left planned used_since days_left counted_on low");
    ASSERT_EQ(json.at("media").size(), 1U);
    EXPECT_EQ(keysOf(json.at("media")[0].at("pieces")[0]),
              "number uses planned_uses past_planned_uses bought_on tray sanitise_since sanitised");
    EXPECT_TRUE(run({"stock", sample()}).out.contains("Steel mesh"));
    expectBadCall({"stock"}, "JOURNAL is missing");
}

TEST_F(JournalCommands, TraceForwardAndBackAsDocumented)
{
    const ordered_json lot = answered({"trace", sample(), "Radish, rose L3"});
    EXPECT_EQ(keysOf(lot), "direction of trays sanitisings sums");
    const auto& sums = lot.at("sums");
    EXPECT_EQ(sums.at("sown"), lot.at("trays").size());
    EXPECT_EQ(sums.at("sown").get<int>(), sums.at("cut").get<int>() +
                                              sums.at("thrown_away").get<int>() +
                                              sums.at("growing").get<int>());
    const std::string code = lot.at("trays")[0].at("code");
    const ordered_json tray = answered({"trace", sample(), QString::fromStdString(code)});
    EXPECT_EQ(tray.at("direction"), "back");
    EXPECT_EQ(tray.at("lot").at("number"), "L3");
    EXPECT_EQ(keysOf(tray), "direction tray lot use_of_piece sanitised tray_before waters stays "
                            "residue_g trial");
    EXPECT_EQ(answered({"trace", sample(), "Steel mesh 4"}).at("direction"), "forward");
    EXPECT_EQ(
        answered({"trace", sample(), "nutrient", "--from", "1990-01-01", "--to", "1990-01-02"})
            .at("trays")
            .size(),
        0U);
    expectBadCall({"trace", sample()}, "CODE is missing");
    expectBadCall({"trace", sample(), "Mo", "--from", "2026-01-01"}, "--from and --to go with");
    expectNoAnswer({"trace", sample(), "L3"}, "More than one seed lot");
    expectNoAnswer({"trace", sample(), "nobody"}, "nobody");
}

TEST_F(JournalCommands, RefuseAClimateThatIsAskedForWrongly)
{
    expectBadCall({"climate"}, "JOURNAL is missing");
    expectBadCall({"climate", sample(), "--tray", "MU035", "--from", "2026-01-01"}, "--tray goes");
    expectBadCall({"climate", sample(), "--from", "soon"}, "--from wants a day");
    expectNoAnswer({"climate", sample(), "--tray", "none"}, "none");
}

TEST_F(JournalCommands, PrintTheSeasonAsDocumented)
{
    const ordered_json json = answered({"season", sample()});
    EXPECT_TRUE(keysOf(json).starts_with("from to currency trays varieties trials media "
                                         "left_out too_few"))
        << keysOf(json);
    ASSERT_GE(json.at("media").size(), 2U);
    int trays = 0;
    for (const auto& medium : json.at("media")) {
        EXPECT_TRUE(keysOf(medium).starts_with("medium n yield height cost_per_g cost_curve "
                                               "pays_back_at_use"))
            << keysOf(medium);
        EXPECT_EQ(keysOf(medium.at("yield")), "mean_g sd_g lower_g upper_g");
        EXPECT_LT(medium.at("yield").at("lower_g"), medium.at("yield").at("mean_g"));
        for (const auto& height : medium.at("height")) {
            EXPECT_EQ(keysOf(height), "day mean_mm lower_mm upper_mm n");
        }
        trays += medium.at("n").get<int>();
    }
    EXPECT_EQ(trays, json.at("trays"));
    for (const auto& tray : json.at("left_out")) {
        EXPECT_EQ(keysOf(tray), "code medium why reason");
    }
}

// The parts that scripts walk through, for each metric.
TEST_F(JournalCommands, AnswerEachMetricInTheSameForm)
{
    for (const Response metric : kResponses) {
        const ordered_json answer =
            answered({"season", sample(), "--metric", toText(metric)}).at("comparison");
        EXPECT_EQ(answer.at("metric"), toText(metric));
        const bool isLinear = metric == Response::DaysToHarvest || metric == Response::Evenness;
        EXPECT_EQ(answer.at("scale"), isLinear ? "linear" : "log") << toText(metric);
        ASSERT_FALSE(answer.at("by_trial").empty()) << toText(metric);
        for (const auto& trial : answer.at("by_trial")) {
            EXPECT_EQ(keysOf(trial), "trial sown_on varieties pairs");
        }
        ASSERT_FALSE(answer.at("by_variety").empty()) << toText(metric);
        for (const auto& variety : answer.at("by_variety")) {
            EXPECT_EQ(keysOf(variety), "variety trials pairs");
        }
        EXPECT_EQ(answer.at("discards").size(), answer.at("means").size()) << toText(metric);
        for (const auto& medium : answer.at("discards")) {
            EXPECT_EQ(keysOf(medium), "medium sown discarded p differs");
        }
        ASSERT_FALSE(answer.at("fairness").empty()) << toText(metric);
        for (const auto& finding : answer.at("fairness")) {
            EXPECT_EQ(keysOf(finding), "aspect confounding in_model media");
            for (const auto& medium : finding.at("media")) {
                std::set<std::string> names;
                for (const auto& level : medium.at("levels")) {
                    EXPECT_TRUE(names.insert(level.at("name")).second) << finding.at("aspect");
                }
            }
        }
    }
}

TEST_F(JournalCommands, AnswerTheSeasonAsDocumented)
{
    const ordered_json json = answered({"season", sample()});
    const QString headline = QString::fromStdString(json.at("headline"));
    EXPECT_TRUE(headline.endsWith('.')) << headline.toStdString();
    EXPECT_TRUE(run({"season", sample()}).out.contains(headline)) << headline.toStdString();
    const ordered_json& answer = json.at("comparison");
    EXPECT_EQ(keysOf(answer),
              "metric side_metric unit scale day trays trials planned_trials scope level "
              "unlike_spread margin_percent spread_percent trial_spread_percent means pairs "
              "by_trial by_variety groups group_pairs discards fairness");
    EXPECT_EQ(answer.at("metric"), "yield");
    EXPECT_EQ(answer.at("scope"), "next_sowing");
    EXPECT_NEAR(answer.at("level").get<double>(), 0.04 / answer.at("trials").get<int>(), 1e-12);
    EXPECT_EQ(answer.at("by_trial").size(), answer.at("trials").get<std::size_t>());
    for (const auto& pair : answer.at("pairs")) {
        EXPECT_EQ(keysOf(pair), "a b difference_percent lower_percent upper_percent difference "
                                "trials_shared compared_as verdict why more_trials "
                                "more_trays_each");
        if (!pair.at("difference_percent").is_null()) {
            EXPECT_GE(pair.at("difference_percent").get<double>(), 0) << "the one with more first";
        }
    }
    const ordered_json cost =
        answered({"season", sample(), "--metric", "cost", "--groups", "reuse", "--margin", "5"})
            .at("comparison");
    EXPECT_EQ(cost.at("metric"), "cost");
    EXPECT_TRUE(cost.at("side_metric").get<bool>());
    EXPECT_EQ(cost.at("margin_percent"), 5);
    EXPECT_EQ(cost.at("groups").size(), 2U);
    EXPECT_EQ(cost.at("group_pairs").size(), 1U);
    expectBadCall({"season", sample(), "--metric", "joy"}, "--metric wants one of yield, ");
    expectBadCall({"season", sample(), "--groups", "joy"}, "--groups wants one of");
    expectBadCall({"season", sample(), "--season", "Nix"}, "No season is called");
}

TEST_F(JournalCommands, CountOnlyTheVarietiesAndDaysAskedFor)
{
    const int all = answered({"season", sample()}).at("trays");
    const ordered_json one = answered({"season", sample(), "--variety", "mustard"});
    EXPECT_EQ(one.at("varieties"), 1);
    EXPECT_LT(one.at("trays").get<int>(), all);
    const ordered_json none =
        answered({"season", sample(), "--from", "2020-01-01", "--to", "2020-02-01"});
    EXPECT_EQ(none.at("from"), "2020-01-01");
    EXPECT_EQ(none.at("trays"), 0);
}

TEST_F(JournalCommands, RefuseASeasonThatIsAskedForWrongly)
{
    expectBadCall({"season"}, "JOURNAL is missing");
    expectBadCall({"season", sample(), "--from", "spring"}, "--from wants a day");
    expectBadCall({"season", sample(), "--from", "2026-05-01", "--to", "2026-01-01"},
                  "--to is before --from");
    expectBadCall({"season", sample(), "--variety", "Nix"}, "No variety is called \"Nix\"");
    expectNoAnswer({"season", path("none.plumule")}, "There is no file");
}

TEST_F(JournalCommands, FindASoundJournalSound)
{
    const Answer answer = run({"check", sample()});
    EXPECT_EQ(answer.exitCode, 0);
    EXPECT_EQ(answer.out.toStdString(), "The journal is sound.\n");
}

TEST_F(JournalCommands, FindDamageWithoutTouchingTheFile)
{
    const QByteArray whole = bytesOf(sample());
    const QString cut = write("cut.plumule", whole.left(whole.size() / 2));
    expectNoAnswer({"check", cut}, "damaged");
    EXPECT_EQ(bytesOf(cut), whole.left(whole.size() / 2));
    // Pages in the midst of the file are overwritten: it opens, and the check comes upon them.
    QByteArray spoilt = whole;
    spoilt.replace(spoilt.size() / 2, 40'000, QByteArray(40'000, '\x55'));
    const QString file = write("spoilt.plumule", spoilt);
    const Answer found = run({"check", file});
    EXPECT_EQ(found.exitCode, 1);
    EXPECT_TRUE(found.out.contains("Parts of the file are damaged that hold entries of the kind"))
        << found.out.toStdString();
    EXPECT_TRUE(found.out.contains("plumule rescue")) << found.out.toStdString();
    EXPECT_FALSE(found.out.contains("SELECT"));
    EXPECT_EQ(bytesOf(file), spoilt);
}

TEST_F(JournalCommands, RefuseToCheckWhatIsNoJournal)
{
    expectBadCall({"check"}, "JOURNAL is missing");
    expectNoAnswer({"check", path("none.plumule")}, "There is no file");
    expectNoAnswer({"check", reference("oats.csv")}, "not a Plumule journal");
}

TEST_F(JournalCommands, NeverWriteTheSampleOverAFile)
{
    const QString file = write("mine.plumule", "mine");
    expectNoAnswer({"sample", file}, "already");
    EXPECT_EQ(bytesOf(file), "mine");
    expectBadCall({"sample"}, "FILE is missing");
    EXPECT_EQ(run({"sample", path("nowhere/s.plumule")}).exitCode, 1);
}

TEST_F(JournalCommands, DrawEveryPage)
{
    const ordered_json before = answered({"season", sample()});
    const QString folder = path("pictures");
    const Answer answer = run({"pictures", sample(), folder, "--size", "1024x768", "--dark"});
    ASSERT_EQ(answer.exitCode, 0) << answer.error.toStdString();
    const QStringList files = answer.out.split('\n', Qt::SkipEmptyParts);
    for (const char* page : {"round",
                             "weigh-in",
                             "trays",
                             "tray-sheet",
                             "season",
                             "set-up-room",
                             "set-up-varieties",
                             "set-up-seed",
                             "set-up-media",
                             "set-up-water",
                             "set-up-prices-and-work",
                             "set-up-journal",
                             "trials",
                             "trial-plan",
                             "trial-progress",
                             "trial-tasting",
                             "trial-answer",
                             "season-cost",
                             "season-height",
                             "season-evenness",
                             "season-ratings"}) {
        const QString file = QDir(folder).filePath(QStringLiteral("%1.png").arg(page));
        EXPECT_TRUE(files.contains(file)) << page;
        const QImage picture(file);
        EXPECT_EQ(picture.size(), QSize(1024, 768)) << page;
        EXPECT_LT(qGray(picture.pixel(2, 2)), 128) << page << " is not dark";
    }
    EXPECT_EQ(answered({"season", sample()}), before);
}

TEST_F(JournalCommands, RefusePicturesThatAreAskedForWrongly)
{
    expectBadCall({"pictures", sample()}, "DIR is missing");
    expectBadCall({"pictures", sample(), path("p"), "--size", "big"}, "--size wants");
    expectBadCall({"pictures", sample(), path("p"), "--font-scale", "9"}, "--font-scale wants");
    expectNoAnswer({"pictures", path("none.plumule"), path("p")}, "There is no file");
    expectNoAnswer({"pictures", sample(), write("file", "x")}, "");
    EXPECT_FALSE(QFileInfo::exists(path("p")));
}

TEST_F(JournalCommands, TheSampleIsThereWholeOrNotAtAll)
{
    const QString taken = write("taken.plumule", "mine");
    expectNoAnswer({"sample", taken}, "taken.plumule already");
    QFile file(taken);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), "mine");
    expectNoAnswer({"sample", path("nowhere/room.plumule")}, "room.plumule");

    // A room that outgrows what a file may hold here: an error that is said, not the end by a
    // signal.
    QProcess limited;
    limited.start("bash", {"-c", "ulimit -f 200 && exec \"$0\" sample \"$1\"", PLUMULE_PROGRAM,
                           path("small.plumule")});
    ASSERT_TRUE(limited.waitForFinished(60'000));
    EXPECT_EQ(limited.exitStatus(), QProcess::NormalExit);
    EXPECT_EQ(limited.exitCode(), 1);
    EXPECT_EQ(limited.readAllStandardError().count('\n'), 1);
    const QDir folder = QFileInfo(taken).dir();
    EXPECT_EQ(folder.entryList(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot),
              QStringList{"taken.plumule"});
}

TEST_F(JournalCommands, SayWhatTheyAre)
{
    const Answer help = run({"--help"});
    EXPECT_EQ(help.exitCode, 0);
    for (const char* command : {"round", "season", "import", "sample", "pictures", "check",
                                "rescue", "compare", "growth", "power"}) {
        EXPECT_TRUE(help.out.contains(QStringLiteral("plumule %1 ").arg(command))) << command;
    }
    EXPECT_TRUE(run({"--version"}).out.startsWith("Plumule "));
}

} // namespace plumule::app
