#include "core/journal/ledger/intention.h"

#include <algorithm>
#include <array>

namespace plumule {
namespace {

struct IntentionKey
{
    Intention intention;
    const char* key;
};

constexpr std::array kIntentionKeys = {
    IntentionKey{Intention::SowTrays, "tray.sow"},
    IntentionKey{Intention::MoveTrayOn, "tray.move_on"},
    IntentionKey{Intention::BeginSoak, "tray.begin_soak"},
    IntentionKey{Intention::PutUnderWeight, "tray.put_under_weight"},
    IntentionKey{Intention::PutIntoBlackout, "tray.put_into_blackout"},
    IntentionKey{Intention::PutIntoLight, "tray.put_into_light"},
    IntentionKey{Intention::HoldTrayBack, "tray.not_yet"},
    IntentionKey{Intention::CorrectStart, "tray.correct_start"},
    IntentionKey{Intention::MoveTray, "tray.move_to"},
    IntentionKey{Intention::DiscardTray, "tray.discard"},
    IntentionKey{Intention::SetTrayAside, "tray.set_aside"},
    IntentionKey{Intention::CountTrayAgain, "tray.count_again"},
    IntentionKey{Intention::NoteHeight, "tray.note_height"},
    IntentionKey{Intention::WriteNote, "tray.write_note"},
    IntentionKey{Intention::RemoveNote, "tray.remove_note"},
    IntentionKey{Intention::AttachPhoto, "tray.attach_photo"},
    IntentionKey{Intention::RemovePhoto, "tray.remove_photo"},
    IntentionKey{Intention::ImportTrays, "tray.import"},
    IntentionKey{Intention::ImportTable, "table.import"},
    IntentionKey{Intention::TickWatering, "watering.tick"},
    IntentionKey{Intention::TickAllWaterings, "watering.tick_all"},
    IntentionKey{Intention::UntickWatering, "watering.untick"},
    IntentionKey{Intention::FindNoNeed, "watering.need_nothing"},
    IntentionKey{Intention::WaterAsNeeded, "watering.between"},
    IntentionKey{Intention::RemoveWatering, "watering.remove"},
    IntentionKey{Intention::CorrectWatering, "watering.correct"},
    IntentionKey{Intention::NoteReading, "watering.note_reading"},
    IntentionKey{Intention::WriteDown, "watering.write_down"},
    IntentionKey{Intention::ChangeRecipe, "watering.change_recipe"},
    IntentionKey{Intention::RecordHarvest, "harvest.record"},
    IntentionKey{Intention::RecordResidue, "harvest.record_residue"},
    IntentionKey{Intention::CorrectHarvest, "harvest.correct"},
    IntentionKey{Intention::SavePrice, "price.save"},
    IntentionKey{Intention::RemovePrice, "price.remove"},
    IntentionKey{Intention::ChangeLabour, "labour.change"},
    IntentionKey{Intention::BeginWork, "work.begin"},
    IntentionKey{Intention::EndWork, "work.end"},
    IntentionKey{Intention::SaveWork, "work.save"},
    IntentionKey{Intention::RemoveWork, "work.remove"},
    IntentionKey{Intention::ChangeRoom, "room.change"},
    IntentionKey{Intention::AddRack, "rack.add"},
    IntentionKey{Intention::ChangeRack, "rack.change"},
    IntentionKey{Intention::RemoveRack, "rack.remove"},
    IntentionKey{Intention::AddShelf, "shelf.add"},
    IntentionKey{Intention::ChangeShelf, "shelf.change"},
    IntentionKey{Intention::RemoveShelf, "shelf.remove"},
    IntentionKey{Intention::SetPlaces, "shelf.set_places"},
    IntentionKey{Intention::AddVariety, "variety.add"},
    IntentionKey{Intention::ChangeVariety, "variety.change"},
    IntentionKey{Intention::RemoveVariety, "variety.remove"},
    IntentionKey{Intention::AddSeedLot, "seed_lot.add"},
    IntentionKey{Intention::ChangeSeedLot, "seed_lot.change"},
    IntentionKey{Intention::RemoveSeedLot, "seed_lot.remove"},
    IntentionKey{Intention::CountSeedLot, "seed_lot.count"},
    IntentionKey{Intention::AddMedium, "medium.add"},
    IntentionKey{Intention::ChangeMedium, "medium.change"},
    IntentionKey{Intention::RemoveMedium, "medium.remove"},
    IntentionKey{Intention::AddPieces, "piece.add"},
    IntentionKey{Intention::RetirePiece, "piece.retire"},
    IntentionKey{Intention::SanitisePieces, "piece.sanitise"},
    IntentionKey{Intention::AddTrial, "trial.add"},
    IntentionKey{Intention::ChangeTrial, "trial.change"},
    IntentionKey{Intention::RemoveTrial, "trial.remove"},
    IntentionKey{Intention::PlanTrial, "trial.plan"},
    IntentionKey{Intention::SowTrial, "trial.sow"},
    IntentionKey{Intention::PlanTasting, "tasting.plan"},
    IntentionKey{Intention::EnterScore, "tasting.score"},
    IntentionKey{Intention::ClearScore, "tasting.clear_score"},
    IntentionKey{Intention::CloseTasting, "tasting.close"},
    IntentionKey{Intention::RemoveTasting, "tasting.remove"},
    IntentionKey{Intention::DeclareSeason, "season.add"},
    IntentionKey{Intention::ChangeSeason, "season.change"},
    IntentionKey{Intention::RemoveSeason, "season.remove"},
    IntentionKey{Intention::GroupMedium, "medium.group"},
    IntentionKey{Intention::BringCopyBack, "copy.bring_back"},
    IntentionKey{Intention::BringInReadings, "climate.bring_in"},
    IntentionKey{Intention::MeasureLampLight, "climate.lamp_light"},
    IntentionKey{Intention::MoveTrays, "tray.move_several"},
    IntentionKey{Intention::SwapTrays, "tray.swap"},
    IntentionKey{Intention::TakeTraysOff, "tray.take_several_off"},
    IntentionKey{Intention::AddRepeat, "repeat.add"},
    IntentionKey{Intention::ChangeRepeat, "repeat.change"},
    IntentionKey{Intention::EndRepeat, "repeat.end"},
    IntentionKey{Intention::SkipRepeat, "repeat.skip"},
    IntentionKey{Intention::AddOrder, "order.add"},
    IntentionKey{Intention::ChangeOrder, "order.change"},
    IntentionKey{Intention::EndOrder, "order.end"},
    IntentionKey{Intention::RemoveOrder, "order.remove"},
    IntentionKey{Intention::PutCutsToOrder, "order.put_cuts"},
    IntentionKey{Intention::ChangeSupply, "supply.change"},
    IntentionKey{Intention::CountSupply, "supply.count"},
    IntentionKey{Intention::BuySupply, "supply.buy"},
    IntentionKey{Intention::MarkLowSeed, "seed.mark_low"},
};

} // namespace

const char* toText(Intention intention)
{
    const auto found =
        std::find_if(kIntentionKeys.begin(), kIntentionKeys.end(),
                     [&](const IntentionKey& one) { return one.intention == intention; });
    return found == kIntentionKeys.end() ? "" : found->key;
}

bool fromText(std::string_view text, Intention& intention)
{
    const auto found = std::find_if(kIntentionKeys.begin(), kIntentionKeys.end(),
                                    [&](const IntentionKey& one) { return one.key == text; });
    if (found == kIntentionKeys.end()) {
        return false;
    }
    intention = found->intention;
    return true;
}

} // namespace plumule
