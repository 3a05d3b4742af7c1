#include "core/sample/sample_tastings.h"

#include "core/tasting/tasting_storing.h"

#include <algorithm>

namespace plumule {
namespace {

struct SampleScore
{
    std::string taster;
    MediumId medium;
    std::string attribute;
    int value = 0;
};

struct SamplePanel
{
    PanelDraft draft;
    std::vector<SampleScore> scores;
};

template <class Item>
void addOnce(std::vector<Item>& items, const Item& item)
{
    if (std::find(items.begin(), items.end(), item) == items.end()) {
        items.push_back(item);
    }
}

void takeRow(const SampleRow& row, const SampleStock& stock, std::vector<SamplePanel>& panels)
{
    const std::string name = row.text("panel");
    if (panels.empty() || panels.back().draft.panel.name != name) {
        Panel panel;
        panel.name = name;
        panel.trial = row.found(stock.trials, "trial");
        panel.method = row.named<TastingMethod>("method");
        panel.on = row.day("day");
        panel.closedOn = row.maybeDay("closed_day");
        panel.drawNumber = row.whole("draw");
        panels.push_back({{panel, {}, {}, {}}, {}});
    }
    SamplePanel& panel = panels.back();
    const MediumId medium = row.found(stock.media, "medium").id;
    addOnce(panel.draft.tasters, row.text("taster"));
    addOnce(panel.draft.media, medium);
    addOnce(panel.draft.attributes, row.text("attribute"));
    if (const auto value = row.maybeWhole("score")) {
        panel.scores.push_back({row.text("taster"), medium, row.text("attribute"), *value});
    }
}

void storePanel(TastingRepository& tastings, SamplePanel& panel)
{
    tastings.insert(panel.draft.panel);
    storePanelContents(tastings, panel.draft);
    const PanelRecord record = tastings.record(panel.draft.panel);
    std::map<PanelSampleId, MediumId> media;
    for (const PanelSample& sample : record.samples) {
        media[sample.id] = sample.medium;
    }
    std::map<TasterId, std::string> names;
    for (const Taster& taster : record.tasters) {
        names[taster.id] = taster.name;
    }
    for (const SampleScore& given : panel.scores) {
        for (const Serving& serving : record.servings) {
            if (names[serving.taster] != given.taster || media[serving.sample] != given.medium) {
                continue;
            }
            for (const PanelAttribute& attribute : record.attributes) {
                if (attribute.name == given.attribute) {
                    Score score{{}, serving.id, attribute.id, given.value};
                    tastings.insert(score);
                }
            }
        }
    }
}

} // namespace

void storeSampleTastings(Database& database, SampleTables& tables, const SampleStock& stock)
{
    std::vector<SamplePanel> panels;
    tables.forEach("panels", [&](const SampleRow& row) { takeRow(row, stock, panels); });
    if (tables.isFaulty()) {
        return;
    }
    TastingRepository tastings(database);
    for (SamplePanel& panel : panels) {
        storePanel(tastings, panel);
    }
}

} // namespace plumule
