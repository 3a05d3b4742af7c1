#include "core/watering/watering_repository.h"

#include "core/storage/id_list.h"
#include "core/storage/table.h"
#include "core/tray/tray_ids.h"

#include <algorithm>
#include <set>

namespace plumule {

template <>
struct TableOf<Watering>
{
    static constexpr const char* name = "watering";
    static constexpr auto columns =
        std::tuple{column("tray_id", &Watering::tray),    column("on_date", &Watering::on),
                   column("slot", &Watering::slot),       column("minute", &Watering::minute),
                   column("method", &Watering::method),   column("water", &Watering::water),
                   column("amount_ul", &Watering::amount)};
};

// Says of a watering that it was given between rounds.
struct BetweenMark
{
    Id<BetweenMark> id;
    WateringId watering;
};

template <>
struct TableOf<BetweenMark>
{
    static constexpr const char* name = "watering_between";
    static constexpr auto columns = std::tuple{column("watering_id", &BetweenMark::watering)};
};

template <>
struct TableOf<WateringLook>
{
    static constexpr const char* name = "watering_look";
    static constexpr auto columns =
        std::tuple{column("tray_id", &WateringLook::tray), column("on_date", &WateringLook::on),
                   column("slot", &WateringLook::slot), column("minute", &WateringLook::minute)};
};

template <>
struct TableOf<WaterRecipe>
{
    static constexpr const char* name = "water_recipe";
    static constexpr auto columns = std::tuple{column("water", &WaterRecipe::water),
                                               column("concentrate", &WaterRecipe::concentrate),
                                               column("dose_ul_per_l", &WaterRecipe::dosePerLitre),
                                               column("ph_low", &WaterRecipe::phLow),
                                               column("ph_high", &WaterRecipe::phHigh),
                                               column("ec_low_us_cm", &WaterRecipe::ecLow),
                                               column("ec_high_us_cm", &WaterRecipe::ecHigh)};
};

template <>
struct TableOf<WaterReading>
{
    static constexpr const char* name = "water_reading";
    static constexpr auto columns =
        std::tuple{column("on_date", &WaterReading::on),    column("slot", &WaterReading::slot),
                   column("minute", &WaterReading::minute), column("water", &WaterReading::water),
                   column("tray_id", &WaterReading::tray),  column("ph", &WaterReading::ph),
                   column("ec_us_cm", &WaterReading::ec)};
};

namespace {

// 'morning' sorts after 'evening' as text.
constexpr const char* kOldestFirst = "ORDER BY on_date, slot DESC, minute, id";

} // namespace

std::optional<Watering> WateringRepository::find(WateringId watering) const
{
    auto found = findRow<Watering>(m_database, watering);
    if (found) {
        std::vector<Watering> one{*found};
        sayWhichAreBetween(one);
        found = one.front();
    }
    return found;
}

std::optional<Watering> WateringRepository::find(TrayId tray, Date date, Slot slot) const
{
    return selectRow<Watering>(
        m_database,
        "WHERE tray_id = ?1 AND on_date = ?2 AND slot = ?3 AND NOT EXISTS "
        "(SELECT 1 FROM watering_between b WHERE b.watering_id = watering.id)",
        tray, date, slot);
}

std::vector<Watering> WateringRepository::waterings(TrayId tray) const
{
    auto found =
        selectRows<Watering>(m_database, std::string("WHERE tray_id = ?1 ") + kOldestFirst, tray);
    sayWhichAreBetween(found);
    return found;
}

std::vector<Watering> WateringRepository::wateringsSince(const std::vector<TrayId>& trays,
                                                         Date from) const
{
    const std::string tail =
        std::string("WHERE tray_id IN (SELECT value FROM json_each(?1)) AND on_date >= ?2 ") +
        kOldestFirst;
    auto found = selectRows<Watering>(m_database, tail, idList(trays), from);
    sayWhichAreBetween(found);
    return found;
}

std::map<TrayId, Watering> WateringRepository::lastBefore(const std::vector<TrayId>& trays,
                                                          Date date, Slot slot) const
{
    Statement statement = m_database.prepare(
        "SELECT " + selectList<Watering>("w") +
        " FROM json_each(?1) tray JOIN watering w ON w.id = ("
        "SELECT id FROM watering WHERE tray_id = tray.value AND on_date <= ?2 AND "
        "(on_date < ?2 OR (slot = 'morning' AND ?3 = 'evening')) "
        "ORDER BY on_date DESC, slot, minute DESC, id DESC LIMIT 1)");
    statement.bind(idList(trays), date, slot);
    std::map<TrayId, Watering> newest;
    while (statement.step()) {
        const auto watering = readRow<Watering>(statement);
        newest.emplace(watering.tray, watering);
    }
    return newest;
}

void WateringRepository::insert(Watering& watering)
{
    insertRow(m_database, watering);
    if (watering.isBetween) {
        BetweenMark mark{{}, watering.id};
        insertRow(m_database, mark);
    }
}

void WateringRepository::update(const Watering& watering)
{
    updateRow(m_database, watering);
}

void WateringRepository::remove(WateringId watering)
{
    m_database.prepare("DELETE FROM watering_between WHERE watering_id = ?1").bind(watering).run();
    deleteRow<Watering>(m_database, watering);
}

void WateringRepository::sayWhichAreBetween(std::vector<Watering>& waterings) const
{
    if (waterings.empty()) {
        return;
    }
    const auto [first, last] =
        std::minmax_element(waterings.begin(), waterings.end(),
                            [](const Watering& a, const Watering& b) { return a.id < b.id; });
    std::set<WateringId> between;
    for (const BetweenMark& mark : selectRows<BetweenMark>(
             m_database, "WHERE watering_id BETWEEN ?1 AND ?2", first->id, last->id)) {
        between.insert(mark.watering);
    }
    for (Watering& watering : waterings) {
        watering.isBetween = between.contains(watering.id);
    }
}

std::vector<WateringLook> WateringRepository::looksSince(const std::vector<TrayId>& trays,
                                                         Date from) const
{
    return selectRows<WateringLook>(
        m_database,
        std::string("WHERE tray_id IN (SELECT value FROM json_each(?1)) AND on_date >= ?2 ") +
            kOldestFirst,
        idList(trays), from);
}

std::optional<WateringLook> WateringRepository::findLook(TrayId tray, Date date, Slot slot) const
{
    return selectRow<WateringLook>(m_database, "WHERE tray_id = ?1 AND on_date = ?2 AND slot = ?3",
                                   tray, date, slot);
}

void WateringRepository::insert(WateringLook& look)
{
    insertRow(m_database, look);
}

void WateringRepository::remove(WateringLookId look)
{
    deleteRow<WateringLook>(m_database, look);
}

std::vector<WaterRecipe> WateringRepository::recipes() const
{
    return selectRows<WaterRecipe>(
        m_database, "ORDER BY CASE water WHEN 'plain' THEN 0 WHEN 'ph_set' THEN 1 ELSE 2 END, id");
}

std::optional<WaterRecipe> WateringRepository::find(WaterRecipeId recipe) const
{
    return findRow<WaterRecipe>(m_database, recipe);
}

void WateringRepository::insert(WaterRecipe& recipe)
{
    insertRow(m_database, recipe);
}

void WateringRepository::update(const WaterRecipe& recipe)
{
    updateRow(m_database, recipe);
}

std::vector<WaterReading> WateringRepository::readings(Date from, Date to) const
{
    return selectRows<WaterReading>(
        m_database, std::string("WHERE on_date BETWEEN ?1 AND ?2 ") + kOldestFirst, from, to);
}

void WateringRepository::insert(WaterReading& reading)
{
    insertRow(m_database, reading);
}

} // namespace plumule
