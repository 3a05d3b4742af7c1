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

struct SupplyTag;
struct SupplyCountTag;
using SupplyId = Id<SupplyTag>;
using SupplyCountId = Id<SupplyCountTag>;

// µL, or pieces, as the supply's unit says.
using SupplyAmount = Quantity<struct SupplyDimension>;

enum class SupplyKind
{
    Medium,      // a loose mix, or mats that are used once: a tray sown takes its share
    Concentrate, // of a water recipe: taken by the nutrient or pH-set water that was given
    Sanitiser,   // each piece sanitised with it takes its share
    Packaging,   // each cut takes its share
    Other        // only counted
};
[[nodiscard]] const char* toText(SupplyKind kind); // medium, concentrate, …
bool fromText(std::string_view text, SupplyKind& kind);

enum class SupplyUnit
{
    Millilitre, // stored in µL
    Piece
};
[[nodiscard]] const char* toText(SupplyUnit unit); // millilitre, piece
bool fromText(std::string_view text, SupplyUnit& unit);

// What is used up and bought again, other than seed.
struct Supply
{
    SupplyId id;
    std::string name; // a medium's is the medium's own
    SupplyKind kind = SupplyKind::Other;
    std::optional<MediumId> medium; // of SupplyKind::Medium
    SupplyUnit unit = SupplyUnit::Piece;
    std::optional<SupplyAmount> eachUse; // a cut, a piece sanitised
    std::optional<int> lowDays;          // runs low below; none: kUsualLowDays
    std::optional<SupplyAmount> lowAmount;
    bool isRetired = false; // no longer kept
    bool operator==(const Supply&) const = default;
};

enum class SupplyEvent
{
    Counted, // the shelf: so much is there
    Bought   // so much came in
};
[[nodiscard]] const char* toText(SupplyEvent event); // counted, bought
bool fromText(std::string_view text, SupplyEvent& event);

struct SupplyCount
{
    SupplyCountId id;
    SupplyId supply;
    Date on;
    int minute = 0;
    SupplyEvent what = SupplyEvent::Counted;
    SupplyAmount amount;
    std::string note;
    bool operator==(const SupplyCount&) const = default;

    [[nodiscard]] Moment at() const { return {on, minute}; }
};

[[nodiscard]] constexpr SupplyAmount pieces(std::int64_t count)
{
    return SupplyAmount::ofCount(count);
}
[[nodiscard]] constexpr SupplyAmount asSupply(Volume volume)
{
    return SupplyAmount::ofCount(volume.count());
}
[[nodiscard]] constexpr Volume asVolume(SupplyAmount amount)
{
    return Volume::ofCount(amount.count());
}

// Missing name; Invalid: a share, a mark or days that are below 0.
[[nodiscard]] Done checkSupply(const Supply& supply);

} // namespace plumule
