#pragma once

#include "core/journal/journal.h"
#include "core/journal/merge/coming_back.h"
#include "core/merge/merge_plan.h"
#include "core/merge/merge_row.h"
#include "ui/text/text.h"

#include <QStringList>

#include <map>

namespace plumule::ui {

// What met when a copy comes back, in words. Reads names from the journal once.
class MetWords
{
public:
    MetWords(Journal& journal, const ComingBack& coming, const MergePlan& plan,
             const UnitText& units);

    // "PE056, light begins"; "Shiso, variety".
    [[nodiscard]] QString subject(const MergeItem& item) const;
    // What stood on both before; empty where that is not known.
    [[nodiscard]] QString before(const MergeItem& item) const;
    // What stands on that side, a line each: "light begun 26 Nov 2026, 18:02".
    [[nodiscard]] QStringList lines(const MergeItem& item, Side side) const;
    // When it was last touched on that side; empty where it was not since the copy was taken.
    [[nodiscard]] QString when(const MergeItem& item, Side side) const;
    // For the note of a tray, or what belongs to none (tray 0): all that is not kept of the item,
    // uncut. Empty where there is nothing.
    [[nodiscard]] QString note(const MergeItem& item, std::int64_t tray) const;
    // "RD001 of the copy is RD002 here"
    [[nodiscard]] QString renamed(const Renamed& renamed) const;

private:
    struct Row
    {
        const MergeRow& row;
        const RowState& state;
    };
    [[nodiscard]] Cell cell(const Row& row, const std::string& column) const;
    [[nodiscard]] QString text(const Row& row, const std::string& column) const;
    [[nodiscard]] QString moment(const Row& row, const std::string& day,
                                 const std::string& minute) const;
    [[nodiscard]] std::int64_t trayOf(const Row& row) const;
    [[nodiscard]] QString trayText(std::int64_t tray) const;
    [[nodiscard]] QString words(const Row& row, int longest) const;
    [[nodiscard]] QString wordsOfStay(const Row& row) const;
    [[nodiscard]] QString wordsOfStage(const Row& row) const;
    [[nodiscard]] QString wordsOfTray(const Row& row) const;
    [[nodiscard]] QString wordsOfPiece(const Row& row) const;
    [[nodiscard]] QString wordsOfWatering(const Row& row) const;
    [[nodiscard]] QString wordsOfCells(const Row& row, int longest) const;
    [[nodiscard]] QString nothing(const MergeRow& row) const;
    [[nodiscard]] QString topic(const MergeItem& item) const;

    Journal& m_journal;
    const ComingBack& m_coming;
    UnitText m_units;
    QString m_copy;
    std::map<std::int64_t, QString> m_codes; // of trays that only the copy has
    std::map<std::int64_t, QString> m_places;
    std::map<std::int64_t, QString> m_pieces;
};

} // namespace plumule::ui
