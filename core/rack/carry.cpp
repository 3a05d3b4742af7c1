#include "core/rack/carry.h"

#include <algorithm>

namespace plumule {
namespace {

struct Lifted
{
    TrayId tray;
    const StandingPlace* from = nullptr; // null: off the racks
};

std::vector<Lifted> liftedOf(const RoomRacks& room, const std::vector<TrayId>& trays)
{
    std::vector<Lifted> lifted;
    for (const TrayId tray : trays) {
        const bool isTwice = std::any_of(lifted.begin(), lifted.end(),
                                         [&](const Lifted& each) { return each.tray == tray; });
        if (!isTwice && room.find(tray) != nullptr) {
            lifted.push_back({tray, room.placeOf(tray)});
        }
    }
    std::stable_sort(lifted.begin(), lifted.end(), [](const Lifted& a, const Lifted& b) {
        if (a.from == nullptr || b.from == nullptr) {
            return a.from != nullptr && b.from == nullptr;
        }
        return a.from->spot.rank < b.from->spot.rank;
    });
    return lifted;
}

// How many places after the first one each of them lands.
std::vector<int> offsetsOf(const std::vector<Lifted>& lifted)
{
    std::vector<int> offsets;
    for (const Lifted& each : lifted) {
        const int after = offsets.empty() ? 0 : offsets.back() + 1;
        offsets.push_back(
            each.from == nullptr ? after : each.from->spot.rank - lifted.front().from->spot.rank);
    }
    return offsets;
}

bool isCarried(const Carry& carry, TrayId tray)
{
    return std::any_of(carry.trays.begin(), carry.trays.end(),
                       [&](const CarriedTray& each) { return each.tray == tray; });
}

void noteInTheWay(const RoomRacks& room, Carry& carry)
{
    const auto places = room.walk();
    for (CarriedTray& each : carry.trays) {
        const auto found =
            std::find_if(places.begin(), places.end(),
                         [&](const StandingPlace* place) { return place->spot.place == each.to; });
        if (found != places.end() && (*found)->tray && !isCarried(carry, (*found)->tray->tray)) {
            each.inTheWay = (*found)->tray->tray;
        }
    }
}

} // namespace

bool Carry::leadsSomewhere() const
{
    const bool allLand = std::all_of(trays.begin(), trays.end(),
                                     [](const CarriedTray& each) { return each.to.has_value(); });
    return allLand && std::any_of(trays.begin(), trays.end(),
                                  [](const CarriedTray& each) { return each.from != each.to; });
}

bool Carry::isAnyInTheWay() const
{
    return std::any_of(trays.begin(), trays.end(),
                       [](const CarriedTray& each) { return each.inTheWay.has_value(); });
}

Carry carryTo(const RoomRacks& room, const std::vector<TrayId>& trays, PlaceId at)
{
    const auto places = room.walk();
    const auto lifted = liftedOf(room, trays);
    const auto target = std::find_if(places.begin(), places.end(), [&](const StandingPlace* place) {
        return place->spot.place == at;
    });
    if (lifted.empty() || target == places.end()) {
        return {};
    }
    const std::vector<int> offsets = offsetsOf(lifted);
    const int count = static_cast<int>(places.size());
    const int wished = static_cast<int>(target - places.begin());
    const int first = std::max(0, std::min(wished, count - 1 - offsets.back()));
    Carry carry;
    for (std::size_t i = 0; i < lifted.size(); ++i) {
        CarriedTray each;
        each.tray = lifted[i].tray;
        if (lifted[i].from != nullptr) {
            each.from = lifted[i].from->spot.place;
        }
        if (const int place = first + offsets[i]; place < count) {
            each.to = places[static_cast<std::size_t>(place)]->spot.place;
        }
        carry.trays.push_back(each);
    }
    noteInTheWay(room, carry);
    return carry;
}

std::vector<TrayMove> putDown(const Carry& carry)
{
    std::vector<TrayMove> moves;
    for (const CarriedTray& each : carry.trays) {
        if (each.from != each.to) {
            moves.push_back({each.tray, each.to});
        }
    }
    return moves;
}

std::vector<TrayMove> swapped(const Carry& carry)
{
    std::vector<TrayMove> moves = putDown(carry);
    std::vector<PlaceId> left;
    for (const CarriedTray& each : carry.trays) {
        const bool isLandedOn =
            std::any_of(carry.trays.begin(), carry.trays.end(),
                        [&](const CarriedTray& other) { return other.to == each.from; });
        if (each.from && !isLandedOn) {
            left.push_back(*each.from);
        }
    }
    std::size_t next = 0;
    for (const CarriedTray& each : carry.trays) {
        if (each.inTheWay) {
            const bool isRoom = next < left.size();
            moves.push_back({*each.inTheWay, isRoom ? std::optional(left[next]) : std::nullopt});
            ++next;
        }
    }
    return moves;
}

std::vector<std::string> trialsDisturbed(const RoomRacks& room, const Carry& carry)
{
    std::vector<std::string> codes;
    for (const TrayMove& move : swapped(carry)) {
        const StandingTray* tray = room.find(move.tray);
        const StandingPlace* from = room.placeOf(move.tray);
        const StandingShelf* to = move.to ? room.shelfOf(*move.to) : nullptr;
        const bool staysOnShelf =
            from != nullptr && to != nullptr && from->spot.shelfId == to->shelf.id;
        if (tray == nullptr || !tray->trial || from == nullptr || staysOnShelf) {
            continue;
        }
        if (std::find(codes.begin(), codes.end(), *tray->trial) == codes.end()) {
            codes.push_back(*tray->trial);
        }
    }
    return codes;
}

} // namespace plumule
