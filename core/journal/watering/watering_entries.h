#pragma once

#include "core/watering/round.h"

namespace plumule {

class Ledger;

// The rounds, and what was given in them.
class WateringEntries
{
public:
    explicit WateringEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    [[nodiscard]] Result<Round> round(Date date, Slot slot);
    // The round that is walked now.
    [[nodiscard]] Result<Round> roundNow();

    // That tray's part in a round; none where it has none, or has ended.
    [[nodiscard]] Result<std::optional<RoundTray>> inRound(TrayId tray, Date date, Slot slot);

    // Ticks the tray in that round with what it asks for. Conflict when it is not asked for, or
    // ticked.
    Result<Watering> tick(TrayId tray, Date date, Slot slot);
    // Ticks all of these that the round asks for and are not ticked yet: a shelf, as one intention.
    Result<std::vector<Watering>> tickAll(const std::vector<TrayId>& trays, Date date, Slot slot);
    // Says of all of these that the round offers water as needed that they need none: one
    // intention.
    Result<std::vector<WateringLook>> needNothing(const std::vector<TrayId>& trays, Date date,
                                                  Slot slot);
    // Takes the tick off, or that it needed nothing.
    Done untick(TrayId tray, Date date, Slot slot);
    // Water as needed, between rounds, as one act. It counts for the round that is walked at that
    // moment, but is no tick of it. Conflict for a tray that is no longer growing, Invalid ahead of
    // now or before a tray's sowing.
    Result<std::vector<Watering>> giveBetween(const BetweenDraft& draft);
    // Takes a watering out, a tick as well.
    Done remove(WateringId watering);

    // All of a remark or, where one part of it is refused, nothing: the note, the height, what was
    // given and the readings. A tray not ticked yet is ticked with what was given. The tick, where
    // there is one.
    Result<std::optional<Watering>> writeDown(const TrayRemark& remark);

    // Missing where neither value is given; Invalid beyond pH 0–14 or EC 0–20 000 µS/cm.
    Result<WaterReading> noteReading(const WaterReading& reading);

    [[nodiscard]] Result<std::vector<WaterRecipe>> recipes();
    // Invalid: a negative dose, a band upside down.
    Result<WaterRecipe> changeRecipe(const WaterRecipe& recipe);

private:
    Ledger& m_ledger;
};

} // namespace plumule
