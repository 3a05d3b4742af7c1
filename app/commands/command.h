#pragma once

#include "app/program.h"
#include "app/system_clock.h"
#include "core/journal/journal.h"
#include "core/variety/variety.h"

#include <QCommandLineParser>
#include <QStringList>

#include <nlohmann/json.hpp>

#include <vector>

namespace plumule::app {

// A headless command: its name, what follows it in the help, and what runs it (arguments[0] is the
// program, the command's own name is taken out).
struct Command
{
    const char* name;
    const char* usage;
    int (*run)(const QStringList& arguments);
};

[[nodiscard]] const std::vector<Command>& commands();

int runRound(const QStringList& arguments);
int runSeason(const QStringList& arguments);
int runTrial(const QStringList& arguments);
int runImport(const QStringList& arguments);
int runExport(const QStringList& arguments);
int runWeek(const QStringList& arguments);
int runClimate(const QStringList& arguments);
int runForecast(const QStringList& arguments);
int runOrders(const QStringList& arguments);
int runStock(const QStringList& arguments);
int runTrace(const QStringList& arguments);
int runCosts(const QStringList& arguments);
int runSample(const QStringList& arguments);
int runPictures(const QStringList& arguments);
int runCheck(const QStringList& arguments);
int runRescue(const QStringList& arguments);
int runCompare(const QStringList& arguments);
int runGrowth(const QStringList& arguments);
int runPower(const QStringList& arguments);

// What commands share.

// One line to standard error; returns kBadCall.
int badCall(const QString& sentence);
// The error in words, one line to standard error; returns kRefused.
int refused(const Error& error);
// The call is sound, but these numbers hold no answer: one line to standard error; kRefused.
int noAnswer(const QString& sentence);
// As Journal::open() to read; says it on standard error where a copy is read.
[[nodiscard]] Result<std::unique_ptr<Journal>> openToRead(const QString& journal,
                                                          const Clock& clock);
// Parses; a line of what is wrong and nullopt where the call is off or has not `count` arguments
// (`names` lists them for the sentence).
[[nodiscard]] std::optional<QStringList>
argumentsOf(QCommandLineParser& parser, const QStringList& arguments, const QStringList& names);
// The value of a date option; `otherwise` where it is not set; nullopt, and a line said, where it
// is no date.
[[nodiscard]] std::optional<Date> dateOption(const QCommandLineParser& parser, const QString& name,
                                             Date otherwise);

// The ids of the varieties named, whatever the letter case; nullopt, and a line said, where one is
// not known.
[[nodiscard]] std::optional<std::vector<VarietyId>> varietiesNamed(Journal& journal,
                                                                   const QStringList& names);

// Standard output, UTF-8.
void print(const QString& text);
void print(const nlohmann::ordered_json& json);

// A number with 15 significant digits; null for none and for what is not finite.
[[nodiscard]] nlohmann::ordered_json jsonNumber(std::optional<double> value);
template <class T>
[[nodiscard]] nlohmann::ordered_json jsonOrNull(const std::optional<T>& value)
{
    return value ? nlohmann::ordered_json(*value) : nlohmann::ordered_json(nullptr);
}

} // namespace plumule::app
