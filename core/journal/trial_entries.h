#pragma once

#include "core/trial/trial.h"

#include <vector>

namespace plumule {

class Ledger;

class TrialEntries
{
public:
    explicit TrialEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Newest first.
    [[nodiscard]] Result<std::vector<Trial>> all();
    // A new trial where its id is not stored; without a code it gets the next free one. Missing
    // name; Duplicate code.
    Result<Trial> save(const Trial& trial);
    // InUse when trays belong to it.
    Done remove(TrialId trial);

private:
    Ledger& m_ledger;
};

} // namespace plumule
