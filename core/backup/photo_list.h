#pragma once

#include "core/backup/backup_reason.h"
#include "core/base/result.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace plumule {

// A photograph of a backup: its name in the journal, and its content's name in the store.
struct KeptPhoto
{
    std::string name;
    std::string key; // checksum, size and ending: "00f1…-52311.jpg"; empty: it was missing
    bool operator==(const KeptPhoto&) const = default;
};

// Whether it names a file in a folder and nothing above or below it: a journal from elsewhere may
// hold "../../other".
[[nodiscard]] bool isPlainFileName(const std::string& name);

// By the file's content. Unreadable.
[[nodiscard]] Result<std::string> photoKeyOf(const std::filesystem::path& file);

// A line a photograph: key (or "-"), blank, name.
[[nodiscard]] std::string photoListText(const std::vector<KeptPhoto>& photos);
// None where it is no such list.
[[nodiscard]] std::optional<std::vector<KeptPhoto>> photoListFrom(const std::string& text);

} // namespace plumule
