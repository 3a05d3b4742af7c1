#pragma once

#include "core/review/planning/trial_outlook.h"
#include "tests/core/review/facts/season_samples.h"

namespace plumule {

// A plan by hand: media 1 to n of the first variety, in one trial that is not stored yet.
class PlanSamples : public SeasonSamples
{
public:
    explicit PlanSamples(int media = 2)
    {
        for (int medium = 1; medium <= media; ++medium) {
            facts.media.emplace(MediumId{medium}, Medium{});
            facts.media.at(MediumId{medium}).id = {medium};
            addTreatment({medium});
        }
        draft.trial.margin = grams(30);
        draft.plan.variety = {1};
        draft.plan.sowOn = date(2026, 4, 1);
        draft.plan.spread = grams(16);
        draft.plan.design = Design::CompletelyRandom;
    }

    void addTreatment(MediumId medium, Feeding feeding = Feeding::AsProtocol)
    {
        Treatment treatment;
        treatment.position = static_cast<int>(draft.treatments.size());
        treatment.medium = medium;
        treatment.feeding = feeding;
        draft.treatments.push_back(treatment);
    }

    // One rack of shelves 1, 2 …, each with as many places; ids are 10·shelf + number.
    void furnish(int shelves, int places)
    {
        RoomLayout& layout = facts.cost.layout;
        layout.racks = {{RackId{1}, "A", 1}};
        for (int shelf = 1; shelf <= shelves; ++shelf) {
            Shelf one;
            one.id = {shelf};
            one.rack = {1};
            one.name = std::to_string(shelf);
            layout.shelves.push_back(one);
            for (int place = 1; place <= places; ++place) {
                layout.places.push_back({PlaceId{10 * shelf + place}, ShelfId{shelf}, place});
            }
        }
    }

    // Lays the treatments out: each row is a block on the shelf of that number.
    void layOut(const std::vector<std::vector<int>>& rows)
    {
        for (std::size_t row = 0; row < rows.size(); ++row) {
            for (std::size_t at = 0; at < rows[row].size(); ++at) {
                PlannedTray tray;
                tray.treatment = rows[row][at];
                tray.block = static_cast<int>(row) + 1;
                tray.position = static_cast<int>(at) + 1;
                tray.place = PlaceId{10 * tray.block + tray.position};
                draft.trays.push_back(tray);
            }
        }
    }

    [[nodiscard]] PlanOutlook outlook() const
    {
        const auto found = outlookOf(draft, facts);
        return found.value_or(PlanOutlook());
    }

    TrialDraft draft;
};

} // namespace plumule
