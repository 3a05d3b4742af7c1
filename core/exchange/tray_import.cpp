#include "core/exchange/tray_import.h"

#include "core/base/letter_case.h"
#include "core/exchange/csv.h"
#include "core/exchange/import_doubts.h"
#include "core/exchange/row_fault.h"
#include "core/room/room_rules.h"

#include <algorithm>
#include <fmt/format.h>

namespace plumule {
namespace {

constexpr double kHeaviestGrams = 50'000;
constexpr double kTallestMillimetres = 1'000;
constexpr int kMostBlocks = 10'000;

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

ImportedTray trayFrom(RowCells& cells)
{
    ImportedTray tray;
    tray.line = cells.line();
    tray.code = cells.needed("code");
    tray.variety = cells.needed("variety");
    tray.medium = cells.needed("medium");
    cells.needed("sown");
    tray.sown = cells.day("sown").value_or(Date{});
    tray.seed = cells.mass("seed_g", kHeaviestGrams);
    tray.harvested = cells.day("harvested");
    tray.net = cells.mass("net_g", kHeaviestGrams);
    tray.trial = cells.maybe("trial");
    tray.block = cells.whole("block", 1, kMostBlocks);
    tray.rack = cells.maybe("rack");
    tray.shelf = cells.maybe("shelf");
    tray.place = cells.whole("place", 1, kMostPlaces);
    tray.seedLot = cells.maybe("seed_lot");
    tray.residue = cells.mass("residue_g", kHeaviestGrams);
    tray.height = cells.length("height_mm", kTallestMillimetres);
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

    [[nodiscard]] bool hasCode(const std::string& code) const
    {
        return m_codes.contains(nameKey(code));
    }

    void take(const ImportedTray& tray, RowCells& cells, ImportPreview& preview)
    {
        m_codes.insert(nameKey(tray.code));
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
        const std::string name = placeName(tray, *tray.place);
        for (int number = 1; number <= *tray.place && !m_places.contains(nameKey(name)); ++number) {
            addNew(m_places, placeName(tray, number), preview.newPlaces);
        }
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

std::string gramsCell(std::optional<Mass> mass)
{
    return mass ? fmt::format("{}", inGrams(*mass)) : "";
}

template <class T>
std::string wholeCell(const std::optional<T>& value)
{
    return value ? std::to_string(*value) : "";
}

// In the order of trayColumns().
std::string keyOf(const ImportedTray& tray)
{
    return rowKey({tray.code, tray.variety, tray.medium, toIso(tray.sown), gramsCell(tray.seed),
                   tray.harvested ? toIso(*tray.harvested) : "", gramsCell(tray.net),
                   tray.trial.value_or(""), wholeCell(tray.block), tray.rack.value_or(""),
                   tray.shelf.value_or(""), wholeCell(tray.place), tray.seedLot.value_or(""),
                   gramsCell(tray.residue),
                   tray.height ? fmt::format("{}", inMillimetres(*tray.height)) : "", tray.note});
}

class TrayKeeper : public TableKeeper
{
public:
    TrayKeeper(const KnownNames& known, WrittenTrays written)
        : m_inJournal(keysOf(known.codes))
        , m_names(known)
        , m_written(std::move(written))
    {}

    void begin(const std::function<void(std::string)>&) override {} // see finish()

    std::string read(RowCells& cells) override
    {
        m_tray = trayFrom(cells);
        m_key = keyOf(m_tray);
        return m_key;
    }

    Fate accept(RowCells& cells) override
    {
        if (m_names.hasCode(m_tray.code)) {
            if (m_written && m_inJournal.contains(nameKey(m_tray.code))) {
                m_open.push_back({m_tray.line, m_tray.code, m_key});
                return Fate::Open;
            }
            cells.fault(ErrorKind::Duplicate, ExchangeReason::CodeTaken, m_tray.code);
            return Fate::Refused;
        }
        m_names.take(m_tray, cells, m_found);
        m_found.trays.push_back(m_tray);
        return cells.hasFaults() ? Fate::Refused : Fate::New;
    }

    // Which of the taken codes are of rows that say what the journal says.
    void finish(FaultList& faults, HeldRows& held) override
    {
        constexpr std::size_t kAtOnce = 500;
        for (std::size_t from = 0; from < m_open.size(); from += kAtOnce) {
            const std::size_t to = std::min(from + kAtOnce, m_open.size());
            std::vector<std::string> codes;
            for (std::size_t i = from; i < to; ++i) {
                codes.push_back(m_open[i].code);
            }
            const auto written = m_written(codes);
            for (std::size_t i = from; i < to; ++i) {
                const auto same = written.find(nameKey(m_open[i].code));
                if (same != written.end() && same->second == m_open[i].key) {
                    held.add({m_open[i].line, 0});
                } else {
                    faults.add(faultAt("", m_open[i].line, ErrorKind::Duplicate,
                                       ExchangeReason::CodeTaken, m_open[i].code)
                                   .value());
                }
            }
        }
    }

    void tell(ImportPreview& preview) override
    {
        preview.trays = std::move(m_found.trays);
        preview.newVarieties = std::move(m_found.newVarieties);
        preview.newMedia = std::move(m_found.newMedia);
        preview.newTrials = std::move(m_found.newTrials);
        preview.newSeedLots = std::move(m_found.newSeedLots);
        preview.newPlaces = std::move(m_found.newPlaces);
        if (preview.isClean()) {
            preview.doubts = doubtsAbout(preview.trays);
        }
    }

private:
    struct OpenRow
    {
        int line = 0;
        std::string code;
        std::string key;
    };

    std::set<std::string> m_inJournal;
    Names m_names;
    WrittenTrays m_written;
    ImportedTray m_tray;
    std::string m_key;
    std::vector<OpenRow> m_open;
    ImportPreview m_found;
};

} // namespace

const std::vector<std::string>& trayColumns()
{
    static const std::vector<std::string> kNames = [] {
        std::vector<std::string> names;
        for (const TableColumn& column : columnsOf(TableKind::Trays)) {
            names.emplace_back(column.name);
        }
        return names;
    }();
    return kNames;
}

std::unique_ptr<TableKeeper> trayKeeper(const KnownNames& known, WrittenTrays written)
{
    return std::make_unique<TrayKeeper>(known, std::move(written));
}

std::string rowKey(const std::vector<std::string>& cells)
{
    return nameKey(csvLine(cells));
}

std::string nameKey(std::string_view name)
{
    return lowered(trimmed(name));
}

} // namespace plumule
