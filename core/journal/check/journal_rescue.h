#pragma once

#include "core/storage/rescue.h"

namespace plumule {

// As rescueFile(), knowing what the tables are about: words that are none are left out, and a
// variety or a medium that is lost has one in its place that is called `lostName` and its number,
// so that its trays are kept.
[[nodiscard]] Result<RescueReport> rescueJournal(const std::filesystem::path& old,
                                                 const std::filesystem::path& fresh,
                                                 const std::string& lostName,
                                                 const Progress& progress = {});

} // namespace plumule
