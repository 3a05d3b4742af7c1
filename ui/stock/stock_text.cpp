#include "ui/stock/stock_text.h"

#include "core/stock/stock_rules.h"

#include <QCoreApplication>
#include <QStringList>

#include <cmath>

namespace plumule::ui {
namespace {

class StockTr
{
    Q_DECLARE_TR_FUNCTIONS(Stock)
};

constexpr double kManyDays = 180;

QString lowWords(const LowThing& thing)
{
    const QString name = QString::fromStdString(thing.name);
    if (thing.why == Low::None) {
        return StockTr::tr("%1 (none left)").arg(name);
    }
    if (thing.why == Low::Planned) {
        return StockTr::tr("%1 (less than is planned)").arg(name);
    }
    return thing.daysLeft
               ? StockTr::tr("%1 (%n day(s))", nullptr, static_cast<int>(*thing.daysLeft)).arg(name)
               : name;
}

} // namespace

QString nameOf(StockKind kind)
{
    switch (kind) {
    case StockKind::Medium:
        return StockTr::tr("medium");
    case StockKind::Concentrate:
        return StockTr::tr("concentrate");
    case StockKind::Sanitiser:
        return StockTr::tr("sanitiser");
    case StockKind::Packaging:
        return StockTr::tr("packaging");
    case StockKind::Other:
        return StockTr::tr("something else, only counted");
    }
    return {};
}

QString amountText(StockAmount amount, StockUnit unit, const UnitText& units)
{
    if (unit == StockUnit::Piece) {
        return numberText(static_cast<double>(amount.count()), 0);
    }
    constexpr double kLeastLitres = 1;
    const Volume volume = asVolume(amount);
    return std::abs(inLitres(volume)) < kLeastLitres ? units.watering(volume) : units.mixed(volume);
}

QString daysText(std::optional<double> days)
{
    if (!days) {
        return QStringLiteral("–");
    }
    return *days > kManyDays ? StockTr::tr("over %1").arg(kManyDays)
                             : QString::number(static_cast<int>(*days));
}

QString lowCount(int things)
{
    return things == 0 ? StockTr::tr("nothing runs low")
                       : StockTr::tr("%n thing(s) running low", nullptr, things);
}

QString lowSentence(const std::vector<LowThing>& low)
{
    constexpr std::size_t kNamed = 4;
    if (low.empty()) {
        return {};
    }
    QStringList words;
    for (std::size_t i = 0; i < low.size() && i < kNamed; ++i) {
        words << lowWords(low[i]);
    }
    if (low.size() > kNamed) {
        words << StockTr::tr("%n more", nullptr, static_cast<int>(low.size() - kNamed));
    }
    return StockTr::tr("Running low: %1.").arg(words.join(QStringLiteral(", ")));
}

QString lowReason(Low why)
{
    switch (why) {
    case Low::No:
        return {};
    case Low::Days:
        return StockTr::tr("lasts for fewer days than wanted");
    case Low::Amount:
        return StockTr::tr("less than wanted is left");
    case Low::Planned:
        return StockTr::tr("more is planned than is left");
    case Low::None:
        return StockTr::tr("none is left");
    }
    return {};
}

QString nowText(const PieceLine& piece)
{
    if (piece.inUse) {
        const QString code = QString::fromStdString(piece.inUse->tray);
        const std::optional<Spot>& spot = piece.inUse->spot;
        return spot ? StockTr::tr("in %1, %2")
                          .arg(code, QString::fromStdString(spot->rack + spot->shelf))
                    : StockTr::tr("in %1").arg(code);
    }
    if (piece.due) {
        return StockTr::tr("emptied %1").arg(shortDayText(*piece.due));
    }
    return piece.record.uses == 0 ? StockTr::tr("new") : StockTr::tr("clean");
}

QString agentText(const SanitisingDraft& how)
{
    QString agent = QString::fromStdString(how.method);
    if (how.strength) {
        const QString unit =
            how.strengthUnit == StrengthUnit::Percent ? QStringLiteral("%") : QStringLiteral("ppm");
        agent += QStringLiteral(" %1 %2").arg(QString::number(*how.strength), unit);
    }
    return how.contactMinutes ? StockTr::tr("%1, %2 min").arg(agent).arg(*how.contactMinutes)
                              : agent;
}

QString sanitisedText(const std::optional<Sanitising>& sanitised)
{
    if (!sanitised) {
        return QStringLiteral("–");
    }
    const SanitisingDraft& how = sanitised->how;
    QStringList parts{shortDayText(sanitised->on), agentText(how)};
    if (!how.by.empty()) {
        parts << QString::fromStdString(how.by);
    }
    return parts.join(QStringLiteral(", "));
}

QString dueText(const PieceLine& piece, Date today)
{
    QStringList words;
    if (piece.due) {
        words << (*piece.due == today ? StockTr::tr("today")
                                      : StockTr::tr("since %1").arg(shortDayText(*piece.due)));
    }
    if (piece.isPast) {
        words << StockTr::tr("past its planned uses");
    }
    return words.join(QStringLiteral("; "));
}

QString groupText(const PieceGroup& group)
{
    return StockTr::tr("%1 under trays, %2 to sanitise, %3 clean")
        .arg(group.growing)
        .arg(group.due)
        .arg(group.clean);
}

} // namespace plumule::ui
