#pragma once

#include "app/commands/command.h"
#include "core/exchange/csv.h"

namespace plumule::app {

// What the commands share that work on any table.

struct TableFile
{
    QString name;
    CsvTable table;
};

// Reads a table; nullopt, and a line said, where it is none.
[[nodiscard]] std::optional<TableFile> readTable(const QString& path);

// Says why the table or its numbers were refused: a bad call, or no answer where the numbers hold
// none. `rows` says which row of the file each row counted in the error is, where not all of them
// were taken.
int refusedFor(const TableFile& file, const Error& error,
               const std::vector<std::size_t>& rows = {});

// The value of an option that has to be there; nullopt, and a line said, where it is not.
[[nodiscard]] std::optional<std::string> neededOption(const QCommandLineParser& parser,
                                                      const QString& name);
// A finite number; nullopt where it is none.
[[nodiscard]] std::optional<double> numberFrom(const QString& text);
// Reads a number option into `value` where it is set; false, and a line said, where it is no
// number that `isGood`; `wanted` says which would be.
[[nodiscard]] bool takeNumber(const QCommandLineParser& parser, const QString& name,
                              const QString& wanted, bool (*isGood)(double),
                              std::optional<double>& value);

// For people: five digits; "-" for none.
[[nodiscard]] QString shortNumber(std::optional<double> value);
// "p 0.0120", "p < 0.0001"
[[nodiscard]] QString pText(std::optional<double> p);

} // namespace plumule::app
