#pragma once

#include "core/exchange/table_form.h"
#include "ui/page/preferences.h"

namespace plumule::ui {

// How tables with that header were read last; none where there was none.
[[nodiscard]] std::optional<TableAsk> rememberedForm(const Preferences& preferences,
                                                     const std::vector<std::string>& header);
// Of the thirty tables that were brought in last.
void rememberForm(Preferences& preferences, const std::vector<std::string>& header,
                  const TableForm& form);

} // namespace plumule::ui
