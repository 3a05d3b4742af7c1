#include "ui/watering/round_sheet.h"

#include "ui/medium/marker.h"
#include "ui/shared/theme.h"
#include "ui/watering/round_text.h"

#include <QCoreApplication>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

#include <array>
#include <functional>

namespace plumule::ui {
namespace {

const QColor kPaperInk(20, 24, 22);
const QColor kPaperMuted(95, 100, 97);
const QColor kPaperRule(190, 194, 190);
constexpr double kMargin = 36; // points, as all lengths of the sheet
constexpr double kFooter = 22;
constexpr double kRowHigh = 21;

QString onPaper(const char* text)
{
    return QCoreApplication::translate("RoundSheet", text);
}

// Columns of a tray's row, in shares of the width.
constexpr std::array<double, 7> kColumns = {0.045, 0.1, 0.155, 0.185, 0.245, 0.13, 0.14};

// Draws in points on a device of any resolution.
class PaperPen
{
public:
    PaperPen(QPainter& painter, double pixelsPerPoint)
        : m_painter(painter)
        , m_scale(pixelsPerPoint)
    {}

    [[nodiscard]] QPainter& painter() const { return m_painter; }
    [[nodiscard]] QFont font(double points, QFont::Weight weight = QFont::Normal) const
    {
        QFont font = uiFont(1.0, weight);
        font.setPixelSize(qMax(1, qRound(points * m_scale)));
        return font;
    }
    [[nodiscard]] QRectF onDevice(QRectF rect) const
    {
        return {rect.topLeft() * m_scale, rect.size() * m_scale};
    }
    void text(QRectF cell, const QString& words, double points,
              QFont::Weight weight = QFont::Normal, const QColor& ink = kPaperInk,
              int flags = Qt::AlignLeft | Qt::AlignVCenter) const
    {
        const QRectF rect = onDevice(cell);
        const QFont used = font(points, weight);
        const bool isWrapped = (flags & Qt::TextWordWrap) != 0;
        m_painter.setFont(used);
        m_painter.setPen(ink);
        m_painter.drawText(
            rect, flags,
            isWrapped ? words
                      : QFontMetricsF(used).elidedText(words, Qt::ElideRight, rect.width()));
    }
    // The height in points of a text wrapped in that width.
    [[nodiscard]] double highOf(const QString& words, double points, double wide) const
    {
        const QRectF box(0, 0, wide * m_scale, 1e6);
        return QFontMetricsF(font(points)).boundingRect(box, Qt::TextWordWrap, words).height() /
               m_scale;
    }
    [[nodiscard]] double wideOf(const QString& words, double points, QFont::Weight weight) const
    {
        return QFontMetricsF(font(points, weight)).horizontalAdvance(words) / m_scale;
    }
    void line(QPointF from, QPointF to, const QColor& ink, double thick = 0.5) const
    {
        m_painter.setPen(QPen(ink, thick * m_scale));
        m_painter.drawLine(from * m_scale, to * m_scale);
    }
    void box(QRectF square, bool isTicked) const
    {
        m_painter.setPen(QPen(kPaperInk, 0.9 * m_scale));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRoundedRect(onDevice(square), 2 * m_scale, 2 * m_scale);
        if (isTicked) {
            const auto at = [&](double x, double y) {
                return QPointF(square.x() + x * square.width(), square.y() + y * square.height()) *
                       m_scale;
            };
            m_painter.setPen(QPen(kPaperInk, 1.4 * m_scale));
            m_painter.drawPolyline(QPolygonF({at(0.22, 0.52), at(0.43, 0.74), at(0.8, 0.26)}));
        }
    }
    // In one ink: its shape tells the medium.
    void marker(QPointF centre, int marker) const
    {
        m_painter.save();
        m_painter.translate(centre * m_scale);
        m_painter.fillPath(markerShape(marker, 7 * m_scale), kPaperInk);
        m_painter.restore();
    }

private:
    QPainter& m_painter;
    double m_scale;
};

// A piece of the sheet that is not broken over pages.
struct Block
{
    double high = 0;
    bool staysWithNext = false;
    std::function<void(const PaperPen&, QRectF)> draw;
};

class SheetMaker
{
public:
    SheetMaker(const Round& round, const RoomLayout& layout, UnitText units, PaperPen pen,
               double wide)
        : m_round(round)
        , m_layout(layout)
        , m_units(units)
        , m_pen(pen)
        , m_wide(wide)
        , m_key{round.date, round.slot}
    {}

    [[nodiscard]] std::vector<Block> blocks()
    {
        addTitle();
        addMix();
        for (const ShelfGroup& shelf : shelvesOf(m_round)) {
            addHeading(shelfName(shelf), shelfWork(m_round, shelf));
            for (const std::size_t i : shelf.trays) {
                addTray(m_round.trays[i], i != shelf.trays.back());
            }
        }
        if (m_round.trays.empty()) {
            addWords(onPaper("No tray needs water in this round."), kPaperMuted);
        }
        if (!m_round.decisions.empty()) {
            addHeading(onPaper("Look, then decide"), QString());
            for (const StageDecision& decision : m_round.decisions) {
                addDecision(decision);
            }
        }
        addTomorrow();
        return std::move(m_blocks);
    }

private:
    void add(double high, std::function<void(const PaperPen&, QRectF)> draw,
             bool staysWithNext = false)
    {
        m_blocks.push_back({high, staysWithNext, std::move(draw)});
    }

    void addTitle()
    {
        const QString title = titleOf(m_key);
        const QString under =
            QStringLiteral("%1  ·  %2  ·  %3")
                .arg(QString::fromStdString(m_layout.room.name),
                     dayText(m_round.date) + ' ' + QString::number(toQDate(m_round.date).year()),
                     trayCount(static_cast<int>(m_round.trays.size())));
        add(50, [title, under](const PaperPen& pen, QRectF at) {
            pen.text({at.x(), at.y(), at.width(), 26}, title, 20, QFont::DemiBold);
            pen.text({at.x(), at.y() + 27, at.width(), 14}, under, 10, QFont::Normal, kPaperMuted);
        });
    }

    void addHeading(const QString& name, const QString& about)
    {
        add(
            28,
            [name, about](const PaperPen& pen, QRectF at) {
                const QRectF words(at.x(), at.y() + 10, at.width(), 16);
                pen.text(words, name, 10.5, QFont::DemiBold);
                const double wide = pen.wideOf(name, 10.5, QFont::DemiBold) + 8;
                pen.text(words.adjusted(wide, 0, 0, 0), about, 10, QFont::Normal, kPaperMuted);
                pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperInk, 0.8);
            },
            true);
    }

    void addWords(const QString& words, const QColor& ink)
    {
        add(m_pen.highOf(words, 9.5, m_wide) + 12, [words, ink](const PaperPen& pen, QRectF at) {
            pen.text(at.adjusted(0, 8, 0, 0), words, 9.5, QFont::Normal, ink,
                     Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
        });
    }

    void addPair(const QString& name, const QString& value)
    {
        add(
            16,
            [name, value](const PaperPen& pen, QRectF at) {
                pen.text({at.x(), at.y(), at.width() * 0.6, at.height()}, name, 10);
                pen.text({at.x() + at.width() * 0.6, at.y(), at.width() * 0.4, at.height()}, value,
                         10, QFont::DemiBold);
            },
            true);
    }

    void addMix()
    {
        if (m_round.mix.empty()) {
            return;
        }
        addHeading(onPaper("Mix for this round"), QString());
        QStringList bands;
        for (const MixLine& mix : m_round.mix) {
            addPair(mixName(mix),
                    mix.total > Volume() ? m_units.mixed(mix.total) : trayCount(mix.unmeasured));
            if (mix.recipe && mix.concentrate) {
                addPair(QStringLiteral("    %1 %2")
                            .arg(QString::fromStdString(mix.recipe->concentrate),
                                 m_units.dose(*mix.recipe->dosePerLitre)),
                        m_units.concentrate(*mix.concentrate));
            }
            const QString band = mix.recipe ? bandText(*mix.recipe) : QString();
            const QString words = capitalised(nameOf(mix.water)) + ": " + band + '.';
            if (!band.isEmpty() && !bands.contains(words)) {
                bands << words;
            }
        }
        m_blocks.back().staysWithNext = false;
        if (!bands.isEmpty()) {
            addWords(bands.join(' ') + ' ' + onPaper("Read: pH ______  EC ______"), kPaperInk);
        }
        addWords(onPaper("pH adjusters burn skin and eyes: gloves and glasses, and follow the "
                         "label. Keep plugs above the water and behind an RCD (GFCI)."),
                 kPaperMuted);
    }

    void addTray(const RoundTray& tray, bool isRuled)
    {
        const WaterWords water = waterWords(tray, m_units);
        const QString missed = missedText(tray, m_key);
        const QString last = missed.isEmpty() ? lastText(tray, m_key) : missed;
        add(kRowHigh, [=](const PaperPen& pen, QRectF at) {
            double x = at.x();
            std::size_t column = 0;
            const auto cell = [&] {
                const double wide = kColumns[column++] * at.width();
                const QRectF rect(x, at.y(), wide - 6, at.height());
                x += wide;
                return rect;
            };
            const QRectF first = cell();
            pen.box({first.x() + 1, first.center().y() - 6, 12, 12}, tray.isDone());
            pen.text(cell(), QString::fromStdString(tray.code), 10.5, QFont::DemiBold);
            pen.text(cell(), QString::fromStdString(tray.variety), 10);
            const QRectF medium = cell();
            pen.marker({medium.x() + 5, medium.center().y()}, tray.medium.marker);
            pen.text(medium.adjusted(14, 0, 0, 0), QString::fromStdString(tray.medium.name), 10);
            const QRectF given = cell();
            const double amount =
                water.amount.isEmpty() ? 0 : pen.wideOf(water.amount, 10, QFont::DemiBold) + 4;
            pen.text(given, water.amount, 10, QFont::DemiBold);
            pen.text(given.adjusted(amount, 0, 0, 0), water.kind, 10);
            pen.text(cell(), dayOfGrowth(tray), 10, QFont::Normal, kPaperMuted);
            pen.text(cell(), last, 10, missed.isEmpty() ? QFont::Normal : QFont::DemiBold,
                     missed.isEmpty() ? kPaperMuted : kPaperInk);
            if (isRuled) {
                pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperRule);
            }
        });
    }

    void addDecision(const StageDecision& decision)
    {
        const double cueWide = m_wide * 0.5;
        const QString cue = cueText(decision);
        const QString late = latenessText(decision);
        QString where = nameOf(decision.spot);
        if (!late.isEmpty()) {
            where += QString::fromUtf8(" · ") + late;
        }
        const double high = qMax(32.0, m_pen.highOf(cue, 10, cueWide) + 10);
        const QString ready = decision.to ? onPaper("Ready") : onPaper("Cut");
        add(high, [=](const PaperPen& pen, QRectF at) {
            const QRectF names(at.x(), at.y() + 4, at.width() * 0.27, 14);
            const QString code = QString::fromStdString(decision.code);
            const double wide = pen.wideOf(code, 10.5, QFont::DemiBold) + 8;
            pen.text(names, code, 10.5, QFont::DemiBold);
            pen.text(names.adjusted(wide, 0, 0, 0), QString::fromStdString(decision.variety), 10);
            pen.text(names.translated(0, 14), where, 9, QFont::Normal, kPaperMuted);
            pen.text({at.x() + at.width() * 0.28, at.y() + 4, cueWide, at.height() - 6}, cue, 10,
                     QFont::Normal, kPaperInk, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
            const double answers = at.x() + at.width() * 0.8;
            pen.box({answers, at.y() + 6, 12, 12}, false);
            pen.text({answers + 16, at.y() + 5, 40, 14}, ready, 9.5);
            pen.box({answers + 52, at.y() + 6, 12, 12}, false);
            pen.text({answers + 68, at.y() + 5, 44, 14}, onPaper("Not yet"), 9.5);
            pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperRule);
        });
    }

    void addTomorrow()
    {
        const Tomorrow& next = m_round.tomorrow;
        addHeading(dayText(m_round.date + 1), QString());
        addWords(onPaper("Harvest due: %1. Into light: %2. Into blackout: %3. Sow: %4. Free places "
                         "now: %5 of %6.")
                     .arg(trayCount(next.harvests), trayCount(next.intoLight),
                          trayCount(next.intoBlackout), trayCount(next.toSow))
                     .arg(next.freePlaces)
                     .arg(next.places),
                 kPaperInk);
    }

    const Round& m_round;
    const RoomLayout& m_layout;
    UnitText m_units;
    PaperPen m_pen;
    double m_wide;
    RoundKey m_key;
    std::vector<Block> m_blocks;
};

// Which blocks stand on which page.
std::vector<std::vector<const Block*>> pagesOf(const std::vector<Block>& blocks, double high)
{
    std::vector<std::vector<const Block*>> pages(1);
    double used = 0;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        double needed = blocks[i].high;
        for (std::size_t next = i; blocks[next].staysWithNext && next + 1 < blocks.size(); ++next) {
            needed += blocks[next + 1].high;
        }
        if (used > 0 && used + needed > high) {
            pages.emplace_back();
            used = 0;
        }
        pages.back().push_back(&blocks[i]);
        used += blocks[i].high;
    }
    return pages;
}

void setUpPaper(QPagedPaintDevice& paper, UnitText units)
{
    const bool isMetric = units.units() == UnitSystem::Metric;
    paper.setPageSize(QPageSize(isMetric ? QPageSize::A4 : QPageSize::Letter));
    paper.setPageMargins(QMarginsF());
}

} // namespace

bool printRoundSheet(const Round& round, const RoomLayout& layout, UnitText units,
                     QPagedPaintDevice& paper)
{
    QPainter painter;
    if (!painter.begin(&paper)) {
        return false;
    }
    const double scale = paper.logicalDpiX() / 72.0;
    const QSizeF whole = QSizeF(paper.width(), paper.height()) / scale;
    const QRectF area(kMargin, kMargin, whole.width() - 2 * kMargin,
                      whole.height() - 2 * kMargin - kFooter);
    const PaperPen pen(painter, scale);
    const auto blocks = SheetMaker(round, layout, units, pen, area.width()).blocks();
    const auto pages = pagesOf(blocks, area.height());
    for (std::size_t page = 0; page < pages.size(); ++page) {
        if (page > 0 && !paper.newPage()) {
            return false;
        }
        double y = area.y();
        for (const Block* block : pages[page]) {
            block->draw(pen, {area.x(), y, area.width(), block->high});
            y += block->high;
        }
        const QString foot = onPaper("%1, %2  ·  page %3 of %4")
                                 .arg(titleOf({round.date, round.slot}), longDateText(round.date))
                                 .arg(page + 1)
                                 .arg(pages.size());
        pen.text({area.x(), whole.height() - kMargin - 12, area.width(), 12}, foot, 8.5,
                 QFont::Normal, kPaperMuted, Qt::AlignRight | Qt::AlignVCenter);
    }
    return painter.end();
}

bool writeRoundSheet(const Round& round, const RoomLayout& layout, UnitText units,
                     const QString& pdfPath)
{
    QSaveFile file(pdfPath);
    if (!file.open(QIODevice::WriteOnly)) {
        return false;
    }
    {
        QPdfWriter writer(&file);
        writer.setResolution(600);
        writer.setTitle(titleOf({round.date, round.slot}) + ' ' + longDateText(round.date));
        writer.setCreator(QStringLiteral("Plumule"));
        setUpPaper(writer, units);
        if (!printRoundSheet(round, layout, units, writer)) {
            return false;
        }
    }
    return file.commit();
}

} // namespace plumule::ui
