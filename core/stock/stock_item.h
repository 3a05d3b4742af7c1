#pragma once

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/quantity.h"
#include "core/base/result.h"
#include "core/medium/medium.h"

#include <optional>
#include <string>
#include <string_view>

namespace plumule {

struct StockItemTag;
struct StockCountTag;
using StockItemId = Id<StockItemTag>;
using StockCountId = Id<StockCountTag>;

// µL, or pieces, as the supply's unit says.
using StockAmount = Quantity<struct StockDimension>;

enum class StockKind
{
    Medium,      // a loose mix, or mats that are used once: a tray sown takes its share
    Concentrate, // of a water recipe: taken by the nutrient or pH-set water that was given
    Sanitiser,   // each piece sanitised with it takes its share
    Packaging,   // each cut takes its share
    Other        // only counted
};
[[nodiscard]] const char* toText(StockKind kind); // medium, concentrate, …
bool fromText(std::string_view text, StockKind& kind);

enum class StockUnit
{
    Millilitre, // stored in µL
    Piece
};
[[nodiscard]] const char* toText(StockUnit unit); // millilitre, piece
bool fromText(std::string_view text, StockUnit& unit);

// What is used up and bought again, other than seed.
struct StockItem
{
    StockItemId id;
    std::string name; // a medium's is the medium's own
    StockKind kind = StockKind::Other;
    std::optional<MediumId> medium; // of StockKind::Medium
    StockUnit unit = StockUnit::Piece;
    std::optional<StockAmount> eachUse; // a cut, a piece sanitised
    std::optional<int> lowDays;         // runs low below; none: kUsualLowDays
    std::optional<StockAmount> lowAmount;
    bool isRetired = false; // no longer kept
    bool operator==(const StockItem&) const = default;
};

enum class StockEvent
{
    Counted, // the shelf: so much is there
    Bought   // so much came in
};
[[nodiscard]] const char* toText(StockEvent event); // counted, bought
bool fromText(std::string_view text, StockEvent& event);

struct StockCount
{
    StockCountId id;
    StockItemId supply;
    Date on;
    int minute = 0;
    StockEvent what = StockEvent::Counted;
    StockAmount amount;
    std::string note;
    bool operator==(const StockCount&) const = default;

    [[nodiscard]] Moment at() const { return {on, minute}; }
};

[[nodiscard]] constexpr StockAmount pieces(std::int64_t count)
{
    return StockAmount::ofCount(count);
}
[[nodiscard]] constexpr StockAmount asStock(Volume volume)
{
    return StockAmount::ofCount(volume.count());
}
[[nodiscard]] constexpr Volume asVolume(StockAmount amount)
{
    return Volume::ofCount(amount.count());
}

// Missing name; Invalid: a share, a mark or days that are below 0.
// Of one kind and medium, or, where they are of none, of one name.
[[nodiscard]] bool isSameThing(const StockItem& a, const StockItem& b);
[[nodiscard]] Done checkStockItem(const StockItem& supply);

} // namespace plumule
