#pragma once

#include "core/room/free_days.h"
#include "core/week/week.h"

namespace plumule {

// Puts a week together, in the order of its functions: what is added first has the first choice of
// places. For week.cpp alone.
class WeekMaker
{
public:
    explicit WeekMaker(const WeekFacts& facts);

    void addGrowing();
    void addDirtyPieces();
    void addPlans();
    void addRepeats();
    void addOrders();
    [[nodiscard]] Week finish();

private:
    // Seed that a sowing takes.
    struct Draw
    {
        Date on;
        Mass seed;
    };
    // Trays that are to be sown.
    struct Sowing
    {
        const Protocol* protocol = nullptr;
        const Medium* medium = nullptr;
        int trays = 0;
        Moment at;   // of the soak, where there is one
        Moment sown; // after it
        bool soaks = false;
        bool isProposed = false;
        std::string trial;
        std::optional<Mass> seedPerTray;
        std::vector<TaskAhead> tasks;
        [[nodiscard]] Date cutOn() const { return tasks.back().at.date; }
    };
    // A day of a repeating sowing.
    struct OpenDay
    {
        const Repeat* repeat = nullptr;
        Date due;
    };

    [[nodiscard]] Date lastDay() const { return m_week.from + (kWeekDays - 1); }
    static void addOnce(std::vector<std::string>& names, const std::string& name);
    [[nodiscard]] WeekDay* dayOn(Date on);
    // The line of that task and name on its day; none beyond the fourteen days.
    WeekEntry* entryOf(WeekTask task, RoundKey at, std::int64_t subject, const std::string& name);
    void addLot(Date on, VarietyId variety, MediumId medium, Date sownOn, int trays);
    void addTray(const TrayRecord& record, const std::map<PlaceId, std::string>& shelves);
    void takePiece(MediumId medium, Date from, Date cutOn);
    void addWash(RoundKey cutAt, const Medium& medium, int pieces, int proposed);

    [[nodiscard]] Sowing sowingOf(const Protocol& protocol, const Medium& medium, Moment at,
                                  bool soaks) const;
    // Takes its places, pieces and seed, and writes its tasks down.
    void addSowing(const Sowing& sowing);
    [[nodiscard]] std::vector<OpenDay> openDaysInOrder() const;
    void addRepeat(const OpenDay& day);
    // As near to its day as may be, from today on.
    [[nodiscard]] Sowing nearestTo(const OpenDay& day, Date on) const;
    // The first day with places and pieces for it; false where there is none, and the shift says
    // why.
    bool findRoom(const OpenDay& day, Sowing& sowing, ProposalShift& shift) const;
    void describe(const Sowing& sowing, Proposal& proposal) const;
    [[nodiscard]] int freePlaces(const Sowing& sowing) const;
    [[nodiscard]] bool hasPieces(const Sowing& sowing) const;
    // Of all lots in use; none where it is not known of one of them.
    [[nodiscard]] std::optional<Mass> seedStored(VarietyId variety) const;
    // By sowings up to that day.
    [[nodiscard]] Mass seedDrawn(VarietyId variety, Date until) const;
    void addPieceOrder(const Sowing& sowing, Date due);

    const WeekFacts& m_facts;
    Week m_week;
    FreeDays m_places;
    std::map<MediumId, FreeDays> m_pieces;
    std::map<VarietyId, std::vector<Draw>> m_draws;
};

} // namespace plumule
