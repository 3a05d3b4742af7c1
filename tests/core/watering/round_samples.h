#pragma once

#include "core/watering/round.h"

#include <algorithm>

#include "tests/core/tray/tray_samples.h"

namespace plumule {

// A rack of one shelf of `places`; rounds at 07:00 and 18:00.
inline RoomLayout oneShelf(int places)
{
    RoomLayout layout;
    layout.racks = {{{1}, "A", 0}};
    Shelf shelf;
    shelf.id = {1};
    shelf.rack = {1};
    shelf.name = "1";
    layout.shelves = {shelf};
    for (int i = 1; i <= places; ++i) {
        layout.places.push_back({{i}, {1}, i});
    }
    return layout;
}

inline TrayRecord trayOf(std::int64_t id, const Protocol& protocol, const Medium& medium, Moment at,
                         bool startsWithSoak = false)
{
    TrayRecord record;
    record.tray.id = {id};
    record.tray.code = "BR00" + std::to_string(id);
    record.variety = protocol.variety.name;
    record.medium = medium;
    record.place = PlaceId{id};
    record.stages =
        stagesFor(protocol, medium, at, startsWithSoak ? FirstStage::Soak : FirstStage::AfterSoak);
    const std::size_t sown = startsWithSoak ? 1 : 0;
    record.tray.sownOn = record.stages[sown].plannedOn;
    record.tray.sownMinute = record.stages[sown].plannedMinute;
    return record;
}

inline void begin(TrayRecord& record, std::size_t stage, Moment at)
{
    record.stages[stage].startedOn = at.date;
    record.stages[stage].startedMinute = at.minute;
}

inline Watering wateringOf(const RoundTray& asked, Date date, Slot slot)
{
    Watering watering;
    watering.tray = asked.tray;
    watering.on = date;
    watering.slot = slot;
    watering.method = asked.method;
    watering.water = asked.water;
    watering.amount = asked.amount;
    return watering;
}

inline Watering misted(TrayId tray, Date date, Slot slot)
{
    Watering watering;
    watering.tray = tray;
    watering.on = date;
    watering.slot = slot;
    return watering;
}

} // namespace plumule
