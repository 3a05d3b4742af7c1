#pragma once

#include "core/journal/merge/merge_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include <set>

namespace plumule {

// What a test writes down of what is not kept: each cell of it.
inline std::string wordsOfCells(const WholeRow& row)
{
    std::string words;
    for (const Cell& cell : row) {
        if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
            words += " " + std::to_string(*whole);
        } else if (const auto* text = std::get_if<std::string>(&cell)) {
            words += " " + *text;
        } else if (const auto* real = std::get_if<double>(&cell)) {
            words += " " + std::to_string(*real);
        } else {
            words += " -";
        }
    }
    return words;
}

inline std::string wordsOfRow(const MergeItem& item, const MergeRow& row)
{
    const RowState& lost = item.chosen == Side::Here ? row.there : row.here;
    return row.key.table + (lost ? wordsOfCells(*lost) : " none of " + std::to_string(row.key.id));
}

// All on each of the item's trays; on none where it has none.
inline std::string plainWords(const MergeItem& item, std::int64_t tray)
{
    if ((tray == 0) != item.trays.empty()) {
        return {};
    }
    std::string words;
    for (const MergeRow& row : rowsNotKept(item)) {
        words += wordsOfRow(item, row) + ";";
    }
    return words;
}

// A journal and copies of it in the same folder, all worked in.
class CopiesTest : public JournalTest
{
protected:
    using Choose = std::function<Side(const MergeItem&)>;
    static Side here(const MergeItem&) { return Side::Here; }
    static Side there(const MergeItem&) { return Side::There; }

    [[nodiscard]] std::filesystem::path pathOf(const std::string& name) const
    {
        return folder.path() / (name + ".plumule");
    }

    // Takes a copy along and opens it.
    std::unique_ptr<Journal> takeAlong(const std::string& name)
    {
        const auto copy = journal->copies().beginCopy(name);
        EXPECT_TRUE(copy) << told(copy.error());
        const Done written = journal->copies().writeCopyTo(*copy, pathOf(name), {});
        EXPECT_TRUE(written) << told(written.error());
        auto opened = Journal::open(pathOf(name), clock);
        EXPECT_TRUE(opened) << told(opened.error());
        return std::move(*opened);
    }

    Result<std::unique_ptr<ComingBack>> comeBack(const std::string& name)
    {
        auto file = openCopy(pathOf(name));
        return file ? journal->copies().comeBack(std::move(*file))
                    : Result<std::unique_ptr<ComingBack>>(passOn(file));
    }

    // Chooses until nothing is left to choose.
    static MergePlan planBy(ComingBack& coming, const Choose& choose)
    {
        Choices choices;
        for (int round = 0; round < 20; ++round) {
            auto plan = coming.plan(choices);
            if (!plan) {
                ADD_FAILURE() << told(plan.error());
                return {};
            }
            if (plan->unchosen() == 0) {
                return *plan;
            }
            for (const MergeItem& item : plan->items) {
                if (!item.chosen) {
                    const Side side = choose(item);
                    for (const Family& family : item.families) {
                        choices[family] = side;
                    }
                }
            }
        }
        ADD_FAILURE() << "the questions do not end";
        return {};
    }

    BackupMade backUpFirst()
    {
        const auto made = journal->backUpInto(BackupStore::of(journal->path()), {});
        EXPECT_TRUE(made) << told(made.error());
        return *made;
    }

    Result<BroughtBack> bringBack(const std::string& name, const Choose& choose)
    {
        auto coming = comeBack(name);
        if (!coming) {
            return passOn(coming);
        }
        const MergePlan plan = planBy(**coming, choose);
        met = static_cast<int>(plan.items.size());
        return (*coming)->bringTogether(plan, plainWords, backUpFirst());
    }

    static SowingDraft sowing(Journal& of, VarietyId variety, MediumId medium)
    {
        SowingDraft draft;
        draft.variety = variety;
        draft.medium = medium;
        draft.at = of.clock().now();
        return draft;
    }
    TrayId sowIn(Journal& of, std::optional<PlaceId> place = std::nullopt)
    {
        SowingDraft draft = sowing(of, varietyNamed("Radish"), mediumNamed("Coir mix"));
        if (place) {
            draft.places = {*place};
        }
        const auto sown = of.trays().sow(draft);
        EXPECT_TRUE(sown) << told(sown.error());
        return sown->front();
    }
    static WeighingDraft cutOf(const Journal& of, TrayId tray, double gross, bool isLast)
    {
        WeighingDraft cut;
        cut.tray = tray;
        cut.bowls = {{grams(gross), grams(40)}};
        cut.at = of.clock().now();
        cut.isLast = isLast;
        cut.accepted = {Doubt::DecimalSlip,     Doubt::OutsideExpected, Doubt::AlreadyWeighed,
                        Doubt::UnstableReading, Doubt::TareForgotten,   Doubt::NotDueYet};
        return cut;
    }
    std::vector<PlaceId> freePlaces()
    {
        std::vector<PlaceId> places;
        const auto spots = journal->room().freeSpots().value();
        for (const Spot& spot : spots) {
            places.push_back(spot.place);
        }
        return places;
    }
    std::string notesOf(Journal& of, TrayId tray)
    {
        std::string notes;
        const TraySheet sheet = of.trays().sheet(tray).value();
        for (const TrayNote& note : sheet.notes) {
            notes += note.text + "\n";
        }
        return notes;
    }
    std::string codeOf(TrayId tray)
    {
        return journal->trays().sheet(tray).value().record.tray.code;
    }
    void wait(int minutes) { clock.set(clock.now() + minutes); }

    int met = 0; // in the last bringBack()
};

} // namespace plumule
