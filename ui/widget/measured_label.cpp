#include "ui/widget/measured_label.h"

namespace plumule::ui {

MeasuredLabel::MeasuredLabel(const QString& text, QWidget* parent)
    : QLabel(text, parent)
{
    setTextFormat(Qt::PlainText);
}

int MeasuredLabel::heightForWidth(int width) const
{
    if (textFormat() != Qt::PlainText || text().isEmpty()) {
        return QLabel::heightForWidth(width);
    }
    ensurePolished(); // before which it has another font
    Measured present{text(),   font(),         contentsMargins(), margin(),
                     indent(), minimumWidth(), wordWrap()};
    if (!(present == m_measured)) {
        m_measured = std::move(present);
        m_heights.clear();
    }
    const auto known = m_heights.constFind(width);
    if (known != m_heights.constEnd()) {
        return *known;
    }
    const int height = QLabel::heightForWidth(width);
    m_heights.insert(width, height);
    return height;
}

} // namespace plumule::ui
