#include "ui/paper/paper_column.h"

namespace plumule::ui {

void PaperColumn::add(double high, Draw draw)
{
    m_blocks.push_back({high, false, std::move(draw)});
}

void PaperColumn::addWithNext(double high, Draw draw)
{
    m_blocks.push_back({high, true, std::move(draw)});
}

void PaperColumn::addTitle(const QString& title, const QString& under)
{
    add(50, [title, under](const PaperPen& pen, QRectF at) {
        pen.text({at.x(), at.y(), at.width(), 26}, title, 20, QFont::DemiBold);
        pen.text({at.x(), at.y() + 27, at.width(), 14}, under, 10, QFont::Normal, kPaperMuted);
    });
}

void PaperColumn::addHeading(const QString& name, const QString& about)
{
    addWithNext(28, [name, about](const PaperPen& pen, QRectF at) {
        const QRectF words(at.x(), at.y() + 10, at.width(), 16);
        pen.text(words, name, 10.5, QFont::DemiBold);
        const double wide = pen.wideOf(name, 10.5, QFont::DemiBold) + 8;
        pen.text(words.adjusted(wide, 0, 0, 0), about, 10, QFont::Normal, kPaperMuted);
        pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperInk, 0.8);
    });
}

void PaperColumn::addWords(const QString& words, const QColor& ink)
{
    add(m_pen.highOf(words, 9.5, m_wide) + 12, [words, ink](const PaperPen& pen, QRectF at) {
        pen.text(at.adjusted(0, 8, 0, 0), words, 9.5, QFont::Normal, ink,
                 Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
    });
}

} // namespace plumule::ui
