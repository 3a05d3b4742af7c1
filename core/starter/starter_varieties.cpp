#include "core/starter/starter_varieties.h"

#include "core/starter/starter_yields.h"

namespace plumule {
namespace {

// How a seed behaves decides what one looks for.
enum class SeedKind
{
    Small,   // brassicas and the like
    Gelling, // gels when wet: neither soaked nor weighed down
    Large,   // pea, sunflower, grains
    Slow     // herbs and others that wait long under cover
};

enum class Source
{
    Read,
    Memory,
    Practice
};

struct StarterRow
{
    const char* name;
    const char* prefix;
    SeedKind kind;
    double seedGrams; // on a tray of 10 x 20 in
    int soakHours;
    int weightDays;
    int blackoutDays;
    int lightDays;
    Source source;
    const char* note = "";
};

constexpr StarterRow kRows[] = {
    // clang-format off
    // name                   prefix kind             seed g  soak h  weight  blackout  light
    {"Amaranth",              "AM", SeedKind::Slow,      11,      0,      1,      3,      9, Source::Memory,
     "Likes warmth; very fine seed."},
    {"Arugula",               "AR", SeedKind::Gelling,   10,      0,      0,      2,      6, Source::Read,
     "Gels when wet: not soaked."},
    {"Basil, sweet",          "BA", SeedKind::Gelling,   28,      0,      0,      5,      9, Source::Read,
     "Gels when wet: not soaked. 28 g is a high rate; 8 to 14 g is often sown (from memory)."},
    {"Beet",                  "BE", SeedKind::Slow,      50,     10,      4,      1,     10, Source::Memory,
     "A cluster gives one to three seedlings."},
    {"Broccoli",              "BR", SeedKind::Small,     25,      0,      3,      1,      8, Source::Practice},
    {"Buckwheat, in hull",    "BU", SeedKind::Large,    125,     10,      2,      1,      8, Source::Memory,
     "Caution: eaten in quantity it can make the skin sensitive to light (fagopyrin)."},
    {"Chard",                 "CH", SeedKind::Slow,      50,     10,      4,      1,     10, Source::Memory,
     "A cluster gives one to three seedlings."},
    {"Cilantro, split",       "CI", SeedKind::Slow,      28,      0,      5,      4,     14, Source::Read},
    {"Collard",               "CO", SeedKind::Small,     25,      0,      2,      1,      7, Source::Memory},
    {"Cress, garden",         "CR", SeedKind::Gelling,   17,      0,      0,      2,      6, Source::Memory,
     "Gels strongly when wet: never soaked."},
    {"Dill",                  "DI", SeedKind::Slow,      23,      0,      4,      2,     11, Source::Memory},
    {"Fenugreek",             "FE", SeedKind::Large,     75,      8,      2,      1,      7, Source::Memory},
    {"Kale",                  "KA", SeedKind::Small,     28,      0,      1,      1,      8, Source::Read},
    {"Kohlrabi",              "KO", SeedKind::Small,     25,      0,      2,      1,      7, Source::Memory},
    {"Lentil",                "LE", SeedKind::Large,    145,     10,      2,      1,      6, Source::Memory},
    {"Lettuce",               "LT", SeedKind::Small,     12,      0,      1,      2,      8, Source::Memory},
    {"Mizuna",                "MZ", SeedKind::Small,     15,      0,      1,      1,      7, Source::Memory},
    {"Mustard",               "MU", SeedKind::Small,     17,      0,      2,      1,      6, Source::Memory,
     "Some lines gel when wet: not soaked."},
    {"Onion",                 "ON", SeedKind::Slow,      48,      0,      4,      2,      9, Source::Memory},
    {"Pak choi",              "PC", SeedKind::Small,     22,      0,      2,      1,      7, Source::Memory},
    {"Pea shoots",            "PE", SeedKind::Large,    150,      6,      2,      1,      7, Source::Read,
     "10 to 14 days to harvest are often seen (from memory)."},
    {"Radish",                "RD", SeedKind::Small,     42,      0,      1,      1,      7, Source::Read},
    {"Red cabbage",           "RC", SeedKind::Small,     26,      0,      2,      1,      7, Source::Memory},
    {"Salad mix, mild",       "SM", SeedKind::Small,     28,      0,      3,      1,      9, Source::Read},
    {"Sunflower, in hull",    "SU", SeedKind::Large,    145,     10,      3,      1,      7, Source::Memory},
    {"Turnip",                "TU", SeedKind::Small,     23,      0,      2,      1,      7, Source::Memory},
    {"Wheatgrass",            "WG", SeedKind::Large,    375,     10,      2,      1,      6, Source::Memory},
    // clang-format on
};

std::string sourceText(Source source)
{
    switch (source) {
    case Source::Read:
        return "Seed per tray, soak, days covered and days to harvest: Utah State University "
               "Extension, Grow Your Own Microgreens, Table 1. How the covered days are divided, "
               "watering and cues: from memory.";
    case Source::Memory:
        return kFromMemory;
    case Source::Practice:
        return "Seed per tray, days and watering: common practice, no source. Cues: from memory.";
    }
    return {};
}

// What to look for before the stage is left.
struct Cues
{
    const char* soak;
    const char* underWeight;
    const char* blackout;
    const char* light;
};

Cues cuesFor(SeedKind kind)
{
    switch (kind) {
    case SeedKind::Small:
        return {"Seeds swollen, none split", "Roots hold on, the weight is lifted evenly",
                "Hulls shed, even 25 mm shoots", "Seed leaves open and green, before true leaves"};
    case SeedKind::Gelling:
        return {"", "Gel gone, roots hold on", "Gel gone, even 15 mm shoots",
                "Seed leaves wide, first true leaves just showing"};
    case SeedKind::Large:
        return {"Seeds swollen through, none still hard", "Shoots push the weight up all over",
                "Stems stand even at 50 mm", "Stems still snap, leaves open, about 100 mm tall"};
    case SeedKind::Slow:
        return {"Clusters soft, water clear after rinsing", "First shoots over the whole tray",
                "Even 20 mm shoots, few hulls left", "First true leaves on most shoots"};
    }
    return {};
}

ProtocolStage soakStage(int hours, const Cues& cues)
{
    ProtocolStage stage;
    stage.stage = Stage::Soak;
    stage.lengthMinutes = hours * 60;
    stage.cue = cues.soak;
    return stage;
}

ProtocolStage coveredStage(Stage kind, int days, const char* cue)
{
    ProtocolStage stage;
    stage.stage = kind;
    stage.lengthMinutes = days * kMinutesPerDay;
    stage.cue = cue;
    stage.wateringsPerDay = 2;
    stage.method = WateringMethod::Mist;
    stage.water = WaterKind::Plain;
    return stage;
}

ProtocolStage lightStage(int days, const Cues& cues)
{
    ProtocolStage stage;
    stage.stage = Stage::Light;
    stage.lengthMinutes = days * kMinutesPerDay;
    stage.cue = cues.light;
    stage.wateringsPerDay = 2;
    stage.method = WateringMethod::Below;
    stage.amount = usCups(0.5);
    stage.water = WaterKind::Nutrient;
    return stage;
}

Protocol protocolFrom(const StarterRow& row)
{
    Protocol protocol;
    protocol.variety.name = row.name;
    protocol.variety.codePrefix = row.prefix;
    protocol.variety.seedPerTray = grams(row.seedGrams);
    protocol.variety.source = sourceText(row.source);
    protocol.variety.note = row.note;
    const Cues cues = cuesFor(row.kind);
    if (row.soakHours > 0) {
        protocol.stages.push_back(soakStage(row.soakHours, cues));
    }
    if (row.weightDays > 0) {
        protocol.stages.push_back(
            coveredStage(Stage::UnderWeight, row.weightDays, cues.underWeight));
    }
    if (row.blackoutDays > 0) {
        protocol.stages.push_back(coveredStage(Stage::Blackout, row.blackoutDays, cues.blackout));
    }
    protocol.stages.push_back(lightStage(row.lightDays, cues));
    return protocol;
}

} // namespace

std::vector<Protocol> starterVarieties()
{
    std::vector<Protocol> varieties;
    for (const StarterRow& row : kRows) {
        varieties.push_back(protocolFrom(row));
    }
    return varieties;
}

} // namespace plumule
