#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

// What the reference walk and the handlers of the kinds of cases share.
namespace plumule::stats::reference {

struct Tolerance
{
    double rel = 0;
    double abs = 0;
};

// One case of expected.json under check. Every leaf of `expected` must be compared (number, column,
// text, texts, truth) or named as an input or as another program's record (given, notOurs);
// whatever is left over is a fault, so that no field is skipped. Pointers are JSON pointers in
// `expected`.
class CaseCheck
{
public:
    explicit CaseCheck(const nlohmann::json& testCase);

    [[nodiscard]] const nlohmann::json& testCase() const { return m_case; }
    [[nodiscard]] const nlohmann::json& data() const { return m_case.at("data"); }
    [[nodiscard]] const nlohmann::json& expected() const { return m_case.at("expected"); }
    [[nodiscard]] bool has(const std::string& pointer) const;
    [[nodiscard]] const nlohmann::json& at(const std::string& pointer) const;
    [[nodiscard]] std::vector<double> numbersAt(const std::string& pointer) const;
    [[nodiscard]] std::vector<std::string> textsAt(const std::string& pointer) const;

    // The case's own tolerance of that name, else its "default"; a fault when it has neither.
    [[nodiscard]] Tolerance tolerance(const std::string& name = "default");

    // Passes if |got - expected| <= max(abs, rel * |expected|). Null in the reference must be
    // nullopt (or not finite) here, and the reverse.
    void number(const std::string& pointer, std::optional<double> got, Tolerance tolerance);
    void column(const std::string& pointer, const std::vector<double>& got, Tolerance tolerance);
    void column(const std::string& pointer, const std::vector<std::optional<double>>& got,
                Tolerance tolerance);
    void text(const std::string& pointer, const std::string& got);
    void texts(const std::string& pointer, const std::vector<std::string>& got);
    void truth(const std::string& pointer, bool got);
    // The leaf, or all leaves under it, are inputs of the case (a level, a control, a weight).
    void given(const std::string& pointer);
    // The leaf, or all leaves under it, record how another program fared; the reason is for
    // readers.
    void notOurs(const std::string& pointer, std::string_view reason);
    void fault(const std::string& what) { m_faults.push_back(what); }

    // All faults found, the leaves nobody looked at among them.
    [[nodiscard]] std::vector<std::string> faults() const;
    [[nodiscard]] int compared() const { return m_compared; }

private:
    const nlohmann::json& m_case;
    std::set<std::string> m_seen;
    std::vector<std::string> m_faults;
    int m_compared = 0;
};

using Handler = void (*)(CaseCheck&);

// Handlers are registered by the beginning of the kind's name; the longest that fits is used:
//   const Registered kOneWay{"one-way: ", coverOneWay};
class Registered
{
public:
    Registered(std::string kindBegins, Handler handler);
};
[[nodiscard]] Handler handlerFor(std::string_view kind);

// The whole of expected.json, read once.
[[nodiscard]] const nlohmann::json& references();

// A CSV beside expected.json (or handbook/...): a header line, commas, optional double quotes.
class Table
{
public:
    explicit Table(const std::string& file);

    [[nodiscard]] std::size_t rows() const { return m_rows.size(); }
    [[nodiscard]] const std::vector<std::string>& names() const { return m_names; }
    [[nodiscard]] bool hasColumn(const std::string& name) const;
    [[nodiscard]] std::vector<std::string> texts(const std::string& column) const;
    // Throws on an empty or unreadable cell.
    [[nodiscard]] std::vector<double> numbers(const std::string& column) const;
    // Empty cells and NA are nullopt.
    [[nodiscard]] std::vector<std::optional<double>> maybeNumbers(const std::string& column) const;

private:
    [[nodiscard]] std::size_t indexOf(const std::string& column) const;
    std::vector<std::string> m_names;
    std::vector<std::vector<std::string>> m_rows;
};

// Values of `response` by level of `factor`, levels in the order of first appearance; rows without
// a response are left out.
struct Grouped
{
    std::vector<std::string> levels;
    std::vector<std::vector<double>> values;

    [[nodiscard]] std::size_t indexOf(const std::string& level) const;
    [[nodiscard]] const std::vector<double>& of(const std::string& level) const;
};
[[nodiscard]] Grouped grouped(const Table& table, const std::string& response,
                              const std::string& factor);

// True when two letter displays say the same: the same pairs share a letter.
[[nodiscard]] bool sameGrouping(const std::vector<std::string>& a,
                                const std::vector<std::string>& b);

} // namespace plumule::stats::reference
