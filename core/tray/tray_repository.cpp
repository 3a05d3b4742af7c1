#include "core/tray/tray_repository.h"

#include "core/base/number_text.h"
#include "core/medium/medium_repository.h"
#include "core/storage/id_list.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_table_of.h"

#include <algorithm>
#include <unordered_map>

namespace plumule {

namespace {

constexpr const char* kOfTrays = "WHERE tray_id IN (SELECT value FROM json_each(?1)) ";
constexpr const char* kNewestFirst = " ORDER BY t.sown_on DESC, t.code";
constexpr int kLongestLife = 120; // days: how far on a past round looks for trays since ended
constexpr int kLongestSoak = 30;  // days

constexpr const char* kByStart = "ORDER BY from_on, from_minute, id";

Moment startOf(const Stay& stay)
{
    return {stay.fromOn, stay.fromMinute};
}

bool hasLeftBy(const Stay& stay, Moment at)
{
    return stay.toOn && Moment{*stay.toOn, stay.toMinute.value_or(0)} <= at;
}

template <class Value>
Cell cellOf(const Value& value)
{
    return ColumnTraits<Value>::toCell(value);
}

// A row of load()'s, without stages and place.
TrayRecord readRecord(const Statement& statement, const std::map<MediumId, Medium>& media)
{
    constexpr int first = kColumnCount<Tray>;
    TrayRecord record;
    record.tray = readRow<Tray>(statement);
    const TrayId id = record.tray.id;
    record.medium = pointedAt(media, record.tray.medium, "tray", id);
    const auto variety = statement.get<std::optional<std::string>>(first);
    if (!variety) {
        throw damagedRow("tray", id.value);
    }
    record.variety = *variety;
    record.pieceNumber = statement.get<std::optional<int>>(first + 1);
    record.seedLot = statement.get<std::optional<std::string>>(first + 2);
    record.trialCode = statement.get<std::optional<std::string>>(first + 3);
    record.trialName = statement.get<std::optional<std::string>>(first + 4);
    return record;
}

} // namespace

std::optional<Tray> TrayRepository::find(TrayId tray) const
{
    return findRow<Tray>(m_database, tray);
}

std::optional<Tray> TrayRepository::findByCode(const std::string& code) const
{
    // As written first: that one look-up is indexed.
    const std::string wanted(trimmed(code));
    if (auto tray = selectRow<Tray>(m_database, "WHERE code = ?1", wanted)) {
        return tray;
    }
    return selectRow<Tray>(m_database, "WHERE code = ?1 COLLATE NOCASE ORDER BY id", wanted);
}

void TrayRepository::insert(Tray& tray)
{
    insertRow(m_database, tray);
}

void TrayRepository::update(const Tray& tray)
{
    updateRow(m_database, tray);
}

void TrayRepository::end(Tray& tray, TrayState state, Moment at)
{
    tray.state = state;
    tray.endedOn = at.date;
    tray.endedMinute = at.minute;
    update(tray);
    closeStay(tray.id, at);
}

void TrayRepository::reopen(Tray& tray)
{
    const auto endedOn = std::exchange(tray.endedOn, std::nullopt);
    const auto endedMinute = std::exchange(tray.endedMinute, std::nullopt);
    tray.state = TrayState::Growing;
    tray.discardReason.reset();
    update(tray);
    auto all = stays(tray.id);
    if (all.empty() || all.back().toOn != endedOn || all.back().toMinute != endedMinute ||
        wasTakenSince(all.back())) {
        return;
    }
    all.back().toOn.reset();
    all.back().toMinute.reset();
    update(all.back());
}

std::vector<TrayRecord> TrayRepository::load(std::string tail, std::vector<Cell> values) const
{
    if (!m_without.empty()) {
        values.emplace_back(idList(m_without));
        tail += (tail.empty() ? "WHERE" : " AND") +
                (" t.id NOT IN (SELECT value FROM json_each(?" + std::to_string(values.size())) +
                "))";
    }
    const std::map<MediumId, Medium> media = MediumRepository(m_database).byId();
    std::vector<TrayRecord> records;
    std::unordered_map<TrayId, std::size_t> at;
    {
        Statement statement = m_database.prepare(
            "SELECT " + selectList<Tray>("t") +
            ", v.name, p.number, l.lot_number, tr.code, tr.name FROM tray t "
            "LEFT JOIN variety v ON v.id = t.variety_id LEFT JOIN medium m ON m.id = t.medium_id "
            "LEFT JOIN piece p ON p.id = t.piece_id LEFT JOIN seed_lot l ON l.id = t.seed_lot_id "
            "LEFT JOIN trial tr ON tr.id = t.trial_id " +
            tail + kNewestFirst);
        for (std::size_t i = 0; i < values.size(); ++i) {
            statement.bindCell(static_cast<int>(i + 1), values[i]);
        }
        while (statement.step()) {
            records.push_back(readRecord(statement, media));
            at.emplace(records.back().tray.id, records.size() - 1);
        }
    }
    const std::string stages = std::string(kOfTrays) + "ORDER BY tray_id, position, id";
    for (TrayStage& stage : selectRows<TrayStage>(m_database, stages, idList(idsOf(records)))) {
        records[at.at(stage.tray)].stages.push_back(std::move(stage));
    }
    return records;
}

void TrayRepository::addPlaces(std::vector<TrayRecord>& records, std::optional<Moment> at) const
{
    const auto all = stays(idsOf(records));
    for (TrayRecord& record : records) {
        const auto found = all.find(record.tray.id);
        if (found == all.end()) {
            continue;
        }
        const bool isGrowing = !record.tray.endedOn;
        for (const Stay& stay : found->second) {
            if (!at) {
                record.place = stay.place;
            } else if (startOf(stay) <= *at) {
                record.place =
                    isGrowing && hasLeftBy(stay, *at) ? std::nullopt : std::optional(stay.place);
            }
        }
    }
}

std::vector<TrayRecord> TrayRepository::records(const std::vector<TrayId>& trays) const
{
    auto found = load("WHERE t.id IN (SELECT value FROM json_each(?1))", {idList(trays)});
    addPlaces(found, std::nullopt);
    return found;
}

std::optional<TrayRecord> TrayRepository::record(TrayId tray) const
{
    auto found = records(std::vector{tray});
    return found.empty() ? std::nullopt : std::optional(std::move(found.front()));
}

std::vector<TrayRecord> TrayRepository::growing() const
{
    auto found = load("WHERE t.state = 'growing'", {});
    addPlaces(found, std::nullopt);
    return found;
}

std::vector<TrayRecord> TrayRepository::growingAt(Moment at) const
{
    // Each half has its own index; joined by OR the whole table would be walked.
    auto found =
        load("WHERE t.id IN (SELECT id FROM tray WHERE state = 'growing' UNION ALL "
             "SELECT id FROM tray WHERE ended_on BETWEEN ?1 AND ?2 AND sown_on <= ?3)",
             {cellOf(at.date), cellOf(at.date + kLongestLife), cellOf(at.date + kLongestSoak)});
    addPlaces(found, at);
    return found;
}

std::vector<TrayStage> TrayRepository::stages(TrayId tray) const
{
    return selectRows<TrayStage>(m_database, "WHERE tray_id = ?1 ORDER BY position, id", tray);
}

void TrayRepository::insert(TrayStage& stage)
{
    insertRow(m_database, stage);
}

void TrayRepository::update(const TrayStage& stage)
{
    updateRow(m_database, stage);
}

std::vector<Stay> TrayRepository::stays(TrayId tray) const
{
    return selectRows<Stay>(m_database, std::string("WHERE tray_id = ?1 ") + kByStart, tray);
}

TrayRepository::ByTray<Stay> TrayRepository::stays(const std::vector<TrayId>& trays) const
{
    ByTray<Stay> byTray;
    const std::string tail = std::string(kOfTrays) + kByStart;
    for (const Stay& stay : selectRows<Stay>(m_database, tail, idList(trays))) {
        byTray[stay.tray].push_back(stay);
    }
    return byTray;
}

std::map<PlaceId, TrayId> TrayRepository::occupied() const
{
    std::map<PlaceId, TrayId> byPlace;
    const std::string ids = idList(m_without);
    for (const Stay& stay : selectRows<Stay>(
             m_database, "WHERE to_on IS NULL AND tray_id NOT IN (SELECT value FROM json_each(?1))",
             ids)) {
        byPlace.emplace(stay.place, stay.tray);
    }
    return byPlace;
}

std::optional<TrayId> TrayRepository::trayAt(PlaceId place) const
{
    const auto stay = selectRow<Stay>(m_database, "WHERE place_id = ?1 AND to_on IS NULL", place);
    return stay ? std::optional(stay->tray) : std::nullopt;
}

bool TrayRepository::wasTakenSince(const Stay& left) const
{
    const auto tenant = trayAt(left.place);
    return (tenant && *tenant != left.tray) ||
           selectRow<Stay>(m_database, "WHERE place_id = ?1 AND tray_id <> ?2 AND to_on > ?3",
                           left.place, left.tray, left.toOn)
               .has_value();
}

std::optional<Stay> TrayRepository::lastToLeaveAfter(PlaceId place, TrayId other, Moment from) const
{
    return selectRow<Stay>(m_database,
                           "WHERE place_id = ?1 AND tray_id <> ?2 AND "
                           "(to_on, to_minute) > (?3, ?4) "
                           "ORDER BY to_on DESC, to_minute DESC LIMIT 1",
                           place, other, from.date, from.minute);
}

std::optional<Stay> TrayRepository::lastToLeaveBy(PlaceId place, TrayId other, Moment by) const
{
    return selectRow<Stay>(m_database,
                           "WHERE place_id = ?1 AND tray_id <> ?2 AND "
                           "(to_on, to_minute) <= (?3, ?4) "
                           "ORDER BY to_on DESC, to_minute DESC LIMIT 1",
                           place, other, by.date, by.minute);
}

std::optional<Stay> TrayRepository::openStay(TrayId tray) const
{
    return selectRow<Stay>(m_database, "WHERE tray_id = ?1 AND to_on IS NULL", tray);
}

void TrayRepository::insert(Stay& stay)
{
    insertRow(m_database, stay);
}

void TrayRepository::update(const Stay& stay)
{
    updateRow(m_database, stay);
}

void TrayRepository::closeStay(TrayId tray, Moment at)
{
    if (auto stay = openStay(tray)) {
        stay->toOn = at.date;
        stay->toMinute = at.minute;
        update(*stay);
    }
}

} // namespace plumule
