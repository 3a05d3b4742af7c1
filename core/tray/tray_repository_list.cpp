// Part of core/tray/tray_repository.h: which trays a filter lets through, and their codes.
#include "core/tray/tray_repository.h"

#include "core/base/number_text.h"
#include "core/storage/cell_bounds.h"
#include "core/storage/id_list.h"
#include "core/tray/tray_code.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_table_of.h"

namespace plumule {
namespace {

constexpr const char* kListOrder = " ORDER BY t.sown_on DESC, t.code";
constexpr int kNoLimit = -1; // SQLite's
// As tray_by_number has them.
constexpr const char* kLetters = "rtrim(code, '0123456789')";
constexpr const char* kNumber =
    "CAST(substr(code, 1 + length(rtrim(code, '0123456789'))) AS INTEGER)";

// Collects the conditions of a filter with the values that they compare.
class Conditions
{
public:
    Conditions(Database& database, const TrayFilter& filter)
        : m_database(database)
    {
        addChoices(filter);
        if (filter.sownFrom) {
            add("t.sown_on >= " + bound(*filter.sownFrom));
        }
        if (filter.sownTo) {
            add("t.sown_on <= " + bound(*filter.sownTo));
        }
        if (const auto text = trimmed(filter.text); !text.empty()) {
            addText(std::string(text));
        }
    }

    void add(const std::string& condition)
    {
        m_sql += (m_sql.empty() ? "WHERE " : " AND ") + condition;
    }
    // The parameter that the value is bound to.
    template <class Value>
    std::string bound(const Value& value)
    {
        m_values.push_back(ColumnTraits<Value>::toCell(value));
        return "?" + std::to_string(m_values.size());
    }
    [[nodiscard]] const std::string& sql() const { return m_sql; }
    [[nodiscard]] const std::vector<Cell>& values() const { return m_values; }

private:
    void addChoices(const TrayFilter& filter);
    void addText(const std::string& text);
    template <class Ids>
    std::string among(const Ids& ids)
    {
        return " IN (SELECT value FROM json_each(" + bound(idList(ids)) + "))";
    }

    Database& m_database;
    std::string m_sql;
    std::vector<Cell> m_values;
};

// SQLite counts no rows to choose an index by; a plus keeps it off a column. Fewest are of a trial,
// then what grows, then those of a variety or a medium; most of all trays end in one state.
void Conditions::addChoices(const TrayFilter& filter)
{
    const bool isByTrial = filter.trial.has_value();
    const bool isByGrowing = !isByTrial && filter.state == TrayState::Growing;
    const bool isByKind = !isByTrial && !isByGrowing && (filter.variety || filter.medium);
    const bool isByState = isByGrowing || !(isByTrial || isByKind || !trimmed(filter.text).empty());
    if (filter.state) {
        add((isByState ? "t.state = " : "+t.state = ") + bound(*filter.state));
    }
    if (filter.variety) {
        add((isByKind ? "t.variety_id = " : "+t.variety_id = ") + bound(*filter.variety));
    }
    if (filter.medium) {
        add((isByKind ? "t.medium_id = " : "+t.medium_id = ") + bound(*filter.medium));
    }
    if (filter.trial) {
        add("t.trial_id = " + bound(*filter.trial));
    }
}

// Where else than in the codes a text is looked for: rows by which trays are known, and how.
struct Words
{
    const char* column; // of the tray
    const char* ids;    // of those whose words are like ?1
};
constexpr Words kWords[] = {
    {"variety_id", "SELECT id FROM variety WHERE name LIKE ?1 ESCAPE '\\'"},
    {"medium_id", "SELECT id FROM medium WHERE name LIKE ?1 ESCAPE '\\'"},
    {"seed_lot_id", "SELECT id FROM seed_lot WHERE lot_number LIKE ?1 ESCAPE '\\'"},
    {"trial_id", "SELECT id FROM trial WHERE code LIKE ?1 ESCAPE '\\' OR name LIKE ?1 ESCAPE '\\'"},
    {"id", "SELECT tray_id FROM tray_note WHERE text LIKE ?1 ESCAPE '\\'"},
    {"id", "SELECT id FROM tray WHERE (discard_reason IS NOT NULL OR set_aside_reason IS NOT NULL) "
           "AND (discard_reason LIKE ?1 ESCAPE '\\' OR set_aside_reason LIKE ?1 ESCAPE '\\')"},
};

constexpr std::size_t kFewTrays = 1'000;
constexpr const char* kLikeCodes = "SELECT id FROM tray WHERE code LIKE ?1 ESCAPE '\\' LIMIT 1000";

// What has the text in it, where a percent sign and a line are themselves.
std::string likeText(const std::string& text)
{
    std::string like = "%";
    for (const char c : text) {
        if (c == '%' || c == '_' || c == '\\') {
            like += '\\';
        }
        like += c;
    }
    return like + "%";
}

using FoundIds = std::vector<Id<Words>>;

FoundIds idsLike(Database& database, const char* sql, const std::string& like)
{
    FoundIds ids;
    Statement statement = database.prepare(sql);
    statement.bind(like);
    while (statement.step()) {
        ids.push_back(statement.get<Id<Words>>(0));
    }
    return ids;
}

// All names are looked through first: most texts are in none of one kind, and then no tray is asked
// for it. Where a text is in no name and in few codes, these trays are meant; else each is asked in
// its turn until a page is full.
void Conditions::addText(const std::string& text)
{
    if (text.size() > longestText("text")) {
        add("0"); // nothing is as long
        return;
    }
    const std::string like = likeText(text);
    FoundIds trays;
    std::string named;
    for (const Words& words : kWords) {
        const FoundIds ids = idsLike(m_database, words.ids, like);
        if (std::string_view(words.column) == "id") {
            trays.insert(trays.end(), ids.begin(), ids.end());
        } else if (!ids.empty()) {
            named += std::string("+t.") + words.column + among(ids) + " OR ";
        }
    }
    const FoundIds coded = named.empty() ? idsLike(m_database, kLikeCodes, like) : FoundIds();
    if (named.empty() && coded.size() < kFewTrays) {
        trays.insert(trays.end(), coded.begin(), coded.end());
        return add("t.id" + among(trays));
    }
    if (!trays.empty()) {
        named += "+t.id" + among(trays) + " OR ";
    }
    add("(" + named + "t.code LIKE " + bound(like) + " ESCAPE '\\')");
}

void bindAll(Statement& statement, const std::vector<Cell>& values)
{
    for (std::size_t i = 0; i < values.size(); ++i) {
        statement.bindCell(static_cast<int>(i + 1), values[i]);
    }
}

} // namespace

std::vector<TrayRecord> TrayRepository::records(const TrayFilter& filter) const
{
    const Conditions where(m_database, filter);
    auto found = load(where.sql(), where.values());
    addPlaces(found, std::nullopt);
    return found;
}

std::vector<TrayId> TrayRepository::ids(const TrayFilter& filter, const TrayPage& page) const
{
    Conditions where(m_database, filter);
    if (page.after) {
        const std::string day = where.bound(page.after->sownOn);
        where.add("t.sown_on <= " + day + " AND (t.sown_on < " + day + " OR t.code > " +
                  where.bound(page.after->code) + ")");
    }
    if (!m_without.empty()) {
        where.add("t.id NOT IN (SELECT value FROM json_each(" + where.bound(idList(m_without)) +
                  "))");
    }
    const std::string most = where.bound(page.rows.value_or(kNoLimit));
    Statement statement = m_database.prepare("SELECT t.id FROM tray t " + where.sql() + kListOrder +
                                             " LIMIT " + most);
    bindAll(statement, where.values());
    std::vector<TrayId> ids;
    while (statement.step()) {
        ids.push_back(statement.get<TrayId>(0));
    }
    return ids;
}

int TrayRepository::count(const TrayFilter& filter) const
{
    const Conditions where(m_database, filter);
    Statement statement = m_database.prepare("SELECT count(*) FROM tray t " + where.sql());
    bindAll(statement, where.values());
    return statement.step() ? statement.get<int>(0) : 0;
}

bool TrayRepository::hasAny(TrayState state) const
{
    Statement statement = m_database.prepare("SELECT 1 FROM tray WHERE state = ?1 LIMIT 1");
    statement.bind(state);
    return statement.step();
}

std::vector<std::string> TrayRepository::codes() const
{
    Statement statement = m_database.prepare("SELECT code FROM tray");
    std::vector<std::string> codes;
    while (statement.step()) {
        codes.push_back(statement.get<std::string>(0));
    }
    return codes;
}

int TrayRepository::highestNumber(const std::string& prefix) const
{
    Statement statement = m_database.prepare(
        std::string("SELECT ") + kNumber + " FROM tray WHERE " + kLetters +
        " = ?1 COLLATE NOCASE AND length(code) BETWEEN length(?1) + 1 AND length(?1) + ?2 "
        "ORDER BY " +
        kNumber + " DESC LIMIT 1");
    statement.bind(prefix, kMostCodeDigits);
    return statement.step() ? statement.get<int>(0) : 0;
}

} // namespace plumule
