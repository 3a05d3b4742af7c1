#pragma once

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/quantity.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

struct MediumTag;
struct PieceTag;
struct SanitisingTag;
using MediumId = Id<MediumTag>;
using PieceId = Id<PieceTag>;
using SanitisingId = Id<SanitisingTag>;

enum class MediumForm
{
    LooseMix,
    Mat,
    Mesh
};
[[nodiscard]] const char* toText(MediumForm form); // loose_mix, mat, mesh
bool fromText(std::string_view text, MediumForm& form);

// What the roots grow in.
struct Medium
{
    MediumId id;
    std::string name;
    MediumForm form = MediumForm::LooseMix;
    bool isNutrientBearing = false; // else inert
    bool isReusable = false;        // else used once
    std::optional<int> plannedUses; // of one piece; for a reusable medium
    std::optional<Length> surfaceBelowRim;
    std::optional<Volume> amountPerTray; // of a loose mix
    int marker = 0;                      // which colour and shape it has in every chart, 0 to 23
    std::string source;
    std::string note;
    bool isRetired = false;
    bool isAsRun = false; // always run with its own feeding, so that the two are compared as one
    bool operator==(const Medium&) const = default;
};

// One physical reusable mat or mesh.
struct Piece
{
    PieceId id;
    MediumId medium;
    int number = 0; // from 1 within its medium
    std::optional<Date> boughtOn;
    std::optional<Date> retiredOn;
    std::string note;
    bool operator==(const Piece&) const = default;
};

// What the strength of a sanitiser is counted in.
enum class StrengthUnit
{
    Percent,
    Ppm
};
[[nodiscard]] const char* toText(StrengthUnit unit); // percent, ppm
bool fromText(std::string_view text, StrengthUnit& unit);

// How pieces were sanitised, as the grower tells it.
struct SanitisingDraft
{
    std::string method; // the agent, or the way: "peroxide", "hot water"
    std::optional<double> strength = {};
    StrengthUnit strengthUnit = StrengthUnit::Percent;
    std::optional<int> contactMinutes = {};
    std::string by = {}; // who did it; empty: not said
    bool operator==(const SanitisingDraft&) const = default;
};

struct Sanitising
{
    SanitisingId id;
    PieceId piece;
    Date on;
    int minute = 0;
    SanitisingDraft how;
    bool operator==(const Sanitising&) const = default;

    [[nodiscard]] Moment at() const { return {on, minute}; }
};

// A piece with its life so far.
struct PieceRecord
{
    Piece piece;
    int uses = 0;                 // trays sown on it
    bool isInUse = false;         // a tray grows on it now
    std::optional<Date> lastUsed; // the last tray's end, or its sowing while it grows
    std::optional<Date> lastSanitised;
    // Used, and not sanitised since: not to be sown on yet.
    bool needsSanitising = false;

    // Clean, with nothing on it.
    [[nodiscard]] bool isFree() const { return !isInUse && !needsSanitising; }
};

} // namespace plumule
