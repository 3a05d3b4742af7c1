#include "core/journal/rules/standing_rules_repository.h"

#include "core/medium/medium_rules.h"
#include "core/storage/database.h"

#include <algorithm>

namespace plumule {
namespace {

struct Owner
{
    const char* of; // the table whose rows are touched
    const char* key;
    const char* sql;
};

// Each by its key, from the rows of `of` in the list ?1. In this order: some build on others.
constexpr Owner kOwners[] = {
    {"stay", "tray", "SELECT tray_id FROM stay WHERE id IN (SELECT value FROM json_each(?1))"},
    {"tray_stage", "tray of a stage",
     "SELECT tray_id FROM tray_stage WHERE id IN (SELECT value FROM json_each(?1))"},
    {"harvest", "tray of a cut",
     "SELECT tray_id FROM harvest WHERE id IN (SELECT value FROM json_each(?1))"},
    {"tray of a cut", "tray", "SELECT value FROM json_each(?1)"},
    {"tray", "piece",
     "SELECT piece_id FROM tray WHERE piece_id IS NOT NULL AND "
     "id IN (SELECT value FROM json_each(?1))"},
    {"sanitising", "piece that was washed",
     "SELECT piece_id FROM sanitising WHERE id IN (SELECT value FROM json_each(?1))"},
    {"piece that was washed", "piece", "SELECT value FROM json_each(?1)"},
    {"panel", "panel that was closed",
     "SELECT id FROM panel WHERE closed_on IS NOT NULL AND "
     "id IN (SELECT value FROM json_each(?1))"},
    {"score", "panel of a score",
     "SELECT v.panel_id FROM score s JOIN serving v ON v.id = s.serving_id WHERE "
     "s.id IN (SELECT value FROM json_each(?1))"},
};

// Each looks at the rows that were touched: a plus keeps SQLite from walking all trays of a state.
struct Rule
{
    RuleReason reason;
    const char* about;             // the key whose ids are the list ?1
    std::string sql;               // a row for each that breaks it, of the reason's values
    const char* besides = nullptr; // the key whose ids are the list ?2
};

// Moments compare as text.
std::string momentOf(const std::string& day, const std::string& minute)
{
    return "(" + day + " || printf(' %04d', " + minute + "))";
}

std::string startOf(const std::string& row)
{
    return momentOf(row + ".from_on", row + ".from_minute");
}

// Of an open stay: after all others.
std::string endOf(const std::string& row)
{
    return "coalesce(" + momentOf(row + ".to_on", row + ".to_minute") + ", '9999')";
}

std::string endOfUse(const std::string& tray)
{
    return momentOf(tray + ".ended_on", "coalesce(" + tray + ".ended_minute, 0)");
}

std::string startOfStage(const std::string& stage)
{
    return momentOf(stage + ".started_on", "coalesce(" + stage + ".started_minute, 0)");
}

std::string isListed(const std::string& column)
{
    return column + " IN (SELECT value FROM json_each(?1))";
}

std::string sameName(const std::string& table, const std::string& name,
                     const std::string& within = {})
{
    return "SELECT a." + name + " FROM " + table + " a JOIN " + table +
           " b ON b.id <> a.id AND b." + name + " = a." + name + " COLLATE NOCASE" +
           (within.empty() ? "" : " AND b." + within + " = a." + within) + " WHERE a." + name +
           " <> '' AND " + isListed("a.id");
}

// A piece with its medium, the tray `b` on it and an earlier one, `a`.
const char* const kUsesOfAPiece =
    "SELECT m.name, CAST(p.number AS TEXT), b.code FROM piece p JOIN medium m ON m.id = "
    "p.medium_id "
    "JOIN tray b ON b.piece_id = p.id "
    "JOIN tray a ON a.piece_id = p.id AND a.id <> b.id AND a.ended_on IS NOT NULL ";

std::vector<Rule> placeRules()
{
    // Within a day the times of leaving and coming are not held against each other: both are
    // written down when there is a hand free. Ids rise: what stood there before the step was no
    // hindrance then.
    return {
        {RuleReason::PlaceTaken, "stay",
         "SELECT r.name || h.name, CAST(p.number AS TEXT), t.code, o.code FROM stay s "
         // Who had left before is not looked at: a place has had hundreds.
         "JOIN stay b ON b.tray_id <> s.tray_id AND "
         "((b.place_id = s.place_id AND b.to_on IS NULL) OR "
         "(b.place_id = s.place_id AND b.to_on > s.from_on)) "
         "JOIN place p ON p.id = s.place_id JOIN shelf h ON h.id = p.shelf_id "
         "JOIN rack r ON r.id = h.rack_id JOIN tray t ON t.id = s.tray_id "
         "JOIN tray o ON o.id = b.tray_id WHERE " +
             isListed("s.id") +
             " AND ((s.to_on IS NULL AND b.to_on IS NULL) OR "
             "(b.id > (SELECT value FROM json_each(?2)) AND max(s.from_on, b.from_on) < "
             "min(coalesce(s.to_on, '9999'), coalesce(b.to_on, '9999'))))",
         "step"},
        {RuleReason::TrayTwice, "stay",
         "SELECT t.code FROM stay s JOIN stay b ON b.tray_id = s.tray_id AND b.id <> s.id "
         "JOIN tray t ON t.id = s.tray_id WHERE " +
             isListed("s.id") + " AND ((s.to_on IS NULL AND b.to_on IS NULL) OR max(" +
             startOf("s") + ", " + startOf("b") + ") < min(" + endOf("s") + ", " + endOf("b") +
             "))"},
        {RuleReason::EndedTrayStands, "tray",
         "SELECT t.code FROM tray t JOIN stay s ON s.tray_id = t.id AND s.to_on IS NULL "
         "WHERE t.state <> 'growing' AND " +
             isListed("t.id")},
    };
}

std::vector<Rule> pieceRules()
{
    return {
        {RuleReason::PieceTaken, "tray",
         "SELECT m.name, CAST(p.number AS TEXT), t.code, o.code FROM tray t "
         "JOIN tray o ON o.piece_id = t.piece_id AND o.id <> t.id AND +o.state = 'growing' "
         "JOIN piece p ON p.id = t.piece_id JOIN medium m ON m.id = p.medium_id "
         "WHERE +t.state = 'growing' AND " +
             isListed("t.id")},
        {RuleReason::PieceRetired, "piece",
         "SELECT m.name, CAST(p.number AS TEXT), t.code FROM piece p JOIN medium m ON m.id = "
         "p.medium_id "
         "JOIN tray t ON t.piece_id = p.id AND +t.state = 'growing' "
         "WHERE p.retired_on IS NOT NULL AND " +
             isListed("p.id")},
        {RuleReason::PieceNotSanitised, "piece",
         kUsesOfAPiece + std::string("WHERE +b.state = 'growing' AND ") + isListed("p.id") +
             " AND NOT EXISTS (SELECT 1 FROM sanitising s WHERE s.piece_id = p.id AND " +
             momentOf("s.on_date", "s.minute") + " >= " + endOfUse("a") + ")"},
        {RuleReason::PieceNotSanitised, "piece that was washed",
         kUsesOfAPiece + std::string("WHERE ") + isListed("p.id") + " AND " + endOfUse("a") +
             " < " + endOfUse("b") +
             " AND NOT EXISTS (SELECT 1 FROM sanitising s WHERE s.piece_id = p.id AND " +
             momentOf("s.on_date", "s.minute") + " BETWEEN " + endOfUse("a") + " AND " +
             endOfUse("b") + ")"},
    };
}

std::vector<Rule> nameRules()
{
    return {
        {RuleReason::NameTaken, "rack", sameName("rack", "name")},
        {RuleReason::NameTaken, "shelf", sameName("shelf", "name", "rack_id")},
        {RuleReason::NameTaken, "variety", sameName("variety", "name")},
        {RuleReason::NameTaken, "seed_lot", sameName("seed_lot", "lot_number", "variety_id")},
        {RuleReason::NameTaken, "medium", sameName("medium", "name")},
        {RuleReason::NameTaken, "trial", sameName("trial", "code")},
        {RuleReason::NumberTaken, "place",
         "SELECT r.name || h.name, CAST(a.number AS TEXT) FROM place a JOIN place b ON b.id <> "
         "a.id AND "
         "b.shelf_id = a.shelf_id AND b.number = a.number JOIN shelf h ON h.id = a.shelf_id "
         "JOIN rack r ON r.id = h.rack_id WHERE " +
             isListed("a.id")},
        {RuleReason::NumberTaken, "piece",
         "SELECT m.name, CAST(a.number AS TEXT) FROM piece a JOIN piece b ON b.id <> a.id AND "
         "b.medium_id = a.medium_id AND b.number = a.number "
         "JOIN medium m ON m.id = a.medium_id WHERE " +
             isListed("a.id")},
        // With more media than markers some have to share, and go on to when there are fewer again:
        // only what was added after the step has been given the marker in its place.
        {RuleReason::MarkerTaken, "medium",
         "SELECT a.name, b.name FROM medium a JOIN medium b ON b.marker = a.marker AND "
         "b.id > (SELECT value FROM json_each(?2)) WHERE (SELECT count(*) FROM medium) <= " +
             std::to_string(kMarkers) + " AND b.id <> a.id AND " + isListed("a.id"),
         "step"},
        {RuleReason::PriceTwice, "price",
         "SELECT a.from_date FROM price a JOIN price b ON b.id <> a.id AND b.item = a.item AND "
         "b.medium_id IS a.medium_id AND b.from_date = a.from_date WHERE " +
             isListed("a.id")},
    };
}

std::vector<Rule> growthRules()
{
    const std::string lastCut =
        "EXISTS (SELECT 1 FROM harvest h WHERE h.tray_id = t.id AND h.is_last)";
    return {
        {RuleReason::GrowsAfterLastCut, "tray",
         "SELECT t.code FROM tray t WHERE +t.state = 'growing' AND " + lastCut + " AND " +
             isListed("t.id")},
        {RuleReason::NoLastCut, "tray of a cut",
         "SELECT t.code FROM tray t WHERE +t.state = 'harvested' AND NOT " + lastCut + " AND " +
             isListed("t.id")},
        {RuleReason::StagesOutOfOrder, "tray of a stage",
         "SELECT t.code FROM tray t JOIN tray_stage s ON s.tray_id = t.id "
         "JOIN tray_stage l ON l.tray_id = t.id AND l.position > s.position AND "
         "l.started_on IS NOT NULL WHERE (s.started_on IS NULL OR " +
             startOfStage("s") + " > " + startOfStage("l") + ") AND " + isListed("t.id")},
    };
}

std::vector<Rule> wateringRules()
{
    const std::string isTick =
        "NOT EXISTS (SELECT 1 FROM watering_between n WHERE n.watering_id = ";
    const std::string ofTheSameRound =
        "o.tray_id = w.tray_id AND o.on_date = w.on_date AND o.slot = w.slot ";
    return {
        {RuleReason::TickedTwice, "watering",
         "SELECT t.code, w.on_date FROM watering w JOIN watering o ON o.id <> w.id AND " +
             ofTheSameRound + "JOIN tray t ON t.id = w.tray_id WHERE " + isTick + "w.id) AND " +
             isTick + "o.id) AND " + isListed("w.id")},
        {RuleReason::TickedTwice, "watering",
         "SELECT t.code, w.on_date FROM watering w JOIN watering_look o ON " + ofTheSameRound +
             "JOIN tray t ON t.id = w.tray_id WHERE " + isTick + "w.id) AND " + isListed("w.id")},
        {RuleReason::TickedTwice, "watering_look",
         "SELECT t.code, w.on_date FROM watering_look w JOIN watering_look o ON o.id <> w.id AND " +
             ofTheSameRound + "JOIN tray t ON t.id = w.tray_id WHERE " + isListed("w.id")},
        {RuleReason::TickedTwice, "watering_look",
         "SELECT t.code, w.on_date FROM watering_look w JOIN watering o ON " + ofTheSameRound +
             "JOIN tray t ON t.id = w.tray_id WHERE " + isTick + "o.id) AND " + isListed("w.id")},
    };
}

std::vector<Rule> tastingRules()
{
    return {
        {RuleReason::TastingStaysClosed, "panel that was closed",
         "SELECT name FROM panel WHERE closed_on IS NULL AND " + isListed("id")},
        // A tasting that comes back whole brings its scores with it.
        {RuleReason::TastingIsFinal, "panel of a score",
         "SELECT name FROM panel WHERE closed_on IS NOT NULL AND " + isListed("id") +
             " AND id NOT IN (SELECT value FROM json_each(?2))",
         "panel"},
    };
}

const std::vector<Rule>& rules()
{
    static const std::vector<Rule> kRules = [] {
        std::vector<Rule> all;
        for (auto some : {placeRules(), pieceRules(), nameRules(), growthRules(), wateringRules(),
                          tastingRules()}) {
            all.insert(all.end(), some.begin(), some.end());
        }
        return all;
    }();
    return kRules;
}

// Of what the rules that hold at any time are about: the table whose rows they are.
constexpr std::pair<const char*, const char*> kAnyTime[] = {
    {"stay", "stay"},
    {"tray", "tray"},
    {"tray of a cut", "tray"},
    {"tray of a stage", "tray"},
    {"piece", "piece"},
    {"rack", "rack"},
    {"shelf", "shelf"},
    {"place", "place"},
    {"variety", "variety"},
    {"seed_lot", "seed_lot"},
    {"medium", "medium"},
    {"trial", "trial"},
    {"price", "price"},
    {"watering", "watering"},
    {"watering_look", "watering_look"},
};

std::string listOf(const TouchedRows& touched, const char* key)
{
    std::string list;
    if (const auto found = touched.find(key); found != touched.end()) {
        for (const std::int64_t id : found->second) {
            list += (list.empty() ? "" : ",") + std::to_string(id);
        }
    }
    return "[" + list + "]";
}

} // namespace

void StandingRulesRepository::addOwners(TouchedRows& touched)
{
    for (const Owner& owner : kOwners) {
        if (!touched.contains(owner.of)) {
            continue;
        }
        Statement statement = m_database.prepare(owner.sql);
        statement.bind(listOf(touched, owner.of));
        while (statement.step()) {
            touched[owner.key].insert(statement.get<std::int64_t>(0));
        }
    }
}

std::vector<BrokenRule> StandingRulesRepository::brokenAmong(const TouchedRows& touched)
{
    std::vector<BrokenRule> broken;
    for (const Rule& rule : rules()) {
        if (!touched.contains(rule.about)) {
            continue;
        }
        Statement statement = m_database.prepare(rule.sql);
        statement.bindCell(1, listOf(touched, rule.about));
        if (rule.besides != nullptr) {
            statement.bindCell(2, listOf(touched, rule.besides));
        }
        while (statement.step()) {
            BrokenRule found{rule.reason, {}};
            for (int column = 0; column < statement.columns(); ++column) {
                found.values.push_back(statement.get<std::string>(column));
            }
            broken.push_back(std::move(found));
        }
    }
    return broken;
}

std::vector<BrokenRule> StandingRulesRepository::brokenAnywhere()
{
    TouchedRows all;
    for (const auto& [key, table] : kAnyTime) {
        Statement statement = m_database.prepare(std::string("SELECT id FROM ") + table);
        auto& ids = all[key];
        while (statement.step()) {
            ids.insert(ids.end(), statement.get<std::int64_t>(0));
        }
    }
    std::vector<BrokenRule> once;
    std::set<std::pair<RuleReason, std::vector<std::string>>> known;
    for (BrokenRule& broken : brokenAmong(all)) {
        std::vector<std::string> pair = broken.values;
        if (pair.size() == 4) { // two trays, said from either side
            std::sort(pair.begin() + 2, pair.end());
        }
        if (known.emplace(broken.reason, std::move(pair)).second) {
            once.push_back(std::move(broken));
        }
    }
    return once;
}

} // namespace plumule
