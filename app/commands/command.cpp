#include "app/commands/command.h"

#include "core/journal/variety/variety_entries.h"
#include "ui/text/text.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace plumule::app {

namespace {

const std::vector<Command> kCommands = {
    {"round", "JOURNAL [--date D] [--slot morning|evening] [--json | --pdf FILE]", runRound},
    {"week", "JOURNAL [--json | --ics FILE | --pdf FILE]", runWeek},
    {"season",
     "JOURNAL [--season NAME | --from D --to D] [--variety V]... [--metric NAME] [--groups "
     "form|nutrients|reuse|own] [--margin PERCENT] [--json | --pdf FILE | --html FILE]",
     runSeason},
    {"trial",
     "JOURNAL CODE [--metric NAME] [--groups form|nutrients|reuse|own] [--margin PERCENT] "
     "[--json | --pdf FILE | --html FILE]",
     runTrial},
    {"import",
     "JOURNAL FILE.csv [--as KIND] [--column COLUMN=HEADER]... [--unit COLUMN=UNIT]... "
     "[--dates ymd|dmy|mdy] [--decimals point|comma] [--encoding NAME] [--dry-run] "
     "[--as-it-stands]; or, all that \"export\" wrote: --everything FOLDER NEW",
     runImport},
    {"export", "JOURNAL FOLDER", runExport},
    {"climate", "JOURNAL [--tray CODE | --from D --to D] [--json]", runClimate},
    {"forecast", "JOURNAL [--date D] [--json]", runForecast},
    {"orders", "JOURNAL [--json]", runOrders},
    {"stock", "JOURNAL [--json]", runStock},
    {"trace", "JOURNAL CODE [--from D --to D] [--json]", runTrace},
    {"costs", "JOURNAL [--from D --to D] [--variety V] [--json]", runCosts},
    {"sample", "FILE", runSample},
    {"pictures", "JOURNAL DIR [--size WxH] [--dark] [--font-scale N]", runPictures},
    {"check", "JOURNAL", runCheck},
    {"rescue", "OLD NEW", runRescue},
    {"compare",
     "FILE.csv --response COL --medium COL [--factor COL]... [--covariate COL]... [--random "
     "COL] [--control LEVEL] [--margin X] [--contrast \"A=0.5,B=0.5,C=-1\"]... [--level 0.95] "
     "[--json]; or, by trials: --response COL --medium COL --trial COL "
     "[--variety COL] [--block COL] [--margin PERCENT] [--json]",
     runCompare},
    {"growth",
     "FILE.csv --x COL --y COL [--tray COL [--trial COL]] [--where COL=VALUE]... [--curve "
     "logistic|gompertz|richards|best] [--at X]... [--to-height Y]... [--json]",
     runGrowth},
    {"power",
     "--difference D --spread S [--media K] [--per-medium N | --power P] [--blocks] [--json]",
     runPower},
};

} // namespace

const std::vector<Command>& commands()
{
    return kCommands;
}

int badCall(const QString& sentence)
{
    std::fprintf(stderr, "plumule: %s\n", sentence.toUtf8().constData());
    return kBadCall;
}

int noAnswer(const QString& sentence)
{
    std::fprintf(stderr, "plumule: %s\n", sentence.toUtf8().constData());
    return kRefused;
}

int refused(const Error& error)
{
    std::fprintf(stderr, "plumule: %s\n", ui::sentence(error).toUtf8().constData());
    return kRefused;
}

Result<std::unique_ptr<Journal>> openToRead(const QString& journal, const Clock& clock)
{
    auto opened = Journal::open(journal.toStdString(), clock, Access::ReadOnly);
    if (opened && (*opened)->readOnlyBecause()) {
        refused(*(*opened)->readOnlyBecause());
    }
    return opened;
}

std::optional<QStringList> argumentsOf(QCommandLineParser& parser, const QStringList& arguments,
                                       const QStringList& names)
{
    if (!parser.parse(arguments)) {
        badCall(parser.errorText());
        return std::nullopt;
    }
    const QStringList given = parser.positionalArguments();
    if (given.size() < names.size()) {
        badCall(QStringLiteral("%1 is missing.").arg(names[given.size()]));
        return std::nullopt;
    }
    if (given.size() > names.size()) {
        badCall(QStringLiteral("\"%1\" is one argument too many.").arg(given[names.size()]));
        return std::nullopt;
    }
    return given;
}

std::optional<Date> dateOption(const QCommandLineParser& parser, const QString& name,
                               Date otherwise)
{
    if (!parser.isSet(name)) {
        return otherwise;
    }
    const auto day = dateFromIso(parser.value(name).toStdString());
    if (!day) {
        badCall(QStringLiteral("--%1 wants a day as YYYY-MM-DD, not \"%2\".")
                    .arg(name, parser.value(name)));
        return std::nullopt;
    }
    return *day;
}

std::optional<std::vector<VarietyId>> varietiesNamed(Journal& journal, const QStringList& names)
{
    const auto known = journal.varieties().all(Listed::All);
    if (!known) {
        refused(known.error());
        return std::nullopt;
    }
    std::vector<VarietyId> ids;
    for (const QString& name : names) {
        const auto found = std::find_if(known->begin(), known->end(), [&](const Variety& variety) {
            return QString::fromStdString(variety.name).compare(name, Qt::CaseInsensitive) == 0;
        });
        if (found == known->end()) {
            badCall(QStringLiteral("No variety is called \"%1\".").arg(name));
            return std::nullopt;
        }
        ids.push_back(found->id);
    }
    return ids;
}

void print(const QString& text)
{
    std::fputs(text.toUtf8().constData(), stdout);
    std::fputc('\n', stdout);
}

void print(const nlohmann::ordered_json& json)
{
    std::puts(json.dump(2).c_str());
}

nlohmann::ordered_json jsonNumber(std::optional<double> value)
{
    if (!value || !std::isfinite(*value)) {
        return nullptr;
    }
    char text[40];
    std::snprintf(text, sizeof text, "%.15g", *value);
    return std::strtod(text, nullptr);
}

} // namespace plumule::app
