#include "core/tasting/tasting_storing.h"

#include "core/tasting/tasting_draw.h"

namespace plumule {

void storePanelContents(TastingRepository& tastings, const PanelDraft& draft)
{
    const PanelId panel = draft.panel.id;
    std::vector<PanelSampleId> samples;
    for (const MediumId medium : draft.media) {
        PanelSample sample{{}, panel, static_cast<int>(samples.size()), medium};
        tastings.insert(sample);
        samples.push_back(sample.id);
    }
    int position = 0;
    for (const std::string& name : draft.attributes) {
        PanelAttribute attribute{{}, panel, position++, name};
        tastings.insert(attribute);
    }
    std::vector<TasterId> tasters;
    for (const std::string& name : draft.tasters) {
        Taster taster{{}, panel, static_cast<int>(tasters.size()), name};
        tastings.insert(taster);
        tasters.push_back(taster.id);
    }
    for (const DrawnServing& drawn :
         drawServings(draft.panel.method, static_cast<int>(samples.size()),
                      static_cast<int>(tasters.size()), draft.panel.drawNumber)) {
        Serving serving{{},
                        panel,
                        tasters[static_cast<std::size_t>(drawn.taster)],
                        samples[static_cast<std::size_t>(drawn.sample)],
                        drawn.turn,
                        drawn.code};
        tastings.insert(serving);
    }
}

} // namespace plumule
