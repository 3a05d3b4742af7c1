#pragma once

#include "core/cost/cost.h"

namespace plumule {

class Ledger;

// Dated prices and labour minutes.
class CostEntries
{
public:
    explicit CostEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // By item, medium, then date, newest first.
    [[nodiscard]] Result<std::vector<Price>> prices();
    // A new one where its id is not stored. Invalid below 0; Missing medium; Duplicate of item and
    // day.
    Result<Price> savePrice(const Price& price);
    Done removePrice(PriceId price);

    [[nodiscard]] Result<std::vector<LabourTask>> labour();
    // Invalid below 0.
    Result<LabourTask> changeLabour(const LabourTask& task);

private:
    Ledger& m_ledger;
};

} // namespace plumule
