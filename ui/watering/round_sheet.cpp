#include "ui/watering/round_sheet.h"

#include "ui/medium/paper_marker.h"
#include "ui/paper/paper_column.h"
#include "ui/watering/round_text.h"

#include <QCoreApplication>

#include <array>

namespace plumule::ui {
namespace {

constexpr double kRowHigh = 21;

class RoundSheetTr
{
    Q_DECLARE_TR_FUNCTIONS(RoundSheet)
};

// Columns of a tray's row, in shares of the width.
constexpr std::array<double, 7> kColumns = {0.045, 0.1, 0.155, 0.185, 0.245, 0.13, 0.14};

class SheetMaker : private PaperColumn
{
public:
    SheetMaker(const Round& round, const RoomLayout& layout, UnitText units, const PaperPen& pen,
               double wide)
        : PaperColumn(pen, wide)
        , m_round(round)
        , m_layout(layout)
        , m_units(units)
        , m_key{round.date, round.slot}
    {}

    [[nodiscard]] std::vector<PaperBlock> blocks()
    {
        addRound();
        addForgotten();
        addMix();
        for (const ShelfGroup& shelf : shelvesOf(m_round)) {
            addHeading(shelfName(shelf), shelfWork(m_round, shelf));
            for (const auto& group : shelf.decisions) {
                for (const std::size_t i : group) {
                    addDecision(m_round.decisions[i]);
                }
            }
            for (const std::size_t i : shelf.trays) {
                addTray(m_round.trays[i], i != shelf.trays.back());
            }
        }
        if (m_round.toDoCount() == 0) {
            addWords(RoundSheetTr::tr("No tray needs water in this round."), kPaperMuted);
        }
        addTomorrow();
        return std::move(m_blocks);
    }

private:
    void addRound()
    {
        addTitle(titleOf(m_key), QStringLiteral("%1  ·  %2  ·  %3")
                                     .arg(QString::fromStdString(m_layout.room.name),
                                          dayText(m_round.date) + ' ' +
                                              QString::number(toQDate(m_round.date).year()),
                                          trayCount(m_round.toDoCount())));
    }

    void addForgotten()
    {
        if (const QString words = forgottenText(m_round); !words.isEmpty()) {
            addWords(words, kPaperInk);
        }
    }

    void addPair(const QString& name, const QString& value)
    {
        addWithNext(16, [name, value](const PaperPen& pen, QRectF at) {
            pen.text({at.x(), at.y(), at.width() * 0.6, at.height()}, name, 10);
            pen.text({at.x() + at.width() * 0.6, at.y(), at.width() * 0.4, at.height()}, value, 10,
                     QFont::DemiBold);
        });
    }

    void addMix()
    {
        if (m_round.mix.empty()) {
            return;
        }
        addHeading(RoundSheetTr::tr("Mix for this round"));
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
            addWords(bands.join(' ') + ' ' + RoundSheetTr::tr("Read: pH ______  EC ______"),
                     kPaperInk);
        }
        addWords(
            RoundSheetTr::tr("pH adjusters burn skin and eyes: gloves and glasses, and follow the "
                             "label. Keep plugs above the water and behind an RCD (GFCI)."),
            kPaperMuted);
    }

    void addTray(const RoundTray& tray, bool isRuled)
    {
        WaterWords water = waterWords(tray, m_units);
        if (tray.isAsNeeded && !tray.isDone()) {
            water.kind = RoundSheetTr::tr("%1, if dry").arg(water.kind);
        }
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
            pen.box({first.x() + 1, first.center().y() - 6, 12, 12},
                    tray.isDone() ? Box::Ticked : Box::Empty);
            pen.text(cell(), QString::fromStdString(tray.code), 10.5, QFont::DemiBold);
            pen.text(cell(), QString::fromStdString(tray.variety), 10);
            const QRectF medium = cell();
            drawMarker(pen, {medium.x() + 5, medium.center().y()}, tray.medium.marker);
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
        const QString ready = decision.to ? RoundSheetTr::tr("Ready") : RoundSheetTr::tr("Cut");
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
            pen.box({answers, at.y() + 6, 12, 12}, Box::Empty);
            pen.text({answers + 16, at.y() + 5, 40, 14}, ready, 9.5);
            pen.box({answers + 52, at.y() + 6, 12, 12}, Box::Empty);
            pen.text({answers + 68, at.y() + 5, 44, 14}, RoundSheetTr::tr("Not yet"), 9.5);
            pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperRule);
        });
    }

    void addTomorrow()
    {
        const Tomorrow& next = m_round.tomorrow;
        addHeading(dayText(m_round.date + 1));
        addWords(RoundSheetTr::tr(
                     "Harvest due: %1. Into light: %2. Into blackout: %3. Sow: %4. Free places "
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
    RoundKey m_key;
};

PaperSheet sheetOf(const Round& round, const RoomLayout& layout, UnitText units)
{
    PaperSheet sheet;
    sheet.blocks = [&round, &layout, units](const PaperPen& pen, double wide) {
        return SheetMaker(round, layout, units, pen, wide).blocks();
    };
    sheet.foot = [title = titleOf({round.date, round.slot}),
                  day = longDateText(round.date)](std::size_t page, std::size_t pages) {
        return PaperFoot{
            {}, RoundSheetTr::tr("%1, %2  ·  page %3 of %4").arg(title, day).arg(page).arg(pages)};
    };
    return sheet;
}

} // namespace

bool printRoundSheet(const Round& round, const RoomLayout& layout, UnitText units,
                     QPagedPaintDevice& paper)
{
    return printSheet(paper, sheetOf(round, layout, units));
}

Done writeRoundSheet(const Round& round, const RoomLayout& layout, UnitText units,
                     const QString& pdfPath)
{
    const bool isMetric = units.units() == UnitSystem::Metric;
    return writePdf(
        pdfPath, titleOf({round.date, round.slot}) + ' ' + longDateText(round.date),
        QPageSize(isMetric ? QPageSize::A4 : QPageSize::Letter),
        [&](QPagedPaintDevice& paper) { return printSheet(paper, sheetOf(round, layout, units)); });
}

} // namespace plumule::ui
