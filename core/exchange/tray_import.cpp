#include "core/exchange/tray_import.h"

#include "core/base/number_text.h"
#include "core/exchange/import_doubts.h"
#include "core/exchange/row_fault.h"
#include "core/room/room_rules.h"

#include <algorithm>
#include <map>

namespace plumule {
namespace {

constexpr std::size_t kNeededColumns = 7;
constexpr double kHeaviestGrams = 50'000;
constexpr double kTallestMillimetres = 1'000;
constexpr long long kMostBlocks = 10'000;

// A column that is read: where it stands, and how its numbers are written.
struct Column
{
    std::size_t index = 0;
    DecimalMark mark = DecimalMark::Ours;
};
using Columns = std::map<std::string, Column>;

// A point is decimals in a file that is parted by commas, as Plumule and spreadsheets under an
// English desktop write it; others part by semicolons because their decimals have the comma.
DecimalMark markIn(const CsvTable& table, std::size_t column)
{
    std::vector<std::string_view> cells;
    for (const auto& row : table.rows) {
        cells.push_back(row[column]);
    }
    return decimalMarkOf(cells, table.separator == ',' ? DecimalMark::Ours : DecimalMark::Unclear);
}

// The cells of one row by column name; notes what is wrong with them.
class RowCells
{
public:
    RowCells(const Columns& columns, const std::vector<std::string>& cells, int line,
             std::vector<Error>& faults)
        : m_columns(columns)
        , m_cells(cells)
        , m_line(line)
        , m_faults(faults)
    {}

    template <class... Values>
    void fault(ErrorKind kind, ExchangeReason reason, Values&&... values)
    {
        m_faults.push_back(
            faultAt("", m_line, kind, reason, std::forward<Values>(values)...).value());
    }
    void missing(const std::string& column)
    {
        fault(ErrorKind::Missing, ExchangeReason::CellMissing, column);
    }
    void misformed(const std::string& column, const std::string& text)
    {
        fault(ErrorKind::Invalid, ExchangeReason::CellForm, column, text);
    }

    [[nodiscard]] std::string text(const std::string& column) const
    {
        const auto found = m_columns.find(column);
        return found == m_columns.end() ? std::string()
                                        : std::string(trimmed(m_cells[found->second.index]));
    }
    [[nodiscard]] std::optional<std::string> maybe(const std::string& column) const
    {
        const std::string value = text(column);
        return value.empty() ? std::nullopt : std::optional(value);
    }
    std::string needed(const std::string& column)
    {
        std::string value = text(column);
        if (value.empty()) {
            missing(column);
        }
        return value;
    }
    std::optional<Date> day(const std::string& column)
    {
        const std::string value = text(column);
        if (value.empty()) {
            return std::nullopt;
        }
        const auto day = dateFromIso(value);
        if (!day) {
            misformed(column, value);
            return std::nullopt;
        }
        return *day;
    }
    // Above 0 and not above `most`.
    std::optional<double> amount(const std::string& column, double most)
    {
        const std::string value = text(column);
        if (value.empty()) {
            return std::nullopt;
        }
        const auto number = decimalFromText(value, m_columns.at(column).mark);
        if (!number && number.error().kind == ErrorKind::Ambiguous) {
            fault(ErrorKind::Ambiguous, ExchangeReason::CellAmbiguous, column, value);
            return std::nullopt;
        }
        if (!number || *number <= 0 || *number > most) {
            misformed(column, value);
            return std::nullopt;
        }
        return *number;
    }
    std::optional<Mass> mass(const std::string& column)
    {
        const auto value = amount(column, kHeaviestGrams);
        return value ? std::optional(grams(*value)) : std::nullopt;
    }
    std::optional<int> number(const std::string& column, long long most)
    {
        const std::string value = text(column);
        if (value.empty()) {
            return std::nullopt;
        }
        const auto whole = wholeFromText(value);
        if (!whole || *whole < 1 || *whole > most) {
            misformed(column, value);
            return std::nullopt;
        }
        return static_cast<int>(*whole);
    }

private:
    const Columns& m_columns;
    const std::vector<std::string>& m_cells;
    int m_line;
    std::vector<Error>& m_faults;
};

void checkHarvest(RowCells& cells, const ImportedTray& tray)
{
    const bool isHarvested = !cells.text("harvested").empty();
    if (tray.harvested && *tray.harvested < tray.sown) {
        cells.fault(ErrorKind::Invalid, ExchangeReason::HarvestBeforeSowing,
                    toIso(*tray.harvested));
    }
    if (isHarvested && cells.text("net_g").empty()) {
        cells.missing("net_g");
    }
    const bool hasResults = !cells.text("net_g").empty() || !cells.text("residue_g").empty() ||
                            !cells.text("height_mm").empty();
    if (!isHarvested && hasResults) {
        cells.missing("harvested");
    }
}

void checkPlace(RowCells& cells)
{
    const std::vector<std::string> columns = {"rack", "shelf", "place"};
    const auto isGiven = [&](const std::string& column) { return !cells.text(column).empty(); };
    if (std::none_of(columns.begin(), columns.end(), isGiven)) {
        return;
    }
    for (const std::string& column : columns) {
        if (!isGiven(column)) {
            cells.missing(column);
        }
    }
}

ImportedTray trayFrom(RowCells& cells, int line)
{
    ImportedTray tray;
    tray.line = line;
    tray.code = cells.needed("code");
    tray.variety = cells.needed("variety");
    tray.medium = cells.needed("medium");
    cells.needed("sown");
    tray.sown = cells.day("sown").value_or(Date{});
    tray.seed = cells.mass("seed_g");
    tray.harvested = cells.day("harvested");
    tray.net = cells.mass("net_g");
    tray.trial = cells.maybe("trial");
    tray.block = cells.number("block", kMostBlocks);
    tray.rack = cells.maybe("rack");
    tray.shelf = cells.maybe("shelf");
    tray.place = cells.number("place", kMostPlaces);
    tray.seedLot = cells.maybe("seed_lot");
    tray.residue = cells.mass("residue_g");
    if (const auto height = cells.amount("height_mm", kTallestMillimetres)) {
        tray.height = millimetres(*height);
    }
    tray.note = cells.text("note");
    checkHarvest(cells, tray);
    checkPlace(cells);
    return tray;
}

std::string placeName(const ImportedTray& tray, int number)
{
    return *tray.rack + "/" + *tray.shelf + "/" + std::to_string(number);
}

std::set<std::string> keysOf(const std::set<std::string>& names)
{
    std::set<std::string> keys;
    for (const std::string& name : names) {
        keys.insert(nameKey(name));
    }
    return keys;
}

// What is known, growing as the rows are read, so that each new name is listed once.
class Names
{
public:
    explicit Names(const KnownNames& known)
        : m_codes(keysOf(known.codes))
        , m_varieties(keysOf(known.varieties))
        , m_media(keysOf(known.media))
        , m_trials(keysOf(known.trials))
        , m_seedLots(keysOf(known.seedLots))
        , m_places(keysOf(known.places))
        , m_taken(keysOf(known.taken))
    {}

    void take(const ImportedTray& tray, RowCells& cells, ImportPreview& preview)
    {
        if (!tray.code.empty() && !m_codes.insert(nameKey(tray.code)).second) {
            cells.fault(ErrorKind::Duplicate, ExchangeReason::CodeTaken, tray.code);
        }
        addNew(m_varieties, tray.variety, preview.newVarieties);
        addNew(m_media, tray.medium, preview.newMedia);
        addNew(m_trials, tray.trial.value_or(""), preview.newTrials);
        if (tray.seedLot) {
            addNew(m_seedLots, tray.variety + "/" + *tray.seedLot, preview.newSeedLots);
        }
        if (tray.rack && tray.shelf && tray.place) {
            takePlace(tray, cells, preview);
        }
    }

private:
    static void addNew(std::set<std::string>& keys, const std::string& name,
                       std::vector<std::string>& list)
    {
        if (!name.empty() && keys.insert(nameKey(name)).second) {
            list.push_back(name);
        }
    }

    void takePlace(const ImportedTray& tray, RowCells& cells, ImportPreview& preview)
    {
        for (int number = 1; number <= *tray.place; ++number) {
            addNew(m_places, placeName(tray, number), preview.newPlaces);
        }
        const std::string name = placeName(tray, *tray.place);
        if (!tray.harvested && !m_taken.insert(nameKey(name)).second) {
            cells.fault(ErrorKind::Conflict, ExchangeReason::PlaceTaken, name);
        }
    }

    std::set<std::string> m_codes;
    std::set<std::string> m_varieties;
    std::set<std::string> m_media;
    std::set<std::string> m_trials;
    std::set<std::string> m_seedLots;
    std::set<std::string> m_places;
    std::set<std::string> m_taken;
};

Columns columnsOf(const CsvTable& table, ImportPreview& preview)
{
    const std::vector<std::string>& wanted = trayColumns();
    Columns columns;
    for (std::size_t i = 0; i < table.header.size(); ++i) {
        const std::string key = nameKey(table.header[i]);
        if (std::find(wanted.begin(), wanted.end(), key) == wanted.end()) {
            preview.unknownColumns.push_back(table.header[i]);
        } else if (!columns.emplace(key, Column{i, markIn(table, i)}).second) {
            preview.faults.push_back(
                faultAt("", 1, ErrorKind::Duplicate, ExchangeReason::HeaderTwice, key).value());
        }
    }
    for (std::size_t i = 0; i < kNeededColumns; ++i) {
        if (!columns.contains(wanted[i])) {
            preview.faults.push_back(
                faultAt("", 1, ErrorKind::Missing, ExchangeReason::ColumnMissing, wanted[i])
                    .value());
        }
    }
    return columns;
}

} // namespace

const std::vector<std::string>& trayColumns()
{
    static const std::vector<std::string> kColumns = {
        "code",  "variety", "medium", "sown",  "seed_g",   "harvested", "net_g",     "trial",
        "block", "rack",    "shelf",  "place", "seed_lot", "residue_g", "height_mm", "note"};
    return kColumns;
}

std::string nameKey(std::string_view name)
{
    std::string key(trimmed(name));
    std::transform(key.begin(), key.end(), key.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return key;
}

ImportPreview previewOf(const CsvTable& table, const KnownNames& known)
{
    ImportPreview preview;
    const auto columns = columnsOf(table, preview);
    if (!preview.isClean()) {
        return preview;
    }
    Names names(known);
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        RowCells cells(columns, table.rows[i], table.lines[i], preview.faults);
        ImportedTray tray = trayFrom(cells, table.lines[i]);
        names.take(tray, cells, preview);
        preview.trays.push_back(std::move(tray));
    }
    if (preview.isClean()) {
        preview.doubts = doubtsAbout(preview.trays);
    }
    return preview;
}

} // namespace plumule
