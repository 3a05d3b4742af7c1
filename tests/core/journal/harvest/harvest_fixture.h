#pragma once

#include "core/harvest/weighing_rules.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/core/journal/journal_fixture.h"

namespace plumule {

// Trays that stand in light and are due now.
class HarvestTest : public JournalTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        variety = plainVariety();
        medium = mediumNamed("Coir mix");
    }

    // One day under weight, two in light.
    VarietyId plainVariety(const std::string& name = "Quick cress",
                           const std::string& prefix = "QC")
    {
        Protocol protocol;
        protocol.variety.name = name;
        protocol.variety.codePrefix = prefix;
        ProtocolStage weight;
        weight.stage = Stage::UnderWeight;
        weight.lengthMinutes = kMinutesPerDay;
        ProtocolStage light;
        light.stage = Stage::Light;
        light.lengthMinutes = 2 * kMinutesPerDay;
        protocol.stages = {weight, light};
        return journal->varieties().save(protocol).value().variety.id;
    }

    std::vector<TrayId> sow(int count, std::optional<TrialId> trial = std::nullopt,
                            std::optional<Mass> seed = grams(10))
    {
        SowingDraft draft;
        draft.variety = variety;
        draft.medium = medium;
        draft.count = count;
        draft.seedPerTray = seed;
        draft.at = clock.now();
        draft.trial = trial;
        const auto free = journal->room().freeSpots().value();
        for (int i = 0; i < count && i < static_cast<int>(free.size()); ++i) {
            draft.places.push_back(free[static_cast<std::size_t>(i)].place);
        }
        return journal->trays().sow(draft).value();
    }

    // Sown, brought into light a day later, and due: the clock stands at the harvest.
    std::vector<TrayId> sowTillDue(int count, std::optional<TrialId> trial = std::nullopt)
    {
        const std::vector<TrayId> trays = sow(count, trial);
        clock.set(clock.now() + kMinutesPerDay);
        for (const TrayId tray : trays) {
            EXPECT_TRUE(journal->trays().moveOn(tray, clock.now()));
        }
        clock.set(clock.now() + 2 * kMinutesPerDay);
        return trays;
    }

    WeighingDraft weighing(TrayId tray, double net, double tare = 42)
    {
        WeighingDraft draft;
        draft.tray = tray;
        draft.bowls = {{grams(net + tare), grams(tare)}};
        draft.at = clock.now();
        return draft;
    }

    HarvestEntries& harvests() { return journal->harvests(); }
    ExpectedRange expectedOf(const std::string& code)
    {
        return harvests().atScale(code).value().facts.expected;
    }
    std::vector<Doubt> doubtsNow(const std::string& code, const WeighingDraft& draft)
    {
        return doubtsAbout(draft.bowls, harvests().atScale(code).value().facts);
    }
    TraySheet sheet(TrayId tray) { return journal->trays().sheet(tray).value(); }

    std::vector<std::string> codesDue(Date on)
    {
        std::vector<std::string> codes;
        const WeighIn answer = harvests().weighIn(on).value();
        for (const DueRow& row : answer.due) {
            codes.push_back(row.code);
        }
        return codes;
    }

    VarietyId variety;
    MediumId medium;
};

} // namespace plumule
