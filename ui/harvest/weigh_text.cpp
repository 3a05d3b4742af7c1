#include "ui/harvest/weigh_text.h"

#include "core/base/text_reason.h"
#include "core/harvest/harvest_reason.h"
#include "core/starter/starter_yields.h"
#include "core/tray/tray_reason.h"

#include <QCoreApplication>

#include <algorithm>
#include <set>

namespace plumule::ui {
namespace {

class WeighTr
{
    Q_DECLARE_TR_FUNCTIONS(Weighing)
};

QString varietyOf(const TrayAtScale& tray)
{
    return QString::fromStdString(tray.record.variety);
}

QString mediumOf(const TrayAtScale& tray)
{
    return QString::fromStdString(tray.record.medium.name);
}

// "11 first cuts", "4 residues"
QString countedText(const TrayAtScale& tray, Weighing what)
{
    const int count = static_cast<int>(tray.facts.expected.past.size());
    if (what == Weighing::Residue) {
        return WeighTr::tr("%n residue(s)", nullptr, count);
    }
    switch (tray.cut) {
    case 1:
        return WeighTr::tr("%n first cut(s)", nullptr, count);
    case 2:
        return WeighTr::tr("%n second cut(s)", nullptr, count);
    default:
        return WeighTr::tr("%n cut(s) of that number", nullptr, count);
    }
}

QString sinceText(const ExpectedRange& range)
{
    const auto oldest =
        std::min_element(range.past.begin(), range.past.end(),
                         [](const PastWeight& a, const PastWeight& b) { return a.on < b.on; });
    return oldest == range.past.end() ? QString()
                                      : WeighTr::tr(" since %1").arg(longDateText(oldest->on));
}

int varietiesIn(const ExpectedRange& range)
{
    std::set<VarietyId> varieties;
    for (const PastWeight& each : range.past) {
        varieties.insert(each.variety);
    }
    return static_cast<int>(varieties.size());
}

QString libraryText(const TrayAtScale& tray, Weighing what)
{
    if (what == Weighing::Residue) {
        return WeighTr::tr(
            "a wide bound, from memory: too few residues are weighed on this medium");
    }
    const std::string& source = tray.facts.expected.source;
    return source == kFromMemory
               ? WeighTr::tr(
                     "a wide bound around yields from memory: too few trays are weighed yet")
               : WeighTr::tr("a wide bound around the yields of %1: too few trays are weighed yet")
                     .arg(QString::fromStdString(source));
}

QString doubtText(Doubt doubt, const TrayAtScale& tray, MassUnit unit)
{
    switch (doubt) {
    case Doubt::DecimalSlip:
    case Doubt::OutsideExpected:
        return WeighTr::tr("Far from the expected %1.").arg(rangeText(tray.facts.expected, unit));
    case Doubt::AlreadyWeighed:
        return WeighTr::tr("This tray is weighed already.");
    case Doubt::UnstableReading:
        return WeighTr::tr("The scale had not come to rest.");
    case Doubt::TareForgotten:
        return WeighTr::tr("No tare, though the last bowl had one.");
    case Doubt::NotDueYet:
        return WeighTr::tr("This tray has not been in light yet.");
    }
    return {};
}

bool isInOtherUnit(Mass typed, Mass likely)
{
    const double ratio = typed > likely ? typed / likely : likely / typed;
    return ratio > 0.95 * kGramsPerOunce && ratio < 1.05 * kGramsPerOunce;
}

QString timesText(Mass typed, Mass likely)
{
    const double ratio = typed / likely;
    return ratio > 50     ? WeighTr::tr("a hundred times")
           : ratio > 1    ? WeighTr::tr("ten times")
           : ratio > 0.05 ? WeighTr::tr("a tenth of")
                          : WeighTr::tr("a hundredth of");
}

// "325.0 − 38.5 = 286.5 g net", of one bowl or of several.
QString netText(const std::vector<BowlDraft>& bowls, MassUnit unit)
{
    QStringList sums;
    for (const BowlDraft& bowl : bowls) {
        sums << (bowl.tare == Mass{} ? scaleText(bowl.gross, unit)
                                     : QStringLiteral("%1 − %2").arg(scaleText(bowl.gross, unit),
                                                                     scaleText(bowl.tare, unit)));
    }
    const QString net = scaleTextWithUnit(netOf(bowls), unit);
    const bool isSum = bowls.size() > 1 || bowls.front().tare != Mass{};
    return isSum ? WeighTr::tr("%1 = %2 net").arg(sums.join(QStringLiteral(" + ")), net)
                 : WeighTr::tr("%1 net").arg(net);
}

} // namespace

QString rangeText(const ExpectedRange& range, MassUnit unit)
{
    const bool isMetric = unit == MassUnit::Gram;
    const auto number = [&](Mass mass) {
        return isMetric ? numberText(inGrams(mass), 0) : numberText(inOunces(mass), 1);
    };
    return QStringLiteral("%1–%2 %3")
        .arg(number(*range.low), number(*range.high),
             isMetric ? QStringLiteral("g") : QStringLiteral("oz"));
}

QString rangeSourceText(const TrayAtScale& tray, Weighing what)
{
    const ExpectedRange& range = tray.facts.expected;
    const QString counted = countedText(tray, what);
    switch (range.from) {
    case RangeSource::VarietyOnMedium:
        return WeighTr::tr("from %1 of %2 on %3").arg(counted, varietyOf(tray), mediumOf(tray)) +
               sinceText(range);
    case RangeSource::SameTrial:
        return WeighTr::tr("from %1 of this trial, whatever they grew on").arg(counted);
    case RangeSource::Variety:
        return WeighTr::tr("from %1 of %2 on any medium").arg(counted, varietyOf(tray)) +
               sinceText(range);
    case RangeSource::RoomBySeed:
        return WeighTr::tr("from %1 of %2 other varieties, by their seed")
            .arg(counted)
            .arg(varietiesIn(range));
    case RangeSource::Medium:
        return WeighTr::tr("from %1 on %2").arg(counted, mediumOf(tray)) + sinceText(range);
    case RangeSource::Library:
        return libraryText(tray, what);
    }
    return {};
}

QString expectedText(const TrayAtScale& tray, Weighing what, MassUnit unit)
{
    const ExpectedRange& range = tray.facts.expected;
    if (!range.isKnown()) {
        return tray.cut == 2
                   ? WeighTr::tr("There are too few second cuts yet to expect a weight by.")
                   : WeighTr::tr(
                         "There are too few cuts of that number yet to expect a weight by.");
    }
    const QString bounds = rangeText(range, unit);
    return range.from == RangeSource::Library
               ? WeighTr::tr("Expected %1 net, %2.").arg(bounds, libraryText(tray, what))
               : WeighTr::tr("Expected %1 net, 19 times in 20: %2.")
                     .arg(bounds, rangeSourceText(tray, what));
}

QString slipAnswerText(const std::vector<BowlDraft>& bowls, const Slip& slip, MassUnit unit)
{
    const MassUnit other = unit == MassUnit::Gram ? MassUnit::Ounce : MassUnit::Gram;
    return scaleTextWithUnit(slip.gross,
                             isInOtherUnit(bowls[slip.bowl].gross, slip.gross) ? other : unit);
}

QuestionText slipText(const TrayAtScale& tray, const std::vector<BowlDraft>& bowls,
                      const Slip& slip, MassUnit unit)
{
    const Mass typed = bowls[slip.bowl].gross;
    const QString code = QString::fromStdString(tray.record.tray.code);
    const QString likelyText = slipAnswerText(bowls, slip, unit);
    std::vector<BowlDraft> likely = bowls;
    likely[slip.bowl].gross = slip.gross;
    return {isInOtherUnit(typed, slip.gross)
                ? WeighTr::tr("%1 is far from what %2 should weigh. Did you mean %3?")
                      .arg(scaleTextWithUnit(typed, unit), code, likelyText)
                : WeighTr::tr("%1 is %2 what %3 should weigh. Did you mean %4?")
                      .arg(scaleTextWithUnit(typed, unit), timesText(typed, slip.gross), code,
                           likelyText),
            WeighTr::tr("%1, within the expected %2.")
                .arg(netText(likely, unit), rangeText(tray.facts.expected, unit))};
}

QuestionText doubtsText(const TrayAtScale& tray, const std::vector<BowlDraft>& bowls,
                        const std::vector<Doubt>& doubts, MassUnit unit)
{
    QStringList parts;
    for (const Doubt doubt : doubts) {
        parts << doubtText(doubt, tray, unit);
    }
    return {parts.join(' '),
            WeighTr::tr("%1 for %2.")
                .arg(netText(bowls, unit), QString::fromStdString(tray.record.tray.code))};
}

QString cannotWeighText(const QString& code, const Error& error)
{
    if (error.is(TrayReason::CodeUnknown)) {
        return WeighTr::tr("No tray is called %1. Check the label.").arg(code);
    }
    if (error.is(HarvestReason::TrayDiscarded)) {
        return sentence(error);
    }
    return WeighTr::tr("%1 can't be weighed. %2").arg(code, sentence(error));
}

QString noWeightText(const Error& error)
{
    if (!error.is(TextReason::ThousandsOrDecimals) || error.values.empty()) {
        return sentence(error);
    }
    const QString text = QString::fromStdString(error.values.front());
    const QString thousands = QString(text).remove(',');
    const QString decimals = QString(text).replace(',', '.');
    return WeighTr::tr("“%1” may be %2 or %3. Type one of them.").arg(text, thousands, decimals);
}

} // namespace plumule::ui
