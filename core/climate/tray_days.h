#pragma once

#include "core/climate/climate_days.h"
#include "core/tray/tray.h"

namespace plumule {

// A tray that grew for longer was forgotten: no more of its days are looked at.
inline constexpr int kMostTrayDays = 400;

// The days from its sowing to `until`, each with the shelf it stood on: of the stay that began
// last. In light are the whole days between the one on which it came into light and `until`.
[[nodiscard]] std::vector<TrayDay> trayDays(const Tray& tray, Date until,
                                            const std::vector<Stay>& stays,
                                            const std::vector<Place>& places,
                                            std::optional<Moment> lightFrom);

// Over those days.
[[nodiscard]] GrowthClimate growthClimate(const RoomClimate& climate, const RoomLayout& layout,
                                          const std::vector<TrayDay>& days);

} // namespace plumule
