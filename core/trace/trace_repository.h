#pragma once

#include "core/trace/trace.h"

namespace plumule {

class Database;

// Reads what a trace tells: a fixed number of queries, however many trays.
class TraceRepository
{
public:
    explicit TraceRepository(Database& database)
        : m_database(database)
    {}

    // Trays that came of it, with the rest of what is known of it; none where it is not stored. Of
    // a tray: that tray alone.
    [[nodiscard]] std::optional<ForwardTrace> forward(const TraceFrom& from) const;
    [[nodiscard]] std::optional<BackTrace> back(TrayId tray) const;

    // Whoever sowed or sanitised, by name.
    [[nodiscard]] std::vector<std::string> people() const;

private:
    [[nodiscard]] std::vector<TrayId> traysOf(const TraceFrom& from) const;
    [[nodiscard]] std::vector<TracedTray> tracedTrays(const std::vector<TrayId>& trays) const;
    void putPromises(std::vector<TracedTray>& trays) const;
    [[nodiscard]] std::vector<Sanitising> sanitisedBy(const std::string& name) const;
    [[nodiscard]] bool describe(const TraceFrom& from, ForwardTrace& trace) const;
    // The piece that the trace's tray was sown on, where there is one.
    void describePiece(BackTrace& trace) const;

    Database& m_database;
};

} // namespace plumule
