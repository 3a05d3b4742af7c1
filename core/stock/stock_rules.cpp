#include "core/stock/stock_rules.h"

#include "core/stock/stock_reason.h"

#include <algorithm>

namespace plumule {
namespace {

struct VarietySeed
{
    std::optional<Mass> left; // of all its lots that were weighed
    Mass planned;
    double perDay = 0; // mg
    std::optional<SeedLotId> inHand;
};

Mass seedOf(const SowingAhead& sowing, const StockFacts& facts)
{
    const auto variety = facts.varieties.find(sowing.variety);
    const auto usual =
        variety == facts.varieties.end() ? std::nullopt : variety->second.seedPerTray;
    return sowing.seedEach ? *sowing.seedEach * sowing.trays
                           : usual.value_or(Mass{}) * sowing.trays;
}

std::map<VarietyId, VarietySeed> seedByVariety(const StockFacts& facts, Date today)
{
    std::map<VarietyId, VarietySeed> all;
    for (const VarietyId variety : facts.everBought) {
        all[variety].left = Mass{};
    }
    std::map<VarietyId, bool> isAnyWeighed;
    for (const SeedLotStock& stock : facts.lots) {
        VarietySeed& seed = all[stock.lot.variety];
        isAnyWeighed[stock.lot.variety] |= stock.left.has_value();
        seed.left = seed.left.value_or(Mass{}) + stock.left.value_or(Mass{});
    }
    for (const auto& [variety, isWeighed] : isAnyWeighed) {
        if (!isWeighed) {
            all[variety].left.reset();
        }
    }
    for (const SownTray& tray : facts.sown) {
        VarietySeed& seed = all[tray.variety];
        if (tray.at.date > today - kRateDays && tray.at.date <= today) {
            seed.perDay +=
                static_cast<double>(tray.seed.value_or(Mass{}).count()) / double{kRateDays};
            seed.inHand = tray.lot ? tray.lot : seed.inHand;
        }
    }
    for (const SowingAhead& sowing : facts.planned) {
        if (isAhead(sowing, today)) {
            all[sowing.variety].planned += seedOf(sowing, facts);
        }
    }
    return all;
}

std::optional<double> daysOf(std::optional<Mass> left, double perDay)
{
    return left && perDay > 0
               ? std::optional(std::max(0.0, static_cast<double>(left->count()) / perDay))
               : std::nullopt;
}

Low lowOf(const VarietySeed& seed, const SeedLow* mark)
{
    if (!seed.left) {
        return Low::No;
    }
    const bool isWanted = seed.perDay > 0 || seed.planned > Mass{};
    if (*seed.left <= Mass{}) {
        return isWanted || (mark != nullptr && mark->amount) ? Low::None : Low::No;
    }
    if (seed.planned > *seed.left) {
        return Low::Planned;
    }
    if (mark != nullptr && mark->amount && *seed.left < *mark->amount) {
        return Low::Amount;
    }
    const auto days = daysOf(seed.left, seed.perDay);
    const int least = mark != nullptr && mark->days ? *mark->days : kUsualLowDays;
    return days && *days < least ? Low::Days : Low::No;
}

const SeedLow* markOf(const StockFacts& facts, VarietyId variety)
{
    const auto found = facts.seedLows.find(variety);
    return found == facts.seedLows.end() ? nullptr : &found->second;
}

std::string nameOf(const StockFacts& facts, VarietyId variety)
{
    const auto found = facts.varieties.find(variety);
    return found == facts.varieties.end() ? std::string() : found->second.name;
}

// The lot that a variety is sown from: the one sown last while some is left, else the oldest one.
bool isInHand(const SeedLotStock& stock, const VarietySeed& seed, const StockFacts& facts)
{
    const auto isOpen = [&](const SeedLotStock& each) {
        return each.lot.variety == stock.lot.variety && each.left.value_or(Mass{}) > Mass{};
    };
    const auto last =
        std::find_if(facts.lots.begin(), facts.lots.end(), [&](const SeedLotStock& each) {
            return seed.inHand == each.lot.id && isOpen(each);
        });
    if (last != facts.lots.end()) {
        return last->lot.id == stock.lot.id;
    }
    const auto first = std::find_if(facts.lots.begin(), facts.lots.end(), isOpen);
    return first != facts.lots.end() && first->lot.id == stock.lot.id;
}

} // namespace

bool isOddCount(double counted, double expected)
{
    constexpr double kTimes = 5;
    return counted > 0 && expected > 0 &&
           (counted >= kTimes * expected || counted * kTimes <= expected);
}

std::optional<Mass> SeedLine::thenLeft() const
{
    return stock.left ? std::optional(*stock.left - planned) : std::nullopt;
}

int Stock::piecesDue() const
{
    int due = 0;
    for (const PieceGroup& group : pieces) {
        due += group.due;
    }
    return due;
}

Done checkLowDays(std::optional<int> days)
{
    if (days && (*days < 0 || *days > kMostLowDays)) {
        return fail(ErrorKind::Invalid, StockReason::DaysBeyond, kMostLowDays);
    }
    return {};
}

std::vector<SeedLine> seedLines(const StockFacts& facts, Date today)
{
    const auto byVariety = seedByVariety(facts, today);
    std::vector<SeedLine> lines;
    for (const SeedLotStock& stock : facts.lots) {
        const VarietySeed& seed = byVariety.at(stock.lot.variety);
        SeedLine line;
        line.stock = stock;
        line.variety = nameOf(facts, stock.lot.variety);
        const bool isNow = isInHand(stock, seed, facts);
        for (const SowingAhead& sowing : facts.planned) {
            const bool isOfIt = sowing.lot ? *sowing.lot == stock.lot.id
                                           : sowing.variety == stock.lot.variety && isNow;
            if (isOfIt && isAhead(sowing, today)) {
                line.planned += seedOf(sowing, facts);
            }
        }
        line.isWeak = stock.lot.germinationPercent.value_or(100) < kWeakGerminationPercent;
        if (isNow) {
            line.daysLeft = daysOf(stock.left, seed.perDay);
            line.low = lowOf(seed, markOf(facts, stock.lot.variety));
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<LowThing> lowThings(const StockFacts& facts, Date today)
{
    return lowThings(facts, supplyLines(facts, today), today);
}

std::vector<LowThing> lowThings(const StockFacts& facts, const std::vector<StockLine>& supplies,
                                Date today)
{
    std::vector<LowThing> low;
    for (const auto& [variety, seed] : seedByVariety(facts, today)) {
        const Low why = lowOf(seed, markOf(facts, variety));
        if (why != Low::No) {
            low.push_back({nameOf(facts, variety), why, daysOf(seed.left, seed.perDay)});
        }
    }
    for (const StockLine& line : supplies) {
        if (line.low != Low::No) {
            low.push_back({line.item.name, line.low, line.daysLeft});
        }
    }
    std::stable_sort(low.begin(), low.end(), [](const LowThing& a, const LowThing& b) {
        return a.daysLeft.value_or(kMostLowDays) < b.daysLeft.value_or(kMostLowDays);
    });
    return low;
}

std::vector<PieceGroup> pieceGroups(const std::vector<Medium>& media,
                                    const std::vector<PieceRecord>& pieces,
                                    const std::map<PieceId, PieceInUse>& inUse,
                                    const std::vector<Sanitising>& sanitised)
{
    std::map<PieceId, const Sanitising*> last;
    for (const Sanitising& one : sanitised) {
        last[one.piece] = &one;
    }
    std::vector<PieceGroup> groups;
    for (const Medium& medium : media) {
        PieceGroup group;
        group.medium = medium;
        for (const PieceRecord& record : pieces) {
            if (record.piece.medium != medium.id) {
                continue;
            }
            PieceLine line{record, {}, {}, {}, false};
            if (const auto found = inUse.find(record.piece.id); found != inUse.end()) {
                line.inUse = found->second;
            }
            if (const auto found = last.find(record.piece.id); found != last.end()) {
                line.sanitised = *found->second;
            }
            const bool isDue = record.needsSanitising && !record.isInUse;
            line.due = isDue ? record.lastUsed : std::nullopt;
            line.isPast = medium.plannedUses && record.uses > *medium.plannedUses;
            group.growing += record.isInUse ? 1 : 0;
            group.due += isDue ? 1 : 0;
            group.clean += record.isFree() ? 1 : 0;
            group.pieces.push_back(std::move(line));
        }
        if (!group.pieces.empty()) {
            groups.push_back(std::move(group));
        }
    }
    return groups;
}

} // namespace plumule
