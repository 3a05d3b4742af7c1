#include "ui/review/season_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <map>

namespace plumule::ui {
namespace {

class SeasonTr
{
    Q_DECLARE_TR_FUNCTIONS(Season)
};

QString named(const std::vector<std::string>& names)
{
    QStringList list;
    for (const std::string& name : names) {
        list << QString::fromStdString(name);
    }
    return list.join(", ");
}

QString leftOutName(LeftOut why)
{
    switch (why) {
    case LeftOut::Discarded:
        return SeasonTr::tr("discarded");
    case LeftOut::StillGrowing:
        return SeasonTr::tr("still growing");
    case LeftOut::CutAgainLater:
        return SeasonTr::tr("to be cut again");
    case LeftOut::SetAside:
        return SeasonTr::tr("set aside");
    case LeftOut::Damaged:
        return SeasonTr::tr("that can't be read");
    }
    return {};
}

// What is said of one by name; nothing of most.
QString reasonText(const LeftOutTray& tray)
{
    const QString code = QString::fromStdString(tray.code);
    if (tray.why == LeftOut::Damaged) {
        return SeasonTr::tr("%1: see “Check for damage” in Set-up")
            .arg(code.isEmpty() ? SeasonTr::tr("entry %1").arg(tray.tray.value) : code);
    }
    return tray.reason.empty()
               ? QString()
               : QStringLiteral("%1: %2").arg(code, QString::fromStdString(tray.reason));
}

SeasonWords nothingToTell(const SeasonReview& review)
{
    if (review.tooFew.empty()) {
        return {SeasonTr::tr("Only one medium was harvested: there is nothing to compare it with."),
                SeasonTr::tr("Choose other days or varieties, or grow a second medium beside it.")};
    }
    return {
        SeasonTr::tr("Nothing can be told apart: there are fewer than two trays of %1.")
            .arg(named(review.tooFew)),
        SeasonTr::tr(
            "Trays of one and the same medium differ too, so one tray can't tell a medium from "
            "chance. It takes two of each for an interval at all, and about six of each to see a "
            "difference of a fifth.")};
}

QString lackName(Response response)
{
    switch (response) {
    case Response::HeightOnDay:
        return SeasonTr::tr(
            "No height was read on the same day of growth: there is nothing to compare.");
    case Response::Evenness:
        return SeasonTr::tr(
            "No tray has several heights of one day, which evenness is worked out from.");
    case Response::Residue:
        return SeasonTr::tr("No residue was weighed: there is nothing to compare.");
    case Response::CostPerGram:
        return SeasonTr::tr("No tray's cost is known: there is nothing to compare.");
    default:
        return SeasonTr::tr("No tray has a value of this: there is nothing to compare.");
    }
}

} // namespace

SeasonWords wordsWithoutPairs(const SeasonComparison& comparison)
{
    if (comparison.n == 0) {
        return {lackName(comparison.ask.response), QString()};
    }
    return {SeasonTr::tr(
                "Trays of one medium alone have a value of this: there is nothing to compare it "
                "with."),
            QString()};
}

SeasonWords wordsFor(const SeasonReview& review)
{
    if (review.trays == 0) {
        return {SeasonTr::tr("No tray was harvested in this span."),
                SeasonTr::tr("Choose other days or varieties.")};
    }
    std::vector<const MediumSeason*> enough;
    for (const MediumSeason& season : review.media) {
        if (season.yield.n >= 2) {
            enough.push_back(&season);
        }
    }
    if (enough.size() < 2) {
        return nothingToTell(review);
    }
    std::sort(enough.begin(), enough.end(),
              [](const auto* a, const auto* b) { return a->yield.mean > b->yield.mean; });
    SeasonWords answer;
    answer.headline = SeasonTr::tr("%1 has the highest mean, %2 g a tray (95% interval %3 to %4).")
                          .arg(QString::fromStdString(enough.front()->medium.name),
                               numberText(enough.front()->yield.mean, 0),
                               numberText(enough.front()->yield.lower.value_or(0), 0),
                               numberText(enough.front()->yield.upper.value_or(0), 0));
    QStringList detail;
    detail << SeasonTr::tr(
        "The highest mean is not yet a winner: where intervals overlap, chance may have "
        "ordered them.");
    if (review.varieties > 1) {
        detail << SeasonTr::tr(
            "%n varieties are mixed in these means; choose one to compare like with like.", nullptr,
            review.varieties);
    }
    if (!review.tooFew.empty()) {
        detail << SeasonTr::tr("Fewer than two trays, too few to be told apart from any: %1.")
                      .arg(named(review.tooFew));
    }
    answer.detail = detail.join(' ');
    return answer;
}

QString leftOutText(const SeasonReview& review)
{
    std::map<LeftOut, int> counts;
    QStringList reasons;
    for (const LeftOutTray& tray : review.leftOut) {
        ++counts[tray.why];
        if (const QString reason = reasonText(tray); !reason.isEmpty()) {
            reasons << reason;
        }
    }
    if (counts.empty()) {
        return SeasonTr::tr("Every tray of the span is counted.");
    }
    QStringList parts;
    for (const auto& [why, count] : counts) {
        parts << QStringLiteral("%1 %2").arg(count).arg(leftOutName(why));
    }
    const QString list = SeasonTr::tr("Not counted: %1").arg(parts.join(", "));
    return reasons.isEmpty() ? list + '.'
                             : QStringLiteral("%1 (%2).").arg(list, reasons.mid(0, 4).join("; "));
}

} // namespace plumule::ui
