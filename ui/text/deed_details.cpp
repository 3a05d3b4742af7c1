#include "ui/text/deed_details.h"

#include "core/cost/cost.h"
#include "core/journal/journal.h"
#include "core/stock/stock_item.h"
#include "core/variety/variety.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class DeedDetails
{
    Q_DECLARE_TR_FUNCTIONS(DeedDetails)
};

// How many acts came, and what of those that met belongs to no tray and was not kept.
QString broughtSentence(const QString& whom, const std::vector<std::string>& details)
{
    QString text = DeedDetails::tr("Brought the copy %1 back: %n act(s).", nullptr,
                                   QString::fromStdString(details.front()).toInt())
                       .arg(whom);
    QStringList notKept;
    for (std::size_t i = 1; i < details.size(); ++i) {
        notKept << QString::fromStdString(details[i]);
    }
    return notKept.isEmpty()
               ? text
               : text + QLatin1Char(' ') +
                     DeedDetails::tr("Not kept: %1").arg(notKept.join(QStringLiteral("; ")));
}

// Of a logger and how many of its hours came in.
QString readingsSentence(const std::vector<std::string>& details, const QString& whom)
{
    return details.size() < 2 ? QString()
                              : DeedDetails::tr("Brought in %n hour(s) of the logger %1 from %2.",
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
        return isPair ? DeedDetails::tr("Swapped the places of %1 and %2.").arg(text(0), text(1))
                      : QString();
    }
    if (intention == Intention::MoveTray) {
        return isPair ? DeedDetails::tr("Moved %1 to %2, place %3.").arg(whom, text(0), text(1))
                      : DeedDetails::tr("Took %1 off the racks.").arg(whom);
    }
    QStringList places;
    for (std::size_t i = 0; i < details.size(); ++i) {
        if (details[i].empty() || i + 1 == details.size()) {
            places << DeedDetails::tr("off the racks");
        } else {
            places << DeedDetails::tr("%1 place %2").arg(text(i), text(i + 1));
            ++i;
        }
    }
    return DeedDetails::tr("Moved %1 to %2.")
        .arg(whomOf(intention, whom), places.join(QStringLiteral(", ")));
}

QString weightIn(const HistoryEntry& entry, std::size_t at, const UnitText& units)
{
    return units.mass(milligrams(QString::fromStdString(entry.details.at(at)).toLongLong()));
}

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
    const QString order = whom.isEmpty()
                              ? DeedDetails::tr("%1 of %2, %3")
                                    .arg(units.mass(amount, 0), variety, longDateText(*day))
                              : DeedDetails::tr("%1 of %2 for %4, %3")
                                    .arg(units.mass(amount, 0), variety, longDateText(*day), whom);
    switch (intention) {
    case Intention::AddOrder:
        return DeedDetails::tr("Wrote down an order: %1.").arg(order);
    case Intention::ChangeOrder:
        return DeedDetails::tr("Changed an order to %1.").arg(order);
    case Intention::EndOrder:
        return DeedDetails::tr("Ended a standing order from then on: %1.").arg(order);
    case Intention::RemoveOrder:
        return DeedDetails::tr("Removed an order: %1.").arg(order);
    case Intention::PutCutsToOrder:
        return DeedDetails::tr("Changed which cuts go to an order: %1.").arg(order);
    default:
        return {};
    }
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
    const QString amount = isMeasured ? units.mixed(microlitres(count)) : QString::number(count);
    return intention == Intention::CountSupply
               ? DeedDetails::tr("Counted what is left of %1: %2.").arg(whom, amount)
               : DeedDetails::tr("Bought %1: %2.").arg(whom, amount);
}

// Of a stretch of work: how long it took, and how often it was done.
QString workSentence(const HistoryEntry& entry)
{
    LabourKind task{};
    if (entry.details.size() < 2 || !fromText(entry.subject, task)) {
        return {};
    }
    const double minutes = QString::fromStdString(entry.details[0]).toDouble() / 60;
    const int times = QString::fromStdString(entry.details[1]).toInt();
    return DeedDetails::tr("Timed %1: %2 min, %n time(s).", nullptr, times)
        .arg(nameOf(task), numberText(minutes, 1));
}

// Of what a tray came to; empty where it says nothing.
QString traySentence(Intention intention, const HistoryEntry& entry, const UnitText& units)
{
    const QString whom = QString::fromStdString(entry.subject);
    const QString first = QString::fromStdString(entry.details.front());
    switch (intention) {
    case Intention::NoteHeight:
        return DeedDetails::tr("Noted a height of %1: %2.")
            .arg(whom, units.length(micrometres(first.toLongLong())));
    case Intention::RecordHarvest:
        return DeedDetails::tr("Weighed the harvest of %1: %2.")
            .arg(whom, weightIn(entry, 0, units));
    case Intention::RecordResidue:
        return DeedDetails::tr("Weighed what %1 left behind: %2.")
            .arg(whom, weightIn(entry, 0, units));
    case Intention::CorrectHarvest:
        return entry.details.size() < 2
                   ? QString()
                   : DeedDetails::tr("Corrected a weight of %1 from %2 to %3.")
                         .arg(whom, weightIn(entry, 1, units), weightIn(entry, 0, units));
    case Intention::DiscardTray:
        return DeedDetails::tr("Discarded %1: %2.").arg(whom, first);
    case Intention::SetTrayAside:
        return DeedDetails::tr("Set %1 aside: %2.").arg(whom, first);
    default:
        return {};
    }
}

} // namespace

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
        return isCount ? DeedDetails::tr("%n tray(s)", nullptr, count) : subject;
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

QString detailedSentence(Intention intention, const HistoryEntry& entry, const UnitText& units)
{
    if (entry.details.empty()) {
        return {};
    }
    const QString whom = QString::fromStdString(entry.subject);
    switch (intention) {
    case Intention::MoveTray:
    case Intention::MoveTrays:
    case Intention::SwapTrays:
        return movesSentence(intention, whom, entry.details);
    case Intention::SkipRepeat:
        return DeedDetails::tr("Skipped the repeating sowing of %1 on %2.")
            .arg(whom, shortDayText(dateFromIso(entry.details.front()).value_or(Date())));
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
        return traySentence(intention, entry, units);
    }
}

} // namespace plumule::ui
