#pragma once

#include <atomic>
#include <map>
#include <mutex>
#include <sqlite3.h>
#include <string>
#include <vector>

namespace plumule {

// Counts the statements that run on any connection opened while it stands, workers' too, and what
// they cost. BEGIN, COMMIT and PRAGMA are not counted: they read nothing.
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
        m_steps.clear();
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
    // Of SQLite's virtual machine, since restart(): a measure of work that is the same on any
    // machine under any load.
    [[nodiscard]] std::int64_t steps() const
    {
        const std::lock_guard lock(m_mutex);
        std::int64_t sum = 0;
        for (const auto& [sql, steps] : m_steps) {
            sum += steps;
        }
        return sum;
    }
    // The statements that cost more than others, a line each.
    [[nodiscard]] std::string dearest(std::int64_t thanSteps) const
    {
        const std::lock_guard lock(m_mutex);
        std::string texts;
        for (const auto& [sql, steps] : m_steps) {
            if (steps > thanSteps) {
                texts += "\n" + std::to_string(steps) + " steps: " + sql;
            }
        }
        return texts;
    }
    [[nodiscard]] std::vector<std::string> texts() const
    {
        const std::lock_guard lock(m_mutex);
        std::vector<std::string> texts;
        for (const auto& [sql, runs] : m_runs) {
            texts.push_back(sql);
        }
        return texts;
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
        return sqlite3_trace_v2(handle, SQLITE_TRACE_STMT | SQLITE_TRACE_PROFILE,
                                &QueryCounter::note, nullptr);
    }
    static int note(unsigned event, void*, void* of, void*)
    {
        auto* statement = static_cast<sqlite3_stmt*>(of);
        const char* text = sqlite3_sql(statement);
        const std::string sql = text == nullptr ? "" : text;
        const bool isRead = sql.rfind("BEGIN", 0) != 0 && sql.rfind("COMMIT", 0) != 0 &&
                            sql.rfind("PRAGMA", 0) != 0;
        if (present() == nullptr || !isRead) {
            return 0;
        }
        const std::lock_guard lock(present()->m_mutex);
        if (event == SQLITE_TRACE_STMT) {
            ++present()->m_runs[sql];
        } else {
            present()->m_steps[sql] += sqlite3_stmt_status(statement, SQLITE_STMTSTATUS_VM_STEP, 1);
        }
        return 0;
    }

    mutable std::mutex m_mutex;
    std::map<std::string, int> m_runs;
    std::map<std::string, std::int64_t> m_steps;
};

} // namespace plumule
