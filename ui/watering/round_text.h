#pragma once

#include "core/watering/round.h"
#include "core/watering/round_key.h"
#include "ui/text/text.h"

namespace plumule::ui {

// The wording of a round, the same on the page and on paper.

// The trays and decisions of one shelf, by their index in the round; those without a place come
// last together. Decisions are grouped where the same is asked of trays of one variety.
struct ShelfGroup
{
    std::optional<Spot> spot; // of the first; none: they stand nowhere yet
    std::vector<std::size_t> trays;
    std::vector<std::vector<std::size_t>> decisions;
};
[[nodiscard]] std::vector<ShelfGroup> shelvesOf(const Round& round);

[[nodiscard]] QString titleOf(RoundKey round);            // "Evening round"
[[nodiscard]] QString shelfName(const ShelfGroup& shelf); // "Rack A · shelf 2"
// What the shelf's trays have in common: "under weight, mist from above"; or how many of each;
// where nothing is to water, "no water in this round".
[[nodiscard]] QString shelfWork(const Round& round, const ShelfGroup& shelf);

// What one tray is given: "120 mL" and "nutrient mix"; the amount is empty where none is measured.
struct WaterWords
{
    QString amount;
    QString kind;

    [[nodiscard]] QString whole() const;
};
[[nodiscard]] WaterWords waterWords(const RoundTray& tray, const UnitText& units);

[[nodiscard]] QString dayOfGrowth(const RoundTray& tray); // "day 3 of 13"
[[nodiscard]] QString standing(Stage stage);              // "in blackout"
// "4 days dry" or "never watered"; "missed a.m." for this morning, "missed p.m." for last evening;
// empty where nothing was missed or the tray is done.
[[nodiscard]] QString missedText(const RoundTray& tray, RoundKey round);
// "Not watered for 4 days, since Tuesday 24 November." or "The evening watering of Wednesday 11
// March was not given."
[[nodiscard]] QString missedSentence(const RoundTray& tray);
// Who was forgotten, the worst first: "Not watered for 4 days: PE060. Never watered: RD002."; empty
// where nobody was.
[[nodiscard]] QString forgottenText(const Round& round);
// "“Not needed” 7 times since."
[[nodiscard]] QString looksText(int looks);
// "As needed: 150 mL plain at 11:20."; empty where nothing was given between rounds.
[[nodiscard]] QString betweenSentence(const RoundTray& tray, const UnitText& units);
// When it was ticked, or was watered last.
[[nodiscard]] QString lastText(const RoundTray& tray, RoundKey round);

// "RC083–086"; "RC083, RC085"; from the sixth on they are counted.
[[nodiscard]] QString codesText(const std::vector<std::string>& codes);

// What one looks for and what is then done; as the grower wrote it where the cue says both.
[[nodiscard]] QString cueText(const StageDecision& decision);
[[nodiscard]] QString latenessText(const StageDecision& decision); // empty on the day

[[nodiscard]] QString mixName(const MixLine& line);        // "Nutrient mix", "Misting, pH set"
[[nodiscard]] QString bandText(const WaterRecipe& recipe); // "pH 5.5–6.0, EC 1200–1800 µS/cm"
// "pH 5.9, EC 1500 µS/cm, this morning".
[[nodiscard]] QString readingText(const WaterReading& reading, RoundKey round);
[[nodiscard]] bool isOutsideBand(const WaterReading& reading, const WaterRecipe& recipe);
// "this evening", "yesterday morning", "on the evening of Friday 13 March".
[[nodiscard]] QString roundWords(RoundKey round, Date today);
[[nodiscard]] QString trayCount(int count); // "1 tray", "4 trays"
[[nodiscard]] QString capitalised(const QString& text);

} // namespace plumule::ui
