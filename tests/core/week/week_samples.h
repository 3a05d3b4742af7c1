#pragma once

#include "core/week/repeat_rules.h"
#include "core/week/week.h"

#include "tests/core/watering/round_samples.h"

namespace plumule {

inline const Moment kSaturdayMorning{date(2026, 11, 28), 7 * 60 + 30};

// A shelf of `places`, broccoli and soaked broccoli ("Pea") to sow on a mat or on meshes.
class WeekRoom
{
public:
    explicit WeekRoom(int places)
    {
        facts.now = kSaturdayMorning;
        facts.layout = oneShelf(places);
        Protocol plain = broccoli();
        plain.variety.id = {1};
        Protocol pea = soaked();
        pea.variety.id = {2};
        pea.variety.name = "Pea";
        facts.protocols = {{plain.variety.id, plain}, {pea.variety.id, pea}};
        Medium mesh = inertMat();
        mesh.id = {2};
        mesh.name = "Mesh";
        mesh.isReusable = true;
        facts.media = {{inertMat().id, inertMat()}, {mesh.id, mesh}};
    }
    TrayRecord& grow(std::int64_t id, Moment sown)
    {
        facts.growing.push_back(trayOf(id, facts.protocols.at({1}), inertMat(), sown));
        facts.growing.back().tray.variety = {1};
        facts.growing.back().tray.medium = inertMat().id;
        return facts.growing.back();
    }
    Repeat& repeat(std::int64_t id, int trays, Date from, int everyDays)
    {
        Repeat one;
        one.id = {id};
        one.variety = {1};
        one.medium = inertMat().id;
        one.trays = trays;
        one.from = from;
        one.everyDays = everyDays;
        facts.repeats.push_back(one);
        return facts.repeats.back();
    }
    void pieces(int count)
    {
        for (int i = 1; i <= count; ++i) {
            PieceRecord record;
            record.piece.id = {i};
            record.piece.medium = {2};
            record.piece.number = i;
            facts.pieces.push_back(record);
        }
    }
    void seed(std::optional<Mass> left)
    {
        SeedLotStock stock;
        stock.lot.variety = {1};
        stock.left = left;
        facts.seed.push_back(stock);
    }

    WeekFacts facts;
};

// The one entry of that task on that day; a failure where there is none or another.
inline WeekEntry onlyEntry(const Week& week, Date on, WeekTask task)
{
    const auto& day = week.days.at(static_cast<std::size_t>(on - week.from));
    const auto found = day.of(task);
    EXPECT_EQ(found.size(), 1U) << toText(task) << " on " << toIso(on);
    return found.empty() ? WeekEntry() : *found.front();
}

} // namespace plumule
