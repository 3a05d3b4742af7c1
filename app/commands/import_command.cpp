#include "app/commands/command.h"
#include "app/commands/import_options.h"
#include "core/journal/exchange/exchange_entries.h"

#include "ui/exchange/import_text.h"
#include "ui/text/text.h"
#include "ui/watering/round_text.h"

#include <QCoreApplication>
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

QString rowCount(TableKind kind, std::int64_t rows)
{
    return kind == TableKind::Trays ? ui::trayCount(static_cast<int>(rows))
                                    : QCoreApplication::translate("Import", "%n row(s) of %1",
                                                                  nullptr, static_cast<int>(rows))
                                          .arg(QString::fromUtf8(toText(kind)));
}

void printHeld(const ImportPreview& preview)
{
    QStringList lines;
    for (const HeldRow& row : preview.held) {
        lines << QString::number(row.line);
    }
    if (!lines.isEmpty()) {
        print(QStringLiteral("left out, as they are there already: %1 (lines %2%3)")
                  .arg(QString::number(preview.heldCount), lines.join(", "),
                       preview.heldCount > lines.size() ? QStringLiteral(", …") : QString()));
    }
}

void printPreview(const ImportPreview& preview)
{
    print(rowCount(preview.form.kind, preview.rows));
    printHeld(preview);
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
    if (preview.faultCount > static_cast<std::int64_t>(preview.faults.size())) {
        badCall(QStringLiteral("%1 faults in all.").arg(preview.faultCount));
    }
    badCall("Nothing was imported.");
}

Result<std::unique_ptr<Journal>> newJournal(const QString& path, const Clock& clock)
{
    RoomPlan plan;
    plan.room.name = QFileInfo(path).completeBaseName().toStdString();
    return Journal::create(path.toStdString(), plan, clock);
}

enum class Writing
{
    Rows,        // where none looks wrong
    DoubtedRows, // these too
    Nothing      // only what would be written is told
};

// What is brought in, and how.
struct Incoming
{
    QString file;
    TableAsk ask;
    Writing writing = Writing::Rows;
};

// A preview without faults; nullopt, and what is wrong said, where there is none.
std::optional<ImportPreview> cleanPreview(Journal& journal, const Incoming& incoming)
{
    auto preview = journal.exchange().preview(incoming.file.toStdString(), incoming.ask);
    if (!preview) {
        badCall(ui::sentence(preview.error()));
        return std::nullopt;
    }
    if (!preview->isClean()) {
        printFaults(*preview);
        return std::nullopt;
    }
    return std::move(*preview);
}

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

int importInto(Journal& journal, const Incoming& incoming)
{
    const auto preview = cleanPreview(journal, incoming);
    if (!preview || isHeldBack(*preview, incoming.writing)) {
        return kBadCall;
    }
    printPreview(*preview);
    if (incoming.writing == Writing::Nothing) {
        print(QStringLiteral("Nothing was written."));
        return kDone;
    }
    const auto outcome =
        journal.exchange().importTable(*preview, QFileInfo(incoming.file).fileName().toStdString());
    if (!outcome) {
        return refused(outcome.error());
    }
    print(QStringLiteral("Imported %1.").arg(rowCount(preview->form.kind, *outcome)));
    return kDone;
}

int importIntoOld(const QString& path, const Incoming& incoming, const Clock& clock)
{
    const bool isTried = incoming.writing == Writing::Nothing;
    const auto opened =
        Journal::open(path.toStdString(), clock, isTried ? Access::ReadOnly : Access::ReadWrite);
    if (!opened) {
        return refused(opened.error());
    }
    if (!isTried && (*opened)->isReadOnly()) {
        return refused(*(*opened)->readOnlyBecause());
    }
    return importInto(**opened, incoming);
}

// A table with faults must not leave an empty journal behind, so it is tried on a passing one.
int importIntoNew(const QString& path, const Incoming& incoming, const Clock& clock)
{
    const QTemporaryDir passing;
    const auto trial = newJournal(passing.filePath("passing.plumule"), clock);
    if (!trial) {
        return refused(trial.error());
    }
    if (incoming.writing == Writing::Nothing) {
        return importInto(**trial, incoming);
    }
    const auto preview = cleanPreview(**trial, incoming);
    if (!preview || isHeldBack(*preview, incoming.writing)) {
        return kBadCall;
    }
    auto made = newJournal(path, clock);
    if (!made) {
        return refused(made.error());
    }
    const int outcome = importInto(**made, incoming);
    if (outcome != kDone) {
        // It was made for this table alone.
        made->reset();
        QFile::remove(path);
    }
    return outcome;
}

int importEverything(const QCommandLineParser& parser, const QStringList& arguments)
{
    for (const char* other :
         {"as", "column", "unit", "dates", "decimals", "encoding", "dry-run", "as-it-stands"}) {
        if (parser.isSet(other)) {
            return badCall(QStringLiteral("--%1 does not go with --everything.").arg(other));
        }
    }
    const auto outcome = makeJournalOf(arguments[0].toStdString(), arguments[1].toStdString());
    if (!outcome) {
        return refused(outcome.error());
    }
    print(QStringLiteral("Read %1 rows and %2 photographs into %3.")
              .arg(QString::number(outcome->rows), QString::number(outcome->photos), arguments[1]));
    printNames("photographs that are not in the folder", outcome->missingPhotos);
    return kDone;
}

} // namespace

int runImport(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"dry-run", ""});
    parser.addOption({"as-it-stands", ""});
    parser.addOption({"everything", ""});
    addReadingOptions(parser);
    const auto given = argumentsOf(parser, arguments, {"JOURNAL", "FILE.csv"});
    if (!given) {
        return kBadCall;
    }
    if (parser.isSet("everything")) {
        return importEverything(parser, *given);
    }
    const auto ask = readingAsked(parser);
    if (!ask) {
        return kBadCall;
    }
    const QString path = (*given)[0];
    const Incoming incoming{(*given)[1], *ask,
                            parser.isSet("dry-run")        ? Writing::Nothing
                            : parser.isSet("as-it-stands") ? Writing::DoubtedRows
                                                           : Writing::Rows};
    if (!QFileInfo(incoming.file).isReadable()) {
        return badCall(QStringLiteral("%1 can't be read.").arg(incoming.file));
    }
    const SystemClock clock;
    return QFileInfo::exists(path) ? importIntoOld(path, incoming, clock)
                                   : importIntoNew(path, incoming, clock);
}

} // namespace plumule::app
