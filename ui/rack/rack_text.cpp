#include "ui/rack/rack_text.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kSoonDays = 2;
constexpr int kWeekDays = 7;

class RackTr
{
    Q_DECLARE_TR_FUNCTIONS(Racks)
};

QString stageWords(const StandingTray& tray)
{
    return tray.stage ? nameOf(*tray.stage) : QString();
}

QString cutWords(const StandingTray& tray, Date today)
{
    const auto days = tray.daysToCut(today);
    if (!days) {
        return tray.plan.spans.empty() ? QString() : RackTr::tr("was cut and grows on");
    }
    if (*days < 0) {
        return RackTr::tr("to be cut %n day(s) ago", nullptr, -*days);
    }
    return *days == 0 ? RackTr::tr("to be cut today")
                      : RackTr::tr("to be cut in %n day(s)", nullptr, *days);
}

} // namespace

CutBand bandOf(const StandingTray& tray, Date today)
{
    const auto days = tray.daysToCut(today);
    if (!days) {
        return CutBand::Unknown;
    }
    if (*days <= 0) {
        return CutBand::Now;
    }
    return *days <= kSoonDays   ? CutBand::Soon
           : *days <= kWeekDays ? CutBand::ThisWeek
                                : CutBand::Later;
}

QString nameOf(CutBand band)
{
    switch (band) {
    case CutBand::Now:
        return RackTr::tr("today or late");
    case CutBand::Soon:
        return RackTr::tr("within 2 days");
    case CutBand::ThisWeek:
        return RackTr::tr("within a week");
    case CutBand::Later:
        return RackTr::tr("later");
    case CutBand::Unknown:
        return RackTr::tr("not known");
    }
    return {};
}

QString shelfName(const Spot& spot)
{
    return QString::fromStdString(spot.rack + spot.shelf);
}

QString daysText(const StandingTray& tray, Date today)
{
    const auto days = tray.daysToCut(today);
    if (!days) {
        return tray.plan.spans.empty() ? RackTr::tr("no stages") : RackTr::tr("grows on");
    }
    if (*days < 0) {
        return RackTr::tr("%n day(s) late", nullptr, -*days);
    }
    if (*days == 0) {
        return RackTr::tr("today");
    }
    return *days == 1 ? RackTr::tr("tomorrow") : RackTr::tr("%n day(s)", nullptr, *days);
}

QString shortDaysText(const StandingTray& tray, Date today)
{
    const auto days = tray.daysToCut(today);
    if (!days || *days == 0) {
        return daysText(tray, today);
    }
    return *days < 0 ? RackTr::tr("%1 d late").arg(-*days) : RackTr::tr("%1 d").arg(*days);
}

QString dliText(double dli)
{
    return RackTr::tr("%1 mol/m² a day").arg(numberText(dli, 1));
}

QStringList lightParts(const ShelfLight& light)
{
    QStringList parts;
    const auto inFigures = [](double value) {
        const bool isWhole = qFuzzyCompare(value, qRound(value)) || qFuzzyIsNull(value);
        return numberText(value, isWhole ? 0 : 1);
    };
    if (light.watts) {
        parts << RackTr::tr("%1 W").arg(inFigures(*light.watts));
    }
    if (light.hours) {
        parts << RackTr::tr("%1 h").arg(inFigures(*light.hours));
    }
    if (light.ppfd) {
        parts << RackTr::tr("%1 µmol/m²/s").arg(numberText(*light.ppfd, 0));
    }
    if (const auto dli = light.dli()) {
        parts << dliText(*dli);
    }
    return parts;
}

QString needsText(const StandingTray& tray)
{
    QStringList needs;
    if (tray.isThirsty) {
        needs << RackTr::tr("thirsty");
    }
    if (tray.isReady) {
        needs << RackTr::tr("ready to be moved on");
    }
    if (tray.isDue) {
        needs << RackTr::tr("due to be cut");
    }
    return needs.join(QStringLiteral(", "));
}

QString trayWords(const StandingTray& tray, Date today)
{
    QStringList words;
    words << RackTr::tr("%1, %2 on %3")
                 .arg(QString::fromStdString(tray.code), QString::fromStdString(tray.variety),
                      QString::fromStdString(tray.medium.name));
    if (tray.trial) {
        words << RackTr::tr("trial %1").arg(QString::fromStdString(*tray.trial));
    }
    words << stageWords(tray) << RackTr::tr("day %1").arg(tray.day) << cutWords(tray, today)
          << needsText(tray);
    words.removeAll(QString());
    return words.join(QStringLiteral(", "));
}

QString placeWords(const StandingPlace& place, Date today)
{
    const QString where = nameOf(std::optional(place.spot));
    QString what = place.tray ? trayWords(*place.tray, today) : RackTr::tr("free");
    if (place.heldFor) {
        what += RackTr::tr(", kept for %1 on %2")
                    .arg(QString::fromStdString(*place.heldFor), shortDayText(place.heldFrom));
    }
    return RackTr::tr("%1: %2").arg(where, what);
}

QString spotsText(const RoomRacks& room, const std::vector<std::optional<PlaceId>>& places)
{
    std::vector<std::pair<QString, QStringList>> shelves;
    bool isAnyOff = false;
    const auto all = room.walk();
    for (const auto& place : places) {
        const auto found = std::find_if(all.begin(), all.end(), [&](const StandingPlace* each) {
            return each->spot.place == place;
        });
        if (found == all.end()) {
            isAnyOff = true;
            continue;
        }
        const QString shelf = shelfName((*found)->spot);
        if (shelves.empty() || shelves.back().first != shelf) {
            shelves.emplace_back(shelf, QStringList());
        }
        shelves.back().second << QString::number((*found)->spot.number);
    }
    QStringList texts;
    for (const auto& [shelf, numbers] : shelves) {
        texts << (numbers.size() == 1
                      ? RackTr::tr("%1 · place %2").arg(shelf, numbers.front())
                      : RackTr::tr("%1 · places %2").arg(shelf, numbers.join(", ")));
    }
    if (isAnyOff) {
        texts << RackTr::tr("off the racks");
    }
    return texts.join(QStringLiteral("; "));
}

QString spellText(const FreeSpell& spell, Date lastEvening)
{
    if (spell.from == spell.to) {
        return weekdayText(spell.from);
    }
    return spell.to == lastEvening
               ? RackTr::tr("from %1").arg(weekdayText(spell.from))
               : RackTr::tr("%1 to %2").arg(weekdayText(spell.from), weekdayText(spell.to));
}

} // namespace plumule::ui
