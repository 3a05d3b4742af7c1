#pragma once

#include "core/harvest/weighing.h"

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
    // A tray, with what its next cut or its residue is held against. Letter case and blanks around
    // do not matter. NotFound; Conflict for a discarded tray.
    [[nodiscard]] Result<TrayAtScale> atScale(const std::string& code,
                                              Weighing what = Weighing::Cut);
    [[nodiscard]] Result<CutAtScale> cutAtScale(HarvestId cut);

    // Records one cut: a last cut ends the tray and frees its place. Refused (Invalid, NotFound,
    // Conflict) as WeighingDraft says; DoubtOpen while a doubt is not accepted.
    Result<Harvest> record(const WeighingDraft& draft);
    Result<Residue> recordResidue(const WeighingDraft& draft);
    // Refused as record(), with the same doubts where other bowls are given than are stored. A tray
    // whose last cut is corrected to be none grows on, where it stood unless that place was taken
    // since.
    Result<Harvest> correct(const CutCorrection& correction);

private:
    Ledger& m_ledger;
};

} // namespace plumule
