// Part of ui/text/text.h: what was done.
#include "ui/text/text.h"

#include "core/journal/journal.h"
#include "core/journal/ledger/intention.h"
#include "core/stock/stock_item.h"

#include <QCoreApplication>
#include <QDateTime>

namespace plumule::ui {
namespace {

class Deeds
{
    Q_DECLARE_TR_FUNCTIONS(Deeds)
};

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
    case Intention::MoveTrays:
    case Intention::TakeTraysOff:
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

// How many acts came, and what of those that met belongs to no tray and was not kept.
QString broughtSentence(const QString& whom, const std::vector<std::string>& details)
{
    QString text = Deeds::tr("Brought the copy %1 back: %n act(s).", nullptr,
                             QString::fromStdString(details.front()).toInt())
                       .arg(whom);
    QStringList notKept;
    for (std::size_t i = 1; i < details.size(); ++i) {
        notKept << QString::fromStdString(details[i]);
    }
    return notKept.isEmpty()
               ? text
               : text + QLatin1Char(' ') +
                     Deeds::tr("Not kept: %1").arg(notKept.join(QStringLiteral("; ")));
}

// Of a logger and how many of its hours came in.
QString readingsSentence(const std::vector<std::string>& details, const QString& whom)
{
    return details.size() < 2 ? QString()
                              : Deeds::tr("Brought in %n hour(s) of the logger %1 from %2.",
                                          nullptr, QString::fromStdString(details[1]).toInt())
                                    .arg(QString::fromStdString(details[0]), whom);
}

// Where trays went, in turn: shelf and number, or nothing off the racks; of two that were swapped,
// who they are.
QString movesSentence(Intention intention, const QString& whom,
                      const std::vector<std::string>& details)
{
    const auto text = [&](std::size_t at) { return QString::fromStdString(details[at]); };
    const bool isPair = details.size() > 1;
    if (intention == Intention::SwapTrays) {
        return isPair ? Deeds::tr("Swapped the places of %1 and %2.").arg(text(0), text(1))
                      : QString();
    }
    if (intention == Intention::MoveTray) {
        return isPair ? Deeds::tr("Moved %1 to %2, place %3.").arg(whom, text(0), text(1))
                      : Deeds::tr("Took %1 off the racks.").arg(whom);
    }
    QStringList places;
    for (std::size_t i = 0; i < details.size(); ++i) {
        if (details[i].empty() || i + 1 == details.size()) {
            places << Deeds::tr("off the racks");
        } else {
            places << Deeds::tr("%1 place %2").arg(text(i), text(i + 1));
            ++i;
        }
    }
    return Deeds::tr("Moved %1 to %2.")
        .arg(whomOf(intention, whom), places.join(QStringLiteral(", ")));
    QString weightIn(const HistoryEntry& entry, std::size_t at, const UnitText& units)
    {
        return units.mass(milligrams(QString::fromStdString(entry.details.at(at)).toLongLong()));
        // Of an order: the variety, and of the details amount, day and whom it is for.
        QString orderSentence(Intention intention, const std::vector<std::string>& details,
                              const QString& variety, const UnitText& units)
        {
            if (details.size() < 3) {
                return {};
            }
            const auto day = dateFromIso(details[1]);
            if (!day) {
                return {};
            }
            const Mass amount = milligrams(QString::fromStdString(details[0]).toLongLong());
            const QString whom = QString::fromStdString(details[2]);
            const QString order =
                whom.isEmpty() ? Deeds::tr("%1 of %2, %3")
                                     .arg(units.mass(amount, 0), variety, longDateText(*day))
                               : Deeds::tr("%1 of %2 for %4, %3")
                                     .arg(units.mass(amount, 0), variety, longDateText(*day), whom);
            switch (intention) {
            case Intention::AddOrder:
                return Deeds::tr("Wrote down an order: %1.").arg(order);
            case Intention::ChangeOrder:
                return Deeds::tr("Changed an order to %1.").arg(order);
            case Intention::EndOrder:
                return Deeds::tr("Ended a standing order from then on: %1.").arg(order);
            case Intention::RemoveOrder:
                return Deeds::tr("Removed an order: %1.").arg(order);
            case Intention::PutCutsToOrder:
                return Deeds::tr("Changed which cuts go to an order: %1.").arg(order);
            default:
                return {};
            }
            // What there was, or what came in, in its own unit.
            QString supplySentence(Intention intention, const std::vector<std::string>& details,
                                   const QString& whom, const UnitText& units)
            {
                if (details.size() < 2) {
                    return {};
                }
                const qlonglong count = QString::fromStdString(details[0]).toLongLong();
                const bool isMeasured = details[1] == toText(StockUnit::Millilitre);
                const QString amount =
                    isMeasured ? units.mixed(microlitres(count)) : QString::number(count);
                return intention == Intention::CountSupply
                           ? Deeds::tr("Counted what is left of %1: %2.").arg(whom, amount)
                           : Deeds::tr("Bought %1: %2.").arg(whom, amount);
                // Of a stretch of work: how long it took, and how often it was done.
                QString workSentence(const HistoryEntry& entry)
                {
                    LabourKind task{};
                    if (entry.details.size() < 2 || !fromText(entry.subject, task)) {
                        return {};
                    }
                    const double minutes = QString::fromStdString(entry.details[0]).toDouble() / 60;
                    const int times = QString::fromStdString(entry.details[1]).toInt();
                    return Deeds::tr("Timed %1: %2 min, %n time(s).", nullptr, times)
                        .arg(nameOf(task), numberText(minutes, 1));
                }

                // Of an entry that says what it came to; empty where it doesn't.
                QString detailedSentence(Intention intention, const HistoryEntry& entry,
                                         const UnitText& units)
                {
                    if (entry.details.empty()) {
                        return {};
                    }
                    const QString whom = QString::fromStdString(entry.subject);
                    const QString first = QString::fromStdString(entry.details.front());
                    switch (intention) {
                    case Intention::MoveTray:
                    case Intention::MoveTrays:
                    case Intention::SwapTrays:
                        return movesSentence(intention, whom, entry.details);
                    case Intention::NoteHeight:
                        return Deeds::tr("Noted a height of %1: %2.")
                            .arg(whom, units.length(micrometres(first.toLongLong())));
                    case Intention::RecordHarvest:
                        return Deeds::tr("Weighed the harvest of %1: %2.")
                            .arg(whom, weightIn(entry, 0, units));
                    case Intention::RecordResidue:
                        return Deeds::tr("Weighed what %1 left behind: %2.")
                            .arg(whom, weightIn(entry, 0, units));
                    case Intention::CorrectHarvest:
                        return entry.details.size() < 2
                                   ? QString()
                                   : Deeds::tr("Corrected a weight of %1 from %2 to %3.")
                                         .arg(whom, weightIn(entry, 1, units),
                                              weightIn(entry, 0, units));
                    case Intention::DiscardTray:
                        return Deeds::tr("Discarded %1: %2.").arg(whom, first);
                    case Intention::SetTrayAside:
                        return Deeds::tr("Set %1 aside: %2.").arg(whom, first);
                    case Intention::SkipRepeat:
                        return Deeds::tr("Skipped the repeating sowing of %1 on %2.")
                            .arg(whom,
                                 shortDayText(dateFromIso(entry.details.front()).value_or(Date())));
                    case Intention::BringCopyBack:
                        return broughtSentence(whom, entry.details);
                    case Intention::BringInReadings:
                        return readingsSentence(entry.details, whom);
                    case Intention::AddOrder:
                    case Intention::ChangeOrder:
                    case Intention::EndOrder:
                    case Intention::RemoveOrder:
                    case Intention::PutCutsToOrder:
                        return orderSentence(intention, entry.details, whom, units);
                    case Intention::CountSupply:
                    case Intention::BuySupply:
                        return supplySentence(intention, entry.details, whom, units);
                    case Intention::EndWork:
                    case Intention::SaveWork:
                        return workSentence(entry);
                    default:
                        return {};
                    }
                }

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

                // Whom it was done to: many trays are stored by their count, and what is none of
                // the grower's own words, by its key.
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
                    case Intention::BeginWork:
                    case Intention::EndWork:
                    case Intention::SaveWork:
                    case Intention::RemoveWork:
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
                return deedSentence(intention, whomOf(intention, subject));
            }

            QString unexpectedEnd(const std::optional<HistoryEntry>& last, UnitSystem units,
                                  Date today)
            {
                if (!last) {
                    return Deeds::tr(
                        "Plumule ended unexpectedly; nothing was recorded before that.");
                }
                const QDateTime at = QDateTime::fromMSecsSinceEpoch(last->atUtcMs);
                const QString clock = at.toString(QStringLiteral("HH:mm"));
                const QString when =
                    fromQDate(at.date()) == today
                        ? clock
                        : longDateText(fromQDate(at.date())) + QStringLiteral(", ") + clock;
                return Deeds::tr("Plumule ended unexpectedly. What was recorded last, %1: %2")
                    .arg(when, sentence(*last, units));
            }

        } // namespace plumule::ui
