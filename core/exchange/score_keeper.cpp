#include "core/exchange/score_keeper.h"

#include "core/exchange/known_by_name.h"
#include "core/exchange/sheet_keeper.h"
#include "core/exchange/tray_import.h"
#include "core/tasting/tasting_reason.h"
#include "core/tasting/tasting_repository.h"
#include "core/tasting/tasting_rules.h"

#include <set>

namespace plumule {
namespace {

constexpr int kMostOfAScore = 1'000'000;

// Scores go by the serving's code within a tasting.
class ScoreKeeper : public SheetKeeper
{
public:
    ScoreKeeper(Database& database, Date today)
        : SheetKeeper(database, "score", today)
    {
        TastingRepository tastings(database);
        for (const Panel& panel : tastings.panels(std::nullopt)) {
            m_names.learn(panel.name, panel.id.value);
            const auto& facts =
                m_panels.emplace(panel.id.value, PanelFacts(tastings.record(panel))).first->second;
            for (const Serving& serving : facts.record.servings) {
                if (panel.method == TastingMethod::Triangle) {
                    m_tasterOf.emplace(serving.id.value, serving.taster.value);
                }
            }
        }
    }

private:
    // A tasting, with its servings and attributes by what they are called.
    struct PanelFacts
    {
        explicit PanelFacts(PanelRecord full)
            : record(std::move(full))
        {
            for (const Serving& serving : record.servings) {
                servings.emplace(nameKey(serving.code), serving.id);
            }
            for (const PanelAttribute& attribute : record.attributes) {
                attributes.emplace(nameKey(attribute.name), attribute.id);
            }
        }
        PanelRecord record;
        std::unordered_map<std::string, ServingId> servings;
        std::unordered_map<std::string, PanelAttributeId> attributes;
    };

    void learnRow(const StoredRow& row) override
    {
        take({row.get<std::int64_t>("serving_id"), row.get<std::int64_t>("attribute_id")});
    }
    // Whether the serving had no score yet; in a triangle a taster names one serving of three.
    bool take(std::pair<std::int64_t, std::int64_t> score)
    {
        const auto taster = m_tasterOf.find(score.first);
        return m_taken.insert(score).second &&
               (taster == m_tasterOf.end() ||
                m_taken.emplace(-taster->second, score.second).second);
    }
    void readRow(RowCells& cells) override
    {
        const auto named = m_names.in(cells, "tasting");
        m_code = cells.needed("code");
        m_attribute = cells.needed("attribute");
        cells.needed("value");
        const auto value = cells.whole("value", 0, kMostOfAScore);
        if (!named || !value || cells.hasFaults()) {
            return;
        }
        const PanelFacts& panel = m_panels.at(*named);
        const auto serving = panel.servings.find(nameKey(m_code));
        const auto attribute = panel.attributes.find(nameKey(m_attribute));
        if (serving == panel.servings.end()) {
            cells.fault(ErrorKind::NotFound, TastingReason::CodeUnknown, m_code);
            return;
        }
        if (attribute == panel.attributes.end()) {
            cells.unknown("attribute");
            return;
        }
        m_panel = &panel;
        m_score = {serving->second.value, attribute->second.value};
        m_value = *value;
        set("serving_id", m_score.first);
        set("attribute_id", m_score.second);
        set("value", *value);
    }
    void check(RowCells& cells) override
    {
        const Panel& panel = m_panel->record.panel;
        if (!panel.isOpen()) {
            cells.fault(ErrorKind::Conflict, TastingReason::Closed, panel.name);
            return;
        }
        if (Done inRange = checkScore(panel.method, m_panel->record.samples.size(), m_value);
            !inRange) {
            cells.note(inRange.error());
            return;
        }
        if (!take(m_score)) {
            cells.fault(ErrorKind::Duplicate, ExchangeReason::ScoreTaken, m_code, m_attribute);
        }
    }

    KnownByName m_names;
    std::unordered_map<std::int64_t, PanelFacts> m_panels;
    std::set<std::pair<std::int64_t, std::int64_t>> m_taken;   // serving or -taster, attribute
    std::unordered_map<std::int64_t, std::int64_t> m_tasterOf; // of servings of triangles
    const PanelFacts* m_panel = nullptr;
    std::pair<std::int64_t, std::int64_t> m_score;
    int m_value = 0;
    std::string m_code;
    std::string m_attribute;
};

} // namespace

std::unique_ptr<StoringKeeper> scoreKeeper(Database& database, Date today)
{
    return std::make_unique<ScoreKeeper>(database, today);
}

} // namespace plumule
