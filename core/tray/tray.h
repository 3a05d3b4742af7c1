#pragma once

#include "core/base/date.h"
#include "core/medium/medium.h"
#include "core/room/room.h"
#include "core/tray/tray_id.h"
#include "core/variety/variety.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

enum class TrayState
{
    Growing,
    Harvested, // its last cut is weighed
    Discarded
};
[[nodiscard]] const char* toText(TrayState state); // growing, harvested, discarded
bool fromText(std::string_view text, TrayState& state);

// One growing tray with its seed: what is watered, moved and weighed, and the experimental unit.
struct Tray
{
    TrayId id;
    std::string code; // short, unique, never used again: "RD029"
    VarietyId variety;
    std::optional<SeedLotId> seedLot;
    MediumId medium;
    std::optional<PieceId> piece;
    std::optional<Mass> seed;
    Date sownOn; // day 1; while it soaks, the planned day
    int sownMinute = 0;
    std::optional<TrialId> trial;
    std::optional<int> block;
    TrayState state = TrayState::Growing;
    std::optional<Date> endedOn;
    std::optional<int> endedMinute;
    std::optional<std::string> discardReason;
    std::optional<std::string> setAsideReason; // left out of reviews, and why
    std::optional<std::string> sownBy;
    bool operator==(const Tray&) const = default;

    [[nodiscard]] Moment sownAt() const { return {sownOn, sownMinute}; }
};

// One stage of one tray: the protocol as it was at sowing, and what became of it.
struct TrayStage
{
    TrayStageId id;
    TrayId tray;
    int position = 0;
    Stage stage = Stage::UnderWeight;
    Date plannedOn; // as planned at sowing; never moved
    int plannedMinute = 0;
    int lengthMinutes = 0;
    int delayMinutes = 0; // added by "not yet"
    std::optional<Date> startedOn;
    std::optional<int> startedMinute;
    std::string cue; // for leaving this stage
    int wateringsPerDay = 0;
    WateringMethod method = WateringMethod::None;
    std::optional<Volume> amount;
    WaterKind water = WaterKind::Plain; // resolved for this tray's medium
    bool operator==(const TrayStage&) const = default;

    [[nodiscard]] Moment planned() const { return {plannedOn, plannedMinute}; }
    // Looked at in every round, and watered where it is dry.
    [[nodiscard]] bool isAsNeeded() const
    {
        return wateringsPerDay == 0 && method != WateringMethod::None;
    }
    [[nodiscard]] std::optional<Moment> started() const
    {
        if (!startedOn) {
            return std::nullopt;
        }
        return Moment{*startedOn, startedMinute.value_or(0)};
    }
};

// A tray's time at one place; open while it stands there.
struct Stay
{
    StayId id;
    TrayId tray;
    PlaceId place;
    Date fromOn;
    int fromMinute = 0;
    std::optional<Date> toOn;
    std::optional<int> toMinute;
    bool operator==(const Stay&) const = default;
};

enum class ReadFrom
{
    Surface, // of the medium
    Rim      // of the tray: corrected by the medium's depth below it
};
[[nodiscard]] const char* toText(ReadFrom from); // surface, rim
bool fromText(std::string_view text, ReadFrom& from);

// One reading; a tray may have several a day.
struct Height
{
    HeightId id;
    TrayId tray;
    Date on;
    int minute = 0;
    Length reading;
    ReadFrom from = ReadFrom::Surface;
    bool operator==(const Height&) const = default;
};

struct TrayNote
{
    TrayNoteId id;
    TrayId tray;
    Date on;
    int minute = 0;
    std::string text;
    bool operator==(const TrayNote&) const = default;
};

// A picture kept as a file beside the journal.
struct Photo
{
    PhotoId id;
    TrayId tray;
    Date on;
    int minute = 0;
    std::string fileName; // within the journal's photo folder
    std::string caption;
    bool operator==(const Photo&) const = default;
};

// A tray with its stages in order, the place it stands or last stood at, and its names.
struct TrayRecord
{
    Tray tray;
    std::vector<TrayStage> stages;
    std::optional<PlaceId> place;
    std::string variety;
    Medium medium;
    std::optional<int> pieceNumber;
    std::optional<std::string> seedLot;
    std::optional<std::string> trialCode;
    std::optional<std::string> trialName;
};

// Which trays a list shows. Empty fields do not restrict.
struct TrayFilter
{
    std::string text; // in code, variety, medium, trial, seed lot, reasons, notes; any letter case
    std::optional<TrayState> state;
    std::optional<VarietyId> variety;
    std::optional<MediumId> medium;
    std::optional<TrialId> trial;
    std::optional<Date> sownFrom;
    std::optional<Date> sownTo;
};

// What is sown, once for each tray.
struct SowingDraft
{
    VarietyId variety;
    std::optional<SeedLotId> seedLot;
    MediumId medium;
    std::vector<PieceId> pieces; // one a tray, in order; empty for single-use media
    std::vector<PlaceId> places; // one a tray, in order; may be shorter: the rest stand nowhere yet
    int count = 1;
    std::optional<Mass> seedPerTray; // none: the variety's
    Moment at;                       // sown, or put to soak where `startsWithSoak`
    bool startsWithSoak = false;     // begin with the protocol's soak; sown when that ends
    std::optional<TrialId> trial;
    std::optional<int> block;
    std::optional<std::string> sownBy;
    std::optional<std::string> code; // for one tray only; none: the next free code
};

} // namespace plumule
