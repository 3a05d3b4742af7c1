// Part of core/merge/two_sides_repository.h: codes, numbers and names that both sides gave.
#include "core/merge/two_sides_repository.h"

#include "core/base/letter_case.h"
#include "core/medium/medium_rules.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_rules.h"

#include <algorithm>
#include <array>

namespace plumule {
namespace {

// What only tells rows apart: where the copy left it alone, it is what it is here.
struct GivenName
{
    const char* table;
    const char* column;
};

constexpr std::array kGivenNames = {GivenName{"tray", "code"}, GivenName{"trial", "code"},
                                    GivenName{"piece", "number"}, GivenName{"medium", "marker"},
                                    GivenName{"photo", "file_name"}};

std::string wordsOf(const Cell& cell)
{
    const auto* whole = std::get_if<std::int64_t>(&cell);
    return whole == nullptr ? textIn(cell) : std::to_string(*whole);
}

bool isAmong(const std::string& name, const std::vector<std::string>& used)
{
    return std::any_of(used.begin(), used.end(),
                       [&](const std::string& each) { return isAlike(each, name); });
}

} // namespace

void TwoSidesRepository::keepNames(MergeRow& row)
{
    for (const GivenName& given : kGivenNames) {
        const auto place = given.table == row.key.table
                               ? placeOfColumn(m_here, row.key.table, given.column)
                               : std::nullopt;
        if (place && row.here && row.there && row.before &&
            (*row.before)[*place] == (*row.there)[*place]) {
            (*row.there)[*place] = (*row.here)[*place];
            (*row.before)[*place] = (*row.here)[*place];
        }
    }
}

void TwoSidesRepository::rename(MergeRow& row)
{
    for (const GivenName& given : kGivenNames) {
        if (given.table != row.key.table) {
            continue;
        }
        if (const auto name = freeName(row, given.column)) {
            renameTo(row, given.column, *name);
        }
    }
}

Cell TwoSidesRepository::cellOf(const MergeRow& row, const char* column)
{
    const auto place = placeOfColumn(m_here, row.key.table, column);
    return place && row.there ? (*row.there)[*place] : Cell();
}

void TwoSidesRepository::renameTo(MergeRow& row, const char* column, const Cell& cell)
{
    const auto place = placeOfColumn(m_here, row.key.table, column);
    m_renamed.push_back({row.key, wordsOf((*row.there)[*place]), wordsOf(cell)});
    (*row.there)[*place] = cell;
}

// Of the rows here and of those that come.
std::vector<std::string> TwoSidesRepository::textsOf(const std::string& table, const char* column)
{
    std::vector<std::string> texts;
    Statement statement = m_here.prepare("SELECT " + std::string(column) + " FROM " + table);
    while (statement.step()) {
        texts.push_back(statement.get<std::string>(0));
    }
    for (const auto& [key, row] : m_rows) {
        if (key.table == table && !row.here) {
            texts.push_back(textIn(cellOf(row, column)));
        }
    }
    return texts;
}

std::vector<int> TwoSidesRepository::numbersOf(const std::string& table, const char* column,
                                               const char* where, const Cell& cell)
{
    std::vector<int> numbers;
    Statement statement = m_here.prepare("SELECT " + std::string(column) + " FROM " + table +
                                         " WHERE ?1 IS NULL OR " + where + " IS ?1");
    statement.bindCell(1, cell);
    while (statement.step()) {
        numbers.push_back(statement.get<int>(0));
    }
    for (const auto& [key, row] : m_rows) {
        const bool isOfIt = cell == Cell() || cellOf(row, where) == cell;
        if (key.table == table && !row.here && isOfIt) {
            numbers.push_back(static_cast<int>(wholeIn(cellOf(row, column))));
        }
    }
    return numbers;
}

std::optional<Cell> TwoSidesRepository::freePhotoName(const std::string& wished)
{
    const auto used = textsOf("photo", "file_name");
    const std::size_t dot = std::min(wished.rfind('.'), wished.size());
    std::string free = wished;
    for (int number = 1; isAmong(free, used) || m_isPhotoTaken(free); ++number) {
        free = wished.substr(0, dot) + " copy " + std::to_string(m_copy.value) +
               (number == 1 ? "" : " " + std::to_string(number)) + wished.substr(dot);
    }
    return free == wished ? std::nullopt : std::optional(Cell(free));
}

// None where the name that it has is free.
std::optional<Cell> TwoSidesRepository::freeName(const MergeRow& row, const std::string& column)
{
    const Cell name = cellOf(row, column.c_str());
    if (row.key.table == "tray" || row.key.table == "trial") {
        auto used = textsOf(row.key.table, "code");
        if (!isAmong(textIn(name), used)) {
            return std::nullopt;
        }
        if (row.key.table == "trial") {
            return Cell(nextTrialCode(used));
        }
        const RowState variety = thereNow({"variety", wholeIn(cellOf(row, "variety_id"))});
        const auto prefix = placeOfColumn(m_here, "variety", "code_prefix");
        // All that the copy sowed, too: the number after the highest is free for good.
        Statement others = m_there.prepare("SELECT code FROM tray");
        while (others.step()) {
            used.push_back(others.get<std::string>(0));
        }
        return Cell(nextCode(variety ? textIn((*variety)[*prefix]) : std::string(), used));
    }
    if (row.key.table == "photo") {
        return freePhotoName(textIn(name));
    }
    const bool isPiece = row.key.table == "piece";
    const auto used = isPiece ? numbersOf("piece", "number", "medium_id", cellOf(row, "medium_id"))
                              : numbersOf("medium", "marker", "id", Cell());
    const auto number = static_cast<int>(wholeIn(name));
    if (std::find(used.begin(), used.end(), number) == used.end()) {
        return std::nullopt;
    }
    const int next = isPiece ? 1 + *std::max_element(used.begin(), used.end()) : nextMarker(used);
    return Cell(std::int64_t{next});
}

} // namespace plumule
