#pragma once

#include "core/trial/trial.h"

#include <string_view>
#include <vector>

namespace plumule {

struct PanelTag;
struct PanelSampleTag;
struct PanelAttributeTag;
struct TasterTag;
struct ServingTag;
struct ScoreTag;
using PanelId = Id<PanelTag>;
using PanelSampleId = Id<PanelSampleTag>;
using PanelAttributeId = Id<PanelAttributeTag>;
using TasterId = Id<TasterTag>;
using ServingId = Id<ServingTag>;
using ScoreId = Id<ScoreTag>;

// What a taster does with the samples.
enum class TastingMethod
{
    Hedonic, // a score from 1 (dislike extremely) to 9 (like extremely) for each
    Ranking, // ranks from 1, the one liked best, to the count of samples
    Triangle // of three servings, two alike, the odd one is named
};
[[nodiscard]] const char* toText(TastingMethod method); // hedonic, ranking, triangle
bool fromText(std::string_view text, TastingMethod& method);

// One tasting. It is blind until it is closed, and final from then on.
struct Panel
{
    PanelId id;
    std::optional<TrialId> trial;
    std::string name;
    Date on;
    TastingMethod method = TastingMethod::Hedonic;
    std::int64_t drawNumber = 0; // draws the same codes and orders again
    std::optional<Date> closedOn;
    std::string note;
    bool operator==(const Panel&) const = default;

    [[nodiscard]] bool isOpen() const { return !closedOn; }
};

// Positions count from 0.
struct PanelSample
{
    PanelSampleId id;
    PanelId panel;
    int position = 0;
    MediumId medium;
    bool operator==(const PanelSample&) const = default;
};

struct PanelAttribute
{
    PanelAttributeId id;
    PanelId panel;
    int position = 0;
    std::string name;
    bool operator==(const PanelAttribute&) const = default;
};

struct Taster
{
    TasterId id;
    PanelId panel;
    int position = 0;
    std::string name;
    bool operator==(const Taster&) const = default;
};

// What is put before a taster at a turn (from 1), under a code that nobody else is given.
struct Serving
{
    ServingId id;
    PanelId panel;
    TasterId taster;
    PanelSampleId sample;
    int turn = 1;
    std::string code; // three digits
    bool operator==(const Serving&) const = default;
};

// A hedonic score, a rank, or in a triangle 1 for the serving that was named as the odd one.
struct Score
{
    ScoreId id;
    ServingId serving;
    PanelAttributeId attribute;
    int value = 0;
    bool operator==(const Score&) const = default;
};

// The name of a triangle's only attribute.
inline constexpr const char* kOddOne = "odd_one";

// A tasting with all that belongs to it; samples, attributes and tasters by position, servings by
// taster, then turn.
struct PanelRecord
{
    Panel panel;
    std::vector<PanelSample> samples;
    std::vector<PanelAttribute> attributes;
    std::vector<Taster> tasters;
    std::vector<Serving> servings;
    std::vector<Score> scores;
    bool operator==(const PanelRecord&) const = default;
};

// What is planned by hand; the rest is drawn. A triangle has no attributes of its own.
struct PanelDraft
{
    Panel panel;
    std::vector<MediumId> media;
    std::vector<std::string> attributes;
    std::vector<std::string> tasters;
    bool operator==(const PanelDraft&) const = default;
};

} // namespace plumule
