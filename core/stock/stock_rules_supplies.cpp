// Part of core/stock/stock_rules.h: what is kept beside seed.
#include "core/stock/stock_rules.h"

#include <algorithm>

namespace plumule {
namespace {

// One taking of a supply by a tray, a cut or a washing.
struct Taken
{
    Moment at;
    StockAmount amount;
};

const Medium* mediumOf(const StockItem& supply, const StockFacts& facts)
{
    const auto found = std::find_if(facts.media.begin(), facts.media.end(),
                                    [&](const Medium& each) { return supply.medium == each.id; });
    return found == facts.media.end() ? nullptr : &*found;
}

// Of one tray; none where its medium has no amount.
std::optional<StockAmount> shareOf(const Medium& medium)
{
    if (medium.form != MediumForm::LooseMix) {
        return pieces(1);
    }
    return medium.amountPerTray ? std::optional(asStock(*medium.amountPerTray)) : std::nullopt;
}

std::optional<std::vector<Taken>> takenOfMedium(const StockItem& supply, const StockFacts& facts)
{
    const Medium* medium = mediumOf(supply, facts);
    const auto share = medium == nullptr ? std::nullopt : shareOf(*medium);
    if (!share) {
        return std::nullopt;
    }
    std::vector<Taken> taken;
    for (const SownTray& tray : facts.sown) {
        if (tray.medium == medium->id) {
            taken.push_back({tray.at, *share});
        }
    }
    return taken;
}

std::optional<std::vector<Taken>> takenOfConcentrate(const StockItem& supply,
                                                     const StockFacts& facts)
{
    std::optional<std::vector<Taken>> taken;
    for (const WaterRecipe& recipe : facts.recipes) {
        if (recipe.concentrate != supply.name || !recipe.dosePerLitre) {
            continue;
        }
        if (!taken) {
            taken.emplace();
        }
        for (const WaterGiven& given : facts.given) {
            if (given.water == recipe.water) {
                taken->push_back(
                    {given.at, asStock(concentrateFor(given.amount, *recipe.dosePerLitre))});
            }
        }
    }
    return taken;
}

std::vector<Taken> takenByCuts(const StockItem& supply, const StockFacts& facts)
{
    std::vector<Taken> taken;
    for (const Moment& cut : facts.cuts) {
        taken.push_back({cut, *supply.eachUse});
    }
    return taken;
}

std::vector<Taken> takenByPieces(const StockItem& supply, const StockFacts& facts)
{
    std::vector<Taken> taken;
    for (const Sanitising& one : facts.sanitised) {
        if (one.how.method == supply.name) {
            taken.push_back({one.at(), *supply.eachUse});
        }
    }
    return taken;
}

// None where trays don't tell how much of it they take.
std::optional<std::vector<Taken>> takenOf(const StockItem& supply, const StockFacts& facts)
{
    switch (supply.kind) {
    case StockKind::Medium:
        return takenOfMedium(supply, facts);
    case StockKind::Concentrate:
        return takenOfConcentrate(supply, facts);
    case StockKind::Packaging:
        return supply.eachUse ? std::optional(takenByCuts(supply, facts)) : std::nullopt;
    case StockKind::Sanitiser:
        return supply.eachUse ? std::optional(takenByPieces(supply, facts)) : std::nullopt;
    case StockKind::Other:
        break;
    }
    return std::nullopt;
}

StockAmount sumOf(const std::vector<Taken>& taken, Moment after)
{
    StockAmount sum;
    for (const Taken& one : taken) {
        if (one.at > after) {
            sum += one.amount;
        }
    }
    return sum;
}

// Of the rows on record of one supply, oldest first: where the reckoning begins and what was there.
struct Reckoning
{
    Moment from;
    StockAmount had;
    std::optional<Date> countedOn;
    std::optional<double> perDay; // between the last two counts
};

std::optional<Reckoning> reckoningOf(const std::vector<StockCount>& counts)
{
    std::optional<Reckoning> now;
    for (const StockCount& count : counts) {
        if (!now) {
            now = Reckoning{count.at(), {}, {}, {}};
        }
        if (count.what == StockEvent::Bought) {
            now->had += count.amount;
            continue;
        }
        const int days = now->countedOn ? count.on - *now->countedOn : 0;
        if (days > 0) {
            now->perDay = std::max(0.0, static_cast<double>((now->had - count.amount).count()) /
                                            double(days));
        }
        now->from = count.at();
        now->had = count.amount;
        now->countedOn = count.on;
    }
    return now;
}

StockAmount plannedOf(const StockItem& supply, const StockFacts& facts, Date today)
{
    StockAmount planned;
    const Medium* medium = mediumOf(supply, facts);
    const auto share = medium == nullptr ? std::nullopt : shareOf(*medium);
    for (const SowingAhead& sowing : facts.planned) {
        if (share && sowing.medium == medium->id && isAhead(sowing, today)) {
            planned += *share * sowing.trays;
        }
    }
    return planned;
}

Low lowOfSupply(const StockLine& line)
{
    if (!line.left) {
        return Low::No;
    }
    if (*line.left <= StockAmount{}) {
        return Low::None;
    }
    if (line.planned && *line.planned > *line.left) {
        return Low::Planned;
    }
    if (line.item.lowAmount && *line.left < *line.item.lowAmount) {
        return Low::Amount;
    }
    const int least = line.item.lowDays.value_or(kUsualLowDays);
    return line.daysLeft && *line.daysLeft < least ? Low::Days : Low::No;
}

StockLine lineOf(const StockItem& supply, const StockFacts& facts, Date today)
{
    StockLine line;
    line.item = supply;
    if (const Medium* medium = mediumOf(supply, facts)) {
        line.item.name = medium->name;
        line.marker = medium->marker;
    }
    if (supply.kind == StockKind::Medium) {
        line.planned = plannedOf(supply, facts, today);
    }
    std::vector<StockCount> counts;
    std::copy_if(facts.counts.begin(), facts.counts.end(), std::back_inserter(counts),
                 [&](const StockCount& each) { return each.supply == supply.id; });
    const auto reckoning = reckoningOf(counts);
    const auto taken = takenOf(line.item, facts);
    if (!reckoning) {
        return line;
    }
    line.countedOn = reckoning->countedOn;
    line.left = reckoning->had;
    double perDay = 0;
    if (taken) {
        line.usedSince = sumOf(*taken, reckoning->from);
        line.left = std::max(StockAmount{}, reckoning->had - *line.usedSince);
        const Moment from{today - kRateDays, kMinutesPerDay - 1};
        perDay = static_cast<double>(sumOf(*taken, from).count()) / double{kRateDays};
    } else {
        perDay = reckoning->perDay.value_or(0);
    }
    if (perDay > 0) {
        const int since = taken || !line.countedOn ? 0 : today - *line.countedOn;
        line.daysLeft =
            std::max(0.0, static_cast<double>(line.left->count()) / perDay - double(since));
    }
    line.low = lowOfSupply(line);
    return line;
}

bool isKept(const std::vector<StockItem>& supplies, const StockItem& wanted)
{
    return std::any_of(supplies.begin(), supplies.end(),
                       [&](const StockItem& each) { return isSameThing(wanted, each); });
}

// Media used once and the recipes' concentrates stand in the list before they were ever counted.
std::vector<StockItem> allSupplies(const StockFacts& facts)
{
    std::vector<StockItem> all;
    const auto add = [&](const StockItem& supply) {
        if (!isKept(facts.supplies, supply) && !isKept(all, supply)) {
            all.push_back(supply);
        }
    };
    for (const Medium& medium : facts.media) {
        if (!medium.isReusable) {
            StockItem supply;
            supply.name = medium.name;
            supply.kind = StockKind::Medium;
            supply.medium = medium.id;
            supply.unit =
                medium.form == MediumForm::LooseMix ? StockUnit::Millilitre : StockUnit::Piece;
            add(supply);
        }
    }
    for (const WaterRecipe& recipe : facts.recipes) {
        if (!recipe.concentrate.empty()) {
            StockItem supply;
            supply.name = recipe.concentrate;
            supply.kind = StockKind::Concentrate;
            supply.unit = StockUnit::Millilitre;
            add(supply);
        }
    }
    std::copy_if(facts.supplies.begin(), facts.supplies.end(), std::back_inserter(all),
                 [&](const StockItem& each) {
                     const bool isOfGoneMedium =
                         each.kind == StockKind::Medium && mediumOf(each, facts) == nullptr;
                     return !each.isRetired && !isOfGoneMedium;
                 });
    return all;
}

} // namespace

std::optional<StockAmount> StockLine::thenLeft() const
{
    return left ? std::optional(*left - planned.value_or(StockAmount{})) : std::nullopt;
}

std::vector<StockLine> supplyLines(const StockFacts& facts, Date today)
{
    std::vector<StockLine> lines;
    for (const StockItem& supply : allSupplies(facts)) {
        lines.push_back(lineOf(supply, facts, today));
    }
    std::stable_sort(lines.begin(), lines.end(), [](const StockLine& a, const StockLine& b) {
        return std::pair(a.item.kind, a.item.name) < std::pair(b.item.kind, b.item.name);
    });
    return lines;
}

} // namespace plumule
