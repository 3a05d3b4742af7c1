#include "core/trial/draw.h"

#include "core/stats/probability/steady_draw.h"
#include "core/trial/draft_rules.h"
#include "core/trial/trial_reason.h"

#include <algorithm>
#include <numeric>

namespace plumule {
namespace {

using Layout = std::vector<PlannedTray>;

std::size_t placesIn(const std::vector<FreeShelf>& free)
{
    return std::accumulate(
        free.begin(), free.end(), std::size_t{0},
        [](std::size_t sum, const FreeShelf& shelf) { return sum + shelf.places.size(); });
}

// Each treatment that many times, in random order.
std::vector<int> shuffledTreatments(std::size_t treatments, int times, stats::SteadyDraw& draw)
{
    std::vector<int> all;
    for (std::size_t treatment = 0; treatment < treatments; ++treatment) {
        all.insert(all.end(), static_cast<std::size_t>(times), static_cast<int>(treatment));
    }
    draw.shuffle(all);
    return all;
}

std::vector<int> shuffledNumbers(std::size_t count, stats::SteadyDraw& draw)
{
    return shuffledTreatments(count, 1, draw);
}

void put(Layout& layout, int treatment, int block, int position, PlaceId place)
{
    PlannedTray tray;
    tray.treatment = treatment;
    tray.block = block;
    tray.position = position;
    tray.place = place;
    layout.push_back(tray);
}

Layout drawnAnywhere(const TrialDraft& draft, const std::vector<FreeShelf>& free,
                     stats::SteadyDraw& draw)
{
    const std::vector<int> order =
        shuffledTreatments(draft.treatments.size(), draft.plan.traysEach, draw);
    Layout layout;
    for (const FreeShelf& shelf : free) {
        for (const Place& place : shelf.places) {
            if (layout.size() < order.size()) {
                const auto next = static_cast<int>(layout.size());
                put(layout, order[layout.size()], 1, next + 1, place.id);
            }
        }
    }
    return layout;
}

// How many blocks each shelf takes: one each in walking order, then a second one, until all stand.
// Fewer than asked for where there is no more room.
std::vector<std::size_t> blocksByShelf(const std::vector<FreeShelf>& free, std::size_t blockSize,
                                       std::size_t blocks)
{
    std::vector<std::size_t> taken(free.size(), 0);
    bool hasMore = true;
    while (blocks > 0 && hasMore) {
        hasMore = false;
        for (std::size_t shelf = 0; shelf < free.size() && blocks > 0; ++shelf) {
            if ((taken[shelf] + 1) * blockSize <= free[shelf].places.size()) {
                ++taken[shelf];
                --blocks;
                hasMore = true;
            }
        }
    }
    return taken;
}

Result<Layout> drawnInBlocks(const TrialDraft& draft, const std::vector<FreeShelf>& free,
                             stats::SteadyDraw& draw)
{
    const auto blocks = static_cast<std::size_t>(draft.plan.blocks);
    const int times = draft.plan.traysEach / draft.plan.blocks;
    const std::size_t size = draft.treatments.size() * static_cast<std::size_t>(times);
    const std::vector<std::size_t> taken = blocksByShelf(free, size, blocks);
    const auto found = std::accumulate(taken.begin(), taken.end(), std::size_t{0});
    if (found < blocks) {
        return fail(ErrorKind::Conflict, TrialReason::BlockPlaces, found, size);
    }
    Layout layout;
    int block = 0;
    for (std::size_t shelf = 0; shelf < free.size(); ++shelf) {
        for (std::size_t onShelf = 0; onShelf < taken[shelf]; ++onShelf) {
            const std::vector<int> order = shuffledTreatments(draft.treatments.size(), times, draw);
            ++block;
            for (std::size_t i = 0; i < size; ++i) {
                put(layout, order[i], block, static_cast<int>(i) + 1,
                    free[shelf].places[onShelf * size + i].id);
            }
        }
    }
    return layout;
}

// Shelves, and place numbers that are free on all of them.
struct Square
{
    std::vector<const FreeShelf*> shelves;
    std::vector<int> numbers;
};

std::vector<int> numbersOn(const FreeShelf& shelf)
{
    std::vector<int> numbers;
    for (const Place& place : shelf.places) {
        numbers.push_back(place.number);
    }
    std::sort(numbers.begin(), numbers.end());
    return numbers;
}

// The first shelves in walking order that share enough free place numbers.
bool completeSquare(const std::vector<FreeShelf>& free, std::size_t from, std::size_t size,
                    Square& square)
{
    if (square.shelves.size() == size) {
        return true;
    }
    for (std::size_t i = from; i < free.size(); ++i) {
        const std::vector<int> here = numbersOn(free[i]);
        std::vector<int> shared = here;
        if (!square.shelves.empty()) {
            shared.clear();
            std::set_intersection(here.begin(), here.end(), square.numbers.begin(),
                                  square.numbers.end(), std::back_inserter(shared));
        }
        if (shared.size() < size) {
            continue;
        }
        const std::vector<int> before = std::exchange(square.numbers, shared);
        square.shelves.push_back(&free[i]);
        if (completeSquare(free, i + 1, size, square)) {
            return true;
        }
        square.shelves.pop_back();
        square.numbers = before;
    }
    return false;
}

PlaceId placeNumbered(const FreeShelf& shelf, int number)
{
    const auto found = std::find_if(shelf.places.begin(), shelf.places.end(),
                                    [&](const Place& place) { return place.number == number; });
    return found->id;
}

Result<Layout> drawnInSquare(const TrialDraft& draft, const std::vector<FreeShelf>& free,
                             stats::SteadyDraw& draw)
{
    const std::size_t size = draft.treatments.size();
    Square square;
    if (!completeSquare(free, 0, size, square)) {
        return fail(ErrorKind::Conflict, TrialReason::SquarePlaces, size);
    }
    const std::vector<int> rows = shuffledNumbers(size, draw);
    const std::vector<int> columns = shuffledNumbers(size, draw);
    const std::vector<int> treatments = shuffledNumbers(size, draw);
    Layout layout;
    for (std::size_t row = 0; row < size; ++row) {
        for (std::size_t column = 0; column < size; ++column) {
            const auto cell = static_cast<std::size_t>(rows[row] + columns[column]) % size;
            put(layout, treatments[cell], static_cast<int>(row) + 1, static_cast<int>(column) + 1,
                placeNumbered(*square.shelves[row], square.numbers[column]));
        }
    }
    return layout;
}

} // namespace

Result<std::vector<PlannedTray>> drawLayout(const TrialDraft& draft,
                                            const std::vector<FreeShelf>& free)
{
    if (auto checked = checkDesign(draft); !checked) {
        return passOn(checked);
    }
    const std::size_t places = placesIn(free);
    if (places < static_cast<std::size_t>(draft.count())) {
        return fail(ErrorKind::Conflict, TrialReason::TooFewPlaces, places, draft.count());
    }
    stats::SteadyDraw draw(static_cast<std::uint64_t>(draft.plan.drawNumber));
    switch (draft.plan.design) {
    case Design::RandomizedBlocks:
        return drawnInBlocks(draft, free, draw);
    case Design::LatinSquare:
        return drawnInSquare(draft, free, draw);
    case Design::CompletelyRandom:
        break;
    }
    return drawnAnywhere(draft, free, draw);
}

Done moveByHand(std::vector<PlannedTray>& trays, std::size_t tray, PlaceId place)
{
    if (tray >= trays.size()) {
        return fail(ErrorKind::NotFound, TrialReason::PlannedTrayUnknown);
    }
    PlannedTray& moved = trays[tray];
    if (moved.place == place) {
        return {};
    }
    for (PlannedTray& other : trays) {
        if (other.place == place) {
            other.place = moved.place;
            other.isMoved = true;
        }
    }
    moved.place = place;
    moved.isMoved = true;
    return {};
}

} // namespace plumule
