#pragma once

#include "ui/paper/paper.h"

namespace plumule::ui {

// The pieces of a sheet from top to bottom, in the look that sheets share.
class PaperColumn
{
protected:
    using Draw = std::function<void(const PaperPen&, QRectF)>;

    PaperColumn(const PaperPen& pen, double wide)
        : m_pen(pen)
        , m_wide(wide)
    {}

    void add(double high, Draw draw);
    void addWithNext(double high, Draw draw);
    void addTitle(const QString& title, const QString& under);
    // What `about` says stands beside the name.
    void addHeading(const QString& name, const QString& about = {});
    void addWords(const QString& words, const QColor& ink);

    const PaperPen& m_pen;
    double m_wide;
    std::vector<PaperBlock> m_blocks;
};

} // namespace plumule::ui
