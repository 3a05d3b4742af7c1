#pragma once

#include "core/storage/rescue.h"
#include "core/storage/rescue_reading.h"

namespace plumule {

// The history of a damaged journal, as far as it can be read and its changesets are whole.
class RescuedSteps
{
public:
    // What is left out is added to `said`.
    RescuedSteps(Database& old, Database& fresh, std::vector<Error>& said);

    // The table's rows as the steps that stand last wrote them. Those that no step wrote are not
    // among them.
    [[nodiscard]] const RowsById& rowsOf(const std::string& table) const;
    // The highest id that is met, of that copy of the journal.
    [[nodiscard]] std::int64_t highestId() const
    {
        return m_steps.empty() ? 0 : m_steps.rbegin()->first;
    }

    enum class Undone
    {
        CanBeRedone,
        Dropped
    };
    // Writes the steps that make sense in the new journal; how many they are.
    std::int64_t store(Undone undone);

private:
    [[nodiscard]] std::size_t at(const char* column) const;
    [[nodiscard]] bool isWhole(const std::vector<Cell>& step) const;
    [[nodiscard]] bool makesSense(const std::vector<Cell>& step) const;
    void replay(const std::string& changeset);
    void insert(const std::vector<Cell>& step);
    void leaveOut(std::int64_t id);

    Database& m_fresh;
    std::vector<Error>& m_said;
    std::vector<DeclaredColumn> m_columns;
    RowsById m_steps;
    std::map<std::string, RowsById> m_rows;
};

} // namespace plumule
