#pragma once

#include <string_view>

namespace plumule::fuzz {

// What a fuzzer, and the test of its seeds, does with one file's bytes. Whatever they are, it comes
// back: what it must not do is crash, hang, or grow beyond measure.

void tryTable(std::string_view bytes); // a table of trays, read and looked through
void tryScale(std::string_view bytes); // what a scale sends, in each unit
// Damage to a sound journal, which is then opened and checked, and today's round and the trays
// read. The first two bytes are how much of the file is cut off, in 1/65 536 of it; each four after
// them a place in the file, three bytes with the highest first, and what is written there.
void tryJournal(std::string_view bytes);
void tryChangeset(std::string_view bytes); // walked, and taken back where it makes sense

} // namespace plumule::fuzz
