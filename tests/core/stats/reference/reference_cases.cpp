#include "tests/core/stats/reference/reference_cases.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <fstream>
#include <limits>
#include <map>
#include <sstream>
#include <stdexcept>

namespace plumule::stats::reference {

using nlohmann::json;

namespace {

std::map<std::string, Handler, std::less<>>& registeredHandlers()
{
    static std::map<std::string, Handler, std::less<>> handlers;
    return handlers;
}

void collectLeaves(const json& value, const std::string& pointer, std::vector<std::string>& leaves)
{
    if (value.is_object()) {
        for (const auto& [name, member] : value.items()) {
            collectLeaves(member, pointer + "/" + name, leaves);
        }
    } else if (value.is_array() && !value.empty() && value.front().is_structured()) {
        for (std::size_t i = 0; i < value.size(); ++i) {
            collectLeaves(value[i], pointer + "/" + std::to_string(i), leaves);
        }
    } else {
        leaves.push_back(pointer);
    }
}

bool agrees(double got, double expected, Tolerance tolerance)
{
    return std::abs(got - expected) <= std::max(tolerance.abs, tolerance.rel * std::abs(expected));
}

std::vector<std::string> splitCsvLine(const std::string& line)
{
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            cells.emplace_back();
        } else if (c != '\r') {
            cells.back() += c;
        }
    }
    return cells;
}

std::optional<double> cellNumber(const std::string& cell)
{
    if (cell.empty() || cell == "NA") {
        return std::nullopt;
    }
    std::size_t used = 0;
    const double value = std::stod(cell, &used);
    if (used != cell.size()) {
        throw std::runtime_error("not a number: " + cell);
    }
    return value;
}

} // namespace

CaseCheck::CaseCheck(const json& testCase)
    : m_case(testCase)
{}

bool CaseCheck::has(const std::string& pointer) const
{
    return expected().contains(json::json_pointer(pointer));
}

const json& CaseCheck::at(const std::string& pointer) const
{
    return expected().at(json::json_pointer(pointer));
}

std::vector<double> CaseCheck::numbersAt(const std::string& pointer) const
{
    return at(pointer).get<std::vector<double>>();
}

std::vector<std::string> CaseCheck::textsAt(const std::string& pointer) const
{
    return at(pointer).get<std::vector<std::string>>();
}

Tolerance CaseCheck::tolerance(const std::string& name)
{
    const json& all = m_case.at("tolerance");
    const auto found = all.contains(name) ? all.find(name) : all.find("default");
    if (found == all.end()) {
        fault("no tolerance named " + name);
        return {};
    }
    return {found->value("rel", 0.0), found->value("abs", 0.0)};
}

void CaseCheck::number(const std::string& pointer, std::optional<double> got, Tolerance tolerance)
{
    m_seen.insert(pointer);
    if (!has(pointer)) {
        return fault(pointer + " is not in the reference");
    }
    ++m_compared;
    const json& wanted = at(pointer);
    const double value = got.value_or(std::numeric_limits<double>::quiet_NaN());
    const bool known = std::isfinite(value);
    if (wanted.is_null() || !known) {
        if (!wanted.is_null() || known) {
            fault(fmt::format("{}: got {:.15g}, expected {}", pointer, value, wanted.dump()));
        }
        return;
    }
    if (!wanted.is_number()) {
        return fault(pointer + " is no number in the reference");
    }
    if (!agrees(value, wanted.get<double>(), tolerance)) {
        fault(fmt::format("{}: got {:.15g}, expected {:.15g} (rel {:.3g} allowed, {:.3g} off)",
                          pointer, value, wanted.get<double>(), tolerance.rel,
                          std::abs(value / wanted.get<double>() - 1)));
    }
}

void CaseCheck::column(const std::string& pointer, const std::vector<double>& got,
                       Tolerance tolerance)
{
    column(pointer, std::vector<std::optional<double>>(got.begin(), got.end()), tolerance);
}

void CaseCheck::column(const std::string& pointer, const std::vector<std::optional<double>>& got,
                       Tolerance tolerance)
{
    m_seen.insert(pointer);
    if (!has(pointer)) {
        return fault(pointer + " is not in the reference");
    }
    if (!at(pointer).is_array()) {
        if (got.size() != 1) {
            return fault(pointer + " is a single value in the reference");
        }
        return number(pointer, got.front(), tolerance);
    }
    if (at(pointer).size() != got.size()) {
        return fault(
            fmt::format("{}: got {} rows, expected {}", pointer, got.size(), at(pointer).size()));
    }
    for (std::size_t row = 0; row < got.size(); ++row) {
        number(pointer + "/" + std::to_string(row), got[row], tolerance);
    }
}

void CaseCheck::text(const std::string& pointer, const std::string& got)
{
    m_seen.insert(pointer);
    ++m_compared;
    if (!has(pointer) || at(pointer) != got) {
        fault(fmt::format("{}: got {}, expected {}", pointer, got,
                          has(pointer) ? at(pointer).dump() : "no such field"));
    }
}

void CaseCheck::texts(const std::string& pointer, const std::vector<std::string>& got)
{
    m_seen.insert(pointer);
    ++m_compared;
    if (!has(pointer) || at(pointer) != json(got)) {
        fault(fmt::format("{}: got {}, expected {}", pointer, json(got).dump(),
                          has(pointer) ? at(pointer).dump() : "no such field"));
    }
}

void CaseCheck::truth(const std::string& pointer, bool got)
{
    m_seen.insert(pointer);
    ++m_compared;
    if (!has(pointer) || at(pointer) != json(got)) {
        fault(fmt::format("{}: got {}", pointer, got));
    }
}

void CaseCheck::given(const std::string& pointer)
{
    if (!has(pointer)) {
        return fault(pointer + " is not in the reference");
    }
    std::vector<std::string> leaves;
    collectLeaves(at(pointer), pointer, leaves);
    m_seen.insert(leaves.begin(), leaves.end());
}

void CaseCheck::notOurs(const std::string& pointer, std::string_view reason)
{
    if (reason.empty()) {
        fault(pointer + " is passed over without a reason");
    }
    given(pointer);
}

std::vector<std::string> CaseCheck::faults() const
{
    std::vector<std::string> all = m_faults;
    std::vector<std::string> leaves;
    collectLeaves(expected(), "", leaves);
    for (const std::string& leaf : leaves) {
        if (!m_seen.contains(leaf)) {
            all.push_back(leaf + " was not looked at");
        }
    }
    if (m_compared == 0) {
        all.push_back("nothing was compared");
    }
    return all;
}

Registered::Registered(std::string kindBegins, Handler handler)
{
    if (!registeredHandlers().emplace(std::move(kindBegins), handler).second) {
        throw std::logic_error("two handlers for one kind of case");
    }
}

Handler handlerFor(std::string_view kind)
{
    Handler best = nullptr;
    std::size_t length = 0;
    for (const auto& [begins, handler] : registeredHandlers()) {
        if (kind.starts_with(begins) && begins.size() >= length) {
            best = handler;
            length = begins.size();
        }
    }
    return best;
}

const json& references()
{
    static const json all = [] {
        std::ifstream file(std::string(PLUMULE_REFERENCES) + "/expected.json");
        return json::parse(file);
    }();
    return all;
}

Table::Table(const std::string& file)
{
    std::ifstream stream(std::string(PLUMULE_REFERENCES) + "/" + file);
    if (!stream) {
        throw std::runtime_error("no reference file " + file);
    }
    std::string line;
    std::getline(stream, line);
    m_names = splitCsvLine(line);
    while (std::getline(stream, line)) {
        if (!line.empty()) {
            m_rows.push_back(splitCsvLine(line));
        }
    }
}

std::size_t Table::indexOf(const std::string& column) const
{
    const auto found = std::find(m_names.begin(), m_names.end(), column);
    if (found == m_names.end()) {
        throw std::runtime_error("no column " + column);
    }
    return static_cast<std::size_t>(found - m_names.begin());
}

bool Table::hasColumn(const std::string& name) const
{
    return std::find(m_names.begin(), m_names.end(), name) != m_names.end();
}

std::vector<std::string> Table::texts(const std::string& column) const
{
    const std::size_t index = indexOf(column);
    std::vector<std::string> cells;
    for (const auto& row : m_rows) {
        cells.push_back(index < row.size() ? row[index] : std::string());
    }
    return cells;
}

std::vector<std::optional<double>> Table::maybeNumbers(const std::string& column) const
{
    std::vector<std::optional<double>> values;
    for (const std::string& cell : texts(column)) {
        values.push_back(cellNumber(cell));
    }
    return values;
}

std::vector<double> Table::numbers(const std::string& column) const
{
    std::vector<double> values;
    for (const auto& value : maybeNumbers(column)) {
        if (!value) {
            throw std::runtime_error("an empty cell in " + column);
        }
        values.push_back(*value);
    }
    return values;
}

std::size_t Grouped::indexOf(const std::string& level) const
{
    const auto found = std::find(levels.begin(), levels.end(), level);
    if (found == levels.end()) {
        throw std::runtime_error("no level " + level);
    }
    return static_cast<std::size_t>(found - levels.begin());
}

const std::vector<double>& Grouped::of(const std::string& level) const
{
    return values[indexOf(level)];
}

Grouped grouped(const Table& table, const std::string& response, const std::string& factor)
{
    Grouped result;
    const std::vector<std::string> levels = table.texts(factor);
    const std::vector<std::optional<double>> values = table.maybeNumbers(response);
    for (std::size_t row = 0; row < values.size(); ++row) {
        if (!values[row]) {
            continue;
        }
        auto found = std::find(result.levels.begin(), result.levels.end(), levels[row]);
        if (found == result.levels.end()) {
            result.levels.push_back(levels[row]);
            result.values.emplace_back();
            found = result.levels.end() - 1;
        }
        result.values[static_cast<std::size_t>(found - result.levels.begin())].push_back(
            *values[row]);
    }
    return result;
}

bool sameGrouping(const std::vector<std::string>& a, const std::vector<std::string>& b)
{
    if (a.size() != b.size()) {
        return false;
    }
    const auto share = [](const std::string& x, const std::string& y) {
        return x.find_first_of(y) != std::string::npos;
    };
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = i + 1; j < a.size(); ++j) {
            if (share(a[i], a[j]) != share(b[i], b[j])) {
                return false;
            }
        }
    }
    return true;
}

} // namespace plumule::stats::reference
