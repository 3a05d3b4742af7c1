// Part of ui/text/text.h: what was done.
#include "ui/text/text.h"

#include "core/journal/journal.h"
#include "core/journal/ledger/intention.h"
#include "ui/text/deed_details.h"

#include <QCoreApplication>
#include <QDateTime>

namespace plumule::ui {
namespace {

class Deeds
{
    Q_DECLARE_TR_FUNCTIONS(Deeds)
};

QString deedSentence(Intention intention, const QString& whom)
{
    switch (intention) {
    case Intention::SowTrays:
        return Deeds::tr("Sowed %1.").arg(whom);
    case Intention::MoveTrayOn:
        return Deeds::tr("Moved %1 on to the next stage.").arg(whom);
    case Intention::BeginSoak:
        return Deeds::tr("Began the soak of %1.").arg(whom);
    case Intention::PutUnderWeight:
        return Deeds::tr("Put %1 under weight.").arg(whom);
    case Intention::PutIntoBlackout:
        return Deeds::tr("Moved %1 into blackout.").arg(whom);
    case Intention::PutIntoLight:
        return Deeds::tr("Moved %1 into light.").arg(whom);
    case Intention::HoldTrayBack:
        return Deeds::tr("Gave %1 more time in the present stage.").arg(whom);
    case Intention::CorrectStart:
        return Deeds::tr("Corrected the start of a stage of %1.").arg(whom);
    case Intention::MoveTray:
        return Deeds::tr("Moved %1 to another place.").arg(whom);
    case Intention::DiscardTray:
        return Deeds::tr("Discarded %1.").arg(whom);
    case Intention::SetTrayAside:
        return Deeds::tr("Set %1 aside.").arg(whom);
    case Intention::CountTrayAgain:
        return Deeds::tr("Counted %1 in again.").arg(whom);
    case Intention::NoteHeight:
        return Deeds::tr("Noted a height of %1.").arg(whom);
    case Intention::WriteNote:
        return Deeds::tr("Wrote a note on %1.").arg(whom);
    case Intention::RemoveNote:
        return Deeds::tr("Removed a note on %1.").arg(whom);
    case Intention::AttachPhoto:
        return Deeds::tr("Added a photo of %1.").arg(whom);
    case Intention::RemovePhoto:
        return Deeds::tr("Removed a photo of %1.").arg(whom);
    case Intention::ImportTrays:
        return Deeds::tr("Brought in the table %1.").arg(whom);
    case Intention::ImportTable:
        return Deeds::tr("Brought in the rows of %1.").arg(whom);
    case Intention::TickWatering:
    case Intention::TickAllWaterings:
        return Deeds::tr("Watered %1.").arg(whom);
    case Intention::UntickWatering:
        return Deeds::tr("Took the tick off %1.").arg(whom);
    case Intention::FindNoNeed:
        return Deeds::tr("Found that %1 needed no water.").arg(whom);
    case Intention::WaterAsNeeded:
        return Deeds::tr("Watered %1 as needed.").arg(whom);
    case Intention::RemoveWatering:
        return Deeds::tr("Took a watering of %1 out.").arg(whom);
    case Intention::CorrectWatering:
        return Deeds::tr("Corrected a watering of %1.").arg(whom);
    case Intention::NoteReading:
        return Deeds::tr("Noted pH or EC of %1.").arg(whom);
    case Intention::WriteDown:
        return Deeds::tr("Wrote down what was seen of %1.").arg(whom);
    case Intention::ChangeRecipe:
        return Deeds::tr("Changed the recipe of %1.").arg(whom);
    case Intention::RecordHarvest:
        return Deeds::tr("Weighed the harvest of %1.").arg(whom);
    case Intention::RecordResidue:
        return Deeds::tr("Weighed what %1 left behind.").arg(whom);
    case Intention::CorrectHarvest:
        return Deeds::tr("Corrected a weight of %1.").arg(whom);
    case Intention::SavePrice:
        return Deeds::tr("Saved the price of %1.").arg(whom);
    case Intention::RemovePrice:
        return Deeds::tr("Removed a price of %1.").arg(whom);
    case Intention::ChangeLabour:
        return Deeds::tr("Changed the minutes of %1.").arg(whom);
    case Intention::BeginWork:
        return Deeds::tr("Started the timer of %1.").arg(whom);
    case Intention::EndWork:
        return Deeds::tr("Stopped the timer of %1.").arg(whom);
    case Intention::SaveWork:
        return Deeds::tr("Wrote down a time of %1.").arg(whom);
    case Intention::RemoveWork:
        return Deeds::tr("Removed a time of %1.").arg(whom);
    case Intention::ChangeRoom:
        return Deeds::tr("Changed the room %1.").arg(whom);
    case Intention::AddRack:
        return Deeds::tr("Added rack %1.").arg(whom);
    case Intention::ChangeRack:
        return Deeds::tr("Changed rack %1.").arg(whom);
    case Intention::RemoveRack:
        return Deeds::tr("Removed rack %1.").arg(whom);
    case Intention::AddShelf:
        return Deeds::tr("Added shelf %1.").arg(whom);
    case Intention::ChangeShelf:
        return Deeds::tr("Changed shelf %1.").arg(whom);
    case Intention::RemoveShelf:
        return Deeds::tr("Removed shelf %1.").arg(whom);
    case Intention::SetPlaces:
        return Deeds::tr("Changed the number of places on shelf %1.").arg(whom);
    case Intention::AddVariety:
        return Deeds::tr("Added the variety %1.").arg(whom);
    case Intention::ChangeVariety:
        return Deeds::tr("Changed the variety %1.").arg(whom);
    case Intention::RemoveVariety:
        return Deeds::tr("Removed the variety %1.").arg(whom);
    case Intention::AddSeedLot:
        return Deeds::tr("Added seed lot %1.").arg(whom);
    case Intention::ChangeSeedLot:
        return Deeds::tr("Changed seed lot %1.").arg(whom);
    case Intention::RemoveSeedLot:
        return Deeds::tr("Removed seed lot %1.").arg(whom);
    case Intention::CountSeedLot:
        return Deeds::tr("Weighed what is left of seed lot %1.").arg(whom);
    case Intention::AddMedium:
        return Deeds::tr("Added the medium %1.").arg(whom);
    case Intention::ChangeMedium:
        return Deeds::tr("Changed the medium %1.").arg(whom);
    case Intention::RemoveMedium:
        return Deeds::tr("Removed the medium %1.").arg(whom);
    case Intention::AddPieces:
        return Deeds::tr("Added pieces: %1.").arg(whom);
    case Intention::RetirePiece:
        return Deeds::tr("Retired piece %1.").arg(whom);
    case Intention::SanitisePieces:
        return Deeds::tr("Sanitised %1.").arg(whom);
    case Intention::AddTrial:
        return Deeds::tr("Added trial %1.").arg(whom);
    case Intention::ChangeTrial:
        return Deeds::tr("Changed trial %1.").arg(whom);
    case Intention::RemoveTrial:
        return Deeds::tr("Removed trial %1.").arg(whom);
    case Intention::PlanTrial:
        return Deeds::tr("Kept the plan of trial %1.").arg(whom);
    case Intention::SowTrial:
        return Deeds::tr("Sowed trial %1.").arg(whom);
    case Intention::PlanTasting:
        return Deeds::tr("Planned the tasting %1.").arg(whom);
    case Intention::EnterScore:
        return Deeds::tr("Entered a score of serving %1.").arg(whom);
    case Intention::ClearScore:
        return Deeds::tr("Took the score of serving %1 out.").arg(whom);
    case Intention::CloseTasting:
        return Deeds::tr("Closed the tasting %1.").arg(whom);
    case Intention::RemoveTasting:
        return Deeds::tr("Removed the tasting %1.").arg(whom);
    case Intention::DeclareSeason:
        return Deeds::tr("Declared the season %1.").arg(whom);
    case Intention::ChangeSeason:
        return Deeds::tr("Changed the season %1.").arg(whom);
    case Intention::RemoveSeason:
        return Deeds::tr("Removed the season %1.").arg(whom);
    case Intention::GroupMedium:
        return Deeds::tr("Changed the group of the medium %1.").arg(whom);
    case Intention::BringCopyBack:
        return Deeds::tr("Brought the copy %1 back.").arg(whom);
    case Intention::BringInReadings:
        return Deeds::tr("Brought in the readings of %1.").arg(whom);
    case Intention::MeasureLampLight:
        return Deeds::tr("Changed the light under the lamps of %1.").arg(whom);
    case Intention::MoveTrays:
        return Deeds::tr("Moved %1 to other places.").arg(whom);
    case Intention::SwapTrays:
        return Deeds::tr("Swapped the places of %1.").arg(whom);
    case Intention::TakeTraysOff:
        return Deeds::tr("Took %1 off the racks.").arg(whom);
    case Intention::AddRepeat:
        return Deeds::tr("Added the repeating sowing of %1.").arg(whom);
    case Intention::ChangeRepeat:
        return Deeds::tr("Changed the repeating sowing of %1.").arg(whom);
    case Intention::EndRepeat:
        return Deeds::tr("Ended the repeating sowing of %1.").arg(whom);
    case Intention::SkipRepeat:
        return Deeds::tr("Skipped a repeating sowing of %1.").arg(whom);
    case Intention::AddOrder:
        return Deeds::tr("Wrote down an order of %1.").arg(whom);
    case Intention::ChangeOrder:
        return Deeds::tr("Changed an order of %1.").arg(whom);
    case Intention::EndOrder:
        return Deeds::tr("Ended a standing order of %1.").arg(whom);
    case Intention::RemoveOrder:
        return Deeds::tr("Removed an order of %1.").arg(whom);
    case Intention::PutCutsToOrder:
        return Deeds::tr("Changed which cuts go to an order of %1.").arg(whom);
    case Intention::ChangeSupply:
        return Deeds::tr("Changed how %1 is kept.").arg(whom);
    case Intention::CountSupply:
        return Deeds::tr("Counted what is left of %1.").arg(whom);
    case Intention::BuySupply:
        return Deeds::tr("Bought %1.").arg(whom);
    case Intention::MarkLowSeed:
        return Deeds::tr("Changed when seed of %1 runs low.").arg(whom);
    }
    return {};
}

} // namespace

QString sentence(const HistoryEntry& entry, UnitSystem units)
{
    const QString subject = QString::fromStdString(entry.subject);
    Intention intention{};
    if (!fromText(entry.intention, intention)) {
        return Deeds::tr("Changed %1.").arg(subject);
    }
    if (const QString whole = detailedSentence(intention, entry, UnitText(units));
        !whole.isEmpty()) {
        return whole;
    }
    return deedSentence(intention, whomOf(intention, subject));
}

QString unexpectedEnd(const std::optional<HistoryEntry>& last, UnitSystem units, Date today)
{
    if (!last) {
        return Deeds::tr("Plumule ended unexpectedly; nothing was recorded before that.");
    }
    const QDateTime at = QDateTime::fromMSecsSinceEpoch(last->atUtcMs);
    const QString clock = at.toString(QStringLiteral("HH:mm"));
    const QString when = fromQDate(at.date()) == today
                             ? clock
                             : longDateText(fromQDate(at.date())) + QStringLiteral(", ") + clock;
    return Deeds::tr("Plumule ended unexpectedly. What was recorded last, %1: %2")
        .arg(when, sentence(*last, units));
}

} // namespace plumule::ui
