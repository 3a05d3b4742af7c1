// Part of ui/stock/stock_text.h: where a tray came from.
#include "ui/stock/stock_text.h"

#include <QCoreApplication>
#include <QStringList>

namespace plumule::ui {
namespace {

class BackTr
{
    Q_DECLARE_TR_FUNCTIONS(BackTrace)
};

QString waterLine(const TracedWater& water, const UnitText& units)
{
    QString words =
        BackTr::tr("%1, %n time(s), %2 to %3", nullptr, water.times)
            .arg(nameOf(water.water), shortDayText(water.first), shortDayText(water.last));
    if (water.amount > Volume{}) {
        words += QStringLiteral(", ") + units.mixed(water.amount);
    }
    return water.concentrate.empty()
               ? words
               : BackTr::tr("%1, with %2").arg(words, QString::fromStdString(water.concentrate));
}

QStringList readingLines(const TracedWater& water)
{
    QStringList lines;
    for (const WaterReading& reading : water.readings) {
        QStringList values;
        if (reading.ph) {
            values << BackTr::tr("pH %1").arg(numberText(*reading.ph, 1));
        }
        if (reading.ec) {
            values << BackTr::tr("EC %1 µS/cm").arg(numberText(*reading.ec, 0));
        }
        lines << BackTr::tr("%1: %2").arg(shortDayText(reading.on), values.join(", "));
    }
    constexpr int kShown = 4;
    if (lines.size() > kShown) {
        const int more = static_cast<int>(lines.size()) - kShown;
        lines = lines.mid(lines.size() - kShown);
        lines.prepend(BackTr::tr("%n earlier reading(s)", nullptr, more));
    }
    return lines;
}

TraceStep seedStep(const BackTrace& trace, const UnitText& units)
{
    const Tray& tray = trace.tray.tray;
    QString first = QString::fromStdString(trace.tray.variety);
    if (tray.seed) {
        first += QStringLiteral(", ") + units.mass(*tray.seed, 0);
    }
    TraceStep step{BackTr::tr("Seed"), {first}};
    if (!trace.lot) {
        step.lines << BackTr::tr("Its lot was not written down.");
        return step;
    }
    const SeedLot& lot = trace.lot->lot;
    QStringList parts{BackTr::tr("lot %1").arg(QString::fromStdString(lot.lotNumber))};
    if (!lot.supplier.empty()) {
        parts << QString::fromStdString(lot.supplier);
    }
    if (lot.boughtOn) {
        parts << BackTr::tr("bought %1").arg(longDateText(*lot.boughtOn));
    }
    if (const QString germination = germinationText(lot); !germination.isEmpty()) {
        parts << germination;
    }
    step.lines << parts.join(QStringLiteral(", "));
    return step;
}

TraceStep mediumStep(const BackTrace& trace)
{
    TraceStep step{BackTr::tr("Medium"), {QString::fromStdString(trace.tray.medium.name)}};
    if (trace.piece) {
        step.lines = QStringList{BackTr::tr("%1 %2, its use number %3")
                                     .arg(QString::fromStdString(trace.tray.medium.name))
                                     .arg(trace.piece->number)
                                     .arg(trace.useOfPiece)};
        step.lines << (trace.sanitised
                           ? BackTr::tr("sanitised %1").arg(sanitisingLine(*trace.sanitised))
                           : BackTr::tr("not sanitised before, as far as is known"));
        if (trace.trayBefore) {
            step.lines
                << BackTr::tr("before it: %1").arg(QString::fromStdString(*trace.trayBefore));
        }
    }
    return step;
}

TraceStep growthStep(const BackTrace& trace)
{
    const Tray& tray = trace.tray.tray;
    TraceStep step{BackTr::tr("Growth"),
                   {tray.sownBy && !tray.sownBy->empty()
                        ? BackTr::tr("sown %1 by %2")
                              .arg(longDateText(tray.sownOn), QString::fromStdString(*tray.sownBy))
                        : BackTr::tr("sown %1").arg(longDateText(tray.sownOn))}};
    if (trace.trialCode) {
        step.lines << BackTr::tr("in trial %1").arg(QString::fromStdString(*trace.trialCode));
    }
    for (const TrayStage& stage : trace.stages) {
        if (stage.startedOn) {
            step.lines << BackTr::tr("%1 from %2")
                              .arg(nameOf(stage.stage), shortDayText(*stage.startedOn));
        }
    }
    for (const TracedStay& stay : trace.stays) {
        step.lines << (stay.stay.toOn
                           ? BackTr::tr("on %1, %2 to %3")
                                 .arg(nameOf(stay.spot), shortDayText(stay.stay.fromOn),
                                      shortDayText(*stay.stay.toOn))
                           : BackTr::tr("on %1 since %2")
                                 .arg(nameOf(stay.spot), shortDayText(stay.stay.fromOn)));
    }
    return step;
}

TraceStep endStep(const BackTrace& trace, const UnitText& units)
{
    const Tray& tray = trace.tray.tray;
    TraceStep step{BackTr::tr("Harvest"), {}};
    for (const Harvest& cut : trace.tray.cuts) {
        step.lines << BackTr::tr("%1 %2: %3")
                          .arg(longDateText(cut.on), clockText(cut.minute), units.mass(cut.net));
    }
    for (const TracedPromise& promise : trace.tray.promises) {
        step.lines
            << QStringLiteral("→ %1: %2").arg(promiseWords(promise), units.mass(promise.part));
    }
    if (trace.residue) {
        step.lines << BackTr::tr("left in the tray: %1").arg(units.mass(*trace.residue, 0));
    }
    if (tray.state == TrayState::Discarded) {
        step.lines << BackTr::tr("thrown away %1: %2")
                          .arg(tray.endedOn ? longDateText(*tray.endedOn) : QString(),
                               QString::fromStdString(tray.discardReason.value_or(std::string())));
    } else if (tray.state == TrayState::Growing) {
        step.lines << BackTr::tr("still growing");
    }
    return step;
}

} // namespace

QString titleOf(const BackTrace& trace)
{
    return BackTr::tr("%1, back").arg(QString::fromStdString(trace.tray.tray.code));
}

std::vector<TraceStep> stepsOf(const BackTrace& trace, const UnitText& units)
{
    std::vector<TraceStep> steps{seedStep(trace, units), mediumStep(trace), growthStep(trace)};
    TraceStep water{BackTr::tr("Water"), {}};
    for (const TracedWater& one : trace.waters) {
        water.lines << waterLine(one, units) << readingLines(one);
    }
    if (water.lines.isEmpty()) {
        water.lines << BackTr::tr("none on record");
    }
    steps.push_back(std::move(water));
    steps.push_back(endStep(trace, units));
    return steps;
}

} // namespace plumule::ui
