#pragma once

#include "core/tasting/tasting_result.h"
#include "core/tasting/tasting_rules.h"

namespace plumule {

class Ledger;

// A tasting in the list of all.
struct PanelRow
{
    Panel panel;
    int samples = 0;
    int tasters = 0;
    int scores = 0;
    int scoresWanted = 0;
};

// What a helper plates: which medium goes under which code.
struct PlatedServing
{
    Serving serving;
    std::string taster;
    Medium medium;
};

// What was typed in, and what is odd about it.
struct EnteredScore
{
    Taster taster;
    Serving serving;
    std::optional<int> before; // the value that was there
    // Another serving of this taster that has the rank already, or was named the odd one before.
    std::optional<std::string> clashingCode;
};

// Blind tastings: planned, served by code, scored by code, closed, and only then told.
class TastingEntries
{
public:
    explicit TastingEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Newest first; of one trial, or all.
    [[nodiscard]] Result<std::vector<PanelRow>> list(std::optional<TrialId> trial = std::nullopt);
    // A panel to begin with: today, the media of the trial, a number for the draw from the clock.
    // Its name, attributes and tasters are empty.
    [[nodiscard]] Result<PanelDraft> newDraft(std::optional<TrialId> trial);
    [[nodiscard]] Result<PanelDraft> draft(PanelId panel);
    // While the panel is open no serving tells its sample.
    [[nodiscard]] Result<PanelRecord> record(PanelId panel);
    // For whoever plates, not for whoever tastes or types the scores in. By taster, then turn.
    [[nodiscard]] Result<std::vector<PlatedServing>> plating(PanelId panel);

    // A new panel where its id is not stored. Draws orders and codes. As checkPanel() and
    // checkIsBlind(); NotFound trial or medium; Conflict HasScores, Closed.
    Result<Panel> save(const PanelDraft& draft);

    // Conflict Closed; NotFound CodeUnknown, AttributeUnknown; Invalid ScoreRange. In
    // a triangle 1 names the odd serving, and no other of that taster's is named any more. A rank
    // given twice is taken and told: a panel can't be closed with it.
    Result<EnteredScore> enter(PanelId panel, const std::string& code, PanelAttributeId attribute,
                               int value);
    // Takes a score out; NothingThere where there is none.
    Done clear(PanelId panel, const std::string& code, PanelAttributeId attribute);
    // Final but for undo: there is no opening again. Scores may be missing. TooFew NoScores
    // (there is none); Conflict RankTwice with taster and codes, Closed.
    Result<Panel> close(PanelId panel);
    // With its scores.
    Done remove(PanelId panel);

    // As tastingResult().
    [[nodiscard]] Result<TastingResult> result(PanelId panel);

private:
    Ledger& m_ledger;
};

} // namespace plumule
