// Part of ui/text/text.h: what was done.
#include "ui/text/text.h"

#include "core/journal/ledger/intention.h"

#include <QCoreApplication>

#include <algorithm>

namespace plumule::ui {
namespace {

class Deeds
{
    Q_DECLARE_TR_FUNCTIONS(Deeds)
};

// Of an entry that says what it came to; empty where it doesn't.
QString detailedSentence(Intention intention, const HistoryEntry& entry, const UnitText& units)
{
    if (entry.details.empty()) {
        return {};
    }
    const QString whom = QString::fromStdString(entry.subject);
    const QString first = QString::fromStdString(entry.details.front());
    const auto mass = [&](std::size_t at) {
        return units.mass(milligrams(QString::fromStdString(entry.details.at(at)).toLongLong()));
    };
    switch (intention) {
    case Intention::MoveTray:
        return entry.details.size() < 2
                   ? Deeds::tr("Took %1 off the racks.").arg(whom)
                   : Deeds::tr("Moved %1 to %2, place %3.")
                         .arg(whom, first, QString::fromStdString(entry.details[1]));
    case Intention::NoteHeight:
        return Deeds::tr("Noted a height of %1: %2.")
            .arg(whom, units.length(micrometres(first.toLongLong())));
    case Intention::RecordHarvest:
        return Deeds::tr("Weighed the harvest of %1: %2.").arg(whom, mass(0));
    case Intention::RecordResidue:
        return Deeds::tr("Weighed what %1 left behind: %2.").arg(whom, mass(0));
    case Intention::CorrectHarvest:
        return entry.details.size() < 2 ? QString()
                                        : Deeds::tr("Corrected a weight of %1 from %2 to %3.")
                                              .arg(whom, mass(1), mass(0));
    case Intention::DiscardTray:
        return Deeds::tr("Discarded %1: %2.").arg(whom, first);
    case Intention::SetTrayAside:
        return Deeds::tr("Set %1 aside: %2.").arg(whom, first);
    default:
        return {};
    }
}

struct DeedText
{
    Intention intention;
    const char* text; // %1 is whom it was done to
};

constexpr DeedText kDeeds[] = {
    {Intention::SowTrays, QT_TRANSLATE_NOOP("Deeds", "Sowed %1.")},
    {Intention::MoveTrayOn, QT_TRANSLATE_NOOP("Deeds", "Moved %1 on to the next stage.")},
    {Intention::BeginSoak, QT_TRANSLATE_NOOP("Deeds", "Began the soak of %1.")},
    {Intention::PutUnderWeight, QT_TRANSLATE_NOOP("Deeds", "Put %1 under weight.")},
    {Intention::PutIntoBlackout, QT_TRANSLATE_NOOP("Deeds", "Moved %1 into blackout.")},
    {Intention::PutIntoLight, QT_TRANSLATE_NOOP("Deeds", "Moved %1 into light.")},
    {Intention::HoldTrayBack,
     QT_TRANSLATE_NOOP("Deeds", "Gave %1 more time in the present stage.")},
    {Intention::CorrectStart, QT_TRANSLATE_NOOP("Deeds", "Corrected the start of a stage of %1.")},
    {Intention::MoveTray, QT_TRANSLATE_NOOP("Deeds", "Moved %1 to another place.")},
    {Intention::DiscardTray, QT_TRANSLATE_NOOP("Deeds", "Discarded %1.")},
    {Intention::SetTrayAside, QT_TRANSLATE_NOOP("Deeds", "Set %1 aside.")},
    {Intention::CountTrayAgain, QT_TRANSLATE_NOOP("Deeds", "Counted %1 in again.")},
    {Intention::NoteHeight, QT_TRANSLATE_NOOP("Deeds", "Noted a height of %1.")},
    {Intention::WriteNote, QT_TRANSLATE_NOOP("Deeds", "Wrote a note on %1.")},
    {Intention::RemoveNote, QT_TRANSLATE_NOOP("Deeds", "Removed a note on %1.")},
    {Intention::AttachPhoto, QT_TRANSLATE_NOOP("Deeds", "Added a photo of %1.")},
    {Intention::RemovePhoto, QT_TRANSLATE_NOOP("Deeds", "Removed a photo of %1.")},
    {Intention::ImportTrays, QT_TRANSLATE_NOOP("Deeds", "Brought in the table %1.")},
    {Intention::TickWatering, QT_TRANSLATE_NOOP("Deeds", "Watered %1.")},
    {Intention::TickAllWaterings, QT_TRANSLATE_NOOP("Deeds", "Watered %1.")},
    {Intention::UntickWatering, QT_TRANSLATE_NOOP("Deeds", "Took the tick off %1.")},
    {Intention::FindNoNeed, QT_TRANSLATE_NOOP("Deeds", "Found that %1 needed no water.")},
    {Intention::WaterAsNeeded, QT_TRANSLATE_NOOP("Deeds", "Watered %1 as needed.")},
    {Intention::RemoveWatering, QT_TRANSLATE_NOOP("Deeds", "Took a watering of %1 out.")},
    {Intention::CorrectWatering, QT_TRANSLATE_NOOP("Deeds", "Corrected a watering of %1.")},
    {Intention::NoteReading, QT_TRANSLATE_NOOP("Deeds", "Noted pH or EC of %1.")},
    {Intention::WriteDown, QT_TRANSLATE_NOOP("Deeds", "Wrote down what was seen of %1.")},
    {Intention::ChangeRecipe, QT_TRANSLATE_NOOP("Deeds", "Changed the recipe of %1.")},
    {Intention::RecordHarvest, QT_TRANSLATE_NOOP("Deeds", "Weighed the harvest of %1.")},
    {Intention::RecordResidue, QT_TRANSLATE_NOOP("Deeds", "Weighed what %1 left behind.")},
    {Intention::CorrectHarvest, QT_TRANSLATE_NOOP("Deeds", "Corrected a weight of %1.")},
    {Intention::SavePrice, QT_TRANSLATE_NOOP("Deeds", "Saved the price of %1.")},
    {Intention::RemovePrice, QT_TRANSLATE_NOOP("Deeds", "Removed a price of %1.")},
    {Intention::ChangeLabour, QT_TRANSLATE_NOOP("Deeds", "Changed the minutes of %1.")},
    {Intention::ChangeRoom, QT_TRANSLATE_NOOP("Deeds", "Changed the room %1.")},
    {Intention::AddRack, QT_TRANSLATE_NOOP("Deeds", "Added rack %1.")},
    {Intention::ChangeRack, QT_TRANSLATE_NOOP("Deeds", "Changed rack %1.")},
    {Intention::RemoveRack, QT_TRANSLATE_NOOP("Deeds", "Removed rack %1.")},
    {Intention::AddShelf, QT_TRANSLATE_NOOP("Deeds", "Added shelf %1.")},
    {Intention::ChangeShelf, QT_TRANSLATE_NOOP("Deeds", "Changed shelf %1.")},
    {Intention::RemoveShelf, QT_TRANSLATE_NOOP("Deeds", "Removed shelf %1.")},
    {Intention::SetPlaces, QT_TRANSLATE_NOOP("Deeds", "Changed the number of places on shelf %1.")},
    {Intention::AddVariety, QT_TRANSLATE_NOOP("Deeds", "Added the variety %1.")},
    {Intention::ChangeVariety, QT_TRANSLATE_NOOP("Deeds", "Changed the variety %1.")},
    {Intention::RemoveVariety, QT_TRANSLATE_NOOP("Deeds", "Removed the variety %1.")},
    {Intention::AddSeedLot, QT_TRANSLATE_NOOP("Deeds", "Added seed lot %1.")},
    {Intention::ChangeSeedLot, QT_TRANSLATE_NOOP("Deeds", "Changed seed lot %1.")},
    {Intention::RemoveSeedLot, QT_TRANSLATE_NOOP("Deeds", "Removed seed lot %1.")},
    {Intention::CountSeedLot, QT_TRANSLATE_NOOP("Deeds", "Weighed what is left of seed lot %1.")},
    {Intention::AddMedium, QT_TRANSLATE_NOOP("Deeds", "Added the medium %1.")},
    {Intention::ChangeMedium, QT_TRANSLATE_NOOP("Deeds", "Changed the medium %1.")},
    {Intention::RemoveMedium, QT_TRANSLATE_NOOP("Deeds", "Removed the medium %1.")},
    {Intention::AddPieces, QT_TRANSLATE_NOOP("Deeds", "Added pieces: %1.")},
    {Intention::RetirePiece, QT_TRANSLATE_NOOP("Deeds", "Retired piece %1.")},
    {Intention::SanitisePieces, QT_TRANSLATE_NOOP("Deeds", "Sanitised %1.")},
    {Intention::AddTrial, QT_TRANSLATE_NOOP("Deeds", "Added trial %1.")},
    {Intention::ChangeTrial, QT_TRANSLATE_NOOP("Deeds", "Changed trial %1.")},
    {Intention::RemoveTrial, QT_TRANSLATE_NOOP("Deeds", "Removed trial %1.")},
    {Intention::PlanTrial, QT_TRANSLATE_NOOP("Deeds", "Kept the plan of trial %1.")},
    {Intention::SowTrial, QT_TRANSLATE_NOOP("Deeds", "Sowed trial %1.")},
    {Intention::PlanTasting, QT_TRANSLATE_NOOP("Deeds", "Planned the tasting %1.")},
    {Intention::EnterScore, QT_TRANSLATE_NOOP("Deeds", "Entered a score of serving %1.")},
    {Intention::ClearScore, QT_TRANSLATE_NOOP("Deeds", "Took the score of serving %1 out.")},
    {Intention::CloseTasting, QT_TRANSLATE_NOOP("Deeds", "Closed the tasting %1.")},
    {Intention::RemoveTasting, QT_TRANSLATE_NOOP("Deeds", "Removed the tasting %1.")},
    {Intention::DeclareSeason, QT_TRANSLATE_NOOP("Deeds", "Declared the season %1.")},
    {Intention::ChangeSeason, QT_TRANSLATE_NOOP("Deeds", "Changed the season %1.")},
    {Intention::RemoveSeason, QT_TRANSLATE_NOOP("Deeds", "Removed the season %1.")},
    {Intention::GroupMedium, QT_TRANSLATE_NOOP("Deeds", "Changed the group of the medium %1.")},
};

QString deedSentence(Intention intention)
{
    const auto* const found =
        std::find_if(std::begin(kDeeds), std::end(kDeeds),
                     [&](const DeedText& deed) { return deed.intention == intention; });
    return found == std::end(kDeeds) ? QString() : Deeds::tr(found->text);
}

// Whom it was done to: many trays are stored by their count, and what is none of the grower's own
// words, by its key.
QString whomOf(Intention intention, const QString& subject)
{
    const std::string key = subject.toStdString();
    bool isCount = false;
    const int count = subject.toInt(&isCount);
    WaterKind water{};
    PriceItem item{};
    LabourKind labour{};
    switch (intention) {
    case Intention::SowTrays:
    case Intention::MoveTrayOn:
    case Intention::BeginSoak:
    case Intention::PutUnderWeight:
    case Intention::PutIntoBlackout:
    case Intention::PutIntoLight:
    case Intention::HoldTrayBack:
    case Intention::TickAllWaterings:
    case Intention::FindNoNeed:
    case Intention::WaterAsNeeded:
        return isCount ? Deeds::tr("%n tray(s)", nullptr, count) : subject;
    case Intention::NoteReading:
    case Intention::ChangeRecipe:
        return fromText(key, water) ? nameOf(water) : subject;
    case Intention::SavePrice:
    case Intention::RemovePrice:
        return fromText(key, item) ? nameOf(item) : subject;
    case Intention::ChangeLabour:
        return fromText(key, labour) ? nameOf(labour) : subject;
    default:
        return subject;
    }
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
    return deedSentence(intention).arg(whomOf(intention, subject));
}

} // namespace plumule::ui
