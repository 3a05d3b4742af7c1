#pragma once

#include "core/tray/tray.h"

#include <optional>
#include <string>

namespace plumule {

// A question asked of several trays. Blocks are numbered on the trays themselves.
struct Trial
{
    TrialId id;
    std::string code; // "T3", unique
    std::string name;
    std::string question;
    std::optional<Mass> margin; // per tray: the smallest difference that would change what is done
    std::optional<MediumId> control;
    std::optional<Date> startedOn;
    std::string note;
    bool operator==(const Trial&) const = default;
};

} // namespace plumule
