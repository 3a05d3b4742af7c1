#pragma once

#include "core/journal/journal.h"

namespace plumule {

// A room run day after day, each round walked and each tray cut when it is due, with a tally of its
// own by arithmetic alone: a variety of two days under weight (misted with 30 mL each morning), one
// in blackout, four in the light (200 mL from below, morning and evening).
class SoakRoom
{
public:
    explicit SoakRoom(const std::filesystem::path& path, Moment begin);

    // From this morning's round to the evening's; then the next day.
    void runDay();
    void runDays(int days);
    // Compares what the journal tells with the tally; gtest failures where they differ.
    void compare();
    [[nodiscard]] std::string figures() const;

    [[nodiscard]] Journal& journal() { return *m_journal; }
    [[nodiscard]] FixedClock& clock() { return m_clock; }
    void reopen();

private:
    // What arithmetic makes of one tray.
    struct OwnTray
    {
        int sownDay = 0; // since the beginning
        int number = 0;  // from 1
        std::int64_t yieldMilligrams = 0;
        int waterings = 0;
        std::int64_t microlitres = 0;
        bool isHarvested = false;
        bool isDiscarded = false;
    };

    void addVariety();
    void walk(Slot slot);
    void decide(const Round& round);
    void cut(TrayId tray, const std::string& code);
    void sow();
    void discardSome();
    void takeBackAndDoAgain();
    void tallyToday();
    void compareTray(const TraySheet& sheet, const OwnTray& own) const;

    std::filesystem::path m_path;
    FixedClock m_clock;
    std::unique_ptr<Journal> m_journal;
    VarietyId m_variety;
    MediumId m_medium;
    int m_day = 0;
    std::vector<OwnTray> m_own; // of number i + 1
    int m_intentions = 0;
};

} // namespace plumule
