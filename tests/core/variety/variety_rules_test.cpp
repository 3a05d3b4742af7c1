#include "core/variety/variety_rules.h"

#include "core/variety/variety_reason.h"

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

Reason faultOf(const Done& done)
{
    return done ? Reason() : done.error().reason;
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
    EXPECT_EQ(faultOf(checkProtocol(soundProtocol())), Reason());
    Protocol bare = soundProtocol();
    bare.stages.clear();
    EXPECT_EQ(faultOf(checkProtocol(bare)), Reason());
}

TEST(VarietyRules, NeedsANameAndTwoLetters)
{
    Protocol protocol = soundProtocol();
    protocol.variety.name = " ";
    EXPECT_EQ(faultOf(checkProtocol(protocol)), VarietyReason::NameMissing);
    protocol = soundProtocol();
    protocol.variety.codePrefix.clear();
    EXPECT_EQ(faultOf(checkProtocol(protocol)), VarietyReason::PrefixMissing);
    for (const char* prefix : {"R", "RDX", "R1", "rd", "R "}) {
        protocol.variety.codePrefix = prefix;
        EXPECT_EQ(checkProtocol(protocol).error(),
                  fail(ErrorKind::Invalid, VarietyReason::PrefixForm, prefix).value());
    }
}

TEST(VarietyRules, SeedIsMoreThanNothing)
{
    Protocol protocol = soundProtocol();
    protocol.variety.seedPerTray = grams(25);
    EXPECT_TRUE(checkProtocol(protocol));
    protocol.variety.seedPerTray = Mass{};
    EXPECT_EQ(faultOf(checkProtocol(protocol)), VarietyReason::SeedPerTray);
}

TEST(VarietyRules, RefusesStagesOutOfOrderOrDoubled)
{
    Protocol protocol = soundProtocol();
    std::swap(protocol.stages[0], protocol.stages[1]);
    EXPECT_EQ(checkProtocol(protocol).error(),
              fail(ErrorKind::Invalid, VarietyReason::StageOrder, "under_weight").value());
    protocol = soundProtocol();
    protocol.stages.push_back(protocol.stages.back());
    EXPECT_EQ(faultOf(checkProtocol(protocol)), VarietyReason::StageOrder);
}

TEST(VarietyRules, RefusesAStageThatCannotBeDone)
{
    const auto faultWhere = [](auto change) {
        Protocol protocol = soundProtocol();
        change(protocol.stages[1]);
        return faultOf(checkProtocol(protocol));
    };
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.lengthMinutes = 0; }),
              VarietyReason::StageLength);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.lengthMinutes = -60; }),
              VarietyReason::StageLength);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.method = WateringMethod::None; }),
              VarietyReason::StageMethod);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.wateringsPerDay = 0; }), Reason())
        << "watered as needed";
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.wateringsPerDay = 3; }),
              VarietyReason::StageWaterings);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.wateringsPerDay = -1; }),
              VarietyReason::StageWaterings);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.amount = Volume{}; }),
              VarietyReason::StageAmount);
    EXPECT_EQ(faultWhere([](ProtocolStage& s) { s.amount = millilitres(60); }), Reason());
    EXPECT_EQ(faultWhere([](ProtocolStage& s) {
                  s.wateringsPerDay = 0;
                  s.method = WateringMethod::None;
              }),
              Reason());
    EXPECT_EQ(faultWhere([](ProtocolStage& s) {
                  s.wateringsPerDay = 0;
                  s.method = WateringMethod::None;
                  s.amount = millilitres(60);
              }),
              VarietyReason::StageMethod);
}

TEST(VarietyRules, ALotNeedsANumberAndBelievableFigures)
{
    SeedLot lot;
    EXPECT_EQ(faultOf(checkLot(lot)), VarietyReason::LotNumberMissing);
    lot.lotNumber = "L-7";
    EXPECT_TRUE(checkLot(lot));
    lot.germinationPercent = 100.1;
    EXPECT_EQ(faultOf(checkLot(lot)), VarietyReason::LotGermination);
    lot.germinationPercent = 94;
    lot.bought = Mass{};
    EXPECT_EQ(faultOf(checkLot(lot)), VarietyReason::LotBought);
    lot.bought = grams(500);
    lot.price = money(-1);
    EXPECT_EQ(faultOf(checkLot(lot)), VarietyReason::LotPrice);
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
