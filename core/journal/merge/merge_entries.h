#pragma once

#include "core/journal/merge/coming_back.h"

#include <memory>

namespace plumule {

// Copies of the journal that are taken along and brought back.
class MergeEntries
{
public:
    explicit MergeEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Oldest first, brought back or not.
    [[nodiscard]] Result<std::vector<TakenCopy>> copies();
    // What this journal is a copy of, where it is one.
    [[nodiscard]] Result<std::optional<TakenCopy>> ownCopy();

    // Draws the number of a new copy. Not an intention: no number is given twice. NameMissing;
    // CopyOfACopy.
    Result<TakenCopy> beginCopy(const std::string& name);
    // As writeCopy(). Also by a worker's own journal, opened to read.
    [[nodiscard]] Done writeCopyTo(const TakenCopy& copy, const std::filesystem::path& target,
                                   const Progress& progress);
    // The copy could not be written: it is as if it had never been thought of.
    void giveUpCopy(const TakenCopy& copy);

    // OfAnother; NothingNew where it did nothing since it was last here; ReadOnly.
    Result<std::unique_ptr<ComingBack>> comeBack(CopyFile copy);

private:
    Ledger& m_ledger;
};

} // namespace plumule
