#pragma once

#include "ui/report/report.h"

namespace plumule::ui {

// The blocks of one kind, in their order.
template <class Block>
std::vector<Block> all(const Report& report)
{
    std::vector<Block> found;
    for (const ReportBlock& block : report.blocks) {
        if (const auto* each = std::get_if<Block>(&block)) {
            found.push_back(*each);
        }
    }
    return found;
}

} // namespace plumule::ui
