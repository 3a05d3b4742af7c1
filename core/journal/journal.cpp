#include "core/journal/journal.h"

#include "core/backup/backup_store.h"
#include "core/journal/check/journal_check.h"
#include "core/journal/climate/climate_entries.h"
#include "core/journal/cost/cost_entries.h"
#include "core/journal/cost/work_time_entries.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/forecast/forecast_answers.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/merge/merge_entries.h"
#include "core/journal/order/order_entries.h"
#include "core/journal/rack/rack_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/review/season_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "core/journal/week/week_entries.h"
#include "core/starter/starter_library.h"

namespace plumule {

struct Journal::Concepts
{
    Concepts(JournalFile file, const Clock& clock)
        : ledger(std::move(file), clock)
        , room(ledger)
        , varieties(ledger)
        , media(ledger)
        , trials(ledger)
        , tastings(ledger)
        , trays(ledger)
        , watering(ledger)
        , harvests(ledger)
        , costs(ledger)
        , workTimes(ledger)
        , review(ledger)
        , seasons(ledger)
        , exchange(ledger)
        , copies(ledger)
        , climate(ledger)
        , racks(ledger)
        , week(ledger)
        , forecast(ledger)
        , orders(ledger)
        , stock(ledger)
    {}

    Ledger ledger;
    RoomEntries room;
    VarietyEntries varieties;
    MediumEntries media;
    TrialEntries trials;
    TastingEntries tastings;
    TrayEntries trays;
    WateringEntries watering;
    HarvestEntries harvests;
    CostEntries costs;
    WorkTimeEntries workTimes;
    ReviewAnswers review;
    SeasonEntries seasons;
    ExchangeEntries exchange;
    MergeEntries copies;
    ClimateEntries climate;
    RackEntries racks;
    WeekEntries week;
    ForecastAnswers forecast;
    OrderEntries orders;
    StockEntries stock;
};

Journal::Journal(JournalFile file, const Clock& clock)
    : m_concepts(std::make_unique<Concepts>(std::move(file), clock))
{}

Journal::~Journal() = default;

Result<std::unique_ptr<Journal>> Journal::open(const std::filesystem::path& path,
                                               const Clock& clock, Access access)
{
    auto file = openJournalFile(path, access);
    if (!file) {
        return passOn(file);
    }
    return std::unique_ptr<Journal>(new Journal(std::move(*file), clock));
}

Result<std::unique_ptr<Journal>> Journal::create(const std::filesystem::path& path,
                                                 const RoomPlan& plan, const Clock& clock)
{
    auto file = createJournalFile(path);
    if (!file) {
        return passOn(file);
    }
    try {
        Transaction transaction(*file->database);
        storeStarterLibrary(*file->database, plan);
        transaction.commit();
    } catch (const StorageFailure& failure) {
        discardNewJournal(std::move(*file), path);
        return passOn(failure.error());
    }
    return std::unique_ptr<Journal>(new Journal(std::move(*file), clock));
}

Result<std::unique_ptr<Journal>> Journal::beside() const
{
    auto file = openBeside(m_concepts->ledger.file());
    if (!file) {
        return passOn(file);
    }
    return std::unique_ptr<Journal>(new Journal(std::move(*file), m_concepts->ledger.clock()));
}

const std::filesystem::path& Journal::path() const
{
    return m_concepts->ledger.path();
}

std::filesystem::path Journal::photoFolder() const
{
    return m_concepts->ledger.photoFolder();
}

void Journal::hear(const std::vector<Change>& changes)
{
    m_concepts->ledger.hear(changes);
}

bool Journal::isReadOnly() const
{
    return m_concepts->ledger.isReadOnly();
}

FolderKind Journal::folder() const
{
    return m_concepts->ledger.folder();
}

const std::optional<Error>& Journal::readOnlyBecause() const
{
    return m_concepts->ledger.readOnlyBecause();
}

const Clock& Journal::clock() const
{
    return m_concepts->ledger.clock();
}

bool Journal::didLastIntentionChange() const
{
    return m_concepts->ledger.didLastIntentionChange();
}

Result<HistoryEntry> Journal::undo(HistoryId id)
{
    return m_concepts->ledger.undo(id);
}

Result<HistoryEntry> Journal::redo()
{
    return m_concepts->ledger.redo();
}

Result<std::vector<RowEffect>> Journal::foreseeUndo(HistoryId id)
{
    return m_concepts->ledger.foreseeUndo(id);
}

int Journal::addListener(ChangeListener listener)
{
    return m_concepts->ledger.addListener(std::move(listener));
}

void Journal::removeListener(int number)
{
    m_concepts->ledger.removeListener(number);
}

void Journal::setRefusalListener(RefusalListener listener)
{
    m_concepts->ledger.setRefusalListener(std::move(listener));
}

std::optional<HistoryEntry> Journal::nextUndo()
{
    return m_concepts->ledger.ask([](Database& database) { return History(database).nextUndo(); })
        .value_or(std::nullopt);
}

std::optional<HistoryEntry> Journal::nextRedo()
{
    return m_concepts->ledger.ask([](Database& database) { return History(database).nextRedo(); })
        .value_or(std::nullopt);
}

Result<std::vector<HistoryEntry>> Journal::latestEntries(int count)
{
    return m_concepts->ledger.ask(
        [&](Database& database) { return History(database).latest(count); });
}

Done Journal::backUpTo(const std::filesystem::path& target, const Progress& progress)
{
    return backUp(m_concepts->ledger.database(), target, progress);
}

Result<BackupMade> Journal::backUpInto(const BackupStore& store, const Progress& progress)
{
    auto made = store.add(m_concepts->ledger.database(), m_concepts->ledger.photoFolder(),
                          m_concepts->ledger.clock().now(), progress);
    if (made) {
        (void)store.prune(); // what stays a day longer than it must does no harm
    }
    return made;
}

Result<std::vector<Error>> Journal::faults()
{
    auto found = m_concepts->ledger.ask([](Database& database) { return checkJournal(database); });
    if (!found && found.error().kind == ErrorKind::Damaged) {
        // So badly that the check itself came upon it.
        return fail(ErrorKind::Damaged, StorageReason::FileDamaged, path().string());
    }
    return found;
}

RoomEntries& Journal::room()
{
    return m_concepts->room;
}

VarietyEntries& Journal::varieties()
{
    return m_concepts->varieties;
}

MediumEntries& Journal::media()
{
    return m_concepts->media;
}

TrialEntries& Journal::trials()
{
    return m_concepts->trials;
}

TastingEntries& Journal::tastings()
{
    return m_concepts->tastings;
}

TrayEntries& Journal::trays()
{
    return m_concepts->trays;
}

WateringEntries& Journal::watering()
{
    return m_concepts->watering;
}

HarvestEntries& Journal::harvests()
{
    return m_concepts->harvests;
}

CostEntries& Journal::costs()
{
    return m_concepts->costs;
}

WorkTimeEntries& Journal::workTimes()
{
    return m_concepts->workTimes;
}

ReviewAnswers& Journal::review()
{
    return m_concepts->review;
}

SeasonEntries& Journal::seasons()
{
    return m_concepts->seasons;
}

ExchangeEntries& Journal::exchange()
{
    return m_concepts->exchange;
}

MergeEntries& Journal::copies()
{
    return m_concepts->copies;
}

ClimateEntries& Journal::climate()
{
    return m_concepts->climate;
}

RackEntries& Journal::racks()
{
    return m_concepts->racks;
}

WeekEntries& Journal::week()
{
    return m_concepts->week;
}

ForecastAnswers& Journal::forecast()
{
    return m_concepts->forecast;
}

OrderEntries& Journal::orders()
{
    return m_concepts->orders;
}

StockEntries& Journal::stock()
{
    return m_concepts->stock;
}

} // namespace plumule
