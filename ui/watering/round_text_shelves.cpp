// Part of ui/watering/round_text.h: shelves, and what stands on them.
#include "ui/watering/round_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <limits>
#include <map>

namespace plumule::ui {
namespace {

class ShelfTr
{
    Q_DECLARE_TR_FUNCTIONS(Round)
};

// The figures that a code ends with, or none.
std::optional<int> numberIn(const std::string& code)
{
    const auto end = code.find_last_not_of("0123456789");
    const std::string figures = code.substr(end == std::string::npos ? 0 : end + 1);
    return figures.empty() || figures.size() > 8 ? std::nullopt : std::optional(std::stoi(figures));
}

bool areInARow(const std::vector<std::string>& codes)
{
    for (std::size_t i = 1; i < codes.size(); ++i) {
        const auto before = numberIn(codes[i - 1]);
        const auto here = numberIn(codes[i]);
        const bool isNext =
            before && here && *here == *before + 1 && codes[i].size() == codes[i - 1].size();
        const std::size_t letters = codes[i].find_last_not_of("0123456789") + 1;
        if (!isNext || codes[i].substr(0, letters) != codes[i - 1].substr(0, letters)) {
            return false;
        }
    }
    return true;
}

bool isAskedTogether(const StageDecision& a, const StageDecision& b)
{
    return a.variety == b.variety && a.from == b.from && a.to == b.to && a.cue == b.cue &&
           a.daysLate == b.daysLate && a.day == b.day;
}

std::optional<ShelfId> shelfOf(const std::optional<Spot>& spot)
{
    return spot ? std::optional(spot->shelfId) : std::nullopt;
}

void addDecision(ShelfGroup& shelf, const Round& round, std::size_t index)
{
    for (auto& group : shelf.decisions) {
        if (isAskedTogether(round.decisions[group.front()], round.decisions[index])) {
            group.push_back(index);
            return;
        }
    }
    shelf.decisions.push_back({index});
}

} // namespace

std::vector<ShelfGroup> shelvesOf(const Round& round)
{
    std::vector<ShelfGroup> groups;
    // Both lists are in walking order already; the shelves of both are woven into one.
    std::size_t tray = 0;
    std::size_t asked = 0;
    const auto rankOf = [](const auto& rows, std::size_t i) {
        constexpr int kNowhere = std::numeric_limits<int>::max() - 1;
        if (i >= rows.size()) {
            return std::numeric_limits<int>::max();
        }
        return rows[i].spot ? rows[i].spot->rank : kNowhere;
    };
    const auto groupFor = [&groups](const std::optional<Spot>& spot) -> ShelfGroup& {
        if (groups.empty() || shelfOf(groups.back().spot) != shelfOf(spot)) {
            groups.push_back({spot, {}, {}});
        }
        return groups.back();
    };
    while (tray < round.trays.size() || asked < round.decisions.size()) {
        if (rankOf(round.decisions, asked) <= rankOf(round.trays, tray)) {
            addDecision(groupFor(round.decisions[asked].spot), round, asked);
            ++asked;
        } else {
            groupFor(round.trays[tray].spot).trays.push_back(tray);
            ++tray;
        }
    }
    return groups;
}

QString shelfName(const ShelfGroup& shelf)
{
    if (!shelf.spot) {
        return ShelfTr::tr("No place yet");
    }
    return ShelfTr::tr("Rack %1 · shelf %2")
        .arg(QString::fromStdString(shelf.spot->rack), QString::fromStdString(shelf.spot->shelf));
}

QString shelfWork(const Round& round, const ShelfGroup& shelf)
{
    std::map<std::pair<Stage, WateringMethod>, int> counts;
    for (const std::size_t i : shelf.trays) {
        ++counts[{round.trays[i].stage, round.trays[i].method}];
    }
    if (counts.empty()) {
        return ShelfTr::tr("no water in this round");
    }
    const bool isAsNeeded = std::all_of(shelf.trays.begin(), shelf.trays.end(),
                                        [&](auto i) { return round.trays[i].isAsNeeded; });
    if (counts.size() == 1) {
        const auto& [stage, method] = counts.begin()->first;
        return isAsNeeded ? ShelfTr::tr("%1, as needed: lift each, water those that feel dry")
                                .arg(standing(stage))
                          : ShelfTr::tr("%1, %2").arg(standing(stage), nameOf(method));
    }
    std::map<Stage, int> stages;
    for (const auto& [work, count] : counts) {
        stages[work.first] += count;
    }
    QStringList parts;
    for (const auto& [stage, count] : stages) {
        parts << ShelfTr::tr("%1 %2").arg(count).arg(standing(stage));
    }
    return parts.join(ShelfTr::tr(", "));
}

QString codesText(const std::vector<std::string>& codes)
{
    constexpr std::size_t kNamed = 5;
    QStringList names;
    for (const std::string& code : codes) {
        names << QString::fromStdString(code);
    }
    if (codes.size() > 2 && areInARow(codes)) {
        const std::size_t letters = codes.back().find_last_not_of("0123456789") + 1;
        return names.front() + QChar(0x2013) + names.back().mid(static_cast<int>(letters));
    }
    if (codes.size() <= kNamed + 1) {
        return names.join(ShelfTr::tr(", "));
    }
    return ShelfTr::tr("%1 and %2 more")
        .arg(names.mid(0, kNamed).join(ShelfTr::tr(", ")), QString::number(codes.size() - kNamed));
}

} // namespace plumule::ui
