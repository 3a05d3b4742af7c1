#pragma once

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/quantity.h"
#include "core/medium/medium.h"

#include <optional>
#include <string>

namespace plumule {

struct TrialTag;
using TrialId = Id<TrialTag>;

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
