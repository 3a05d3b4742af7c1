#pragma once

#include "core/trial/draw.h"
#include "tests/support/told.h"

#include <gtest/gtest.h>

namespace plumule {

// Shelves of so many places each; place ids are shelf × 100 + number.
inline std::vector<FreeShelf> shelvesOf(const std::vector<int>& places)
{
    std::vector<FreeShelf> shelves;
    for (std::size_t i = 0; i < places.size(); ++i) {
        FreeShelf shelf{{static_cast<std::int64_t>(i) + 1}, {}};
        for (int number = 1; number <= places[i]; ++number) {
            shelf.places.push_back({{shelf.shelf.value * 100 + number}, shelf.shelf, number});
        }
        shelves.push_back(shelf);
    }
    return shelves;
}

inline TrialDraft draftOf(Design design, int treatments, int traysEach, int blocks = 1)
{
    TrialDraft draft;
    draft.trial.name = "Beds";
    draft.plan.design = design;
    draft.plan.variety = {1};
    draft.plan.traysEach = traysEach;
    draft.plan.blocks = blocks;
    draft.plan.drawNumber = 1;
    for (int i = 0; i < treatments; ++i) {
        Treatment treatment;
        treatment.position = i;
        treatment.medium = {i + 1};
        draft.treatments.push_back(treatment);
    }
    return draft;
}

inline std::vector<PlannedTray> drawn(TrialDraft draft, std::int64_t number,
                                      const std::vector<FreeShelf>& free)
{
    draft.plan.drawNumber = number;
    auto layout = drawLayout(draft, free);
    EXPECT_TRUE(layout) << told(layout.error());
    return layout.value_or(std::vector<PlannedTray>());
}

} // namespace plumule
