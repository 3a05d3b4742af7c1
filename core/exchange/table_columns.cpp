// Part of core/exchange/table_form.h: the columns of each table, and the units they may be in.
#include "core/base/enum_text.h"
#include "core/base/quantity.h"
#include "core/exchange/sheet_notes.h"
#include "core/exchange/table_form.h"

#include <algorithm>

namespace plumule {
namespace {

using Columns = std::vector<TableColumn>;

const TableColumn kTray = {"tray", CellKind::Text, Need::Always, {"code", "tray code", "label"}};
const TableColumn kDate = {"date", CellKind::Day, Need::Always, {"day", "on"}};
const TableColumn kTime = {"time", CellKind::Time, Need::Nothing, {"clock", "hour"}};
const TableColumn kNote = {
    "note", CellKind::Text, Need::Nothing, {"notes", "remark", "remarks", "comment"}};

TableColumn words(std::string_view name, Need need, std::vector<std::string_view> headers,
                  std::string_view table, std::string_view column)
{
    return {name, CellKind::Word, need, std::move(headers), wordsOf(table, column)};
}

Columns trayTable()
{
    return {
        {"code", CellKind::Text, Need::Always, {"tray", "tray code", "label"}},
        {"variety", CellKind::Text, Need::Always, {"crop", "plant", "species"}},
        {"medium", CellKind::Text, Need::Always, {"substrate", "growing medium"}},
        {"sown", CellKind::Day, Need::Always, {"sown on", "sowing", "sowing date", "date sown"}},
        {"seed_g", CellKind::Weight, Need::InHeader, {"seeds", "seed weight", "sown seed"}},
        {"harvested",
         CellKind::Day,
         Need::InHeader,
         {"harvested on", "harvest", "harvest date", "cut"}},
        {"net_g",
         CellKind::Weight,
         Need::InHeader,
         {"net weight", "yield", "weight", "fresh weight"}},
        {"trial", CellKind::Text, Need::Nothing, {"experiment"}},
        {"block", CellKind::Whole, Need::Nothing, {"replicate", "rep"}},
        {"rack", CellKind::Text},
        {"shelf", CellKind::Text, Need::Nothing, {"level"}},
        {"place", CellKind::Whole, Need::Nothing, {"position", "slot"}},
        {"seed_lot", CellKind::Text, Need::Nothing, {"lot", "lot number", "batch"}},
        {"residue_g", CellKind::Weight, Need::Nothing, {"waste", "residue weight"}},
        {"height_mm", CellKind::Distance, Need::Nothing, {"plant height"}},
        kNote,
    };
}

Columns waterTable()
{
    return {
        kTray,
        kDate,
        words("slot", Need::Nothing, {"round"}, "watering", "slot"),
        kTime,
        words("method", Need::Always, {"how"}, "watering", "method"),
        words("water", Need::Nothing, {"kind of water"}, "watering", "water"),
        {"amount_ml", CellKind::Fluid, Need::Nothing, {"volume", "given"}},
        {"between", CellKind::Flag, Need::Nothing, {"as needed"}},
    };
}

Columns readingTable()
{
    return {
        kDate,
        words("slot", Need::Nothing, {"round"}, "water_reading", "slot"),
        kTime,
        words("water", Need::Nothing, {"kind of water"}, "water_reading", "water"),
        {"tray", CellKind::Text, Need::Nothing, {"tray code"}},
        {"ph", CellKind::Number},
        {"ec_us_cm", CellKind::Conductivity, Need::Nothing, {"conductivity"}},
    };
}

Columns lotTable()
{
    return {
        {"variety", CellKind::Text, Need::Always, {"crop", "plant"}},
        {"lot_number", CellKind::Text, Need::Always, {"lot", "seed lot", "batch"}},
        {"supplier", CellKind::Text, Need::Nothing, {"vendor", "seller"}},
        {"bought_on", CellKind::Day, Need::Nothing, {"date", "purchase date", "date of purchase"}},
        {"bought_g", CellKind::Weight, Need::Nothing, {"amount", "weight", "quantity"}},
        {"price", CellKind::Sum, Need::Nothing, {"cost", "paid"}},
        {"germination_percent",
         CellKind::Number,
         Need::Nothing,
         {"germination", "germination rate"}},
        {"used_up", CellKind::Flag, Need::Nothing, {"empty"}},
        kNote,
    };
}

Columns heightTable()
{
    return {kTray,
            kDate,
            kTime,
            {"height_mm", CellKind::Distance, Need::Always, {"plant height", "reading"}},
            words("read_from", Need::Nothing, {"from"}, "height", "read_from")};
}

Columns cutTable()
{
    return {kTray,
            kDate,
            kTime,
            {"net_g", CellKind::Weight, Need::Always, {"net weight", "yield", "weight"}},
            {"last", CellKind::Flag, Need::Nothing, {"last cut", "final"}},
            kNote};
}

Columns priceTable()
{
    return {words("item", Need::Always, {"what"}, "price", "item"),
            {"medium", CellKind::Text, Need::Nothing, {"substrate"}},
            {"from", CellKind::Day, Need::Always, {"date", "day", "from date", "since"}},
            {"amount", CellKind::Sum, Need::Always, {"price", "cost"}},
            words("measure", Need::Nothing, {"per", "unit"}, "price_measure", "measure")};
}

Columns pieceTable()
{
    return {{"medium", CellKind::Text, Need::Always, {"substrate", "mat", "mesh"}},
            {"number", CellKind::Whole, Need::Always, {"piece", "no"}},
            {"bought_on", CellKind::Day, Need::Nothing, {"bought", "purchase date"}},
            {"retired_on", CellKind::Day, Need::Nothing, {"retired", "thrown out"}},
            kNote};
}

Columns made(TableKind kind)
{
    switch (kind) {
    case TableKind::Trays:
        return trayTable();
    case TableKind::Stages:
        return {kTray,
                words("stage", Need::Always, {}, "tray_stage", "stage"),
                {"date", CellKind::Day, Need::Always, {"day", "on", "started", "started on"}},
                kTime};
    case TableKind::Waterings:
        return waterTable();
    case TableKind::Heights:
        return heightTable();
    case TableKind::Cuts:
        return cutTable();
    case TableKind::Residues:
        return {kTray,
                kDate,
                kTime,
                {"net_g",
                 CellKind::Weight,
                 Need::Always,
                 {"net weight", "residue", "weight", "waste"}}};
    case TableKind::Scores:
        return {{"tasting", CellKind::Text, Need::Always, {"panel"}},
                {"code", CellKind::Text, Need::Always, {"serving", "sample"}},
                {"attribute", CellKind::Text, Need::Always, {"question", "quality"}},
                {"value", CellKind::Whole, Need::Always, {"score", "rank"}}};
    case TableKind::Prices:
        return priceTable();
    case TableKind::SeedLots:
        return lotTable();
    case TableKind::Pieces:
        return pieceTable();
    case TableKind::WaterReadings:
        return readingTable();
    }
    return {};
}

struct TableUnit
{
    CellKind kind;
    std::string_view name;
    double factor;
};

// In g, mm, mL and µS/cm.
constexpr TableUnit kTableUnits[] = {
    {CellKind::Weight, "g", 1},
    {CellKind::Weight, "kg", 1000},
    {CellKind::Weight, "mg", 0.001},
    {CellKind::Weight, "oz", kGramsPerOunce},
    {CellKind::Weight, "lb", kGramsPerPound},
    {CellKind::Distance, "mm", 1},
    {CellKind::Distance, "cm", 10},
    {CellKind::Distance, "m", 1000},
    {CellKind::Distance, "in", kMillimetresPerInch},
    {CellKind::Fluid, "ml", 1},
    {CellKind::Fluid, "l", 1000},
    {CellKind::Fluid, "fl_oz", kMillilitresPerUsFluidOunce},
    {CellKind::Fluid, "gal", kMillilitresPerUsGallon},
    {CellKind::Conductivity, "us_cm", 1},
    {CellKind::Conductivity, "ms_cm", 1000},
};

} // namespace

const char* toText(TableKind kind)
{
    switch (kind) {
    case TableKind::Trays:
        return "trays";
    case TableKind::Stages:
        return "stages";
    case TableKind::Waterings:
        return "waterings";
    case TableKind::Heights:
        return "heights";
    case TableKind::Cuts:
        return "cuts";
    case TableKind::Residues:
        return "residues";
    case TableKind::Scores:
        return "scores";
    case TableKind::Prices:
        return "prices";
    case TableKind::SeedLots:
        return "seed_lots";
    case TableKind::Pieces:
        return "pieces";
    case TableKind::WaterReadings:
        return "water_readings";
    }
    return "";
}

const std::vector<TableKind>& allTableKinds()
{
    static const std::vector<TableKind> kKinds = {
        TableKind::Trays,    TableKind::Stages,   TableKind::Waterings,    TableKind::Heights,
        TableKind::Cuts,     TableKind::Residues, TableKind::Scores,       TableKind::Prices,
        TableKind::SeedLots, TableKind::Pieces,   TableKind::WaterReadings};
    return kKinds;
}

bool fromText(std::string_view text, TableKind& kind)
{
    for (const TableKind each : allTableKinds()) {
        if (text == toText(each)) {
            kind = each;
            return true;
        }
    }
    return false;
}

const char* toText(DateOrder order)
{
    switch (order) {
    case DateOrder::YearMonthDay:
        return "ymd";
    case DateOrder::DayMonthYear:
        return "dmy";
    case DateOrder::MonthDayYear:
        return "mdy";
    case DateOrder::Unclear:
        return "unclear";
    }
    return "";
}

bool fromText(std::string_view text, DateOrder& order)
{
    static constexpr std::array kOrders = {DateOrder::YearMonthDay, DateOrder::DayMonthYear,
                                           DateOrder::MonthDayYear, DateOrder::Unclear};
    return matchText(text, kOrders, order);
}

const std::vector<TableColumn>& columnsOf(TableKind kind)
{
    static const std::vector<Columns> kTables = [] {
        std::vector<Columns> tables;
        for (const TableKind each : allTableKinds()) {
            tables.push_back(made(each));
        }
        return tables;
    }();
    return kTables[static_cast<std::size_t>(kind)];
}

const std::vector<std::string_view>& unitsOf(CellKind kind)
{
    static const std::vector<std::vector<std::string_view>> kUnitsByKind = [] {
        std::vector<std::vector<std::string_view>> units(static_cast<std::size_t>(CellKind::Flag) +
                                                         1);
        for (const TableUnit& each : kTableUnits) {
            units[static_cast<std::size_t>(each.kind)].push_back(each.name);
        }
        return units;
    }();
    return kUnitsByKind[static_cast<std::size_t>(kind)];
}

double unitFactor(CellKind kind, std::string_view unit)
{
    for (const TableUnit& each : kTableUnits) {
        if (each.kind == kind && each.name == unit) {
            return each.factor;
        }
    }
    return 1;
}

} // namespace plumule
