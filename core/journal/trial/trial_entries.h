#pragma once

#include "core/base/result.h"
#include "core/trial/preparation.h"
#include "core/trial/trial_progress.h"

namespace plumule {

class Ledger;

// Questions asked of several trays: planned, sown, followed.
class TrialEntries
{
public:
    explicit TrialEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Newest first.
    [[nodiscard]] Result<std::vector<Trial>> all();
    [[nodiscard]] Result<std::vector<TrialRow>> list();
    // A new trial where its id is not stored; without a code it gets the next free one. Missing
    // name; Duplicate code.
    Result<Trial> save(const Trial& trial);
    // With its plan. InUse when trays or tastings belong to it.
    Done remove(TrialId trial);

    // A plan to begin with, still without a name: the variety sown last with its protocol and its
    // fullest lot, the media used of late (two to four, the control the one sown most), four
    // blocks, a number for the draw from the clock, and the first morning's round within three
    // weeks by which enough places are free; without one no places are drawn.
    [[nodiscard]] Result<TrialDraft> newDraft();
    // A kept plan; NotFound where the trial has none.
    [[nodiscard]] Result<TrialDraft> draft(TrialId trial);
    // The layout that the plan's number draws among the places free at the time of sowing: those
    // no tray stands on, or whose tray is due for harvest before, and that no other unsown plan
    // holds. Errors as drawLayout().
    [[nodiscard]] Result<std::vector<PlannedTray>> draw(const TrialDraft& draft);
    // Places free at that moment, in walking order.
    [[nodiscard]] Result<std::vector<Spot>> freePlaces(const TrialDraft& draft);
    // Keeps trial, plan and layout as one intention; a layout may still be missing. Conflict once
    // sown; errors as checkDraft() and checkLayout(); NotFound where it names what is not stored.
    Result<TrialDraft> savePlan(const TrialDraft& draft);
    // Seed, media, pieces and nutrient for these trays, against what is there.
    [[nodiscard]] Result<Preparation> preparation(const TrialDraft& draft);
    // Sows the draft's trays (kept first if it is not), as one intention: trays in the order of
    // blocks and positions, each at its place, on clean free pieces of the fewest uses. Conflict as
    // TrayEntries::sow(), and TooFewPieces with the medium's name where too few are clean;
    // Sown the second time; Invalid FeedingWithoutNutrient where the protocol feeds in no stage.
    Result<std::vector<TrayId>> sow(const TrialDraft& draft, Moment at,
                                    const std::optional<std::string>& sownBy = std::nullopt);

    [[nodiscard]] Result<TrialProgress> progress(TrialId trial);

private:
    Ledger& m_ledger;
};

} // namespace plumule
