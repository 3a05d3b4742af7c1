#include "ui/rack/rack_sheet.h"

#include "ui/medium/paper_marker.h"
#include "ui/paper/paper_column.h"
#include "ui/rack/free_chart.h"
#include "ui/rack/rack_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>

namespace plumule::ui {
namespace {

constexpr std::size_t kPlacesALine = 6;
constexpr double kPlaceHigh = 56;

class RackSheetTr
{
    Q_DECLARE_TR_FUNCTIONS(RackSheet)
};

QString titleWords()
{
    return RackSheetTr::tr("What stands where");
}

// The letters of the page's signs.
QString lettersOf(const StandingTray& tray)
{
    QStringList letters;
    if (tray.isThirsty) {
        letters << RackSheetTr::tr("T");
    }
    if (tray.isReady) {
        letters << RackSheetTr::tr("R");
    }
    if (tray.isDue) {
        letters << RackSheetTr::tr("D");
    }
    return letters.join(QLatin1Char(' '));
}

void drawPlace(const PaperPen& pen, QRectF at, const StandingPlace& place, Date today)
{
    const QRectF box = at.adjusted(0, 2, -5, -4);
    for (const auto& [from, to] :
         {std::pair(box.topLeft(), box.topRight()), std::pair(box.topRight(), box.bottomRight()),
          std::pair(box.bottomRight(), box.bottomLeft()),
          std::pair(box.bottomLeft(), box.topLeft())}) {
        pen.line(from, to, kPaperRule);
    }
    const QRectF line(box.x() + 5, box.y() + 4, box.width() - 10, 14);
    if (!place.tray) {
        pen.text(line, QString::number(place.spot.number), 8.5, QFont::Normal, kPaperMuted);
        pen.text(line.translated(0, 15), RackSheetTr::tr("free"), 8.5, QFont::Normal, kPaperMuted);
        if (place.heldFor) {
            const QString held = RackSheetTr::tr("%1, %2").arg(
                QString::fromStdString(*place.heldFor), shortDayText(place.heldFrom));
            pen.text(line.translated(0, 30), held, 8.5, QFont::Normal, kPaperMuted);
        }
        return;
    }
    const StandingTray& tray = *place.tray;
    drawMarker(pen, {line.right() - 4, line.center().y()}, tray.medium.marker);
    pen.text(line.adjusted(0, 0, -12, 0), QString::fromStdString(tray.code), 10.5, QFont::DemiBold);
    pen.text(line.translated(0, 15), QString::fromStdString(tray.variety), 8.5, QFont::Normal,
             kPaperMuted);
    const QString letters = lettersOf(tray);
    const double kept = letters.isEmpty() ? 0 : pen.wideOf(letters, 9, QFont::DemiBold) + 4;
    pen.text(line.translated(0, 30).adjusted(0, 0, -kept, 0), daysText(tray, today), 9);
    pen.text(line.translated(0, 30), letters, 9, QFont::DemiBold, kPaperInk,
             Qt::AlignRight | Qt::AlignVCenter);
}

class SheetOfRacks : private PaperColumn
{
public:
    SheetOfRacks(const RoomRacks& racks, const Room& room, const PaperPen& pen, double wide)
        : PaperColumn(pen, wide)
        , m_racks(racks)
        , m_room(room)
    {}

    [[nodiscard]] std::vector<PaperBlock> blocks()
    {
        addTitle(titleWords(),
                 RackSheetTr::tr("%1  ·  %2  ·  %3 of %4 places taken")
                     .arg(QString::fromStdString(m_room.name), longDateText(m_racks.today))
                     .arg(m_racks.taken())
                     .arg(m_racks.places()));
        for (const StandingRack& rack : m_racks.racks) {
            for (const StandingShelf& shelf : rack.shelves) {
                addShelf(rack, shelf);
            }
        }
        addOffRacks();
        addKey();
        addEvenings();
        return std::move(m_blocks);
    }

private:
    void addShelf(const StandingRack& rack, const StandingShelf& shelf)
    {
        addHeading(QString::fromStdString(rack.rack.name + shelf.shelf.name),
                   lightParts(shelf.light).join(QStringLiteral(" · ")));
        for (std::size_t from = 0; from < shelf.places.size(); from += kPlacesALine) {
            const auto first = shelf.places.begin() + static_cast<std::ptrdiff_t>(from);
            const std::size_t count = std::min(kPlacesALine, shelf.places.size() - from);
            add(kPlaceHigh, [places =
                                 std::vector(first, first + static_cast<std::ptrdiff_t>(count)),
                             today = m_racks.today](const PaperPen& pen, QRectF at) {
                const double wide = at.width() / static_cast<double>(kPlacesALine);
                for (std::size_t i = 0; i < places.size(); ++i) {
                    drawPlace(pen,
                              {at.x() + static_cast<double>(i) * wide, at.y(), wide, at.height()},
                              places[i], today);
                }
            });
        }
    }

    void addOffRacks()
    {
        QStringList words;
        for (const StandingTray& tray : m_racks.offRacks) {
            words << trayWords(tray, m_racks.today);
        }
        if (!words.isEmpty()) {
            addHeading(RackSheetTr::tr("Off the racks"));
            addWords(words.join(QStringLiteral("; ")), kPaperInk);
        }
    }

    void addKey()
    {
        addHeading(RackSheetTr::tr("Key"));
        std::map<std::string, int> media;
        for (const StandingPlace* place : m_racks.walk()) {
            if (place->tray) {
                media.emplace(place->tray->medium.name, place->tray->medium.marker);
            }
        }
        addWithNext(18, [media](const PaperPen& pen, QRectF at) {
            double x = at.x();
            for (const auto& [name, marker] : media) {
                const QString words = QString::fromStdString(name);
                drawMarker(pen, {x + 4, at.center().y()}, marker);
                pen.text({x + 12, at.y(), at.right() - x - 12, at.height()}, words, 9);
                x += pen.wideOf(words, 9) + 26;
            }
        });
        addWords(RackSheetTr::tr("T: thirsty, a watering was missed. R: ready, look, then move it "
                                 "on. D: due, to be cut. Days are those until the cut."),
                 kPaperMuted);
    }

    void addEvenings()
    {
        addHeading(RackSheetTr::tr("Places free each evening"));
        constexpr std::size_t kAWeek = 7;
        for (std::size_t from = 0; from < m_racks.evenings.size(); from += kAWeek) {
            QStringList words;
            for (std::size_t i = from; i < std::min(from + kAWeek, m_racks.evenings.size()); ++i) {
                words << FreeChart::wordsOf(m_racks.evenings[i]);
            }
            addWords(words.join(QStringLiteral("; ")), kPaperInk);
        }
    }

    const RoomRacks& m_racks;
    const Room& m_room;
};

PaperSheet sheetOfRacks(const RoomRacks& racks, const Room& room)
{
    PaperSheet sheet;
    sheet.blocks = [&racks, &room](const PaperPen& pen, double wide) {
        return SheetOfRacks(racks, room, pen, wide).blocks();
    };
    sheet.foot = [day = longDateText(racks.today)](std::size_t page, std::size_t pages) {
        return PaperFoot{{},
                         RackSheetTr::tr("%1, %2  ·  page %3 of %4")
                             .arg(titleWords(), day)
                             .arg(page)
                             .arg(pages)};
    };
    return sheet;
}

} // namespace

bool printRackSheet(const RoomRacks& racks, const Room& room, QPagedPaintDevice& paper)
{
    return printSheet(paper, sheetOfRacks(racks, room));
}

Done writeRackSheet(const RoomRacks& racks, const Room& room, const QString& pdfPath)
{
    const bool isMetric = room.units == UnitSystem::Metric;
    return writePdf(
        pdfPath, titleWords() + ' ' + longDateText(racks.today),
        QPageSize(isMetric ? QPageSize::A4 : QPageSize::Letter),
        [&](QPagedPaintDevice& paper) { return printSheet(paper, sheetOfRacks(racks, room)); });
}

} // namespace plumule::ui
