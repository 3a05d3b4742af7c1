#pragma once

#include "core/harvest/harvest.h"

namespace plumule {

class Ledger;

// The scale: cuts, residues, and what is still to weigh.
class HarvestEntries
{
public:
    explicit HarvestEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    [[nodiscard]] Result<WeighIn> weighIn(Date date);
    // Trays harvested that have no residue yet, newest harvest first (14 days back).
    [[nodiscard]] Result<std::vector<DueRow>> residuesDue(Date date);
    // Letter case and blanks around do not matter. NotFound; Conflict for a discarded tray.
    [[nodiscard]] Result<TrayAtScale> atScale(const std::string& code);
    [[nodiscard]] Result<std::optional<TrialSoFar>> trialSoFar(TrayId tray);

    // What to ask before recording; empty when nothing is odd. The draft's `accepted` does not
    // matter.
    [[nodiscard]] Result<std::vector<Doubt>> doubts(const WeighingDraft& draft,
                                                    bool isResidue = false);

    // Records one cut: a last cut ends the tray and frees its place. Refused (Invalid, NotFound,
    // Conflict) as WeighingDraft says; DoubtOpen while a doubt is not accepted.
    Result<Harvest> record(const WeighingDraft& draft);
    Result<Residue> recordResidue(const WeighingDraft& draft);
    // Corrects a cut's bowls; net is worked out again. Missing bowls, net ≤ 0.
    Result<Harvest> correct(HarvestId harvest, const std::vector<BowlDraft>& bowls, bool isLast);
    [[nodiscard]] Result<std::vector<Bowl>> bowls(HarvestId harvest);
    // Takes a cut out; a tray whose last cut it was grows on, where it stood unless that place was
    // taken since. So does correct() without `isLast`.
    Done remove(HarvestId harvest);

private:
    Ledger& m_ledger;
};

} // namespace plumule
