#include "core/week/week.h"

#include "core/week/week_maker.h"

#include <algorithm>

namespace plumule {

const char* toText(ProposalShift shift)
{
    switch (shift) {
    case ProposalShift::None:
        return "none";
    case ProposalShift::Late:
        return "late";
    case ProposalShift::Soak:
        return "soak";
    case ProposalShift::Places:
        return "places";
    case ProposalShift::Pieces:
        return "pieces";
    case ProposalShift::NoPlaces:
        return "no_places";
    case ProposalShift::NoPieces:
        return "no_pieces";
    }
    return "";
}

std::vector<const WeekEntry*> WeekDay::of(WeekTask task) const
{
    std::vector<const WeekEntry*> found;
    for (const WeekEntry& entry : entries) {
        if (entry.task == task) {
            found.push_back(&entry);
        }
    }
    return found;
}

int Week::total(WeekTask task) const
{
    int sum = 0;
    for (const WeekDay& day : days) {
        for (const WeekEntry* entry : day.of(task)) {
            sum += task == WeekTask::Order ? 1 : entry->count;
        }
    }
    return sum;
}

Week weekFrom(const WeekFacts& facts)
{
    WeekMaker maker(facts);
    maker.addGrowing();
    maker.addDirtyPieces();
    maker.addPlans();
    maker.addRepeats();
    maker.addOrders();
    return maker.finish();
}

} // namespace plumule
