#pragma once

#include "core/review/facts/season_facts.h"

namespace plumule {

inline constexpr MediumId kMix{1};
inline constexpr MediumId kMesh{2};

// A season by hand: a loose mix (id 1, single-use) and a mesh (id 2, reusable), one variety.
class SeasonSamples
{
public:
    SeasonSamples()
    {
        Medium mix;
        mix.id = {1};
        mix.name = "Loose mix";
        mix.marker = 3;
        mix.surfaceBelowRim = millimetres(10);
        mix.amountPerTray = litres(2);
        Medium mesh;
        mesh.id = {2};
        mesh.name = "Mesh";
        mesh.form = MediumForm::Mesh;
        mesh.isReusable = true;
        mesh.plannedUses = 60;
        facts.media = {{mix.id, mix}, {mesh.id, mesh}};
        facts.varieties = {{VarietyId{1}, "Radish"}, {VarietyId{2}, "Pea"}};
        facts.trials = {{TrialId{7}, "T7"}};
        facts.cost.layout.room.currency = "EUR";
        filter.from = date(2026, 1, 1);
        filter.to = date(2026, 3, 31);
    }

    // A tray that is cut on day 13, with its one cut within the season.
    SeasonRecord& add(const std::string& code, MediumId medium, double grams)
    {
        SeasonRecord record;
        record.tray.id = {100 + static_cast<std::int64_t>(facts.trays.size())};
        record.tray.code = code;
        record.tray.medium = medium;
        record.tray.variety = {1};
        record.tray.sownOn = date(2026, 2, 2);
        record.tray.state = TrayState::Harvested;
        record.tray.endedOn = record.tray.sownOn + 12;
        record.lastCut = record.tray.endedOn;
        record.cutOn = {*record.tray.endedOn};
        record.yield = plumule::grams(grams);
        record.use.sownOn = record.tray.sownOn;
        record.use.medium = &facts.media.at(medium);
        record.use.isHarvested = true;
        record.use.hasEnded = true;
        record.use.cuts = 1;
        facts.trays.push_back(record);
        return facts.trays.back();
    }

    void price(PriceItem item, double units, std::optional<MediumId> medium = std::nullopt)
    {
        facts.cost.prices.push_back({{}, item, medium, date(2025, 1, 1), money(units)});
    }

    // The handbook's example: 18.00 a mesh, 1.10 a single-use filling, cleaning 0.75 or 0.375 a
    // use. Nothing else costs anything.
    void priceAsInTheHandbook(double cleaning)
    {
        price(PriceItem::Medium, 0.55, MediumId{1});
        price(PriceItem::Medium, 18, MediumId{2});
        price(PriceItem::Washing, cleaning);
        facts.cost.labour = {{{1}, LabourKind::PieceWashing, 0}};
    }

    [[nodiscard]] SeasonReview review()
    {
        priceTrays(facts);
        return reviewOf(facts, filter);
    }

    SeasonFacts facts;
    SeasonFilter filter;
};

} // namespace plumule
