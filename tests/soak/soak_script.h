#pragma once

#include "core/journal/journal.h"

#include <array>
#include <cstdint>

namespace plumule {

// The rows that a journal has of what the script does.
struct ScriptState
{
    std::int64_t trays = 0;
    std::int64_t waterings = 0;
    std::int64_t notes = 0;
    std::int64_t heights = 0;
    bool operator==(const ScriptState&) const = default;
};

// The script: for ever three trays sown, all three watered, a note, a height, and the height taken
// back; each step one intention. What stands after so many steps is told by division alone.
inline constexpr int kStepsOfScript = 5;
inline constexpr int kTraysOfStep = 3;
[[nodiscard]] ScriptState stateAfter(int steps);
[[nodiscard]] ScriptState stateOf(const std::filesystem::path& path);

// A new journal, empty of trays.
void makeScriptJournal(const std::filesystem::path& path, const Clock& clock);
// The step of that number, from 0.
[[nodiscard]] Done doStep(Journal& journal, int step);

// What a journal is found to be after a disaster.
struct Found
{
    bool isOpened = false;
    bool isSound = false;
    ScriptState state;
};
[[nodiscard]] Found lookAt(const std::filesystem::path& path, const Clock& clock);

// Disasters and what they came to. A step that was not acknowledged may be there, but whole.
struct Tally
{
    int tries = 0;
    int lost = 0;    // fewer steps than were acknowledged
    int half = 0;    // a state that no number of steps leads to
    int unsound = 0; // not opened, or with faults
    void count(const Found& found, int acknowledged);
    [[nodiscard]] bool isClean() const { return lost == 0 && half == 0 && unsound == 0; }
    [[nodiscard]] std::string text(const char* what) const;
};

} // namespace plumule
