// Part of core/journal/watering/watering_entries.h: what is written down about a tray in a round.
#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/watering/ticking.h"
#include "core/journal/watering/watering_entries.h"
#include "core/tray/sowing_rules.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/watering/round_key.h"
#include "core/watering/watering_reason.h"
#include "core/watering/watering_repository.h"
#include "core/watering/watering_rules.h"

namespace plumule {
namespace {

// One thing alone is told as what it is.
Intention intentionOf(const TrayRemark& remark, bool isTicked)
{
    const bool isReading = remark.ph || remark.ec;
    const int parts = static_cast<int>(!remark.note.empty()) +
                      static_cast<int>(remark.height.has_value()) +
                      static_cast<int>(remark.given.has_value()) + static_cast<int>(isReading);
    if (parts != 1) {
        return Intention::WriteDown;
    }
    if (remark.given) {
        return isTicked ? Intention::CorrectWatering : Intention::TickWatering;
    }
    return remark.height ? Intention::NoteHeight
           : isReading   ? Intention::NoteReading
                         : Intention::WriteNote;
}

Done storeHeight(Database& database, const TrayRemark& remark, const Medium& medium)
{
    Height height{{}, remark.tray, remark.at.date, remark.at.minute, *remark.height, remark.from};
    if (Done checked = checkHeight(height, medium); !checked) {
        return checked;
    }
    TrayRepository(database).insert(height);
    return {};
}

Done storeReading(Database& database, const TrayRemark& remark)
{
    WaterReading reading{{},           remark.date, remark.slot, remark.at.minute,
                         remark.water, remark.tray, remark.ph,   remark.ec};
    if (Done checked = checkReading(reading); !checked) {
        return checked;
    }
    WateringRepository(database).insert(reading);
    return {};
}

Result<Watering> storeGiven(Database& database, const TrayRemark& remark, Moment now)
{
    WateringRepository waterings(database);
    const RoundKey round{remark.date, remark.slot};
    auto given = waterings.find(remark.tray, round.date, round.slot);
    if (!given) {
        const auto asked = openTick(database, remark.tray, round, now);
        if (!asked) {
            return passOn(asked);
        }
        given = storeTick(database, *asked, round, minuteOfTick(database, round, now));
    }
    given->amount = remark.given;
    if (Done checked = checkGiven(*given); !checked) {
        return passOn(checked);
    }
    waterings.update(*given);
    return *given;
}

// What is not of the round itself.
Done storeSeen(Database& database, const TrayRemark& remark, const Medium& medium)
{
    if (const auto text = trimmed(remark.note); !text.empty()) {
        TrayNote note{{}, remark.tray, remark.at.date, remark.at.minute, std::string(text)};
        TrayRepository(database).insert(note);
    }
    if (remark.height) {
        if (Done stored = storeHeight(database, remark, medium); !stored) {
            return stored;
        }
    }
    return remark.ph || remark.ec ? storeReading(database, remark) : Done();
}

} // namespace

Result<std::optional<Watering>> WateringEntries::writeDown(const TrayRemark& remark)
{
    using Answer = Result<std::optional<Watering>>;
    const RoundKey round{remark.date, remark.slot};
    const Moment now = m_ledger.clock().now();
    return m_ledger.record(Intention::WriteDown, [&](Database& database, Deed& deed) -> Answer {
        const auto record = TrayRepository(database).record(remark.tray);
        if (!record) {
            return fail(ErrorKind::NotFound, TrayReason::Unknown);
        }
        if (remark.given || remark.ph || remark.ec) {
            if (Done checked = checkNotAhead(round, now); !checked) {
                return passOn(checked);
            }
        }
        auto tick = WateringRepository(database).find(remark.tray, round.date, round.slot);
        deed.what = intentionOf(remark, tick.has_value());
        deed.whom = record->tray.code;
        if (deed.what == Intention::NoteHeight) {
            deed.with = {std::to_string(remark.height->count())};
        }
        if (Done stored = storeSeen(database, remark, record->medium); !stored) {
            return passOn(stored);
        }
        if (!remark.given) {
            return tick;
        }
        return storeGiven(database, remark, now).map([](const Watering& given) {
            return std::optional(given);
        });
    });
}

} // namespace plumule
