#include "ui/label/label_preview.h"

#include "ui/paper/paper.h"
#include "ui/widget/theme.h"

#include <QPainter>

namespace plumule::ui {

LabelPreview::LabelPreview(QWidget* parent)
    : QWidget(parent)
{
    setObjectName("labelPreview");
    setAccessibleName(tr("Preview of the first page"));
    setMinimumSize(scaled(220), scaled(220));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

QSize LabelPreview::sizeHint() const
{
    return {scaled(400), scaled(440)};
}

void LabelPreview::show(const std::vector<LabelTray>& trays, const LabelPaper& paper)
{
    m_trays = trays;
    m_paper = paper;
    m_isSound = labelSizeOf(paper).has_value();
    update();
}

void LabelPreview::paintEvent(QPaintEvent*)
{
    if (!m_isSound) {
        return;
    }
    const QSizeF page = m_paper.pageSize();
    const double edge = scaled(6);
    const double scale = std::min((width() - 2 * edge) / page.width(),
                                  (height() - 2 * edge) / page.height()); // pixels a millimetre
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate((width() - page.width() * scale) / 2, (height() - page.height() * scale) / 2);
    const PaperPen pen(painter, scale / kPointsPerMillimetre);
    painter.setPen(QPen(ui::palette().fieldEdge, 1));
    painter.setBrush(Qt::white);
    painter.drawRect(QRectF(QPointF(), page * scale));
    const int skipped = m_paper.stock == LabelStock::Roll ? 0 : m_paper.skip;
    for (int number = 0; number < m_paper.labelsOnPage(); ++number) {
        const QRectF place = labelPlace(m_paper, number);
        painter.setPen(QPen(kPaperRule, 1, Qt::DotLine));
        painter.setBrush(number < skipped ? QBrush(kPaperRule, Qt::BDiagPattern) : Qt::NoBrush);
        painter.drawRect(QRectF(place.topLeft() * scale, place.size() * scale));
    }
    drawLabelPage(pen, m_trays, m_paper, 0);
}

} // namespace plumule::ui

#include "moc_label_preview.cpp"
