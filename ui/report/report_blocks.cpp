#include "ui/report/report_blocks.h"

#include <QImageReader>
#include <QPainter>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr double kText = 9.5;
constexpr double kLead = 13;
constexpr double kPictureHigh = 150;
constexpr int kPicturePixels = 900;
const QColor kCautionFill(253, 246, 230);
const QColor kCautionEdge(214, 170, 84);
const QColor kAnswerEdge(46, 107, 82);
constexpr int kWrapped = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;

class BlockMaker
{
public:
    BlockMaker(const std::vector<DrawnChart>& charts, const PaperPen& pen, double wide)
        : m_charts(charts)
        , m_pen(pen)
        , m_wide(wide)
    {}

    void addTitle(const Report& report)
    {
        const QString title = report.title;
        const QString under = report.subtitle;
        const double high = m_pen.highOf(title, 20, m_wide, QFont::DemiBold);
        const double underHigh = under.isEmpty() ? 0 : m_pen.highOf(under, kText, m_wide);
        add(high + underHigh + 14, [=](const PaperPen& pen, QRectF at) {
            pen.text({at.x(), at.y(), at.width(), high}, title, 20, QFont::DemiBold, kPaperInk,
                     kWrapped);
            pen.text({at.x(), at.y() + high + 4, at.width(), underHigh}, under, kText,
                     QFont::Normal, kPaperMuted, kWrapped);
        });
    }

    void operator()(const ReportHeading& heading)
    {
        add(
            36,
            [text = heading.text](const PaperPen& pen, QRectF at) {
                pen.text(at.adjusted(0, 16, 0, -2), text, 12.5, QFont::DemiBold);
            },
            true, heading.beginsPage);
        m_isUnderHeading = true;
    }

    void operator()(const ReportWords& words)
    {
        const bool isLead = words.look == WordsLook::Lead;
        const QFont::Weight weight = isLead ? QFont::DemiBold : QFont::Normal;
        const double size = isLead ? kLead : kText;
        const double inset = isLead ? 12 : 0;
        const QColor ink = words.look == WordsLook::Muted ? kPaperMuted : kPaperInk;
        for (const QString& line : words.text.split('\n', Qt::SkipEmptyParts)) {
            const double high = m_pen.highOf(line, size, m_wide - inset, weight);
            // What a heading begins with is not left alone with it at a page's end.
            const bool isUnderHeading = m_isUnderHeading && high < 3 * size;
            m_isUnderHeading = false;
            const auto draw = [=](const PaperPen& pen, QRectF at) {
                const QRectF cell(at.x() + inset, at.y() + 2, at.width() - inset, high);
                if (isLead) {
                    pen.fill({at.x(), cell.y(), 3, high}, kAnswerEdge);
                }
                pen.text(cell, line, size, weight, ink, kWrapped);
            };
            add(high + 7, draw, isUnderHeading);
        }
    }

    void operator()(const ReportList& list)
    {
        for (const QString& item : list.items) {
            const double high = m_pen.highOf(item, kText, m_wide - 14);
            add(high + 4, [=](const PaperPen& pen, QRectF at) {
                const QRectF cell(at.x() + 14, at.y() + 1, at.width() - 14, high);
                pen.text({at.x() + 2, cell.y(), 12, high}, QString(QChar(0x2022)), kText,
                         QFont::Normal, kPaperMuted, Qt::AlignLeft | Qt::AlignTop);
                pen.text(cell, item, kText, QFont::Normal, kPaperInk, kWrapped);
            });
        }
    }

    void operator()(const ReportCaution& caution)
    {
        const QString text = caution.lines.join('\n');
        const double inner = m_wide - 24;
        const double head = caution.heading.isEmpty() ? 0 : 15;
        const double high = m_pen.highOf(text, kText, inner);
        add(head + high + 28, [=, heading = caution.heading](const PaperPen& pen, QRectF at) {
            const QRectF card = at.adjusted(0, 6, 0, -4);
            pen.fill(card, kCautionFill, 4);
            pen.fill({card.x(), card.y(), 3, card.height()}, kCautionEdge);
            const QRectF cell = card.adjusted(14, 9, -10, 0);
            pen.text({cell.x(), cell.y(), cell.width(), 13}, heading, kText, QFont::DemiBold);
            pen.text({cell.x(), cell.y() + head, cell.width(), high}, text, kText, QFont::Normal,
                     kPaperInk, kWrapped);
        });
    }

    void operator()(const ReportFigures& figures)
    {
        const double gap = 12;
        const double count = double(std::max<std::size_t>(figures.figures.size(), 3));
        const double wide = (m_wide - (count - 1) * gap) / count;
        double about = 0;
        for (const ReportFigure& figure : figures.figures) {
            about = std::max(about, m_pen.highOf(figure.about, 8.5, wide - 16));
        }
        add(about + 44, [=, all = figures.figures](const PaperPen& pen, QRectF at) {
            double x = at.x();
            for (const ReportFigure& figure : all) {
                const QRectF card(x, at.y() + 6, wide, at.height() - 12);
                pen.fill(card, QColor(245, 243, 236), 5);
                const double size = std::min(
                    15.0, 15 * (wide - 16) /
                              std::max(1.0, pen.wideOf(figure.value, 15, QFont::DemiBold)));
                pen.text({card.x() + 8, card.y() + 5, wide - 16, 19}, figure.value, size,
                         QFont::DemiBold);
                pen.text({card.x() + 8, card.y() + 25, wide - 16, about}, figure.about, 8.5,
                         QFont::Normal, kPaperMuted, kWrapped);
                x += wide + gap;
            }
        });
    }

    void operator()(const ReportTable& table)
    {
        for (PaperBlock& block : paperTable(table, m_pen, m_wide)) {
            m_blocks.push_back(std::move(block));
        }
        add(6, [](const PaperPen&, QRectF) {});
    }

    void operator()(const ReportChart& chart)
    {
        const DrawnChart drawn = m_chart < m_charts.size() ? m_charts[m_chart] : DrawnChart();
        ++m_chart;
        const double high =
            drawn.size.isEmpty() ? 0 : m_wide * drawn.size.height() / drawn.size.width();
        const double caption =
            chart.caption.isEmpty()
                ? 0
                : m_pen.highOf(chart.caption, kText, m_wide, QFont::DemiBold) + 4;
        add(caption + high + 20, [=, words = chart.caption](const PaperPen& pen, QRectF at) {
            pen.text({at.x(), at.y() + 8, at.width(), caption}, words, kText, QFont::DemiBold,
                     kPaperInk, kWrapped);
            if (drawn.size.isEmpty()) {
                return;
            }
            QPainter& painter = pen.painter();
            painter.save();
            painter.translate(QPointF(at.x(), at.y() + 8 + caption) * pen.scale());
            QPicture picture = drawn.picture;
            // A recording enlarges itself by the devices' resolutions.
            const double own = painter.device()->logicalDpiX() / double(picture.logicalDpiX());
            const double scale = at.width() * pen.scale() / drawn.size.width() / own;
            painter.scale(scale, scale);
            picture.play(&painter);
            painter.restore();
        });
    }

    void operator()(const ReportPictures& pictures)
    {
        const std::size_t inRow = std::clamp<std::size_t>(pictures.pictures.size(), 2, 4);
        const double gap = 10;
        const double wide = (m_wide - double(inRow - 1) * gap) / double(inRow);
        if (!pictures.heading.isEmpty()) {
            add(
                22,
                [heading = pictures.heading](const PaperPen& pen, QRectF at) {
                    pen.text(at.adjusted(0, 6, 0, 0), heading, kText, QFont::DemiBold);
                },
                true);
        }
        for (std::size_t i = 0; i < pictures.pictures.size(); i += inRow) {
            const std::vector<ReportPicture> row(
                pictures.pictures.begin() + std::ptrdiff_t(i),
                pictures.pictures.begin() +
                    std::ptrdiff_t(std::min(i + inRow, pictures.pictures.size())));
            addPictureRow(row, wide, gap);
        }
    }

    [[nodiscard]] std::vector<PaperBlock> take() { return std::move(m_blocks); }

private:
    void add(double high, std::function<void(const PaperPen&, QRectF)> draw,
             bool staysWithNext = false, bool beginsPage = false)
    {
        m_isUnderHeading = false;
        m_blocks.push_back({high, staysWithNext, std::move(draw), nullptr, beginsPage});
    }

    // Read only when drawn, so that many of them are not held at once.
    static QImage readPicture(const QString& path)
    {
        QImageReader reader(path);
        reader.setAutoTransform(true);
        const QImage image = reader.read();
        return image.isNull() ? image
                              : image.scaled(kPicturePixels, kPicturePixels, Qt::KeepAspectRatio,
                                             Qt::SmoothTransformation);
    }

    void addPictureRow(const std::vector<ReportPicture>& row, double wide, double gap)
    {
        double caption = 0;
        bool hasPicture = false;
        for (const ReportPicture& each : row) {
            caption = std::max(caption, m_pen.highOf(each.caption, 8.5, wide));
            hasPicture = hasPicture || !each.path.isEmpty();
        }
        const double pictureHigh = hasPicture ? kPictureHigh : 0;
        add(pictureHigh + caption + 12, [=](const PaperPen& pen, QRectF at) {
            double x = at.x();
            for (const ReportPicture& each : row) {
                const QImage image = each.path.isEmpty() ? QImage() : readPicture(each.path);
                if (!image.isNull()) {
                    const QSizeF size =
                        QSizeF(image.size()).scaled(wide, pictureHigh - 6, Qt::KeepAspectRatio);
                    pen.painter().drawImage(pen.onDevice({QPointF(x, at.y() + 2), size}), image);
                }
                pen.text({x, at.y() + pictureHigh, wide, caption}, each.caption, 8.5, QFont::Normal,
                         kPaperMuted, kWrapped);
                x += wide + gap;
            }
        });
    }

    const std::vector<DrawnChart>& m_charts;
    const PaperPen& m_pen;
    double m_wide;
    std::size_t m_chart = 0;
    bool m_isUnderHeading = false;
    std::vector<PaperBlock> m_blocks;
};

} // namespace

std::vector<PaperBlock> paperBlocks(const Report& report, const std::vector<DrawnChart>& charts,
                                    const PaperPen& pen, double wide)
{
    BlockMaker maker(charts, pen, wide);
    maker.addTitle(report);
    for (const ReportBlock& block : report.blocks) {
        std::visit([&maker](const auto& each) { maker(each); }, block);
    }
    return maker.take();
}

} // namespace plumule::ui
