#pragma once

#include "core/tasting/tasting_repository.h"

namespace plumule {

// Stores samples, attributes and tasters of a draft whose panel is stored, and the servings that
// its number draws. Inside a transaction.
void storePanelContents(TastingRepository& tastings, const PanelDraft& draft);

} // namespace plumule
