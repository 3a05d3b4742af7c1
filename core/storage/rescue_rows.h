#pragma once

#include "core/storage/rescue_steps.h"

namespace plumule {

// The rows of a damaged journal's tables: read, completed from its history, judged, and stored in a
// new journal with all that they belong to.
class RescuedRows
{
public:
    RescuedRows(Database& fresh, const RescueKnowledge& knowledge, RescueReport& report);

    // Reads a table; the history's rows take the place of those that can't be read.
    void read(Database& old, const std::string& table, const RescuedSteps& steps);
    // Inside a transaction of the new journal; tables in the order that they are pointed at.
    void store(const std::vector<std::string>& tables);
    // The highest id of that copy of the journal; 0 for none.
    [[nodiscard]] std::int64_t highestId(std::int64_t copy) const;
    // Where nothing was lost, what had been taken back can be done again.
    [[nodiscard]] bool isComplete() const { return m_isComplete; }
    void storeRoom(std::int64_t id);

private:
    struct Pointer
    {
        std::size_t column = 0;
        std::string table;
    };
    void complete(const std::string& table, ReadRows& read, const RescuedSteps& steps);
    void judge(const std::string& table, ReadRows& read, const RescuedSteps& steps);
    [[nodiscard]] std::optional<std::size_t> badCell(const std::string& table,
                                                     const std::vector<Cell>& row) const;
    [[nodiscard]] std::vector<Pointer> pointersOf(const std::string& table);
    [[nodiscard]] bool hasItsOwners(const std::string& table, std::vector<Cell>& row,
                                    const std::vector<Pointer>& pointers);
    [[nodiscard]] bool standsIn(const std::string& table, std::int64_t id);
    [[nodiscard]] bool insert(const std::string& table, const std::vector<Cell>& row);
    template <class... Values>
    void say(const std::string& table, std::int64_t row, RescueReason reason, Values&&... values);

    Database& m_fresh;
    const RescueKnowledge& m_knowledge;
    RescueReport& m_report;
    std::map<std::string, std::vector<DeclaredColumn>> m_columns;
    std::map<std::string, RowsById> m_rows; // still to be stored
    std::map<std::string, std::set<std::int64_t>> m_stored;
    bool m_isComplete = true;
};

} // namespace plumule
