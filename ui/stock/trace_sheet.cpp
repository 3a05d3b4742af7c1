#include "ui/stock/trace_sheet.h"

#include "core/journal/journal.h"
#include "core/journal/stock/stock_entries.h"
#include "ui/medium/paper_marker.h"
#include "ui/paper/paper_column.h"
#include "ui/stock/stock_text.h"

#include <QCoreApplication>

#include <map>

namespace plumule::ui {
namespace {

constexpr double kSowingHigh = 20;

class TraceSheetTr
{
    Q_DECLARE_TR_FUNCTIONS(TraceSheet)
};

class TraceSheetMaker : private PaperColumn
{
public:
    TraceSheetMaker(const UnitText& units, const PaperPen& pen, double wide)
        : PaperColumn(pen, wide)
        , m_units(units)
    {}

    [[nodiscard]] std::vector<PaperBlock> blocks(const ForwardTrace& trace, Date today)
    {
        addTitle(titleOf(trace), longDateText(today));
        for (const QString& fact : factsOf(trace, m_units)) {
            addWords(fact, kPaperInk);
        }
        addHeading(TraceSheetTr::tr("Trays"), TraceSheetTr::tr("sown · codes · cut"));
        for (const TracedSowing& sowing : trace.sowings) {
            addSowing(sowing);
        }
        addHeading(TraceSheetTr::tr("Together"));
        addWords(sumText(trace.sums) + QStringLiteral("; ") +
                     TraceSheetTr::tr("%1 cut.").arg(m_units.mass(trace.sums.yield, 0)),
                 kPaperInk);
        if (const QString held = promisesText(trace.sums); !held.isEmpty()) {
            addWords(held, kPaperInk);
        }
        return std::move(m_blocks);
    }

    [[nodiscard]] std::vector<PaperBlock> blocks(const BackTrace& trace, Date today)
    {
        addTitle(titleOf(trace), longDateText(today));
        for (const TraceStep& step : stepsOf(trace, m_units)) {
            addHeading(step.what);
            for (const QString& line : step.lines) {
                addWords(line, kPaperInk);
            }
        }
        return std::move(m_blocks);
    }

private:
    void addSowing(const TracedSowing& sowing)
    {
        const QString codes =
            codesOf(sowing) + QStringLiteral("  ") + QString::fromStdString(sowing.variety);
        const QString cut = cutText(sowing);
        const QString weight = m_units.mass(sowing.yield(), 0);
        std::map<int, int> byMarker;
        for (const TracedTray& tray : sowing.trays) {
            ++byMarker[tray.medium.marker];
        }
        const double codesHigh = m_pen.highOf(codes, 10, m_wide * 0.4);
        add(std::max(kSowingHigh, codesHigh + 6),
            [=, on = longDateText(sowing.on)](const PaperPen& pen, QRectF at) {
                const double wide = at.width();
                pen.text({at.x(), at.y(), wide * 0.16, kSowingHigh}, on, 10, QFont::DemiBold);
                pen.text({at.x() + wide * 0.16, at.y() + 3, wide * 0.4, at.height()}, codes, 10,
                         QFont::Normal, kPaperInk, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
                double x = at.x() + wide * 0.58;
                for (const auto& [marker, count] : byMarker) {
                    pen.text({x, at.y(), 14, kSowingHigh}, QString::number(count), 10);
                    drawMarker(pen, {x + 18, at.y() + kSowingHigh / 2}, marker);
                    x += 26;
                }
                pen.text({at.x() + wide * 0.72, at.y(), wide * 0.18, kSowingHigh}, cut, 9.5);
                pen.text({at.x() + wide * 0.9, at.y(), wide * 0.1, kSowingHigh}, weight, 10,
                         QFont::DemiBold, kPaperInk, Qt::AlignRight | Qt::AlignVCenter);
                pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperRule);
            });
        for (const TraceNote& note : notesOf(sowing)) {
            addWords(note.words, note.isWarned ? kPaperInk : kPaperMuted);
        }
    }

    UnitText m_units;
};

PaperSheet sheetOf(const QString& title, Date today,
                   std::function<std::vector<PaperBlock>(const PaperPen&, double)> blocks)
{
    PaperSheet sheet;
    sheet.blocks = std::move(blocks);
    sheet.foot = [title, day = longDateText(today)](std::size_t page, std::size_t pages) {
        return PaperFoot{
            {}, TraceSheetTr::tr("%1, %2  ·  page %3 of %4").arg(title, day).arg(page).arg(pages)};
    };
    return sheet;
}

} // namespace

bool printTraceSheet(Journal& journal, const TraceFrom& from, const UnitText& units,
                     QPagedPaintDevice& paper)
{
    const Date today = journal.clock().today();
    if (const auto* tray = std::get_if<TrayId>(&from)) {
        const auto trace = journal.stock().back(*tray);
        return trace &&
               printSheet(paper,
                          sheetOf(titleOf(*trace), today, [&](const PaperPen& pen, double wide) {
                              return TraceSheetMaker(units, pen, wide).blocks(*trace, today);
                          }));
    }
    const auto trace = journal.stock().forward(from);
    return trace &&
           printSheet(paper, sheetOf(titleOf(*trace), today, [&](const PaperPen& pen, double wide) {
                          return TraceSheetMaker(units, pen, wide).blocks(*trace, today);
                      }));
}

} // namespace plumule::ui
