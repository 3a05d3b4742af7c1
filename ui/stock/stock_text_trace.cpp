// Part of ui/stock/stock_text.h: where things went, and where they came from.
#include "ui/stock/stock_text.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include <algorithm>

namespace plumule::ui {
namespace {

class TraceTr
{
    Q_DECLARE_TR_FUNCTIONS(Trace)
};

QString fromStd(const std::string& text)
{
    return QString::fromStdString(text);
}

QStringList lotFacts(const SeedLotStock& stock, const QString& variety, const UnitText& units)
{
    QStringList parts{variety};
    if (!stock.lot.supplier.empty()) {
        parts << fromStd(stock.lot.supplier);
    }
    if (stock.lot.boughtOn) {
        parts << TraceTr::tr("bought %1").arg(longDateText(*stock.lot.boughtOn));
    }
    if (stock.lot.bought) {
        parts << units.mass(*stock.lot.bought, 0);
    }
    if (const QString germination = germinationText(stock.lot); !germination.isEmpty()) {
        parts << germination;
    }
    return {
        parts.join(QStringLiteral(", ")) + '.',
        stock.left
            ? TraceTr::tr("%1 sown, %2 left.")
                  .arg(units.mass(stock.sown, 0), units.mass(*stock.left, 0))
            : TraceTr::tr("%1 sown; the purchase was not weighed.").arg(units.mass(stock.sown, 0))};
}

QStringList pieceFacts(const ForwardTrace& trace)
{
    QStringList facts;
    const PieceRecord& record = *trace.piece;
    facts << (trace.pieceMedium->plannedUses
                  ? TraceTr::tr("%n use(s) of %1 planned.", nullptr, record.uses)
                        .arg(*trace.pieceMedium->plannedUses)
                  : TraceTr::tr("%n use(s).", nullptr, record.uses));
    if (record.piece.boughtOn) {
        facts << TraceTr::tr("Bought %1.").arg(longDateText(*record.piece.boughtOn));
    }
    if (!trace.sanitisings.empty()) {
        facts << TraceTr::tr("Sanitised %n time(s), the last one %1.", nullptr,
                             static_cast<int>(trace.sanitisings.size()))
                     .arg(sanitisingLine(trace.sanitisings.back()));
    }
    return facts;
}

QString mixWords(const MixSpan& mix)
{
    return TraceTr::tr("%1 to %2").arg(longDateText(mix.from), longDateText(mix.to));
}

QString numberAt(const std::string& code, int& number)
{
    static const QRegularExpression kCode(QStringLiteral("^(.*?)(\\d+)$"));
    const auto match = kCode.match(fromStd(code));
    number = match.hasMatch() ? match.captured(2).toInt() : -1;
    return match.hasMatch() ? match.captured(1) : fromStd(code);
}

} // namespace

QString germinationText(const SeedLot& lot)
{
    return lot.germinationPercent
               ? TraceTr::tr("germination %1 %").arg(numberText(*lot.germinationPercent, 0))
               : QString();
}

QString sanitisingLine(const Sanitising& one)
{
    const QString words = TraceTr::tr("%1 %2: %3")
                              .arg(longDateText(one.on), clockText(one.minute), agentText(one.how));
    return one.how.by.empty() ? words : TraceTr::tr("%1, by %2").arg(words, fromStd(one.how.by));
}

QString promiseWords(const TracedPromise& promise)
{
    const QString day = weekdayText(promise.key.day);
    return promise.customer.empty() ? TraceTr::tr("the order for %1").arg(day)
                                    : QStringLiteral("%1, %2").arg(fromStd(promise.customer), day);
}

QString titleOf(const ForwardTrace& trace)
{
    if (trace.lot) {
        return TraceTr::tr("Lot %1, forward").arg(fromStd(trace.lot->lot.lotNumber));
    }
    if (trace.piece) {
        return TraceTr::tr("%1 %2, forward")
            .arg(fromStd(trace.pieceMedium->name))
            .arg(trace.piece->piece.number);
    }
    if (const auto* mix = std::get_if<MixSpan>(&trace.from)) {
        return TraceTr::tr("%1, forward").arg(nameOf(mix->water));
    }
    const auto* person = std::get_if<Person>(&trace.from);
    return person == nullptr ? QString() : TraceTr::tr("%1, forward").arg(fromStd(person->name));
}

QStringList factsOf(const ForwardTrace& trace, const UnitText& units)
{
    QStringList facts;
    if (trace.lot) {
        facts = lotFacts(*trace.lot, fromStd(trace.lotVariety), units);
    } else if (trace.piece) {
        facts = pieceFacts(trace);
    } else if (const auto* mix = std::get_if<MixSpan>(&trace.from)) {
        facts << TraceTr::tr("Trays that were given it from %1.").arg(mixWords(*mix));
        if (trace.recipe && !trace.recipe->concentrate.empty()) {
            facts << TraceTr::tr("Its recipe now: %1.").arg(fromStd(trace.recipe->concentrate));
        }
    } else {
        facts << TraceTr::tr("Trays sown by them, or grown on a piece that they sanitised last.");
        facts << TraceTr::tr("Sanitised %n piece(s).", nullptr,
                             static_cast<int>(trace.sanitisings.size()));
    }
    return facts;
}

QString codesOf(const TracedSowing& sowing)
{
    QStringList runs;
    QString prefix;
    int first = 0;
    int last = -1;
    QString firstCode;
    QString lastCode;
    const auto close = [&] {
        if (!firstCode.isEmpty()) {
            runs << (firstCode == lastCode ? firstCode
                                           : firstCode + QStringLiteral("–") + lastCode);
        }
    };
    for (const TracedTray& tray : sowing.trays) {
        int number = 0;
        const QString before = numberAt(tray.tray.code, number);
        if (firstCode.isEmpty() || before != prefix || number != last + 1) {
            close();
            firstCode = fromStd(tray.tray.code);
            first = number;
        }
        prefix = before;
        last = std::max(first, number);
        lastCode = fromStd(tray.tray.code);
    }
    close();
    return runs.join(QStringLiteral(", "));
}

QString cutText(const TracedSowing& sowing)
{
    QStringList days;
    int cut = 0;
    for (const TracedTray& tray : sowing.trays) {
        cut += tray.cuts.empty() ? 0 : 1;
    }
    std::vector<Date> all;
    for (const TracedTray& tray : sowing.trays) {
        for (const Harvest& one : tray.cuts) {
            all.push_back(one.on);
        }
    }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    if (all.empty()) {
        return TraceTr::tr("not cut");
    }
    const QString when =
        all.size() == 1
            ? shortDayText(all.front())
            : TraceTr::tr("%1 to %2").arg(shortDayText(all.front()), shortDayText(all.back()));
    return TraceTr::tr("cut %1, %2 of %3").arg(when).arg(cut).arg(sowing.trays.size());
}

std::vector<TraceNote> notesOf(const TracedSowing& sowing)
{
    std::vector<TraceNote> notes;
    int sanitised = 0;
    for (const TracedTray& tray : sowing.trays) {
        if (tray.tray.state == TrayState::Discarded) {
            notes.push_back({TraceTr::tr("%1, %2: thrown away, %3")
                                 .arg(fromStd(tray.tray.code), fromStd(tray.medium.name),
                                      fromStd(tray.tray.discardReason.value_or(std::string()))),
                             true});
        }
        sanitised += tray.part == Part::Sanitised ? 1 : 0;
    }
    if (const int growing = sowing.count(TrayState::Growing); growing > 0) {
        notes.push_back({TraceTr::tr("%n growing", nullptr, growing), false});
    }
    for (const TracedPromise& promise : sowing.promises()) {
        notes.push_back({QStringLiteral("→ ") + promiseWords(promise), false});
    }
    if (sanitised > 0) {
        notes.push_back(
            {TraceTr::tr("%n on a piece that they sanitised", nullptr, sanitised), false});
    }
    return notes;
}

QString sumText(const TraceSums& sums)
{
    return TraceTr::tr("%n tray(s) sown: %1 cut, %2 thrown away, %3 growing", nullptr, sums.sown)
        .arg(sums.cut)
        .arg(sums.thrownAway)
        .arg(sums.growing);
}

QString promisesText(const TraceSums& sums)
{
    return sums.promises == 0
               ? QString()
               : TraceTr::tr("Some of it went to %n promise(s): if it is bad, tell these first.",
                             nullptr, sums.promises);
}

} // namespace plumule::ui
