#pragma once

#include "core/base/date.h"
#include "core/base/money.h"
#include "core/base/quantity.h"
#include "core/exchange/csv.h"

#include <filesystem>
#include <map>
#include <optional>

namespace plumule {

// The first thing that is wrong in the tables; later ones are not kept.
class SampleFault
{
public:
    void note(Error error);
    [[nodiscard]] bool isSet() const { return m_error.has_value(); }
    [[nodiscard]] Done outcome() const;

private:
    std::optional<Error> m_error;
};

// One row, read by column name. An empty cell is none; a cell that can't be read is noted
// with its file and line and read as nothing.
class SampleRow
{
public:
    SampleRow(const CsvTable& table, std::size_t row, std::string file, Moment now,
              SampleFault& fault);

    [[nodiscard]] std::string text(const char* column) const;
    [[nodiscard]] std::optional<std::string> maybeText(const char* column) const;
    [[nodiscard]] bool has(const char* column) const { return !text(column).empty(); }
    [[nodiscard]] bool isYes(const char* column) const { return text(column) == "yes"; }
    [[nodiscard]] double number(const char* column) const;
    [[nodiscard]] std::optional<double> maybeNumber(const char* column) const;
    [[nodiscard]] int whole(const char* column) const;
    [[nodiscard]] std::optional<int> maybeWhole(const char* column) const;
    [[nodiscard]] std::optional<Mass> maybeGrams(const char* column) const;
    [[nodiscard]] std::optional<Volume> maybeMillilitres(const char* column) const;
    // Days from today.
    [[nodiscard]] Date day(const char* column) const;
    [[nodiscard]] std::optional<Date> maybeDay(const char* column) const;
    [[nodiscard]] int minute(const char* column) const;
    // As written, also when it lies ahead.
    [[nodiscard]] Moment planned(const char* day, const char* time) const;
    // Not later than now: what the table puts later today has just happened.
    [[nodiscard]] Moment moment(const char* day, const char* time) const;
    template <class Enum>
    [[nodiscard]] Enum named(const char* column) const
    {
        Enum value{};
        if (!fromText(text(column), value)) {
            refuse(column);
        }
        return value;
    }
    // What the text of the column stands for in `known`.
    template <class Value>
    [[nodiscard]] Value found(const std::map<std::string, Value>& known, const char* column) const
    {
        return foundAs(known, text(column), column);
    }
    template <class Value>
    [[nodiscard]] Value foundAs(const std::map<std::string, Value>& known, const std::string& key,
                                const char* column) const
    {
        const auto entry = known.find(key);
        if (entry == known.end()) {
            refuse(column);
            return Value{};
        }
        return entry->second;
    }
    void refuse(const char* column) const;

private:
    const CsvTable& m_table;
    std::size_t m_row;
    std::string m_file;
    Moment m_now;
    SampleFault& m_fault;
};

// The folder of tables, as they are read at `now`.
class SampleTables
{
public:
    SampleTables(std::filesystem::path folder, Moment now)
        : m_folder(std::move(folder))
        , m_now(now)
    {}

    // Calls `take(const SampleRow&)` for each row of "<name>.csv", up to the first fault.
    template <class Take>
    void forEach(const std::string& name, Take take)
    {
        const std::string file = name + ".csv";
        const auto table = read(file);
        for (std::size_t row = 0; row < table.rows.size() && !m_fault.isSet(); ++row) {
            take(SampleRow(table, row, file, m_now, m_fault));
        }
    }
    [[nodiscard]] Moment now() const { return m_now; }
    [[nodiscard]] bool isFaulty() const { return m_fault.isSet(); }
    [[nodiscard]] Done outcome() const { return m_fault.outcome(); }

private:
    CsvTable read(const std::string& file);

    std::filesystem::path m_folder;
    Moment m_now;
    SampleFault m_fault;
};

} // namespace plumule
