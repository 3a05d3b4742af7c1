#include "ui/week/week_text.h"

#include "core/week/repeat_rules.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <tuple>

namespace plumule::ui {
namespace {

class WeekTr
{
    Q_DECLARE_TR_FUNCTIONS(Week)
};

QString joinedNames(const std::vector<std::string>& names)
{
    QStringList list;
    for (const std::string& name : names) {
        list << QString::fromStdString(name);
    }
    return list.join(", ");
}

void addNew(std::vector<std::string>& names, const std::vector<std::string>& more)
{
    for (const std::string& name : more) {
        if (std::find(names.begin(), names.end(), name) == names.end()) {
            names.push_back(name);
        }
    }
}

// Grams in tens, ounces in tenths: an interval is no sharper than that.
QString roundedMass(Mass mass, const UnitText& units)
{
    return units.units() == UnitSystem::Metric
               ? numberText(static_cast<double>(qRound64(inGrams(mass) / 10) * 10), 0)
               : numberText(inOunces(mass), 1);
}

QString longWeekday(int weekday)
{
    return QLocale(QLocale::English).dayName(weekday + 1, QLocale::LongFormat);
}

// Why it stands where it stands; empty where that is its own day.
QString shiftWords(const Proposal& proposal)
{
    switch (proposal.shift) {
    case ProposalShift::None:
        return {};
    case ProposalShift::Late:
        return WeekTr::tr("It was due on %1.").arg(weekdayText(proposal.due));
    case ProposalShift::Soak:
        return WeekTr::tr("Its seed has to soak first.");
    case ProposalShift::Places:
        return WeekTr::tr("%1 has %n free place(s), %2 has %3.", nullptr, proposal.freeOnDue)
            .arg(weekdayText(proposal.due), weekdayText(proposal.sowAt.date))
            .arg(proposal.freePlaces);
    case ProposalShift::Pieces:
        return WeekTr::tr("Before that too few pieces are clean.");
    case ProposalShift::NoPlaces:
        return WeekTr::tr("No day of two weeks has %n place(s) for it: it is not counted above.",
                          nullptr, proposal.trays);
    case ProposalShift::NoPieces:
        return WeekTr::tr("No day of two weeks has %n piece(s) for it: it is not counted above.",
                          nullptr, proposal.trays);
    }
    return {};
}

QString seedWords(const Proposal& proposal, const UnitText& units)
{
    if (!proposal.seedNeeded) {
        return {};
    }
    const QString needed = units.mass(*proposal.seedNeeded, 0);
    if (!proposal.seedLeft) {
        return WeekTr::tr("%1 of seed.").arg(needed);
    }
    if (*proposal.seedLeft == Mass()) {
        return WeekTr::tr("%1 of seed, none left by then.").arg(needed);
    }
    return *proposal.seedLeft < *proposal.seedNeeded
               ? WeekTr::tr("%1 of seed, only %2 left by then.")
                     .arg(needed, units.mass(*proposal.seedLeft, 0))
               : WeekTr::tr("%1 of seed, %2 left by then.")
                     .arg(needed, units.mass(*proposal.seedLeft, 0));
}

} // namespace

QString nameOf(WeekTask task)
{
    switch (task) {
    case WeekTask::Soak:
        return WeekTr::tr("Soak");
    case WeekTask::Sow:
        return WeekTr::tr("Sow");
    case WeekTask::Uncover:
        return WeekTr::tr("Uncover");
    case WeekTask::Light:
        return WeekTr::tr("Bring to light");
    case WeekTask::Cut:
        return WeekTr::tr("Cut");
    case WeekTask::Wash:
        return WeekTr::tr("Wash");
    case WeekTask::Order:
        return WeekTr::tr("Order");
    }
    return {};
}

QString weekdayName(int weekday)
{
    return QLocale(QLocale::English).dayName(weekday + 1, QLocale::ShortFormat);
}

std::vector<WeekEntry> entriesOf(const WeekDay& day)
{
    std::vector<WeekEntry> entries;
    for (const WeekEntry& entry : day.entries) {
        const auto alike =
            std::find_if(entries.begin(), entries.end(), [&](const WeekEntry& other) {
                return std::tie(other.task, other.supply, other.subject) ==
                       std::tie(entry.task, entry.supply, entry.subject);
            });
        if (alike == entries.end()) {
            entries.push_back(entry);
            continue;
        }
        alike->count += entry.count;
        alike->proposed += entry.proposed;
        alike->furtherCuts += entry.furtherCuts;
        addNew(alike->codes, entry.codes);
        addNew(alike->shelves, entry.shelves);
        addNew(alike->trials, entry.trials);
    }
    return entries;
}

QString countText(const WeekEntry& entry)
{
    if (entry.proposed == 0) {
        return QString::number(entry.count);
    }
    const QString proposed = QString::number(entry.proposed) + '*';
    return entry.proposed == entry.count
               ? proposed
               : QStringLiteral("%1 + %2").arg(proposed).arg(entry.count - entry.proposed);
}

QString subjectText(const WeekEntry& entry)
{
    const QString name = QString::fromStdString(entry.name);
    if (entry.task == WeekTask::Order && entry.supply == SupplyKind::Seed) {
        return WeekTr::tr("seed of %1").arg(name);
    }
    QString text = name;
    if (entry.shelves.size() == 1 && entry.proposed == 0) {
        text += ", " + QString::fromStdString(entry.shelves.front());
    }
    if (entry.furtherCuts > 0) {
        text += ", " + (entry.furtherCuts == entry.count ? WeekTr::tr("cut again")
                                                         : WeekTr::tr("some cut again"));
    }
    return text;
}

QString entryText(const WeekEntry& entry)
{
    const bool isCounted = entry.task != WeekTask::Order || entry.supply == SupplyKind::Pieces;
    return isCounted ? QStringLiteral("%1 %2 %3")
                           .arg(nameOf(entry.task), countText(entry), subjectText(entry))
                     : QStringLiteral("%1 %2").arg(nameOf(entry.task), subjectText(entry));
}

QString behindText(const WeekEntry& entry)
{
    QStringList parts;
    if (!entry.codes.empty()) {
        parts << joinedNames(entry.codes);
    }
    if (!entry.trials.empty()) {
        parts << WeekTr::tr("planned for trial %1").arg(joinedNames(entry.trials));
    }
    if (entry.proposed > 0) {
        parts << WeekTr::tr("%n proposed", nullptr, entry.proposed);
    }
    return parts.join("; ");
}

QString rangeText(const ExpectedGrams& grams, const UnitText& units)
{
    return QStringLiteral("%1–%2").arg(roundedMass(grams.low, units),
                                       roundedMass(grams.high, units));
}

QString meanText(const ExpectedGrams& grams, const UnitText& units)
{
    return roundedMass(grams.mean, units) + ' ' + units.massUnit();
}

QString totalText(const Week& week, WeekTask task)
{
    const int sum = week.total(task);
    if (sum == 0) {
        return {};
    }
    switch (task) {
    case WeekTask::Soak:
    case WeekTask::Sow:
        return WeekTr::tr("%n tray(s)", nullptr, sum);
    case WeekTask::Uncover:
    case WeekTask::Light:
        return WeekTr::tr("%n move(s)", nullptr, sum);
    case WeekTask::Cut:
        return WeekTr::tr("%n cut(s)", nullptr, sum);
    case WeekTask::Wash:
        return WeekTr::tr("%n piece(s)", nullptr, sum);
    case WeekTask::Order:
        return WeekTr::tr("%n thing(s)", nullptr, sum);
    }
    return {};
}

QString spanText(const Week& week)
{
    return QStringLiteral("%1 – %2").arg(weekdayText(week.from), weekdayText(week.days.back().on));
}

QString rhythmText(const Repeat& repeat)
{
    if (repeat.everyDays) {
        return *repeat.everyDays == 1 ? WeekTr::tr("every day")
                                      : WeekTr::tr("every %n day(s)", nullptr, *repeat.everyDays);
    }
    QStringList names;
    int only = 0;
    for (int weekday = 0; weekday < 7; ++weekday) {
        if ((repeat.weekdays.value_or(0) & weekdayBit(weekday)) != 0) {
            names << weekdayName(weekday);
            only = weekday;
        }
    }
    if (names.size() == 7) {
        return WeekTr::tr("every day");
    }
    return names.size() == 1 ? WeekTr::tr("every %1").arg(longWeekday(only))
                             : WeekTr::tr("every %1").arg(names.join(", "));
}

QString titleOf(const Proposal& proposal)
{
    return WeekTr::tr("%1 %2 on %3")
        .arg(QString::number(proposal.trays), QString::fromStdString(proposal.variety),
             QString::fromStdString(proposal.medium.name));
}

QString whenText(const Proposal& proposal, Date today)
{
    const Date on = proposal.beginsOn();
    QString day = on == today ? WeekTr::tr("%1, today").arg(weekdayText(on)) : weekdayText(on);
    if (proposal.soakAt) {
        day = WeekTr::tr("soak %1, sow %2").arg(day, weekdayText(proposal.sowAt.date));
    }
    const bool isMoved = proposal.sowAt.date != proposal.due && !proposal.standsNowhere();
    return isMoved ? WeekTr::tr("%1, not %2").arg(day, weekdayText(proposal.due)) : day;
}

QString wordsOf(const Proposal& proposal, const UnitText& units)
{
    QStringList words;
    words << shiftWords(proposal) << seedWords(proposal, units);
    if (proposal.shift != ProposalShift::Places && !proposal.standsNowhere()) {
        words << WeekTr::tr("%n place(s) free.", nullptr, proposal.freePlaces);
    }
    if (!proposal.standsNowhere()) {
        words << WeekTr::tr("Due to be cut %1.").arg(weekdayText(proposal.cutOn));
    }
    words.removeAll(QString());
    return words.join(' ');
}

} // namespace plumule::ui
