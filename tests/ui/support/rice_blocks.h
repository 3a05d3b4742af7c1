#pragma once

#include "core/exchange/csv.h"
#include "core/journal/journal.h"

#include <gtest/gtest.h>
#include <map>

namespace plumule::ui {

// Gomez & Gomez 1984, Statistical Procedures for Agricultural Research, Wiley, p. 26: rice sown at
// six rates in four blocks; published F 2.17 of the rates, 5.86 of the blocks, CV 6.7 %, Tukey's
// difference 763.9 (worked out again from the same data). A gram a tray stands for a kg/ha, a
// medium for a rate, a shelf for a block. By rate ("25 kg/ha"), then block ("R1").
using RiceYields = std::map<std::string, std::map<std::string, double>>;
inline RiceYields riceYields()
{
    RiceYields yields;
    const auto text = textOfFile(PLUMULE_REFERENCES "/handbook/stat_data/gomez_seedrate_rcbd.csv");
    const auto table = csvFrom(text.value_or(""));
    EXPECT_TRUE(table.has_value());
    for (const auto& row : table.value_or(CsvTable()).rows) {
        yields[row.at(0) + " kg/ha"][row.at(1)] = std::stod(row.at(2));
    }
    EXPECT_EQ(yields.size(), 6U);
    return yields;
}

// A shelf has room for one tray of each rate.
inline std::unique_ptr<Journal> riceJournal(const std::string& folder, const Clock& clock)
{
    RoomPlan plan;
    plan.room.name = "Test room";
    plan.placesPerShelf = 6;
    auto made = Journal::create(folder + "/rice.plumule", plan, clock);
    EXPECT_TRUE(made.has_value());
    return made ? std::move(*made) : nullptr;
}

} // namespace plumule::ui
