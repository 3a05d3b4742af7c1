#pragma once

#include "core/exchange/table_look.h"

#include <gtest/gtest.h>

namespace plumule {

// What a table of trays would bring in where this is known, read as the file speaks for.
inline ImportPreview previewOf(const std::string& text, const KnownNames& known = {},
                               const TableAsk& ask = {})
{
    const auto form = proposedForm(text, ask);
    EXPECT_TRUE(form) << text;
    if (!form) {
        return {};
    }
    const auto keeper = trayKeeper(known);
    return lookThrough(text, *form, *keeper, {}).value();
}

} // namespace plumule
