#include "lines.h"
#include "rules.h"

namespace plumule::calibration {
namespace {

// A tray costs the same whatever it bears, seed and water a little more or less; some fail.
Harvest countsCosts(double failing)
{
    return [=](std::vector<SownTray>& trays, Draw& draw) {
        for (SownTray& tray : trays) {
            tray.per = draw.uniform() < failing ? 0 : *tray.value;
            tray.value = 1.2 * std::exp(draw.normal(0.02));
        }
    };
}

// A failed tray counts with no grams.
Harvest countsSown(double failing)
{
    return [=](std::vector<SownTray>& trays, Draw& draw) {
        for (SownTray& tray : trays) {
            tray.value = draw.uniform() < failing ? 0 : *tray.value;
        }
    };
}

Looking ratios()
{
    Looking looking;
    looking.ask.scale = stats::CellScale::LogOfRatio;
    return looking;
}

} // namespace

Section promisedCosts()
{
    Section section{"Cost per gram and yield per tray sown: media equal", {}};
    for (const std::size_t media : {2U, 4U}) {
        for (const std::size_t trays : {2U, 3U, 6U}) {
            for (const double failing : {0.0, 0.1}) {
                const std::string room = "cost, one trial: " + std::to_string(media) + " media, " +
                                         std::to_string(trays) + " trays" +
                                         (failing > 0 ? ", 10 % failing" : "");
                section.lines.push_back(oneTrialLine(room, rulesOf(1, media, trays), ratios(),
                                                     kSets, {}, countsCosts(failing))
                                            .atMost(5)
                                            .inShort(failing > 0 ? 0 : 2000));
            }
        }
    }
    for (const double failing : {0.0, 0.1}) {
        const std::string after = failing > 0 ? ", 10 % failing" : "";
        section.lines.push_back(seasonLine("cost, 8 trials × 4 media" + after, rulesOf(8), ratios(),
                                           kFewerSets, {}, countsCosts(failing))
                                    .atMost(5));
        section.lines.push_back(seasonLine("yield per tray sown, 8 trials × 4 media" + after,
                                           rulesOf(8), ratios(), kFewerSets, {},
                                           countsSown(failing))
                                    .atMost(5));
        section.lines.push_back(oneTrialLine("yield per tray sown, one trial of 6 trays" + after,
                                             rulesOf(1, 4, 6), ratios(), kSets, {},
                                             countsSown(failing))
                                    .atMost(5));
    }
    return section;
}

} // namespace plumule::calibration
