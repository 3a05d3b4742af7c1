#include "core/trace/trace_repository.h"

#include "core/base/letter_case.h"
#include "core/harvest/harvest_repository.h"
#include "core/medium/medium_repository.h"
#include "core/order/order_repository.h"
#include "core/order/order_rules.h"
#include "core/room/room_repository.h"
#include "core/storage/database.h"
#include "core/tray/tray_repository.h"
#include "core/variety/variety_repository.h"
#include "core/watering/watering_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// Cuts and promises so near to a cut may decide which promise it goes to.
constexpr int kDaysAround = kDaysForHand + kDaysKept;

// Sown by the person, or on a piece that the person had sanitised last.
constexpr const char* kOfPerson =
    "SELECT id FROM tray WHERE sown_by = ?1 COLLATE NOCASE UNION "
    "SELECT t.id FROM sanitising_detail d JOIN sanitising s ON s.id = d.sanitising_id "
    "JOIN tray t ON t.piece_id = s.piece_id WHERE d.done_by = ?1 COLLATE NOCASE AND "
    "(t.sown_on, t.sown_minute) >= (s.on_date, s.minute) AND NOT EXISTS "
    "(SELECT 1 FROM sanitising later WHERE later.piece_id = s.piece_id AND "
    "(later.on_date, later.minute, later.id) > (s.on_date, s.minute, s.id) AND "
    "(later.on_date, later.minute) <= (t.sown_on, t.sown_minute))";

template <class... Values>
std::vector<TrayId> idsBy(Database& database, const std::string& sql, const Values&... values)
{
    Statement statement = database.prepare(sql);
    statement.bind(values...);
    std::vector<TrayId> ids;
    while (statement.step()) {
        ids.push_back(statement.get<TrayId>(0));
    }
    return ids;
}

Part partOf(const Person& person, const TracedTray& traced, bool didSanitise)
{
    if (traced.tray.sownBy && isAlike(*traced.tray.sownBy, person.name)) {
        return didSanitise ? Part::Both : Part::Sowed;
    }
    return didSanitise ? Part::Sanitised : Part::None;
}

// Which of these is the last before the tray was sown.
const Sanitising* lastBefore(const std::vector<Sanitising>& sanitisings, const Tray& tray)
{
    const Sanitising* last = nullptr;
    for (const Sanitising& one : sanitisings) {
        if (one.piece == tray.piece && one.at() <= tray.sownAt()) {
            last = &one;
        }
    }
    return last;
}

std::vector<TracedStay> namedStays(const std::vector<Stay>& stays, const std::vector<Spot>& spots)
{
    std::vector<TracedStay> named;
    for (const Stay& stay : stays) {
        const auto spot = std::find_if(spots.begin(), spots.end(),
                                       [&](const Spot& each) { return each.place == stay.place; });
        named.push_back({stay, spot == spots.end() ? std::nullopt : std::optional(*spot)});
    }
    return named;
}

} // namespace

std::vector<TrayId> TraceRepository::traysOf(const TraceFrom& from) const
{
    struct Finder
    {
        Database& database;
        std::vector<TrayId> operator()(TrayId tray) const { return {tray}; }
        std::vector<TrayId> operator()(SeedLotId lot) const
        {
            return idsBy(database, "SELECT id FROM tray WHERE seed_lot_id = ?1", lot);
        }
        std::vector<TrayId> operator()(PieceId piece) const
        {
            return idsBy(database, "SELECT id FROM tray WHERE piece_id = ?1", piece);
        }
        std::vector<TrayId> operator()(const MixSpan& mix) const
        {
            return idsBy(database,
                         "SELECT DISTINCT tray_id FROM watering WHERE on_date BETWEEN ?1 AND ?2 "
                         "AND water = ?3",
                         mix.from, mix.to, mix.water);
        }
        std::vector<TrayId> operator()(const Person& person) const
        {
            return idsBy(database, kOfPerson, person.name);
        }
    };
    return std::visit(Finder{m_database}, from);
}

std::vector<TracedTray> TraceRepository::tracedTrays(const std::vector<TrayId>& trays) const
{
    auto cuts = HarvestRepository(m_database).ofTrays(trays);
    std::vector<TracedTray> traced;
    for (TrayRecord& record : TrayRepository(m_database).records(trays)) {
        const TrayId id = record.tray.id;
        traced.push_back({std::move(record.tray), std::move(record.variety),
                          std::move(record.medium), record.pieceNumber, record.seedLot,
                          std::move(cuts[id]), Part::None});
    }
    return traced;
}

void TraceRepository::putPromises(std::vector<TracedTray>& trays) const
{
    std::optional<Date> first;
    std::optional<Date> last;
    for (const TracedTray& traced : trays) {
        for (const Harvest& cut : traced.cuts) {
            first = std::min(first.value_or(cut.on), cut.on);
            last = std::max(last.value_or(cut.on), cut.on);
        }
    }
    OrderRepository orders(m_database);
    const std::vector<Order> all = first ? orders.all() : std::vector<Order>();
    if (all.empty()) {
        return;
    }
    const Date from = *first - kDaysAround;
    const Date to = *last + kDaysAround;
    const std::vector<Promise> made = promises(all, from, to);
    const SharesByPromise shares = shareCuts(made, orders.cuts(from, to));
    std::map<HarvestId, std::vector<TracedPromise>> ofCut;
    for (const Promise& promise : made) {
        const auto found = shares.find(promise.key());
        for (const CutShare& share :
             found == shares.end() ? std::vector<CutShare>() : found->second) {
            ofCut[share.cut].push_back({promise.key(), promise.order.customer, share.part});
        }
    }
    for (TracedTray& traced : trays) {
        for (const Harvest& cut : traced.cuts) {
            const std::vector<TracedPromise>& of = ofCut[cut.id];
            traced.promises.insert(traced.promises.end(), of.begin(), of.end());
        }
    }
}

std::vector<Sanitising> TraceRepository::sanitisedBy(const std::string& name) const
{
    std::vector<Sanitising> all = MediumRepository(m_database).sanitisings();
    std::erase_if(all, [&](const Sanitising& each) { return !isAlike(each.how.by, name); });
    return all;
}

bool TraceRepository::describe(const TraceFrom& from, ForwardTrace& trace) const
{
    if (const auto* lot = std::get_if<SeedLotId>(&from)) {
        VarietyRepository varieties(m_database);
        trace.lot = varieties.stockOf(*lot);
        const auto variety = trace.lot ? varieties.find(trace.lot->lot.variety) : std::nullopt;
        trace.lotVariety = variety ? variety->name : std::string();
        return trace.lot.has_value();
    }
    if (const auto* piece = std::get_if<PieceId>(&from)) {
        MediumRepository media(m_database);
        trace.piece = media.record(*piece);
        trace.pieceMedium = trace.piece ? media.find(trace.piece->piece.medium) : std::nullopt;
        trace.sanitisings = media.sanitisings(*piece);
        return trace.piece && trace.pieceMedium;
    }
    if (const auto* mix = std::get_if<MixSpan>(&from)) {
        for (const WaterRecipe& recipe : WateringRepository(m_database).recipes()) {
            if (recipe.water == mix->water) {
                trace.recipe = recipe;
            }
        }
    }
    if (const auto* person = std::get_if<Person>(&from)) {
        trace.sanitisings = sanitisedBy(person->name);
    }
    return true;
}

std::optional<ForwardTrace> TraceRepository::forward(const TraceFrom& from) const
{
    ForwardTrace trace;
    trace.from = from;
    if (!describe(from, trace)) {
        return std::nullopt;
    }
    std::vector<TracedTray> trays = tracedTrays(traysOf(from));
    if (const auto* person = std::get_if<Person>(&from)) {
        const std::vector<Sanitising> all = MediumRepository(m_database).sanitisings();
        for (TracedTray& traced : trays) {
            const Sanitising* last = lastBefore(all, traced.tray);
            traced.part =
                partOf(*person, traced, last != nullptr && isAlike(last->how.by, person->name));
        }
    }
    putPromises(trays);
    trace.sowings = sowingsOf(std::move(trays));
    trace.sums = sumsOf(trace.sowings);
    return trace;
}

void TraceRepository::describePiece(BackTrace& trace) const
{
    const Tray& own = trace.tray.tray;
    if (!own.piece) {
        return;
    }
    MediumRepository media(m_database);
    trace.piece = media.find(*own.piece);
    trace.useOfPiece = HarvestRepository(m_database).useOfPiece(own);
    const std::vector<Sanitising> all = media.sanitisings(own.piece);
    if (const Sanitising* last = lastBefore(all, own)) {
        trace.sanitised = *last;
    }
    for (const TracedTray& other : tracedTrays(traysOf(*own.piece))) {
        if (other.tray.sownAt() < own.sownAt()) {
            trace.trayBefore = trace.trayBefore ? trace.trayBefore : other.tray.code;
        }
    }
}

std::optional<BackTrace> TraceRepository::back(TrayId tray) const
{
    std::vector<TracedTray> traced = tracedTrays({tray});
    const TrayRepository trays(m_database);
    const auto record = trays.record(tray);
    if (traced.empty() || !record) {
        return std::nullopt;
    }
    putPromises(traced);
    BackTrace trace;
    trace.tray = std::move(traced.front());
    trace.stages = record->stages;
    trace.trialCode = record->trialCode;
    const Tray& own = trace.tray.tray;
    HarvestRepository harvests(m_database);
    trace.lot = own.seedLot ? VarietyRepository(m_database).stockOf(*own.seedLot) : std::nullopt;
    describePiece(trace);
    const WateringRepository waters(m_database);
    const std::vector<Watering> given = waters.waterings(tray);
    const auto readings = given.empty() ? std::vector<WaterReading>()
                                        : waters.readings(given.front().on, given.back().on);
    trace.waters = watersOf(tray, given, readings, waters.recipes());
    trace.stays = namedStays(trays.stays(tray), RoomRepository(m_database).layout().spots());
    for (const Residue& residue : harvests.residuesOfTray(tray)) {
        trace.residue = trace.residue.value_or(Mass{}) + residue.net;
    }
    return trace;
}

std::vector<std::string> TraceRepository::people() const
{
    Statement statement = m_database.prepare(
        "SELECT name FROM (SELECT DISTINCT sown_by AS name FROM tray WHERE sown_by <> '' UNION "
        "SELECT DISTINCT done_by FROM sanitising_detail WHERE done_by <> '') "
        "GROUP BY name COLLATE NOCASE ORDER BY name COLLATE NOCASE");
    std::vector<std::string> names;
    while (statement.step()) {
        names.push_back(statement.get<std::string>(0));
    }
    return names;
}

} // namespace plumule
