#pragma once

#include "core/base/id.h"

namespace plumule {

struct TrialTag;
struct TrayTag;
struct TrayStageTag;
struct StayTag;
struct HeightTag;
struct TrayNoteTag;
struct PhotoTag;
using TrialId = Id<TrialTag>; // a tray says which trial it belongs to; trials stand on trays
using TrayId = Id<TrayTag>;
using TrayStageId = Id<TrayStageTag>;
using StayId = Id<StayTag>;
using HeightId = Id<HeightTag>;
using TrayNoteId = Id<TrayNoteTag>;
using PhotoId = Id<PhotoTag>;

} // namespace plumule
