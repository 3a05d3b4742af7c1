#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

// What the grower means to do. The history keeps its key for good.
enum class Intention
{
    SowTrays,
    MoveTrayOn, // to a stage that the history does not name
    BeginSoak,
    PutUnderWeight,
    PutIntoBlackout,
    PutIntoLight,
    HoldTrayBack,
    CorrectStart,
    MoveTray,
    DiscardTray,
    SetTrayAside,
    CountTrayAgain,
    NoteHeight,
    WriteNote,
    RemoveNote,
    AttachPhoto,
    RemovePhoto,
    ImportTrays,
    ImportTable, // of other rows
    TickWatering,
    TickAllWaterings,
    UntickWatering,
    FindNoNeed,
    WaterAsNeeded,
    RemoveWatering,
    CorrectWatering,
    NoteReading,
    WriteDown, // several things about one tray at once
    ChangeRecipe,
    RecordHarvest,
    RecordResidue,
    CorrectHarvest,
    SavePrice,
    RemovePrice,
    ChangeLabour,
    BeginWork, // its timer
    EndWork,
    SaveWork,
    RemoveWork,
    ChangeRoom,
    AddRack,
    ChangeRack,
    RemoveRack,
    AddShelf,
    ChangeShelf,
    RemoveShelf,
    SetPlaces,
    AddVariety,
    ChangeVariety,
    RemoveVariety,
    AddSeedLot,
    ChangeSeedLot,
    RemoveSeedLot,
    CountSeedLot,
    AddMedium,
    ChangeMedium,
    RemoveMedium,
    AddPieces,
    RetirePiece,
    SanitisePieces,
    AddTrial,
    ChangeTrial,
    RemoveTrial,
    PlanTrial,
    SowTrial,
    PlanTasting,
    EnterScore,
    ClearScore,
    CloseTasting,
    RemoveTasting,
    DeclareSeason,
    ChangeSeason,
    RemoveSeason,
    GroupMedium,
    BringCopyBack,
    BringInReadings, // of a climate logger
    MeasureLampLight,
    MoveTrays,    // several at once
    SwapTrays,    // two, each to the other's place
    TakeTraysOff, // several off the racks
    AddRepeat,
    ChangeRepeat,
    EndRepeat,
    SkipRepeat, // on one of its days
    AddOrder,
    ChangeOrder,
    EndOrder,
    RemoveOrder,
    PutCutsToOrder,
    ChangeSupply,
    CountSupply,
    BuySupply,
    MarkLowSeed,
};

[[nodiscard]] const char* toText(Intention intention);
[[nodiscard]] bool fromText(std::string_view text, Intention& intention);

// One intention while it is carried out, as the history will tell it.
struct Deed
{
    Intention what;
    std::string whom; // it was done to, in the grower's words: "RD029"
    // What it came to, for the sentence. A move: shelf and place's number, or nothing off the
    // racks, of each tray; two that were swapped: their codes; a height: µm; a weight: mg net, a
    // corrected one what it was before that; what was discarded or set aside: why; of a copy that
    // was brought back: how many acts, then what met and belongs to no tray, as it was not kept;
    // readings: the logger and how many hours; a repeating sowing that was skipped: the day; of an
    // order: mg, its day and whom it is for; what was counted or bought: how much, in which unit.
    std::vector<std::string> with;
};

} // namespace plumule
