#include "app/commands/command.h"

#include "ui/exchange/import_text.h"
#include "ui/text/text.h"
#include "ui/watering/round_text.h"

#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

#include <cstdio>

namespace plumule::app {
namespace {

void printNames(const QString& what, const std::vector<std::string>& names)
{
    QStringList list;
    for (const std::string& name : names) {
        list << QString::fromStdString(name);
    }
    if (!list.isEmpty()) {
        print(QStringLiteral("%1: %2").arg(what, list.join(", ")));
    }
}

void printPreview(const ImportPreview& preview)
{
    print(ui::trayCount(static_cast<int>(preview.trays.size())));
    printNames("columns that are not known and are left out", preview.unknownColumns);
    printNames("new varieties", preview.newVarieties);
    printNames("new media", preview.newMedia);
    printNames("new trials", preview.newTrials);
    printNames("new places", preview.newPlaces);
}

void printFaults(const ImportPreview& preview)
{
    for (const Error& fault : preview.faults) {
        badCall(ui::sentence(fault));
    }
    badCall("Nothing was imported.");
}

Result<std::unique_ptr<Journal>> newJournal(const QString& path, const Clock& clock)
{
    RoomPlan plan;
    plan.room.name = QFileInfo(path).completeBaseName().toStdString();
    return Journal::create(path.toStdString(), plan, clock);
}

// A preview without faults; nullopt, and what is wrong said, where there is none.
std::optional<ImportPreview> cleanPreview(Journal& journal, const QString& file)
{
    const auto preview = journal.exchange().preview(file.toStdString());
    if (!preview) {
        badCall(ui::sentence(preview.error()));
        return std::nullopt;
    }
    if (!preview->isClean()) {
        printFaults(*preview);
        return std::nullopt;
    }
    return *preview;
}

enum class Writing
{
    Rows,        // where none looks wrong
    DoubtedRows, // these too
    Nothing      // only what would be written is told
};

// Whether rows that look wrong keep the table out; says which.
bool isHeldBack(const ImportPreview& preview, Writing writing)
{
    for (const ImportDoubt& doubt : preview.doubts) {
        badCall(ui::doubtText(doubt));
    }
    if (preview.doubts.empty() || writing != Writing::Rows) {
        return false;
    }
    badCall("Nothing was imported. Mend the table, or say --as-it-stands.");
    return true;
}

int importInto(Journal& journal, const QString& file, Writing writing)
{
    const auto preview = cleanPreview(journal, file);
    if (!preview || isHeldBack(*preview, writing)) {
        return kBadCall;
    }
    printPreview(*preview);
    if (writing == Writing::Nothing) {
        print(QStringLiteral("Nothing was written."));
        return kDone;
    }
    const auto outcome =
        journal.exchange().importTrays(*preview, QFileInfo(file).fileName().toStdString());
    if (!outcome) {
        return refused(outcome.error());
    }
    print(QStringLiteral("Imported %1.").arg(ui::trayCount(outcome->trays)));
    return kDone;
}

int importIntoOld(const QString& path, const QString& file, const Clock& clock, Writing writing)
{
    const auto opened =
        Journal::open(path.toStdString(), clock,
                      writing == Writing::Nothing ? Access::ReadOnly : Access::ReadWrite);
    if (!opened) {
        return refused(opened.error());
    }
    if (writing != Writing::Nothing && (*opened)->isReadOnly()) {
        return refused(*(*opened)->readOnlyBecause());
    }
    return importInto(**opened, file, writing);
}

// A table with faults must not leave an empty journal behind, so it is tried on a passing one.
int importIntoNew(const QString& path, const QString& file, const Clock& clock, Writing writing)
{
    const QTemporaryDir passing;
    const auto trial = newJournal(passing.filePath("passing.plumule"), clock);
    if (!trial) {
        return refused(trial.error());
    }
    if (writing == Writing::Nothing) {
        return importInto(**trial, file, writing);
    }
    const auto preview = cleanPreview(**trial, file);
    if (!preview || isHeldBack(*preview, writing)) {
        return kBadCall;
    }
    auto made = newJournal(path, clock);
    if (!made) {
        return refused(made.error());
    }
    const int outcome = importInto(**made, file, writing);
    if (outcome != kDone) {
        // It was made for this table alone.
        made->reset();
        QFile::remove(path);
    }
    return outcome;
}

} // namespace

int runImport(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"dry-run", ""});
    parser.addOption({"as-it-stands", ""});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL", "FILE.csv"});
    if (!given) {
        return kBadCall;
    }
    const QString path = (*given)[0];
    const QString file = (*given)[1];
    if (!QFileInfo(file).isReadable()) {
        return badCall(QStringLiteral("%1 can't be read.").arg(file));
    }
    const Writing writing = parser.isSet("dry-run")        ? Writing::Nothing
                            : parser.isSet("as-it-stands") ? Writing::DoubtedRows
                                                           : Writing::Rows;
    const SystemClock clock;
    return QFileInfo::exists(path) ? importIntoOld(path, file, clock, writing)
                                   : importIntoNew(path, file, clock, writing);
}

} // namespace plumule::app
