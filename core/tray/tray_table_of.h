#pragma once

#include "core/storage/table.h"
#include "core/tray/tray.h"

// How trays and what hangs on them are stored. For repositories alone.
namespace plumule {

template <>
struct TableOf<Tray>
{
    static constexpr const char* name = "tray";
    static constexpr auto columns = std::tuple{column("code", &Tray::code),
                                               column("variety_id", &Tray::variety),
                                               column("seed_lot_id", &Tray::seedLot),
                                               column("medium_id", &Tray::medium),
                                               column("piece_id", &Tray::piece),
                                               column("seed_mg", &Tray::seed),
                                               column("sown_on", &Tray::sownOn),
                                               column("sown_minute", &Tray::sownMinute),
                                               column("trial_id", &Tray::trial),
                                               column("block", &Tray::block),
                                               column("state", &Tray::state),
                                               column("ended_on", &Tray::endedOn),
                                               column("ended_minute", &Tray::endedMinute),
                                               column("discard_reason", &Tray::discardReason),
                                               column("set_aside_reason", &Tray::setAsideReason),
                                               column("sown_by", &Tray::sownBy)};
};

template <>
struct TableOf<TrayStage>
{
    static constexpr const char* name = "tray_stage";
    static constexpr auto columns =
        std::tuple{column("tray_id", &TrayStage::tray),
                   column("position", &TrayStage::position),
                   column("stage", &TrayStage::stage),
                   column("planned_on", &TrayStage::plannedOn),
                   column("planned_minute", &TrayStage::plannedMinute),
                   column("length_min", &TrayStage::lengthMinutes),
                   column("delay_min", &TrayStage::delayMinutes),
                   column("started_on", &TrayStage::startedOn),
                   column("started_minute", &TrayStage::startedMinute),
                   column("cue", &TrayStage::cue),
                   column("waterings_per_day", &TrayStage::wateringsPerDay),
                   column("method", &TrayStage::method),
                   column("amount_ul", &TrayStage::amount),
                   column("water", &TrayStage::water)};
};

template <>
struct TableOf<Stay>
{
    static constexpr const char* name = "stay";
    static constexpr auto columns =
        std::tuple{column("tray_id", &Stay::tray),   column("place_id", &Stay::place),
                   column("from_on", &Stay::fromOn), column("from_minute", &Stay::fromMinute),
                   column("to_on", &Stay::toOn),     column("to_minute", &Stay::toMinute)};
};

template <>
struct TableOf<Height>
{
    static constexpr const char* name = "height";
    static constexpr auto columns =
        std::tuple{column("tray_id", &Height::tray), column("on_date", &Height::on),
                   column("minute", &Height::minute), column("reading_um", &Height::reading),
                   column("read_from", &Height::from)};
};

template <>
struct TableOf<TrayNote>
{
    static constexpr const char* name = "tray_note";
    static constexpr auto columns =
        std::tuple{column("tray_id", &TrayNote::tray), column("on_date", &TrayNote::on),
                   column("minute", &TrayNote::minute), column("text", &TrayNote::text)};
};

template <>
struct TableOf<Photo>
{
    static constexpr const char* name = "photo";
    static constexpr auto columns =
        std::tuple{column("tray_id", &Photo::tray), column("on_date", &Photo::on),
                   column("minute", &Photo::minute), column("file_name", &Photo::fileName),
                   column("caption", &Photo::caption)};
};

} // namespace plumule
