#include "core/exchange/table_look.h"

#include "core/base/work_reason.h"
#include "core/exchange/row_fault.h"

namespace plumule {
namespace {

constexpr std::size_t kHeldKept = 200;
constexpr std::size_t kRowsShown = 200;
constexpr int kRowsPerReport = 200;

enum class Judged
{
    New,
    LeftOut // faulty, there already, or not told yet
};

// Walks through a file and says of each row what becomes of it.
class TableWalk
{
public:
    TableWalk(CsvReader& reader, const TableForm& form, TableKeeper& keeper)
        : m_reader(reader)
        , m_keeper(keeper)
        , m_cells(form, reader.header(), m_faults)
    {
        m_keeper.begin([this](std::string key) { m_known.emplace(std::move(key), 0); });
    }

    // Calls `take(Judged)` for each row; stops where that is false.
    template <class Take>
    Done eachRow(const Progress& progress, Take take)
    {
        for (int row = 0;; ++row) {
            const auto isRow = m_reader.next();
            if (!isRow) {
                return passOn(isRow);
            }
            if (!*isRow) {
                m_keeper.finish(m_faults, m_held);
                return {};
            }
            if (row % kRowsPerReport == 0) {
                progress.report(m_reader.fractionRead());
                if (progress.isStopped()) {
                    return fail(ErrorKind::Cancelled, WorkReason::Stopped);
                }
            }
            if (!take(judge())) {
                return {};
            }
        }
    }

    [[nodiscard]] RowCells& cells() { return m_cells; }
    [[nodiscard]] const FaultList& faults() const { return m_faults; }
    [[nodiscard]] const HeldRows& held() const { return m_held; }

private:
    Judged judge()
    {
        m_cells.turnTo(m_reader.cells(), m_reader.line());
        if (m_reader.cells().size() != m_reader.header().size()) {
            m_cells.fault(ErrorKind::Invalid, ExchangeReason::CellCount, m_reader.cells().size(),
                          m_reader.header().size());
            return Judged::LeftOut;
        }
        std::string key = m_keeper.read(m_cells);
        if (m_cells.hasFaults()) {
            return Judged::LeftOut;
        }
        const auto [known, isNew] = m_known.emplace(std::move(key), m_reader.line());
        if (!isNew) {
            m_held.add({m_reader.line(), known->second});
            return Judged::LeftOut;
        }
        return m_keeper.accept(m_cells) == Fate::New ? Judged::New : Judged::LeftOut;
    }

    CsvReader& m_reader;
    TableKeeper& m_keeper;
    FaultList m_faults;
    HeldRows m_held;
    RowCells m_cells;
    std::unordered_map<std::string, int> m_known;
};

std::vector<Error> missingColumns(const TableForm& form)
{
    const auto& columns = columnsOf(form.kind);
    std::vector<Error> faults;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (columns[i].need != Need::Nothing && !form.columns[i].at) {
            faults.push_back(faultAt("", 1, ErrorKind::Missing, ExchangeReason::ColumnMissing,
                                     std::string(columns[i].name))
                                 .value());
        }
    }
    return faults;
}

std::vector<std::string> leftOut(const std::vector<std::string>& header, const TableForm& form)
{
    std::vector<bool> isRead(header.size());
    for (const ColumnMatch& match : form.columns) {
        if (match.at) {
            isRead[*match.at] = true;
        }
    }
    std::vector<std::string> names;
    for (std::size_t i = 0; i < header.size(); ++i) {
        if (!isRead[i]) {
            names.push_back(header[i]);
        }
    }
    return names;
}

} // namespace

void HeldRows::add(HeldRow row)
{
    ++m_count;
    if (m_kept.size() < kHeldKept) {
        m_kept.push_back(row);
    }
}

Result<ImportPreview> lookThrough(std::string_view text, const TableForm& form, TableKeeper& keeper,
                                  const Progress& progress)
{
    auto reader = CsvReader::on(text);
    if (!reader) {
        return passOn(reader);
    }
    ImportPreview preview;
    preview.form = form;
    preview.header = reader->header();
    preview.unknownColumns = leftOut(preview.header, form);
    preview.faults = missingColumns(form);
    preview.faultCount = static_cast<std::int64_t>(preview.faults.size());
    if (!preview.isClean()) {
        return preview;
    }
    TableWalk walk(*reader, form, keeper);
    const Done walked = walk.eachRow(progress, [&](Judged judged) {
        if (judged == Judged::New && preview.firstRows.size() < kRowsShown) {
            preview.firstRows.push_back({walk.cells().line(), walk.cells().shown()});
        }
        preview.rows += judged == Judged::New ? 1 : 0;
        return true;
    });
    if (!walked) {
        return passOn(walked);
    }
    preview.faults = walk.faults().sorted();
    preview.faultCount = walk.faults().count();
    preview.held = walk.held().rows();
    preview.heldCount = walk.held().count();
    keeper.tell(preview);
    return preview;
}

Result<std::int64_t> storeThrough(std::string_view text, const TableForm& form,
                                  StoringKeeper& keeper, const Progress& progress)
{
    auto reader = CsvReader::on(text);
    if (!reader) {
        return passOn(reader);
    }
    TableWalk walk(*reader, form, keeper);
    std::int64_t stored = 0;
    const Done walked = walk.eachRow(progress, [&](Judged judged) {
        if (judged == Judged::New) {
            keeper.store();
            ++stored;
        }
        return walk.faults().count() == 0;
    });
    if (!walked) {
        return passOn(walked);
    }
    if (walk.faults().count() > 0) {
        return passOn(walk.faults().sorted().front());
    }
    return stored;
}

} // namespace plumule
