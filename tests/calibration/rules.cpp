#include "rules.h"

namespace plumule::calibration {

Rules rulesOf(std::size_t sowings, std::size_t media, std::size_t trays)
{
    Rules rules;
    rules.sowings = sowings;
    rules.media = media;
    rules.trays = trays;
    return rules;
}

std::vector<double> unlikeSpreads(std::size_t media)
{
    std::vector<double> spreads;
    for (std::size_t medium = 0; medium < media; ++medium) {
        spreads.push_back(0.04 +
                          0.16 * static_cast<double>(medium) / static_cast<double>(media - 1));
    }
    return spreads;
}

std::vector<double> oneBetter(std::size_t media)
{
    std::vector<double> effects(media, 0);
    effects[0] = kTenPercent;
    return effects;
}

Looking planned()
{
    Looking looking;
    looking.isPlanned = true;
    return looking;
}

Looking withOld(AsksOld old)
{
    Looking looking;
    looking.old = old;
    return looking;
}

Looking seeking(bool isPlanned)
{
    Looking looking;
    looking.isPlanned = isPlanned;
    looking.sought = std::pair<std::size_t, std::size_t>(0, 1);
    return looking;
}

Line seasonLine(std::string room, const Rules& rules, const Looking& looking, int sets,
                const GrowerMaker& grower, const Harvest& harvest)
{
    return {std::move(room), sets, [=](Draw& draw) {
                return season(rules, looking, draw, grower ? grower() : Grower(), harvest);
            }};
}

Line oneTrialLine(std::string room, const Rules& rules, const Looking& looking, int sets,
                  const GrowerMaker& grower, const Harvest& harvest)
{
    return {std::move(room), sets, [=](Draw& draw) {
                return fewSowings(rules, looking, draw, grower ? grower() : Grower(), harvest);
            }};
}

} // namespace plumule::calibration
