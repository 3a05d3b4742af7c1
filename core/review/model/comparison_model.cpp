#include "core/review/model/comparison_model.h"

#include <algorithm>

namespace plumule {

const ModelTerm* ComparisonModel::find(ModelPart part) const
{
    const auto found = std::find_if(terms.begin(), terms.end(),
                                    [&](const ModelTerm& term) { return term.part == part; });
    return found == terms.end() ? nullptr : &*found;
}

bool ComparisonModel::accountsFor(ModelPart part) const
{
    const ModelTerm* term = find(part);
    return term != nullptr &&
           (term->place != TermPlace::LeftOut || term->why == WhyLeftOut::WithinBlocks);
}

} // namespace plumule
