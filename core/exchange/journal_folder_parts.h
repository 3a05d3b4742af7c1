#pragma once

#include "core/exchange/journal_sheet.h"

#include <filesystem>

namespace plumule {

// What both ways of a folder of tables know of it.

inline constexpr std::string_view kDictionaryFile = "dictionary.csv";
inline constexpr std::string_view kPhotoTable = "photo";
inline constexpr std::string_view kPhotoFolder = "photos";
// Between looks whether the work is to stop.
inline constexpr std::int64_t kRowsBetweenLooks = 500;

[[nodiscard]] inline std::string fileOf(const JournalSheet& sheet)
{
    return sheet.table + ".csv";
}

[[nodiscard]] inline std::vector<std::string> headerOf(const JournalSheet& sheet)
{
    std::vector<std::string> names;
    for (const SheetColumn& column : sheet.columns) {
        names.push_back(column.name);
    }
    return names;
}

// The cell of the column that is stored under that name; nothing where there is none.
[[nodiscard]] inline Cell cellOf(const JournalSheet& sheet, const std::vector<Cell>& cells,
                                 std::string_view stored)
{
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (sheet.columns[i].stored == stored) {
            return cells[i];
        }
    }
    return {};
}

[[nodiscard]] inline std::int64_t numberIn(const JournalSheet& sheet,
                                           const std::vector<Cell>& cells)
{
    const Cell cell = cellOf(sheet, cells, "id");
    const auto* number = std::get_if<std::int64_t>(&cell);
    return number == nullptr ? 0 : *number;
}

[[nodiscard]] inline std::string photoIn(const JournalSheet& sheet, const std::vector<Cell>& cells)
{
    const Cell cell = cellOf(sheet, cells, "file_name");
    const auto* name = std::get_if<std::string>(&cell);
    return name == nullptr ? std::string() : *name;
}

// A file of that folder itself: a name from elsewhere may lead out of it.
[[nodiscard]] inline bool isPlainName(const std::string& name)
{
    const std::filesystem::path path(name);
    return !name.empty() && path.filename() == path && name != "." && name != "..";
}

} // namespace plumule
