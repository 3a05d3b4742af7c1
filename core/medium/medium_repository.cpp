#include "core/medium/medium_repository.h"

#include "core/medium/medium_rules.h"
#include "core/storage/id_list.h"
#include "core/storage/table.h"

#include <algorithm>
#include <set>

namespace plumule {

template <>
struct TableOf<Medium>
{
    static constexpr const char* name = "medium";
    static constexpr auto columns =
        std::tuple{column("name", &Medium::name),
                   column("form", &Medium::form),
                   column("is_nutrient_bearing", &Medium::isNutrientBearing),
                   column("is_reusable", &Medium::isReusable),
                   column("planned_uses", &Medium::plannedUses),
                   column("surface_below_rim_um", &Medium::surfaceBelowRim),
                   column("amount_ul", &Medium::amountPerTray),
                   column("marker", &Medium::marker),
                   column("source", &Medium::source),
                   column("note", &Medium::note),
                   column("is_retired", &Medium::isRetired)};
    static bool isSound(const Medium& medium)
    {
        return medium.marker >= 0 && medium.marker < kMarkers;
    }
};

// Says of a medium that it is always run with its own feeding.
struct AsRunMark
{
    Id<AsRunMark> id;
    MediumId medium;
};

template <>
struct TableOf<AsRunMark>
{
    static constexpr const char* name = "medium_as_run";
    static constexpr auto columns = std::tuple{column("medium_id", &AsRunMark::medium)};
};

template <>
struct TableOf<Piece>
{
    static constexpr const char* name = "piece";
    static constexpr auto columns =
        std::tuple{column("medium_id", &Piece::medium), column("number", &Piece::number),
                   column("bought_on", &Piece::boughtOn), column("retired_on", &Piece::retiredOn),
                   column("note", &Piece::note)};
};

struct MediumGroupTag;

struct MediumGroup
{
    Id<MediumGroupTag> id;
    MediumId medium;
    std::string name;
};

template <>
struct TableOf<MediumGroup>
{
    static constexpr const char* name = "medium_group";
    static constexpr auto columns =
        std::tuple{column("medium_id", &MediumGroup::medium), column("name", &MediumGroup::name)};
};

namespace {

bool isMarked(Database& database, MediumId medium)
{
    return selectRow<AsRunMark>(database, "WHERE medium_id = ?1", medium).has_value();
}

std::optional<Medium> withMark(Database& database, std::optional<Medium> medium)
{
    if (medium) {
        medium->isAsRun = isMarked(database, medium->id);
    }
    return medium;
}

void removeMark(Database& database, MediumId medium)
{
    database.prepare("DELETE FROM medium_as_run WHERE medium_id = ?1").bind(medium).run();
}

void storeMark(Database& database, const Medium& medium)
{
    if (medium.isAsRun == isMarked(database, medium.id)) {
        return;
    }
    removeMark(database, medium.id);
    if (medium.isAsRun) {
        AsRunMark mark{{}, medium.id};
        insertRow(database, mark);
    }
}

// What the trays and washings of one piece come to.
struct PieceLife
{
    int uses = 0;
    bool isInUse = false;
    std::optional<Moment> used;
    std::optional<Moment> sanitised;
};

using PieceLives = std::map<PieceId, PieceLife>;

void readUses(Database& database, const std::string& pieces, PieceLives& lives)
{
    Statement statement = database.prepare(
        "SELECT piece_id, state = 'growing', coalesce(ended_on, sown_on), "
        "CASE WHEN ended_on IS NULL THEN sown_minute ELSE coalesce(ended_minute, 0) END "
        "FROM tray WHERE piece_id IN (SELECT value FROM json_each(?1))");
    statement.bind(pieces);
    while (statement.step()) {
        PieceLife& life = lives[statement.get<PieceId>(0)];
        ++life.uses;
        life.isInUse = life.isInUse || statement.get<bool>(1);
        const Moment used{statement.get<Date>(2), statement.get<int>(3)};
        life.used = life.used ? std::max(*life.used, used) : used;
    }
}

void readSanitisings(Database& database, const std::string& pieces, PieceLives& lives)
{
    Statement statement = database.prepare(
        "SELECT last.piece_id, last.on_date, last.minute FROM json_each(?1) AS piece "
        "JOIN sanitising AS last ON last.id = (SELECT id FROM sanitising WHERE "
        "piece_id = piece.value ORDER BY on_date DESC, minute DESC LIMIT 1)");
    statement.bind(pieces);
    while (statement.step()) {
        lives[statement.get<PieceId>(0)].sanitised =
            Moment{statement.get<Date>(1), statement.get<int>(2)};
    }
}

PieceLives livesOf(Database& database, const std::vector<Piece>& pieces)
{
    PieceLives lives;
    const std::string ids = idListOf(pieces);
    readUses(database, ids, lives);
    readSanitisings(database, ids, lives);
    return lives;
}

std::optional<Date> dayOf(std::optional<Moment> moment)
{
    return moment ? std::optional(moment->date) : std::nullopt;
}

PieceRecord recordFrom(Piece piece, const PieceLives& lives)
{
    const auto found = lives.find(piece.id);
    const PieceLife life = found == lives.end() ? PieceLife{} : found->second;
    return {std::move(piece),      life.uses,
            life.isInUse,          dayOf(life.used),
            dayOf(life.sanitised), needsSanitising(life.used, life.sanitised)};
}

} // namespace

std::vector<Medium> MediumRepository::all(Listed listed)
{
    auto media =
        selectRows<Medium>(m_database, "WHERE is_retired <= ?1 ORDER BY name COLLATE NOCASE, id",
                           listed == Listed::All);
    std::set<MediumId> asRun;
    for (const AsRunMark& mark : selectRows<AsRunMark>(m_database, "")) {
        asRun.insert(mark.medium);
    }
    for (Medium& medium : media) {
        medium.isAsRun = asRun.contains(medium.id);
    }
    return media;
}

std::map<MediumId, Medium> MediumRepository::byId()
{
    std::map<MediumId, Medium> media;
    for (Medium& medium : all(Listed::All)) {
        const MediumId id = medium.id;
        media.emplace(id, std::move(medium));
    }
    return media;
}

std::optional<Medium> MediumRepository::find(MediumId medium)
{
    return withMark(m_database, findRow<Medium>(m_database, medium));
}

std::optional<Medium> MediumRepository::findByName(const std::string& name)
{
    return withMark(m_database,
                    selectRow<Medium>(m_database,
                                      "WHERE name = ?1 COLLATE NOCASE ORDER BY is_retired, id",
                                      name));
}

void MediumRepository::insert(Medium& medium)
{
    insertRow(m_database, medium);
    storeMark(m_database, medium);
}

void MediumRepository::update(const Medium& medium)
{
    updateRow(m_database, medium);
    storeMark(m_database, medium);
}

void MediumRepository::remove(MediumId medium)
{
    removeMark(m_database, medium);
    setGroup(medium, {});
    deleteRow<Medium>(m_database, medium);
}

std::map<MediumId, std::string> MediumRepository::groups()
{
    std::map<MediumId, std::string> groups;
    for (const MediumGroup& group : selectRows<MediumGroup>(m_database, "ORDER BY id")) {
        groups[group.medium] = group.name;
    }
    return groups;
}

void MediumRepository::setGroup(MediumId medium, const std::string& name)
{
    auto group = selectRow<MediumGroup>(m_database, "WHERE medium_id = ?1", medium);
    if (name.empty()) {
        if (group) {
            deleteRow<MediumGroup>(m_database, group->id);
        }
    } else if (group) {
        group->name = name;
        updateRow(m_database, *group);
    } else {
        MediumGroup added{{}, medium, name};
        insertRow(m_database, added);
    }
}

bool MediumRepository::isInUse(MediumId medium)
{
    return m_database
        .prepare("SELECT 1 FROM tray WHERE medium_id = ?1 "
                 "UNION ALL SELECT 1 FROM piece WHERE medium_id = ?1 "
                 "UNION ALL SELECT 1 FROM price WHERE medium_id = ?1 "
                 "UNION ALL SELECT 1 FROM supply WHERE medium_id = ?1 "
                 "UNION ALL SELECT 1 FROM trial WHERE control_medium_id = ?1 "
                 "UNION ALL SELECT 1 FROM treatment WHERE medium_id = ?1 "
                 "UNION ALL SELECT 1 FROM panel_sample WHERE medium_id = ?1 "
                 "UNION ALL SELECT 1 FROM repeat_sowing WHERE medium_id = ?1 "
                 "UNION ALL SELECT 1 FROM promised_order WHERE medium_id = ?1 LIMIT 1")
        .bind(medium)
        .step();
}

std::vector<PieceRecord> MediumRepository::pieces(std::optional<MediumId> medium, Listed listed)
{
    auto rows = selectRows<Piece>(m_database,
                                  "WHERE (?1 IS NULL OR medium_id = ?1) AND "
                                  "(?2 OR retired_on IS NULL) ORDER BY "
                                  "(SELECT m.name FROM medium m WHERE m.id = medium_id) "
                                  "COLLATE NOCASE, medium_id, number, id",
                                  medium, listed == Listed::All);
    const PieceLives lives = livesOf(m_database, rows);
    std::vector<PieceRecord> records;
    records.reserve(rows.size());
    for (Piece& piece : rows) {
        records.push_back(recordFrom(std::move(piece), lives));
    }
    return records;
}

std::optional<Piece> MediumRepository::find(PieceId piece)
{
    return findRow<Piece>(m_database, piece);
}

std::optional<PieceRecord> MediumRepository::record(PieceId piece)
{
    auto found = find(piece);
    if (!found) {
        return std::nullopt;
    }
    const PieceLives lives = livesOf(m_database, {*found});
    return recordFrom(std::move(*found), lives);
}

int MediumRepository::lastNumber(MediumId medium)
{
    Statement statement =
        m_database.prepare("SELECT coalesce(max(number), 0) FROM piece WHERE medium_id = ?1");
    statement.bind(medium).step();
    return statement.get<int>(0);
}

void MediumRepository::insert(Piece& piece)
{
    insertRow(m_database, piece);
}

void MediumRepository::update(const Piece& piece)
{
    updateRow(m_database, piece);
}

} // namespace plumule
