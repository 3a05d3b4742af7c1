#pragma once

#include "core/storage/changeset_check.h"
#include "core/storage/database.h"

#include <string>
#include <vector>

struct sqlite3_session;

namespace plumule {

// Records what one transaction does to the journal's tables. Made right after BEGIN; finish()
// writes the history entry before COMMIT.
class Recording
{
public:
    explicit Recording(Database& database);
    ~Recording();
    Recording(const Recording&) = delete;
    Recording& operator=(const Recording&) = delete;

    // Writes the entry and drops what could be redone. Returns the changed rows; none, and no
    // entry, when nothing changed.
    std::vector<ChangedRows> finish(std::int64_t atUtcMs, const std::string& intention,
                                    const std::string& subject,
                                    const std::vector<std::string>& details = {});

private:
    void end();

    Database& m_database;
    sqlite3_session* m_session = nullptr;
};

} // namespace plumule
