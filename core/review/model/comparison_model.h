#pragma once

#include <optional>
#include <vector>

namespace plumule {

enum class ModelPart
{
    Medium,
    Feeding, // nutrient water given or not; only where some medium was grown both ways
    Variety,
    Trial,
    Block,      // shelf, or block of the trial
    Column,     // place along the shelf, of a trial laid out as a Latin square
    SeedDensity // g/m², a covariate
};

enum class TermPlace
{
    Fixed,
    Random,
    LeftOut
};

enum class WhyLeftOut
{
    Confounded,    // with it some means or pairs could no longer be told
    WithinBlocks,  // of trials: each block belongs to one, so that blocks account for them
    PartlyUnknown, // not on record for every tray
    TooFewTrays
};

struct ModelTerm
{
    ModelPart part = ModelPart::Medium;
    TermPlace place = TermPlace::Fixed;
    std::optional<WhyLeftOut> why;
    int levels = 0; // 0 for a covariate
    // Each term after all others; of a random one none.
    std::optional<double> f;
    std::optional<double> df1;
    std::optional<double> df2;
    std::optional<double> p;
};

enum class BlockKind
{
    Shelf,
    BlockOfTrial
};

// What was fitted, or tried. What does not vary is not among the terms.
struct ComparisonModel
{
    std::vector<ModelTerm> terms; // the medium first; empty where nothing could be fitted
    BlockKind block = BlockKind::Shelf;
    int trials = 0;
    std::optional<double> trialSd; // between trials, where they are random
    bool isTrialSpreadZero = false;
    std::optional<double> rSquared;

    [[nodiscard]] const ModelTerm* find(ModelPart part) const;
    // It is in the model, or within what is.
    [[nodiscard]] bool accountsFor(ModelPart part) const;
};

} // namespace plumule
