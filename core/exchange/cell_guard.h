#pragma once

#include <string>
#include <string_view>

namespace plumule {

// A text that begins with = + - @, a tab or a carriage return may be run by a spreadsheet that
// opens the table. On the way out an apostrophe is put before it, and before a text that begins
// with such apostrophes itself; numbers stay as they are. On the way in exactly that one apostrophe
// is taken off: unguarded(guarded(text)) is the text, whatever it is.
[[nodiscard]] std::string guarded(std::string_view cell);
// In place, and without a copy where there is nothing to take off.
void unguard(std::string& cell);

} // namespace plumule
