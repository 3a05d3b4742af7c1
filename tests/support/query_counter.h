#pragma once

#include <atomic>
#include <map>
#include <mutex>
#include <sqlite3.h>
#include <string>

namespace plumule {

// Counts the statements that run on any connection opened while it stands, workers' too. BEGIN,
// COMMIT and PRAGMA are not counted: they read nothing.
class QueryCounter
{
public:
    QueryCounter()
    {
        present() = this;
        sqlite3_auto_extension(reinterpret_cast<void (*)()>(&QueryCounter::attach));
    }
    ~QueryCounter()
    {
        sqlite3_cancel_auto_extension(reinterpret_cast<void (*)()>(&QueryCounter::attach));
        present() = nullptr;
    }
    QueryCounter(const QueryCounter&) = delete;
    QueryCounter& operator=(const QueryCounter&) = delete;

    void restart()
    {
        const std::lock_guard lock(m_mutex);
        m_runs.clear();
    }
    [[nodiscard]] int count() const
    {
        const std::lock_guard lock(m_mutex);
        int sum = 0;
        for (const auto& [sql, runs] : m_runs) {
            sum += runs;
        }
        return sum;
    }
    // Of statements whose text holds it.
    [[nodiscard]] int countOf(const std::string& part) const
    {
        const std::lock_guard lock(m_mutex);
        int sum = 0;
        for (const auto& [sql, runs] : m_runs) {
            sum += sql.find(part) == std::string::npos ? 0 : runs;
        }
        return sum;
    }
    // Those statements themselves.
    [[nodiscard]] std::string textsOf(const std::string& part) const
    {
        const std::lock_guard lock(m_mutex);
        std::string texts;
        for (const auto& [sql, runs] : m_runs) {
            if (sql.find(part) != std::string::npos) {
                texts += "\n" + std::to_string(runs) + " times " + sql;
            }
        }
        return texts;
    }
    // The most often that one and the same statement ran.
    [[nodiscard]] std::pair<std::string, int> mostRepeated() const
    {
        const std::lock_guard lock(m_mutex);
        std::pair<std::string, int> most;
        for (const auto& [sql, runs] : m_runs) {
            if (runs > most.second) {
                most = {sql, runs};
            }
        }
        return most;
    }

private:
    static QueryCounter*& present()
    {
        static QueryCounter* counter = nullptr;
        return counter;
    }
    static int attach(sqlite3* handle, const char**, const struct sqlite3_api_routines*)
    {
        return sqlite3_trace_v2(handle, SQLITE_TRACE_STMT, &QueryCounter::note, nullptr);
    }
    static int note(unsigned, void*, void* statement, void*)
    {
        const char* text = sqlite3_sql(static_cast<sqlite3_stmt*>(statement));
        const std::string sql = text == nullptr ? "" : text;
        const bool isRead = sql.rfind("BEGIN", 0) != 0 && sql.rfind("COMMIT", 0) != 0 &&
                            sql.rfind("PRAGMA", 0) != 0;
        if (present() != nullptr && isRead) {
            const std::lock_guard lock(present()->m_mutex);
            ++present()->m_runs[sql];
        }
        return 0;
    }

    mutable std::mutex m_mutex;
    std::map<std::string, int> m_runs;
};

} // namespace plumule
