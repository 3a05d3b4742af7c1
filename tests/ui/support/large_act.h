#pragma once

#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/journal.h"
#include "tests/support/told.h"

#include <QString>
#include <gtest/gtest.h>

#include <fstream>

namespace plumule::ui {

// An act of very many rows: a table of 700 trays, X0 to X699, each with its stages and its harvest.
inline void bringInManyTrays(Journal& journal, const QString& folder)
{
    const std::string file = (folder + "/trays.csv").toStdString();
    std::ofstream table(file);
    table << "code,variety,medium,sown,seed_g,harvested,net_g\n";
    for (int i = 0; i < 700; ++i) {
        table << 'X' << i << ",Broccoli,Coir mix,2026-02-01,30,2026-02-12,210\n";
    }
    table.close();
    const auto preview = journal.exchange().preview(file);
    ASSERT_TRUE(preview.has_value()) << told(preview.error());
    const auto imported = journal.exchange().importTrays(*preview, "trays.csv");
    ASSERT_TRUE(imported.has_value()) << told(imported.error());
}

} // namespace plumule::ui
