#include "core/sample/sample_tables.h"

#include "core/base/number_text.h"
#include "core/exchange/row_fault.h"

#include <algorithm>

namespace plumule {

void SampleFault::note(Error error)
{
    if (!m_error) {
        m_error = std::move(error);
    }
}

Done SampleFault::outcome() const
{
    if (m_error) {
        return passOn(*m_error);
    }
    return {};
}

SampleRow::SampleRow(const CsvTable& table, std::size_t row, std::string file, Moment now,
                     SampleFault& fault)
    : m_table(table)
    , m_row(row)
    , m_file(std::move(file))
    , m_now(now)
    , m_fault(fault)
{}

std::string SampleRow::text(const char* column) const
{
    const auto found = std::find(m_table.header.begin(), m_table.header.end(), column);
    if (found == m_table.header.end()) {
        m_fault.note(
            faultAt(m_file, 1, ErrorKind::Missing, ExchangeReason::ColumnMissing, column).value());
        return {};
    }
    const auto index = static_cast<std::size_t>(found - m_table.header.begin());
    return m_table.rows[m_row][index];
}

std::optional<std::string> SampleRow::maybeText(const char* column) const
{
    const std::string value = text(column);
    return value.empty() ? std::nullopt : std::optional(value);
}

void SampleRow::refuse(const char* column) const
{
    m_fault.note(faultAt(m_file, m_table.lines[m_row], ErrorKind::Invalid, ExchangeReason::CellForm,
                         column, text(column))
                     .value());
}

double SampleRow::number(const char* column) const
{
    const auto value = decimalFromText(text(column));
    if (!value) {
        refuse(column);
        return 0;
    }
    return *value;
}

std::optional<double> SampleRow::maybeNumber(const char* column) const
{
    return has(column) ? std::optional(number(column)) : std::nullopt;
}

int SampleRow::whole(const char* column) const
{
    const auto value = wholeFromText(text(column));
    if (!value || *value < -100'000 || *value > 100'000) {
        refuse(column);
        return 0;
    }
    return static_cast<int>(*value);
}

std::optional<int> SampleRow::maybeWhole(const char* column) const
{
    return has(column) ? std::optional(whole(column)) : std::nullopt;
}

std::optional<Mass> SampleRow::maybeGrams(const char* column) const
{
    return has(column) ? std::optional(grams(number(column))) : std::nullopt;
}

std::optional<Volume> SampleRow::maybeMillilitres(const char* column) const
{
    return has(column) ? std::optional(millilitres(number(column))) : std::nullopt;
}

Date SampleRow::day(const char* column) const
{
    return m_now.date + whole(column);
}

std::optional<Date> SampleRow::maybeDay(const char* column) const
{
    return has(column) ? std::optional(day(column)) : std::nullopt;
}

int SampleRow::minute(const char* column) const
{
    const auto value = minuteFromText(text(column));
    if (!value) {
        refuse(column);
        return 0;
    }
    return *value;
}

Moment SampleRow::planned(const char* dayColumn, const char* timeColumn) const
{
    return {day(dayColumn), minute(timeColumn)};
}

Moment SampleRow::moment(const char* dayColumn, const char* timeColumn) const
{
    return std::min(planned(dayColumn, timeColumn), m_now);
}

CsvTable SampleTables::read(const std::string& file)
{
    if (m_fault.isSet()) {
        return {};
    }
    const auto text = textOfFile((m_folder / file).string());
    if (!text) {
        m_fault.note(text.error());
        return {};
    }
    auto table = csvFrom(*text);
    if (!table) {
        Error error = table.error();
        error.row = RowAt{file, error.row ? error.row->number : 1};
        m_fault.note(std::move(error));
        return {};
    }
    return std::move(*table);
}

} // namespace plumule
