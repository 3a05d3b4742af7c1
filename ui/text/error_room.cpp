// Part of ui/text/error_words.h: what the room refuses.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(RoomReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case RoomReason::NameMissing:
        return Errors::tr("The room has no name: give it one.");
    case RoomReason::CurrencyMissing:
        return Errors::tr("The currency is missing: enter the one that you pay in.");
    case RoomReason::RoundTimes:
        return Errors::tr("The morning round has to come before the evening round of the same day: "
                          "change one of the two times.");
    case RoomReason::TraySize:
        return Errors::tr(
            "A tray has a length and a width above 0: measure its inside and enter both.");
    case RoomReason::LightPower:
        return Errors::tr(
            "The power of a light is not below 0: enter its watts, or leave the field empty.");
    case RoomReason::LightMinutes:
        return Errors::tr("A day has 24 hours: enter from 0 to 24 hours of light.");
    case RoomReason::ShelfCount:
        return Errors::tr("A rack has room for %n shelves at most: choose fewer.", nullptr,
                          value.number(0));
    case RoomReason::PlaceCount:
        return Errors::tr("A shelf has room for %n places at most: choose fewer.", nullptr,
                          value.number(0));
    case RoomReason::RackUnknown:
        return Errors::tr("This rack is not in the room any more: choose another one.");
    case RoomReason::RackNameMissing:
        return Errors::tr("The rack has no name: give it one, such as A.");
    case RoomReason::RackNameTaken:
        return Errors::tr("There is a rack %1 already: choose another name.").arg(value[0]);
    case RoomReason::RackInUse:
        return Errors::tr("Trays have stood or loggers hung on rack %1, so it stays for their "
                          "records: rename it "
                          "if it serves another purpose.")
            .arg(value[0]);
    case RoomReason::ShelfUnknown:
        return Errors::tr("This shelf is not in the room any more: choose another one.");
    case RoomReason::ShelfNameMissing:
        return Errors::tr("The shelf has no name: give it one, such as 1.");
    case RoomReason::ShelfNameTaken:
        return Errors::tr("This rack has a shelf %1 already: choose another name.").arg(value[0]);
    case RoomReason::ShelfInUse:
        return Errors::tr("Trays have stood or loggers hung on shelf %1, so it stays for their "
                          "records: rename it "
                          "if it serves another purpose.")
            .arg(value[0]);
    case RoomReason::PlaceInUse:
        return Errors::tr("Trays have stood on place %1, so it stays for their records: choose %1 "
                          "places or more.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
