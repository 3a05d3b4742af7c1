#pragma once

#include "core/base/result.h"

#include <QColor>
#include <QFont>
#include <QPageSize>
#include <QRectF>
#include <QString>

#include <functional>
#include <memory>
#include <vector>

class QPagedPaintDevice;
class QPainter;

namespace plumule::ui {

// What every sheet of paper shares. All lengths are points (1/72 in).

inline const QColor kPaperInk(20, 24, 22);
inline const QColor kPaperMuted(95, 100, 97);
inline const QColor kPaperRule(190, 194, 190);

inline constexpr double kPointsPerMillimetre = 72.0 / 25.4;

enum class Box
{
    Empty,
    Ticked
};

// Draws in points on a device of any resolution, in the interface font.
class PaperPen
{
public:
    PaperPen(QPainter& painter, double pixelsPerPoint)
        : m_painter(painter)
        , m_scale(pixelsPerPoint)
    {}

    [[nodiscard]] QPainter& painter() const { return m_painter; }
    [[nodiscard]] double scale() const { return m_scale; }
    [[nodiscard]] QFont font(double points, QFont::Weight weight = QFont::Normal) const;
    [[nodiscard]] QRectF onDevice(QRectF rect) const
    {
        return {rect.topLeft() * m_scale, rect.size() * m_scale};
    }
    // One line, shortened with an ellipsis where it is too long, unless `flags` wrap it.
    void text(QRectF cell, const QString& words, double points,
              QFont::Weight weight = QFont::Normal, const QColor& ink = kPaperInk,
              int flags = Qt::AlignLeft | Qt::AlignVCenter) const;
    // Of a text wrapped in that width.
    [[nodiscard]] double highOf(const QString& words, double points, double wide,
                                QFont::Weight weight = QFont::Normal) const;
    [[nodiscard]] double wideOf(const QString& words, double points,
                                QFont::Weight weight = QFont::Normal) const;
    void line(QPointF from, QPointF to, const QColor& ink, double thick = 0.5) const;
    void fill(QRectF rect, const QColor& ink, double rounding = 0) const;
    void box(QRectF square, Box look) const;

private:
    QPainter& m_painter;
    double m_scale;
};

// A piece of a sheet that is not broken over pages.
struct PaperBlock
{
    double high = 0;
    bool staysWithNext = false;
    std::function<void(const PaperPen&, QRectF)> draw;
    // Drawn again above it where it comes first on a page: the head of a table.
    std::shared_ptr<const PaperBlock> repeated = nullptr;
    bool beginsPage = false;
};

// Which blocks stand on which page of that height. What stays with the next goes to the next page
// together with it, unless all of it is higher than a page.
using PaperPage = std::vector<const PaperBlock*>;
[[nodiscard]] std::vector<PaperPage> pagesOf(const std::vector<PaperBlock>& blocks, double high);

struct PaperFoot
{
    QString left;
    QString right;
};

// How a sheet is made: its blocks for a width, and the foot of each page (numbered from 1).
struct PaperSheet
{
    std::function<std::vector<PaperBlock>(const PaperPen&, double wide)> blocks;
    std::function<PaperFoot(std::size_t page, std::size_t pages)> foot;
    double margin = 36;
    std::function<bool()> isStopped = {}; // asked before each page
};

// False where the device can't be begun or gave up, or when stopped.
[[nodiscard]] bool printSheet(QPagedPaintDevice& paper, const PaperSheet& sheet);

// Saves a PDF whose pages `print` draws on a device of that size without margins. As saveFile().
[[nodiscard]] Done writePdf(const QString& path, const QString& title, const QPageSize& size,
                            const std::function<bool(QPagedPaintDevice&)>& print);

} // namespace plumule::ui
