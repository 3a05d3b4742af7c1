#include "ui/stock/stock_sheet.h"

#include "ui/paper/paper_column.h"
#include "ui/stock/stock_text.h"

#include <QCoreApplication>

#include <array>

namespace plumule::ui {
namespace {

constexpr double kRowHigh = 19;

class SheetTr
{
    Q_DECLARE_TR_FUNCTIONS(StockSheet)
};

// Name, left, days, what is to be done, and where the count is written.
constexpr std::array<double, 5> kColumns = {0.36, 0.14, 0.12, 0.2, 0.18};

class StockSheetMaker : private PaperColumn
{
public:
    StockSheetMaker(const Stock& stock, const UnitText& units, const PaperPen& pen, double wide)
        : PaperColumn(pen, wide)
        , m_stock(stock)
        , m_units(units)
    {}

    [[nodiscard]] std::vector<PaperBlock> blocks()
    {
        addTitle(SheetTr::tr("Stock"), longDateText(m_stock.today));
        if (const QString low = lowSentence(m_stock.low); !low.isEmpty()) {
            addWords(low, kPaperInk);
        }
        addHeading(SheetTr::tr("Seed lots"), heads());
        for (const SeedLine& line : m_stock.seed) {
            addRow({QString::fromStdString(line.variety + ", " + line.stock.lot.lotNumber),
                    line.stock.left ? m_units.mass(*line.stock.left, 0) : SheetTr::tr("?"),
                    daysText(line.daysLeft), lowReason(line.low)});
        }
        addHeading(SheetTr::tr("Media, water, packing"), heads());
        for (const StockLine& line : m_stock.supplies) {
            addRow({QString::fromStdString(line.item.name),
                    line.left ? amountText(*line.left, line.item.unit, m_units)
                              : SheetTr::tr("not counted"),
                    daysText(line.daysLeft), lowReason(line.low)});
        }
        for (const PieceGroup& group : m_stock.pieces) {
            addPieces(group);
        }
        addWords(SheetTr::tr("Sanitisers burn skin and eyes: gloves and glasses, follow the "
                             "label, never mix chlorine with acids."),
                 kPaperMuted);
        return std::move(m_blocks);
    }

private:
    static QString heads() { return SheetTr::tr("left · out in days · counted"); }

    void addRow(const QStringList& cells)
    {
        add(kRowHigh, [cells](const PaperPen& pen, QRectF at) {
            double x = at.x();
            for (std::size_t i = 0; i < kColumns.size(); ++i) {
                const double wide = kColumns[i] * at.width();
                const auto index = static_cast<qsizetype>(i);
                if (index < cells.size()) {
                    pen.text({x, at.y(), wide - 6, at.height()}, cells[index], 10,
                             i == 1 ? QFont::DemiBold : QFont::Normal);
                } else {
                    pen.line({x, at.bottom() - 4}, {x + wide, at.bottom() - 4}, kPaperInk);
                }
                x += wide;
            }
        });
    }

    void addPieces(const PieceGroup& group)
    {
        addHeading(QString::fromStdString(group.medium.name), groupText(group));
        for (const PieceLine& line : group.pieces) {
            const QString words = SheetTr::tr("%1: %n use(s), %2", nullptr, line.record.uses)
                                      .arg(line.record.piece.number)
                                      .arg(nowText(line));
            const QString beside =
                sanitisedText(line.sanitised) + QStringLiteral("  ") + dueText(line, m_stock.today);
            add(kRowHigh, [words, beside](const PaperPen& pen, QRectF at) {
                const double half = at.width() * 0.45;
                pen.text({at.x(), at.y(), half - 6, at.height()}, words, 10);
                pen.text({at.x() + half, at.y(), at.width() - half, at.height()}, beside, 10);
            });
        }
    }

    const Stock& m_stock;
    UnitText m_units;
};

} // namespace

bool printStockSheet(const Stock& stock, const UnitText& units, QPagedPaintDevice& paper)
{
    PaperSheet sheet;
    sheet.blocks = [&stock, &units](const PaperPen& pen, double wide) {
        return StockSheetMaker(stock, units, pen, wide).blocks();
    };
    sheet.foot = [day = longDateText(stock.today)](std::size_t page, std::size_t pages) {
        return PaperFoot{{},
                         SheetTr::tr("Stock, %1  ·  page %2 of %3").arg(day).arg(page).arg(pages)};
    };
    return printSheet(paper, sheet);
}

} // namespace plumule::ui
