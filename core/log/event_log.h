#pragma once

#include "core/base/result.h"

#include <cstdint>
#include <filesystem>

namespace plumule {

// What became of a journal.
enum class LogEvent
{
    Opened,
    OpenedToRead,
    NotOpened,
    Refused, // something that was to be recorded
    EndedUnexpectedly
};

// What happened, a line each, for whoever helps a grower later: when (UTC), which journal by its
// file's name alone, and of a refusal its kind and reason. Nothing of what a journal holds, and no
// folder. Two files of a bounded size; where they can't be written the program goes on without.
class EventLog
{
public:
    // The newer file is "events.log", the older one "events.old.log".
    explicit EventLog(std::filesystem::path folder);

    [[nodiscard]] std::filesystem::path file() const { return m_folder / "events.log"; }

    // `what`: the intention's key, or empty.
    void write(LogEvent event, std::int64_t utcMilliseconds, const std::filesystem::path& journal,
               const std::string& what = {}, const std::optional<Error>& why = std::nullopt) const;

private:
    void makeRoom() const;

    std::filesystem::path m_folder;
};

} // namespace plumule
