#include "core/variety/variety_rules.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

ProtocolStage covered(Stage kind, int days)
{
    ProtocolStage stage;
    stage.stage = kind;
    stage.lengthMinutes = days * kMinutesPerDay;
    stage.wateringsPerDay = 2;
    stage.method = WateringMethod::Mist;
    return stage;
}

Protocol soundProtocol()
{
    Protocol protocol;
    protocol.variety.name = "Radish, rose";
    protocol.variety.codePrefix = "RD";
    protocol.stages = {covered(Stage::UnderWeight, 2), covered(Stage::Blackout, 1),
                       covered(Stage::Light, 7)};
    return protocol;
}

std::string faultOf(const Done& done)
{
    return done ? "" : done.error().subject + "/" + done.error().detail;
}

template <class Enum>
void expectSurvivesText(std::initializer_list<Enum> values)
{
    for (const Enum value : values) {
        Enum read{};
        EXPECT_TRUE(fromText(toText(value), read)) << toText(value);
        EXPECT_EQ(read, value);
    }
    Enum read{};
    EXPECT_FALSE(fromText("", read));
    EXPECT_FALSE(fromText("no such word", read));
}

TEST(VarietyRules, EveryWordSurvivesItsText)
{
    expectSurvivesText({Stage::Soak, Stage::UnderWeight, Stage::Blackout, Stage::Light});
    expectSurvivesText({WateringMethod::None, WateringMethod::Mist, WateringMethod::Below});
    expectSurvivesText({WaterKind::Plain, WaterKind::PhSet, WaterKind::Nutrient});
}

TEST(VarietyRules, AcceptsASoundProtocolAndOneWithoutStages)
{
    EXPECT_EQ(faultOf(checkProtocol(soundProtocol())), "");
    Protocol bare = soundProtocol();
    bare.stages.clear();
    EXPECT_EQ(faultOf(checkProtocol(bare)), "");
}

TEST(VarietyRules, NeedsANameAndTwoLetters)
{
    Protocol protocol = soundProtocol();
    protocol.variety.name = " ";
    EXPECT_EQ(faultOf(checkProtocol(protocol)), "variety.name/");
    protocol = soundProtocol();
    protocol.variety.codePrefix.clear();
    EXPECT_EQ(faultOf(checkProtocol(protocol)), "variety.code_prefix/");
    for (const char* prefix : {"R", "RDX", "R1", "rd", "R "}) {
        protocol.variety.codePrefix = prefix;
        EXPECT_EQ(faultOf(checkProtocol(protocol)), std::string("variety.code_prefix/") + prefix);
    }
}

TEST(VarietyRules, SeedIsMoreThanNothing)
{
    Protocol protocol = soundProtocol();
    protocol.variety.seedPerTray = grams(25);
    EXPECT_TRUE(checkProtocol(protocol));
    protocol.variety.seedPerTray = Mass{};
    EXPECT_EQ(faultOf(checkProtocol(protocol)), "variety.seed_per_tray/");
}

TEST(VarietyRules, RefusesStagesOutOfOrderOrDoubled)
{
    Protocol protocol = soundProtocol();
    std::swap(protocol.stages[0], protocol.stages[1]);
    EXPECT_EQ(faultOf(checkProtocol(protocol)), "protocol.stage/under_weight");
    protocol = soundProtocol();
    protocol.stages.push_back(protocol.stages.back());
    EXPECT_EQ(faultOf(checkProtocol(protocol)), "protocol.stage/light");
}

TEST(VarietyRules, RefusesAStageThatCannotBeDone)
{
    const auto faultWhere = [](auto change) {
        Protocol protocol = soundProtocol();
        change(protocol.stages[1]);
        return faultOf(checkProtocol(protocol));
    };
    const std::string atBlackout = "protocol.stage/blackout";
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.lengthMinutes = 0; }), atBlackout);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.lengthMinutes = -60; }), atBlackout);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.method = WateringMethod::None; }), atBlackout);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.wateringsPerDay = 0; }), "")
        << "watered as needed";
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.wateringsPerDay = 3; }), atBlackout);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.wateringsPerDay = -1; }), atBlackout);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.amount = Volume{}; }), atBlackout);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.amount = millilitres(60); }), "");
    EXPECT_EQ(faultWhere([](ProtocolStage& s) {
                  s.wateringsPerDay = 0;
                  s.method = WateringMethod::None;
              }),
              "");
    EXPECT_EQ(faultWhere([](ProtocolStage& s) {
                  s.wateringsPerDay = 0;
                  s.method = WateringMethod::None;
                  s.amount = millilitres(60);
              }),
              atBlackout);
}

TEST(VarietyRules, ALotNeedsANumberAndBelievableFigures)
{
    SeedLot lot;
    EXPECT_EQ(faultOf(checkLot(lot)), "seed_lot.lot_number/");
    lot.lotNumber = "L-7";
    EXPECT_TRUE(checkLot(lot));
    lot.germinationPercent = 100.1;
    EXPECT_EQ(faultOf(checkLot(lot)), "seed_lot.germination/");
    lot.germinationPercent = 94;
    lot.bought = Mass{};
    EXPECT_EQ(faultOf(checkLot(lot)), "seed_lot.bought/");
    lot.bought = grams(500);
    lot.price = money(-1);
    EXPECT_EQ(faultOf(checkLot(lot)), "seed_lot.price/");
    lot.price = Money{};
    EXPECT_TRUE(checkLot(lot));
}

TEST(VarietyRules, WhatIsLeftIsBoughtLessSownCorrected)
{
    SeedLot lot;
    EXPECT_FALSE(leftOf(lot, grams(10), Mass{})) << "what was never weighed can't be left";
    lot.bought = grams(500);
    EXPECT_EQ(leftOf(lot, grams(75), -grams(5)), grams(420));
    EXPECT_EQ(leftOf(lot, grams(600), Mass{}), -grams(100)) << "more sown than bought shows";
}

} // namespace
} // namespace plumule
