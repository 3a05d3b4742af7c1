#include "core/tasting/tasting_repository.h"

#include "core/storage/table.h"

#include <set>

namespace plumule {

template <>
struct TableOf<Panel>
{
    static constexpr const char* name = "panel";
    static constexpr auto columns = std::tuple{column("trial_id", &Panel::trial),
                                               column("name", &Panel::name),
                                               column("on_date", &Panel::on),
                                               column("method", &Panel::method),
                                               column("draw_number", &Panel::drawNumber),
                                               column("closed_on", &Panel::closedOn),
                                               column("note", &Panel::note)};
};

template <>
struct TableOf<PanelSample>
{
    static constexpr const char* name = "panel_sample";
    static constexpr auto columns = std::tuple{column("panel_id", &PanelSample::panel),
                                               column("position", &PanelSample::position),
                                               column("medium_id", &PanelSample::medium)};
};

template <>
struct TableOf<PanelAttribute>
{
    static constexpr const char* name = "panel_attribute";
    static constexpr auto columns = std::tuple{column("panel_id", &PanelAttribute::panel),
                                               column("position", &PanelAttribute::position),
                                               column("name", &PanelAttribute::name)};
};

template <>
struct TableOf<Taster>
{
    static constexpr const char* name = "taster";
    static constexpr auto columns =
        std::tuple{column("panel_id", &Taster::panel), column("position", &Taster::position),
                   column("name", &Taster::name)};
};

template <>
struct TableOf<Serving>
{
    static constexpr const char* name = "serving";
    static constexpr auto columns =
        std::tuple{column("panel_id", &Serving::panel), column("taster_id", &Serving::taster),
                   column("sample_id", &Serving::sample), column("turn", &Serving::turn),
                   column("code", &Serving::code)};
};

template <>
struct TableOf<Score>
{
    static constexpr const char* name = "score";
    static constexpr auto columns =
        std::tuple{column("serving_id", &Score::serving), column("attribute_id", &Score::attribute),
                   column("value", &Score::value)};
};

namespace {

constexpr const char* kScoresOfPanel = "serving_id IN (SELECT id FROM serving WHERE panel_id = ?1)";

void countBy(Database& database, const char* sql, std::map<PanelId, PanelCounts>& counts,
             int PanelCounts::*field)
{
    Statement statement = database.prepare(sql);
    while (statement.step()) {
        counts[statement.get<PanelId>(0)].*field = statement.get<int>(1);
    }
}

template <class Row>
std::set<decltype(Row::id)> keysOf(const std::vector<Row>& rows)
{
    std::set<decltype(Row::id)> keys;
    for (const Row& row : rows) {
        keys.insert(row.id);
    }
    return keys;
}

// Whoever looks up a serving's taster or sample finds one.
void checkReferences(const PanelRecord& record)
{
    const auto tasters = keysOf(record.tasters);
    const auto samples = keysOf(record.samples);
    for (const Serving& serving : record.servings) {
        if (!tasters.contains(serving.taster) || !samples.contains(serving.sample)) {
            throw damagedRow(TableOf<Serving>::name, serving.id.value);
        }
    }
    const auto attributes = keysOf(record.attributes);
    for (const Score& score : record.scores) {
        if (!attributes.contains(score.attribute)) {
            throw damagedRow(TableOf<Score>::name, score.id.value);
        }
    }
}

} // namespace

std::vector<Panel> TastingRepository::panels(std::optional<TrialId> trial)
{
    return selectRows<Panel>(
        m_database, "WHERE ?1 IS NULL OR trial_id = ?1 ORDER BY on_date DESC, id DESC", trial);
}

std::map<PanelId, PanelCounts> TastingRepository::counts()
{
    std::map<PanelId, PanelCounts> counts;
    countBy(m_database, "SELECT panel_id, count(*) FROM panel_sample GROUP BY panel_id", counts,
            &PanelCounts::samples);
    countBy(m_database, "SELECT panel_id, count(*) FROM panel_attribute GROUP BY panel_id", counts,
            &PanelCounts::attributes);
    countBy(m_database, "SELECT panel_id, count(*) FROM taster GROUP BY panel_id", counts,
            &PanelCounts::tasters);
    countBy(m_database, "SELECT panel_id, count(*) FROM serving GROUP BY panel_id", counts,
            &PanelCounts::servings);
    countBy(m_database,
            "SELECT serving.panel_id, count(*) FROM score JOIN serving ON serving.id = "
            "score.serving_id GROUP BY serving.panel_id",
            counts, &PanelCounts::scores);
    return counts;
}

std::optional<Panel> TastingRepository::find(PanelId panel)
{
    return findRow<Panel>(m_database, panel);
}

PanelRecord TastingRepository::record(const Panel& panel)
{
    const std::string byPosition = "WHERE panel_id = ?1 ORDER BY position, id";
    PanelRecord record;
    record.panel = panel;
    record.samples = selectRows<PanelSample>(m_database, byPosition, panel.id);
    record.attributes = selectRows<PanelAttribute>(m_database, byPosition, panel.id);
    record.tasters = selectRows<Taster>(m_database, byPosition, panel.id);
    record.servings = selectRows<Serving>(
        m_database,
        "WHERE panel_id = ?1 ORDER BY (SELECT position FROM taster WHERE taster.id = taster_id), "
        "turn",
        panel.id);
    record.scores = selectRows<Score>(
        m_database, std::string("WHERE ") + kScoresOfPanel + " ORDER BY id", panel.id);
    checkReferences(record);
    return record;
}

std::vector<MediumId> TastingRepository::mediaOf(TrialId trial)
{
    Statement statement =
        m_database.prepare("SELECT medium_id FROM tray WHERE trial_id = ?1 "
                           "UNION SELECT medium_id FROM treatment WHERE trial_id = ?1 ORDER BY 1");
    statement.bind(trial);
    std::vector<MediumId> media;
    while (statement.step()) {
        media.push_back(statement.get<MediumId>(0));
    }
    return media;
}

void TastingRepository::insert(Panel& panel)
{
    insertRow(m_database, panel);
}

void TastingRepository::update(const Panel& panel)
{
    updateRow(m_database, panel);
}

void TastingRepository::remove(PanelId panel)
{
    removeContents(panel);
    deleteRow<Panel>(m_database, panel);
}

void TastingRepository::removeContents(PanelId panel)
{
    m_database.prepare(std::string("DELETE FROM score WHERE ") + kScoresOfPanel).bind(panel).run();
    for (const char* table : {"serving", "taster", "panel_attribute", "panel_sample"}) {
        m_database.prepare(std::string("DELETE FROM ") + table + " WHERE panel_id = ?1")
            .bind(panel)
            .run();
    }
}

void TastingRepository::insert(PanelSample& sample)
{
    insertRow(m_database, sample);
}

void TastingRepository::insert(PanelAttribute& attribute)
{
    insertRow(m_database, attribute);
}

void TastingRepository::insert(Taster& taster)
{
    insertRow(m_database, taster);
}

void TastingRepository::insert(Serving& serving)
{
    insertRow(m_database, serving);
}

void TastingRepository::insert(Score& score)
{
    insertRow(m_database, score);
}

void TastingRepository::update(const Score& score)
{
    updateRow(m_database, score);
}

void TastingRepository::remove(ScoreId score)
{
    deleteRow<Score>(m_database, score);
}

} // namespace plumule
