#include "ui/watering/round_text.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

const Date kDay = date(2026, 3, 12);
const RoundKey kEvening{kDay, Slot::Evening};
const RoundKey kMorning{kDay, Slot::Morning};

RoundTray trayWith(std::optional<RoundKey> missed)
{
    RoundTray tray;
    if (missed) {
        tray.drought = Drought{missed->date, 1, false, missed};
    }
    return tray;
}

RoundTray dryTray(const char* code, int days, bool isNever)
{
    RoundTray tray;
    tray.code = code;
    tray.drought = Drought{kDay - days, days, isNever, RoundKey{kDay - 1, Slot::Evening}};
    return tray;
}

Watering wateringAt(Date on, Slot slot, int minute)
{
    Watering watering;
    watering.on = on;
    watering.slot = slot;
    watering.minute = minute;
    return watering;
}

TEST(RoundText, SaysWhichRoundWasMissed)
{
    EXPECT_EQ(missedText(trayWith(RoundKey{kDay, Slot::Morning}), kEvening), "missed a.m.");
    EXPECT_EQ(missedText(trayWith(RoundKey{kDay - 1, Slot::Evening}), kMorning), "missed p.m.");
    EXPECT_EQ(missedText(trayWith(RoundKey{kDay - 1, Slot::Morning}), kMorning), "missed 11 Mar");
    EXPECT_EQ(missedText(trayWith(std::nullopt), kMorning), "");
    EXPECT_EQ(missedSentence(trayWith(RoundKey{kDay - 1, Slot::Evening})),
              "The evening watering of Wednesday 11 March was not given.");
}

TEST(RoundText, CountsTheDaysWithoutWater)
{
    EXPECT_EQ(missedText(dryTray("PE060", 4, false), kMorning), "4 days dry");
    EXPECT_EQ(missedText(dryTray("PE060", 1, true), kMorning), "never watered");
    RoundTray tray = dryTray("PE060", 4, false);
    EXPECT_EQ(missedSentence(tray), "Not watered for 4 days, since Sunday 8 March.");
    tray.isAsNeeded = true;
    tray.drought->missed.reset();
    tray.looksSince = 7;
    EXPECT_EQ(missedSentence(tray), QString::fromUtf8("Not watered for 4 days, since Sunday 8 "
                                                      "March. “Not needed” 7 times since."));
}

TEST(RoundText, NamesTheForgottenTheWorstFirst)
{
    Round round;
    round.trays = {dryTray("PE060", 2, false), dryTray("RD002", 3, true),
                   dryTray("BR001", 4, false), dryTray("BR002", 4, false),
                   dryTray("BR003", 4, false), trayWith(std::nullopt)};
    EXPECT_EQ(forgottenText(round),
              QString::fromUtf8("Not watered for 4 days: BR001–003. Never watered: RD002. Not "
                                "watered for 2 days: PE060."));
    round.trays.clear();
    EXPECT_EQ(forgottenText(round), "");
}

TEST(RoundText, NothingIsMissedOnceItIsTicked)
{
    RoundTray tray = trayWith(RoundKey{kDay, Slot::Morning});
    tray.given = wateringAt(kDay, Slot::Evening, 18 * 60 + 2);
    EXPECT_EQ(missedText(tray, kEvening), "");
    EXPECT_EQ(lastText(tray, kEvening), "18:02");
}

TEST(RoundText, SaysWhenATrayWasWateredLast)
{
    RoundTray tray;
    EXPECT_EQ(lastText(tray, kEvening), "first watering");
    tray.last = wateringAt(kDay, Slot::Morning, 6 * 60 + 50);
    EXPECT_EQ(lastText(tray, kEvening), "last 06:50");
    tray.last = wateringAt(kDay - 1, Slot::Evening, 18 * 60);
    EXPECT_EQ(lastText(tray, kMorning), "last 18:00");
    tray.last = wateringAt(kDay - 3, Slot::Evening, 18 * 60);
    EXPECT_EQ(lastText(tray, kMorning), "last 9 Mar");
}

TEST(RoundText, NamesTheWaterByMethodAndAmount)
{
    RoundTray tray;
    EXPECT_EQ(waterWords(tray, UnitText()).whole(), "Mist, plain water");
    tray.amount = millilitres(30);
    EXPECT_EQ(waterWords(tray, UnitText()).whole(), "30 mL mist, plain water");
    tray.method = WateringMethod::Below;
    tray.water = WaterKind::Nutrient;
    tray.amount = millilitres(120);
    EXPECT_EQ(waterWords(tray, UnitText()).whole(), "120 mL nutrient mix");
    tray.given = Watering();
    tray.given->method = WateringMethod::Below;
    tray.given->water = WaterKind::PhSet;
    tray.given->amount = millilitres(90);
    EXPECT_EQ(waterWords(tray, UnitText()).whole(), "90 mL plain, pH set");
}

TEST(RoundText, ACueIsAQuestionAndWhatIsThenDone)
{
    StageDecision decision;
    decision.cue = "hulls shed, even 25 mm shoots.";
    decision.to = Stage::Blackout;
    EXPECT_EQ(cueText(decision),
              "Hulls shed, even 25 mm shoots? Then lift the weight and dome it for blackout.");
    decision.cue = "shoots even? Then the dome goes on.";
    EXPECT_EQ(cueText(decision), "Shoots even? Then the dome goes on.");
    decision.to.reset();
    decision.cue.clear();
    EXPECT_EQ(cueText(decision), "Is it ready? Then cut and weigh it.");
}

TEST(RoundText, KnowsAReadingOutsideItsBand)
{
    WaterRecipe recipe;
    recipe.phLow = 5.5;
    recipe.phHigh = 6.0;
    recipe.ecHigh = 1800;
    WaterReading reading;
    reading.ph = 6.0;
    EXPECT_FALSE(isOutsideBand(reading, recipe));
    reading.ph = 6.1;
    EXPECT_TRUE(isOutsideBand(reading, recipe));
    reading.ph = 5.8;
    reading.ec = 1900;
    EXPECT_TRUE(isOutsideBand(reading, recipe));
    EXPECT_EQ(bandText(recipe), QString::fromUtf8("pH 5.5–6.0, EC up to 1800 µS/cm"));
}

TEST(RoundText, NamesARoundAsSeenFromToday)
{
    EXPECT_EQ(roundWords(kEvening, kDay), "this evening");
    EXPECT_EQ(roundWords(kMorning, kDay + 1), "yesterday morning");
    EXPECT_EQ(roundWords({kDay + 1, Slot::Morning}, kDay), "tomorrow morning");
    EXPECT_EQ(roundWords({kDay + 3, Slot::Evening}, kDay), "on the evening of Sunday 15 March");
}

} // namespace
} // namespace plumule::ui
