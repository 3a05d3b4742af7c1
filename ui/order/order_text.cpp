#include "ui/order/order_text.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

class Orders
{
    Q_DECLARE_TR_FUNCTIONS(Orders)
};

constexpr int kHundred = 100;

} // namespace

QString promiseText(const Promise& promise)
{
    const QString whom = QString::fromStdString(promise.order.customer);
    return whom.isEmpty() ? weekdayText(promise.day)
                          : QStringLiteral("%1, %2").arg(whom, weekdayText(promise.day));
}

QString standingText(const Order& order)
{
    if (order.recurs == Recurrence::Once) {
        return {};
    }
    const QString weekday =
        QLocale(QLocale::English).toString(toQDate(order.day), QStringLiteral("dddd"));
    return order.endsOn ? Orders::tr("every %1 before %2").arg(weekday, longDateText(*order.endsOn))
                        : Orders::tr("every %1").arg(weekday);
}

QString growingText(const OrderLine& line, const UnitText& units)
{
    QStringList parts;
    if (const Mass cut = sumOf(line.cut); cut > Mass{}) {
        parts << Orders::tr("%1 cut").arg(units.mass(cut, 0));
    }
    if (!line.growing.empty()) {
        Mass expected;
        for (const GrowingFor& tray : line.growing) {
            expected += tray.expected;
        }
        parts << Orders::tr("%n tray(s), %1", nullptr, static_cast<int>(line.growing.size()))
                     .arg(units.mass(expected, 0));
    }
    return parts.isEmpty() ? Orders::tr("nothing yet") : parts.join("; ");
}

Moment beginOf(const SowingNeed& need)
{
    return need.times.soak.value_or(need.times.sow);
}

QString sowText(const OrderLine& line)
{
    if (!line.sowing) {
        return inHundred(line.planned.chance) >= inHundred(kChanceWanted) ? Orders::tr("is sown")
                                                                          : Orders::tr("no medium");
    }
    return line.sowing->isLate ? Orders::tr("too late") : weekdayText(line.sowing->times.sow.date);
}

QString placesText(const OrderLine& line)
{
    return line.sowing && !line.sowing->isLate
               ? Orders::tr("%1 of %2").arg(line.sowing->trays).arg(line.sowing->freePlaces)
               : QStringLiteral("–");
}

QString seedText(const OrderLine& line, const UnitText& units)
{
    if (!line.sowing || line.sowing->isLate || !line.sowing->seed) {
        return QStringLiteral("–");
    }
    const QString needed = units.mass(*line.sowing->seed, 0);
    return line.sowing->seedLeft
               ? Orders::tr("%1 of %2").arg(needed, units.mass(*line.sowing->seedLeft, 0))
               : needed;
}

int inHundred(double chance)
{
    return static_cast<int>(std::floor(chance * kHundred + 1e-9));
}

QString planText(const OrderLine& line)
{
    const int planned = inHundred(line.planned.chance);
    if (!line.sowing) {
        return Orders::tr("Nothing has to be sown for it: met %1 times in 100.").arg(planned);
    }
    const SowingNeed& need = *line.sowing;
    if (need.isLate) {
        return Orders::tr("It is too late to sow for that day: %n tray(s) would have been begun on "
                          "%1. With what there is it is met %2 times in 100.",
                          nullptr, need.trays)
            .arg(weekdayText(beginOf(need).date))
            .arg(planned);
    }
    if (line.planned.chance < kChanceWanted) {
        return Orders::tr("Even %n tray(s) are too few: met %1 times in 100. Promise less, or on "
                          "more days.",
                          nullptr, need.trays)
            .arg(planned);
    }
    QString text = Orders::tr("Sow %n tray(s) on %1: met %2 times in 100.", nullptr, need.trays)
                       .arg(weekdayText(need.times.sow.date))
                       .arg(planned);
    for (const ChanceOfTrays& fewer : line.chances) {
        if (fewer.trays == need.trays - 1) {
            text +=
                ' ' +
                Orders::tr("With %1 it would be %2.").arg(fewer.trays).arg(inHundred(fewer.chance));
        }
    }
    return text;
}

QStringList lackTexts(const OrderLine& line, const UnitText& units)
{
    QStringList lacks;
    if (!line.sowing || line.sowing->isLate) {
        return lacks;
    }
    const SowingNeed& need = *line.sowing;
    if (need.trays > need.freePlaces) {
        lacks << Orders::tr("%n place(s) are missing between %1 and %2.", nullptr,
                            need.trays - need.freePlaces)
                     .arg(weekdayText(need.times.sow.date), weekdayText(line.promise.day));
    }
    if (need.freePieces && *need.freePieces < need.trays) {
        lacks << Orders::tr("%1 has %n clean piece(s) free now; sanitise more, or choose another "
                            "medium.",
                            nullptr, *need.freePieces)
                     .arg(QString::fromStdString(need.medium.name));
    }
    if (need.seed && need.seedLeft && *need.seedLeft < *need.seed) {
        lacks << Orders::tr("%1 of seed are missing once what is sown before has been taken.")
                     .arg(units.mass(*need.seed - *need.seedLeft, 0));
    }
    if (need.seed && !need.seedLeft) {
        lacks << Orders::tr("How much seed is left is not known: no lot of it was weighed.");
    }
    return lacks;
}

QString basisText(const YieldModel& model)
{
    if (model.basis.from == ForecastSource::Library) {
        const QString source = QString::fromStdString(model.basis.source);
        const QString known = model.basis.trays == 0 ? Orders::tr("no tray of it on record")
                                                     : Orders::tr("only %n tray(s) of it on record",
                                                                  nullptr, model.basis.trays);
        return source == QLatin1String("from memory")
                   ? Orders::tr("%1; the library's value, from memory").arg(known)
                   : Orders::tr("%1; the library's value, %2").arg(known, source);
    }
    return Orders::tr("%n tray(s)", nullptr, model.basis.trays) + QStringLiteral(", ") +
           Orders::tr("%1 of %2 thrown away").arg(model.discarded).arg(model.ended);
}

QString keptText(const PastPromise& past, const UnitText& units)
{
    const Mass over = past.over();
    const QString sign = over > Mass{} ? QStringLiteral("+") : QString();
    return (past.isKept() ? Orders::tr("kept") : Orders::tr("short")) + QStringLiteral(", ") +
           sign + units.mass(over, 0);
}

QString sharingRule()
{
    return Orders::tr("A cut goes to the oldest promise of its variety that is not met yet, for "
                      "its own day or one of the two after it; what is over stays with the last. "
                      "You can say otherwise for each promise. Growing trays stand for promises "
                      "by the same rule, on the day that they are likely due.");
}

} // namespace plumule::ui
