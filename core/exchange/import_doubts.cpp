#include "core/exchange/import_doubts.h"

#include "core/stats/samples/samples.h"

#include <map>

namespace plumule {
namespace {

constexpr std::size_t kFewestOthers = 3;
constexpr double kFarOff = 5;
constexpr double kLeastPerSeed = 0.2;
constexpr double kMostPerSeed = 60;
constexpr int kLongestGrowth = 60;

bool isWeighed(const ImportedTray& tray)
{
    return tray.net && *tray.net > Mass{};
}

double perSeed(const ImportedTray& tray)
{
    return *tray.net / *tray.seed;
}

// What the trays of one variety weigh. Three others and itself are four, of which one that slipped
// cannot carry the median away.
struct OfOneVariety
{
    std::vector<double> weights;
    std::vector<double> perSeed;

    [[nodiscard]] bool tells() const { return weights.size() > kFewestOthers; }
    [[nodiscard]] bool isBySeed() const { return perSeed.size() == weights.size(); }
};

using Varieties = std::map<std::string, OfOneVariety>;
using Usuals = std::map<std::string, double>; // g, or g per g of seed where it is known of all

Varieties varietiesOf(const std::vector<ImportedTray>& trays)
{
    Varieties varieties;
    for (const ImportedTray& tray : trays) {
        if (isWeighed(tray)) {
            OfOneVariety& alike = varieties[nameKey(tray.variety)];
            alike.weights.push_back(inGrams(*tray.net));
            if (tray.seed) {
                alike.perSeed.push_back(perSeed(tray));
            }
        }
    }
    return varieties;
}

Usuals usualsOf(const Varieties& varieties)
{
    Usuals usuals;
    for (const auto& [name, alike] : varieties) {
        if (alike.tells()) {
            usuals[name] = stats::medianOf(alike.isBySeed() ? alike.perSeed : alike.weights);
        }
    }
    return usuals;
}

std::optional<ImportDoubt> doubtOfWeight(const ImportedTray& tray, const Varieties& varieties,
                                         const Usuals& usuals)
{
    const std::string name = nameKey(tray.variety);
    if (const auto usual = usuals.find(name); usual != usuals.end()) {
        const double seed = varieties.at(name).isBySeed() ? inGrams(*tray.seed) : 1;
        const Mass expected = grams(usual->second * seed);
        const double times = *tray.net / expected;
        if (1 / kFarOff <= times && times <= kFarOff) {
            return std::nullopt;
        }
        return ImportDoubt{tray.line, tray.code, ImportDoubtKind::WeightOfOthers,
                           0,         *tray.net, expected};
    }
    if (!tray.seed || (kLeastPerSeed <= perSeed(tray) && perSeed(tray) <= kMostPerSeed)) {
        return std::nullopt;
    }
    return ImportDoubt{tray.line, tray.code, ImportDoubtKind::WeightOfSeed,
                       0,         *tray.net, *tray.seed};
}

std::optional<ImportDoubt> doubtOfDays(const ImportedTray& tray)
{
    const int days = tray.harvested ? *tray.harvested - tray.sown : 0;
    if (days <= kLongestGrowth) {
        return std::nullopt;
    }
    return ImportDoubt{tray.line, tray.code, ImportDoubtKind::LongGrowth, days, {}, {}};
}

} // namespace

std::vector<ImportDoubt> doubtsAbout(const std::vector<ImportedTray>& trays)
{
    const Varieties varieties = varietiesOf(trays);
    const Usuals usuals = usualsOf(varieties);
    std::vector<ImportDoubt> doubts;
    const auto note = [&doubts](const std::optional<ImportDoubt>& doubt) {
        if (doubt) {
            doubts.push_back(*doubt);
        }
    };
    for (const ImportedTray& tray : trays) {
        if (isWeighed(tray)) {
            note(doubtOfWeight(tray, varieties, usuals));
        }
        note(doubtOfDays(tray));
    }
    return doubts;
}

} // namespace plumule
