#include "core/storage/column_traits.h"
#include "core/storage/history.h"
#include "ui/history/history_text.h"

#include "core/journal/ledger/intention.h"
#include "tests/support/enumerators.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

using Effects = std::vector<RowEffect>;

RowEffect effect(ChangeKind kind, const char* table)
{
    return {kind, table, 1, {}};
}

Effects changed(const char* column, const Cell& now, const Cell& after)
{
    RowEffect row = effect(ChangeKind::Update, "tray");
    row.cells = {{column, now, after}};
    return {row};
}

TEST(EffectWords, CountEachKindOfRowByWhatBecomesOfIt)
{
    const Effects effects = {
        effect(ChangeKind::Update, "tray"),    effect(ChangeKind::Delete, "watering"),
        effect(ChangeKind::Insert, "harvest"), effect(ChangeKind::Delete, "watering"),
        effect(ChangeKind::Insert, "variety"), effect(ChangeKind::Insert, "variety")};
    EXPECT_EQ(effectWords(effects).join('|'),
              "Goes: 2 waterings.|Comes back: 1 cut, 2 varieties.|Becomes as it was: 1 tray.");
    EXPECT_TRUE(effectWords({}).isEmpty());
}

TEST(EffectWords, CountWhatHasNoNameOnceAndLast)
{
    const Effects effects = {
        effect(ChangeKind::Delete, "panel_sample"), effect(ChangeKind::Delete, "panel"),
        effect(ChangeKind::Delete, "taster"), effect(ChangeKind::Delete, "taster"),
        effect(ChangeKind::Delete, "serving")};
    EXPECT_EQ(effectWords(effects).join('|'), "Goes: 1 tasting, 1 serving, other entries: 3.");
}

TEST(ValueChanges, ShowAmountsInTheRoomsUnits)
{
    const auto only = [](const Effects& effects, UnitSystem units) {
        const auto changes = valueChanges(effects, UnitText(units), 5);
        EXPECT_EQ(changes.size(), 1U);
        return changes.empty() ? QString()
                               : changes[0].what + ": " + changes[0].now + ", " + changes[0].after;
    };
    const Effects weight =
        changed("net_mg", Cell(std::int64_t{259'500}), Cell(std::int64_t{295'500}));
    EXPECT_EQ(only(weight, UnitSystem::Metric), "net: 259.5 g, 295.5 g");
    EXPECT_EQ(only(weight, UnitSystem::UsCustomary), "net: 9.15 oz, 10.42 oz");
    EXPECT_EQ(only(changed("reading_um", Cell(std::int64_t{48'000}), Cell()), UnitSystem::Metric),
              "height: 48 mm, nothing");
    EXPECT_EQ(only(changed("amount_ul", Cell(std::int64_t{120'000}), Cell(std::int64_t{0})),
                   UnitSystem::Metric),
              "water: 120 mL, 0 mL");
}

TEST(ValueChanges, ShowDaysAndWordsAsTheyAreWritten)
{
    const auto shown = [](const char* column, const std::string& now) {
        const auto changes =
            valueChanges(changed(column, Cell(now), Cell(std::string())), UnitText(), 5);
        EXPECT_EQ(changes.at(0).after, "nothing");
        return changes.at(0).now;
    };
    EXPECT_EQ(shown("sown_on", "2026-03-12"), "12 Mar 2026");
    EXPECT_EQ(shown("from_date", "2026-01-01"), "1 Jan 2026");
    EXPECT_EQ(shown("question", "Is it?"), "Is it?") << "no day, though it ends so";
    EXPECT_EQ(shown("note", " two\nlines "), "two lines");
    const QString longest(40, 'x');
    EXPECT_EQ(shown("note", longest.toStdString()), longest);
    EXPECT_EQ(shown("note", (longest + 'y').toStdString()), longest.left(39) + QChar(0x2026));
}

TEST(ValueChanges, AreOfWhatAGrowerWroteAndNoMoreThanAsked)
{
    EXPECT_TRUE(
        valueChanges(changed("marker", Cell(std::int64_t{1}), Cell(std::int64_t{2})), UnitText(), 5)
            .empty());
    Effects many = changed("name", Cell(std::string("A")), Cell(std::string("B")));
    many.push_back(changed("note", Cell(std::string("C")), Cell(std::string("D"))).front());
    EXPECT_EQ(valueChanges(many, UnitText(), 5).size(), 2U);
    ASSERT_EQ(valueChanges(many, UnitText(), 1).size(), 1U);
    EXPECT_EQ(valueChanges(many, UnitText(), 1)[0].what, "name") << "in the order of the rows";
    EXPECT_TRUE(valueChanges(many, UnitText(), 0).empty());
}

TEST(ActKinds, EveryIntentionIsOfOneKind)
{
    for (const auto& [intention, name] : enumeratorsOf<Intention>()) {
        HistoryEntry act;
        act.intention = toText(intention);
        int kinds = 0;
        for (const ActKind kind : {ActKind::Trays, ActKind::Water, ActKind::Weights,
                                   ActKind::Trials, ActKind::Orders, ActKind::SetUp}) {
            kinds += isOfKind(act, kind) ? 1 : 0;
        }
        EXPECT_EQ(kinds, 1) << name;
        EXPECT_TRUE(isOfKind(act, ActKind::All)) << name;
    }
}

TEST(ActKinds, WhatAnotherProgramDidIsOfAllAlone)
{
    HistoryEntry act;
    act.intention = "trayless.do";
    EXPECT_TRUE(isOfKind(act, ActKind::All));
    EXPECT_FALSE(isOfKind(act, ActKind::Trays));
    act.intention = "tray.new_act";
    EXPECT_TRUE(isOfKind(act, ActKind::Trays));
}

} // namespace
} // namespace plumule::ui
