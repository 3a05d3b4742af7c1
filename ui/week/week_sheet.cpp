#include "ui/week/week_sheet.h"

#include "ui/paper/paper_column.h"
#include "ui/week/week_text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

constexpr double kLineHigh = 17;

class WeekSheetTr
{
    Q_DECLARE_TR_FUNCTIONS(WeekSheet)
};

class WeekSheetMaker : private PaperColumn
{
public:
    WeekSheetMaker(const Week& week, const RoomLayout& layout, const PaperPen& pen, double wide)
        : PaperColumn(pen, wide)
        , m_week(week)
        , m_layout(layout)
        , m_units(layout.room.units)
    {}

    [[nodiscard]] std::vector<PaperBlock> blocks()
    {
        addTitle(WeekSheetTr::tr("The next 14 days"),
                 QStringLiteral("%1  ·  %2")
                     .arg(QString::fromStdString(m_layout.room.name), spanText(m_week)));
        for (const WeekDay& day : m_week.days) {
            addDay(day);
        }
        addFoot();
        return std::move(m_blocks);
    }

private:
    void addDay(const WeekDay& day)
    {
        QString about;
        if (day.expected) {
            about = WeekSheetTr::tr("expect %1, 8 in 10 %2")
                        .arg(meanText(*day.expected, m_units), rangeText(*day.expected, m_units));
        }
        addHeading(dayText(day.on), about);
        if (day.entries.empty()) {
            addWords(WeekSheetTr::tr("Nothing is due."), kPaperMuted);
        }
        for (const WeekEntry& entry : day.entries) {
            addEntry(entry);
        }
    }

    void addEntry(const WeekEntry& entry)
    {
        const QString what = entryText(entry);
        const QString behind = behindText(entry);
        const QString slot = entry.task == WeekTask::Wash || entry.task == WeekTask::Order
                                 ? QString()
                                 : nameOf(entry.slot);
        const double half = m_wide * 0.46;
        const double high = std::max(kLineHigh, m_pen.highOf(behind, 9, half) + 5);
        add(high, [=](const PaperPen& pen, QRectF at) {
            pen.box({at.x() + 1, at.y() + 3, 11, 11}, Box::Empty);
            pen.text({at.x() + 20, at.y(), at.width() * 0.40 - 20, kLineHigh}, what, 10,
                     QFont::DemiBold);
            pen.text({at.x() + at.width() * 0.41, at.y(), at.width() * 0.1, kLineHigh}, slot, 9.5,
                     QFont::Normal, kPaperMuted);
            pen.text({at.x() + at.width() - half, at.y() + 3, half, at.height() - 3}, behind, 9,
                     QFont::Normal, kPaperMuted, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
        });
    }

    void addFoot()
    {
        QStringList sums;
        for (const WeekTask task : kWeekTasks) {
            if (const QString sum = totalText(m_week, task); !sum.isEmpty()) {
                sums << nameOf(task) + ' ' + sum;
            }
        }
        if (m_week.expected) {
            sums << WeekSheetTr::tr("expect %1, 8 in 10 %2")
                        .arg(meanText(*m_week.expected, m_units),
                             rangeText(*m_week.expected, m_units));
        }
        addHeading(WeekSheetTr::tr("Together"));
        addWords(sums.isEmpty() ? WeekSheetTr::tr("Nothing is due.") : sums.join("  ·  "),
                 kPaperInk);
        addWords(WeekSheetTr::tr("* proposed by a repeating sowing; nothing is sown until you say "
                                 "so. Washing includes sanitising: clean first, follow the label, "
                                 "never mix chlorine with acids, gloves and eye protection."),
                 kPaperMuted);
    }

    const Week& m_week;
    const RoomLayout& m_layout;
    UnitText m_units;
};

PaperSheet weekSheetOf(const Week& week, const RoomLayout& layout)
{
    PaperSheet sheet;
    sheet.blocks = [&week, &layout](const PaperPen& pen, double wide) {
        return WeekSheetMaker(week, layout, pen, wide).blocks();
    };
    sheet.foot = [span = spanText(week)](std::size_t page, std::size_t pages) {
        return PaperFoot{{},
                         WeekSheetTr::tr("%1  ·  page %2 of %3").arg(span).arg(page).arg(pages)};
    };
    return sheet;
}

} // namespace

bool printWeekSheet(const Week& week, const RoomLayout& layout, QPagedPaintDevice& paper)
{
    return printSheet(paper, weekSheetOf(week, layout));
}

Done writeWeekSheet(const Week& week, const RoomLayout& layout, const QString& pdfPath)
{
    const bool isMetric = layout.room.units == UnitSystem::Metric;
    return writePdf(
        pdfPath, WeekSheetTr::tr("The next 14 days") + ", " + spanText(week),
        QPageSize(isMetric ? QPageSize::A4 : QPageSize::Letter),
        [&](QPagedPaintDevice& paper) { return printSheet(paper, weekSheetOf(week, layout)); });
}

} // namespace plumule::ui
