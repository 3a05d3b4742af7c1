#include "ui/trial/prep_sheet.h"

#include "ui/medium/paper_marker.h"
#include "ui/paper/paper_column.h"
#include "ui/trial/plan_text.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <utility>

namespace plumule::ui {
namespace {

constexpr double kLine = 17;

class PrepSheetTr
{
    Q_DECLARE_TR_FUNCTIONS(PrepSheet)
};

const Medium* mediumOf(const PrepSheet& sheet, const PlannedTray& tray)
{
    const auto position = static_cast<std::size_t>(tray.treatment);
    if (position >= sheet.draft.treatments.size()) {
        return nullptr;
    }
    const auto found = sheet.media.find(sheet.draft.treatments[position].medium);
    return found == sheet.media.end() ? nullptr : &found->second;
}

QString treatmentName(const PrepSheet& sheet, const Treatment& treatment)
{
    const auto found = sheet.media.find(treatment.medium);
    const QString medium =
        found == sheet.media.end() ? QString() : QString::fromStdString(found->second.name);
    const QString feeding = nameOf(treatment.feeding);
    return feeding.isEmpty() ? medium : medium + ' ' + feeding;
}

// A shelf with its planned trays, in walking order.
struct PlannedShelf
{
    QString name;
    std::vector<std::pair<Spot, const PlannedTray*>> trays;
};

std::vector<PlannedShelf> plannedShelves(const PrepSheet& sheet)
{
    std::vector<PlannedShelf> shelves;
    std::map<PlaceId, const PlannedTray*> byPlace;
    for (const PlannedTray& tray : sheet.draft.trays) {
        if (tray.place) {
            byPlace[*tray.place] = &tray;
        }
    }
    std::optional<ShelfId> last;
    for (const Spot& spot : sheet.layout.spots()) {
        const auto found = byPlace.find(spot.place);
        if (found == byPlace.end()) {
            continue;
        }
        if (last != spot.shelfId) {
            last = spot.shelfId;
            shelves.push_back(
                {PrepSheetTr::tr("Rack %1 · shelf %2")
                     .arg(QString::fromStdString(spot.rack), QString::fromStdString(spot.shelf)),
                 {}});
        }
        shelves.back().trays.emplace_back(spot, found->second);
    }
    return shelves;
}

// A planned tray on its shelf.
struct ShelfCell
{
    QString place;
    QString name;
    int marker = 0;
};

ShelfCell shelfCell(const PrepSheet& sheet, const Spot& spot, const PlannedTray& tray)
{
    const Medium* medium = mediumOf(sheet, tray);
    const Treatment& treatment = sheet.draft.treatments[std::size_t(tray.treatment)];
    return {PrepSheetTr::tr("place %1").arg(spot.number) +
                (tray.isMoved ? PrepSheetTr::tr(", moved") : QString()),
            treatmentName(sheet, treatment), medium != nullptr ? medium->marker : 0};
}

void drawShelfCell(const PaperPen& pen, QRectF box, const ShelfCell& cell)
{
    pen.painter().setPen(QPen(kPaperRule, 0.8 * pen.scale()));
    pen.painter().setBrush(Qt::NoBrush);
    pen.painter().drawRoundedRect(pen.onDevice(box), 3 * pen.scale(), 3 * pen.scale());
    drawMarker(pen, {box.x() + 11, box.y() + 12}, cell.marker, 9);
    pen.text({box.x() + 20, box.y() + 4, box.width() - 22, 16}, cell.place, 8.5, QFont::Normal,
             kPaperMuted);
    pen.text({box.x() + 5, box.y() + 19, box.width() - 8, 20}, cell.name, 8, QFont::Normal,
             kPaperInk, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
}

class PrepMaker : private PaperColumn
{
public:
    PrepMaker(const PrepSheet& sheet, const PaperPen& pen, double wide)
        : PaperColumn(pen, wide)
        , m_sheet(sheet)
    {}

    [[nodiscard]] std::vector<PaperBlock> blocks()
    {
        addTrial();
        addHeading(PrepSheetTr::tr("Bring"));
        for (const Supply& supply : m_sheet.preparation.supplies) {
            addSupply(supply);
        }
        addHeading(drawWords(m_sheet.draft),
                   PrepSheetTr::tr("draw %1").arg(m_sheet.draft.plan.drawNumber));
        addTreatments();
        const auto shelves = plannedShelves(m_sheet);
        std::size_t inRow = 4;
        for (const PlannedShelf& shelf : shelves) {
            inRow = std::clamp(shelf.trays.size(), inRow, std::size_t{6});
        }
        for (const PlannedShelf& shelf : shelves) {
            addShelf(shelf, inRow);
        }
        addUnplaced();
        addHeading(PrepSheetTr::tr("In this order"));
        QString last;
        for (PrepStep step : prepSteps(m_sheet)) {
            // A time is told once.
            const QString when = std::exchange(last, step.when);
            step.when = step.when == when ? QString() : step.when;
            addStep(step);
        }
        addWords(prepCautions(m_sheet).join(' '), kPaperMuted);
        return std::move(m_blocks);
    }

private:
    void addTrial()
    {
        const Trial& trial = m_sheet.draft.trial;
        const QString title =
            PrepSheetTr::tr("Sow %1 %2")
                .arg(QString::fromStdString(trial.code), QString::fromStdString(trial.name));
        const QString lot =
            m_sheet.lot
                ? PrepSheetTr::tr("lot %1").arg(QString::fromStdString(m_sheet.lot->lotNumber))
                : PrepSheetTr::tr("no lot chosen");
        const QString under =
            QStringLiteral("%1  ·  %2, %3  ·  %4")
                .arg(dayText(m_sheet.draft.plan.sowOn) + ", " +
                         clockText(m_sheet.draft.plan.sowMinute),
                     QString::fromStdString(m_sheet.protocol.variety.name), lot,
                     PrepSheetTr::tr("%n tray(s)", nullptr, m_sheet.draft.count()));
        addTitle(title.simplified(), under);
    }

    void addSupply(const Supply& supply)
    {
        const QString name = nameOf(supply);
        const QString needed = supplyText(supply.kind, supply.needed, m_sheet.units);
        QString stock = PrepSheetTr::tr("stock not kept");
        if (supply.inStock) {
            const QString there = supplyText(supply.kind, *supply.inStock, m_sheet.units);
            stock = supply.isShort() ? PrepSheetTr::tr("short: only %1 there").arg(there)
                                     : PrepSheetTr::tr("%1 there").arg(there);
        }
        const bool isShort = supply.isShort();
        add(kLine, [=](const PaperPen& pen, QRectF at) {
            pen.box({at.x() + 1, at.center().y() - 6, 12, 12}, Box::Empty);
            pen.text({at.x() + 22, at.y(), at.width() * 0.5 - 22, at.height()}, name, 10);
            pen.text({at.x() + at.width() * 0.5, at.y(), at.width() * 0.18, at.height()}, needed,
                     10, QFont::DemiBold, kPaperInk, Qt::AlignRight | Qt::AlignVCenter);
            pen.text({at.x() + at.width() * 0.72, at.y(), at.width() * 0.28, at.height()}, stock,
                     10, isShort ? QFont::DemiBold : QFont::Normal,
                     isShort ? kPaperInk : kPaperMuted);
            pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperRule);
        });
    }

    // Which marker is which treatment, and on how many trays.
    void addTreatments()
    {
        for (const Treatment& treatment : m_sheet.draft.treatments) {
            const int count = static_cast<int>(std::count_if(
                m_sheet.draft.trays.begin(), m_sheet.draft.trays.end(),
                [&](const PlannedTray& tray) { return tray.treatment == treatment.position; }));
            const auto medium = m_sheet.media.find(treatment.medium);
            const int marker = medium == m_sheet.media.end() ? 0 : medium->second.marker;
            const bool isControl = m_sheet.draft.trial.control == treatment.medium;
            const QString name = treatmentName(m_sheet, treatment);
            const QString about = isControl
                                      ? PrepSheetTr::tr("%n tray(s), the control", nullptr, count)
                                      : PrepSheetTr::tr("%n tray(s)", nullptr, count);
            add(15, [=](const PaperPen& pen, QRectF at) {
                drawMarker(pen, {at.x() + 6, at.center().y()}, marker, 8);
                pen.text(at.adjusted(22, 0, 0, 0), name, 10);
                pen.text({at.x() + at.width() * 0.5, at.y(), at.width() * 0.5, at.height()}, about,
                         10, QFont::Normal, kPaperMuted);
            });
        }
        m_blocks.back().staysWithNext = true;
    }

    void addShelf(const PlannedShelf& shelf, std::size_t inRow)
    {
        for (std::size_t first = 0; first < shelf.trays.size(); first += inRow) {
            const auto last = std::min(first + inRow, shelf.trays.size());
            std::vector<ShelfCell> cells;
            for (std::size_t i = first; i < last; ++i) {
                cells.push_back(shelfCell(m_sheet, shelf.trays[i].first, *shelf.trays[i].second));
            }
            const QString name = first == 0 ? shelf.name : QString();
            add(50, [=](const PaperPen& pen, QRectF at) {
                const double left = 92;
                pen.text({at.x(), at.y() + 8, left - 8, 38}, name, 10, QFont::DemiBold, kPaperInk,
                         Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap);
                const double wide = (at.width() - left) / double(inRow);
                double x = at.x() + left;
                for (const ShelfCell& cell : cells) {
                    drawShelfCell(pen, {x, at.y() + 8, wide - 6, 40}, cell);
                    x += wide;
                }
            });
        }
    }

    void addUnplaced()
    {
        const auto without = std::count_if(m_sheet.draft.trays.begin(), m_sheet.draft.trays.end(),
                                           [](const PlannedTray& tray) { return !tray.place; });
        if (without > 0) {
            addWords(PrepSheetTr::tr("Without a place yet: %n tray(s).", nullptr,
                                     static_cast<int>(without)),
                     kPaperInk);
        }
    }

    void addStep(const PrepStep& step)
    {
        const double left = 128;
        const double high = std::max(m_pen.highOf(step.what, 10, m_wide - left - 22),
                                     m_pen.highOf(step.when, 9.5, left - 8));
        add(high + 8, [=](const PaperPen& pen, QRectF at) {
            pen.box({at.x() + 1, at.y() + 4, 12, 12}, Box::Empty);
            pen.text({at.x() + 22, at.y() + 4, left - 8, high}, step.when, 9.5, QFont::Normal,
                     kPaperMuted, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
            pen.text({at.x() + left + 22, at.y() + 4, at.width() - left - 22, high}, step.what, 10,
                     QFont::Normal, kPaperInk, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
        });
    }

    const PrepSheet& m_sheet;
};

PaperSheet paperOf(const PrepSheet& sheet)
{
    PaperSheet paper;
    paper.blocks = [&sheet](const PaperPen& pen, double wide) {
        return PrepMaker(sheet, pen, wide).blocks();
    };
    paper.foot = [&sheet](std::size_t page, std::size_t pages) {
        return PaperFoot{{},
                         PrepSheetTr::tr("%1, to sow on %2  ·  page %3 of %4")
                             .arg(QString::fromStdString(sheet.draft.trial.code),
                                  longDateText(sheet.draft.plan.sowOn))
                             .arg(page)
                             .arg(pages)};
    };
    return paper;
}

} // namespace

bool printPrepSheet(const PrepSheet& sheet, QPagedPaintDevice& paper)
{
    return printSheet(paper, paperOf(sheet));
}

Done writePrepSheet(const PrepSheet& sheet, const QString& pdfPath)
{
    const bool isMetric = sheet.units.units() == UnitSystem::Metric;
    return writePdf(pdfPath,
                    PrepSheetTr::tr("Sow %1").arg(QString::fromStdString(sheet.draft.trial.code)),
                    QPageSize(isMetric ? QPageSize::A4 : QPageSize::Letter),
                    [&](QPagedPaintDevice& paper) { return printPrepSheet(sheet, paper); });
}

} // namespace plumule::ui
