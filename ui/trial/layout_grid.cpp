#include "ui/trial/layout_grid.h"

#include "ui/medium/marker.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QGridLayout>
#include <QMouseEvent>
#include <QPainter>

namespace plumule::ui {
namespace {

constexpr int kTileWide = 92;
constexpr int kNameWide = 34;
constexpr int kTileHigh = 58;

} // namespace

LayoutTile::LayoutTile(Content content, QWidget* parent)
    : QPushButton(parent)
    , m_content(std::move(content))
{
    setObjectName("tile" + m_content.code);
    setAccessibleName(m_content.accessibleName);
    setToolTip(plainHint(m_content.accessibleName));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize LayoutTile::sizeHint() const
{
    const bool hasWords = !m_content.words.isEmpty() || !m_content.feeding.isEmpty();
    return {scaled(kTileWide), scaled(hasWords ? kTileHigh + 16 : kTileHigh)};
}

QSize LayoutTile::minimumSizeHint() const
{
    return sizeHint();
}

void LayoutTile::paintEvent(QPaintEvent*)
{
    const Palette& colours = ui::palette();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool isMarked = isChecked() || hasFocus();
    const QColor edge = isMarked             ? colours.accent
                        : m_content.isWarned ? colours.warning
                        : underMouse()       ? colours.accent
                                             : colours.fieldEdge;
    painter.setPen(QPen(edge, isMarked ? 2 : 1));
    painter.setBrush(isChecked() ? colours.selection : colours.card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), scaled(8), scaled(8));

    painter.setPen(colours.ink);
    painter.setFont(uiFont(0.95, QFont::DemiBold));
    const QRectF codeLine(0, scaled(7), width(), scaled(20));
    painter.drawText(codeLine, Qt::AlignCenter, m_content.code);

    painter.save();
    painter.translate(width() / 2.0, codeLine.bottom() + scaled(11));
    painter.fillPath(markerShape(m_content.marker, scaled(13)), markerColour(m_content.marker));
    painter.restore();

    const QString below = m_content.feeding.isEmpty() ? m_content.words
                          : m_content.words.isEmpty() ? m_content.feeding
                                                      : m_content.feeding + " · " + m_content.words;
    painter.setFont(uiFont(0.82));
    painter.setPen(m_content.isWarned ? colours.warning : colours.mutedInk);
    const QRectF words(scaled(4), codeLine.bottom() + scaled(22), width() - scaled(8), scaled(18));
    painter.drawText(words, Qt::AlignCenter,
                     painter.fontMetrics().elidedText(below, Qt::ElideRight, int(words.width())));
}

void LayoutTile::mouseReleaseEvent(QMouseEvent* event)
{
    const QPoint at = mapToParent(event->pos());
    auto* other = rect().contains(event->pos())
                      ? nullptr
                      : qobject_cast<LayoutTile*>(parentWidget()->childAt(at));
    QPushButton::mouseReleaseEvent(event);
    if (other != nullptr && other != this) {
        Q_EMIT droppedOn(other);
    }
}

LayoutGrid::LayoutGrid(QWidget* parent)
    : QWidget(parent)
    , m_grid(new QGridLayout(this))
{
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(scaled(8));
    m_grid->setVerticalSpacing(scaled(8));
    // Else tiles that once stood beside each other would keep the grid as wide for ever.
    m_grid->setSizeConstraint(QLayout::SetNoConstraint);
}

void LayoutGrid::show(const std::vector<Row>& rows, Press press)
{
    const int kept = m_chosen;
    clearLayout(m_grid);
    m_names.clear();
    m_rows.clear();
    m_tiles.clear();
    m_columns = 0;
    m_chosen = -1;
    m_press = press;
    for (const Row& row : rows) {
        auto* name = label(row.name, "muted");
        name->setParent(this);
        name->show();
        m_names.push_back(name);
        m_rows.emplace_back();
        for (const LayoutTile::Content& content : row.tiles) {
            const int number = static_cast<int>(m_tiles.size());
            auto* tile = new LayoutTile(content, this);
            tile->setCheckable(m_press == Press::Exchanges);
            tile->show();
            connect(tile, &QPushButton::clicked, this, [this, number] { takePress(number); });
            connect(tile, &LayoutTile::droppedOn, this, [this, number](LayoutTile* other) {
                const auto found = std::find(m_tiles.begin(), m_tiles.end(), other);
                if (m_press == Press::Exchanges && found != m_tiles.end()) {
                    Q_EMIT exchangeAsked(number, static_cast<int>(found - m_tiles.begin()));
                }
            });
            m_tiles.push_back(tile);
            m_rows.back().push_back(tile);
        }
    }
    arrange();
    if (m_press == Press::Exchanges && kept >= 0 && kept < static_cast<int>(m_tiles.size())) {
        m_tiles[static_cast<std::size_t>(kept)]->setFocus();
    }
    Q_EMIT chosenChanged(-1);
}

QSize LayoutGrid::minimumSizeHint() const
{
    const QSize whole = QWidget::minimumSizeHint();
    return {std::min(whole.width(), scaled(kNameWide) + scaled(8) + scaled(kTileWide)),
            whole.height()};
}

int LayoutGrid::chosen() const
{
    return m_chosen;
}

void LayoutGrid::takePress(int tile)
{
    if (m_press == Press::Opens) {
        Q_EMIT pressed(tile);
        return;
    }
    const int first = m_chosen;
    if (first >= 0 && first != tile) {
        m_chosen = tile;
        Q_EMIT exchangeAsked(first, tile);
        return;
    }
    m_chosen = first == tile ? -1 : tile;
    m_tiles[static_cast<std::size_t>(tile)]->setChecked(m_chosen >= 0);
    Q_EMIT chosenChanged(m_chosen);
}

void LayoutGrid::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    arrange();
}

// As many tiles side by side as the longest row has, or as there is room for.
void LayoutGrid::arrange()
{
    int longest = 1;
    int nameWide = 0;
    for (std::size_t row = 0; row < m_rows.size(); ++row) {
        longest = std::max(longest, static_cast<int>(m_rows[row].size()));
        nameWide = std::max(nameWide, m_names[row]->sizeHint().width());
    }
    const int each = scaled(kTileWide) + scaled(8);
    const int space = width() - nameWide - scaled(8);
    int columns = std::clamp(space / each, 1, longest);
    while (m_columns > 0 && columns > m_columns && !standsBeside(space, columns * each, false)) {
        --columns;
    }
    if (columns == m_columns) {
        return;
    }
    m_columns = columns;
    while (QLayoutItem* item = m_grid->takeAt(0)) {
        delete item;
    }
    int line = 0;
    for (std::size_t row = 0; row < m_rows.size(); ++row) {
        m_grid->addWidget(m_names[row], line, 0);
        int column = 0;
        for (LayoutTile* tile : m_rows[row]) {
            if (column == columns) {
                column = 0;
                ++line;
            }
            m_grid->addWidget(tile, line, 1 + column++);
        }
        ++line;
    }
    m_grid->setColumnMinimumWidth(0, scaled(kNameWide));
    for (int column = 1; column < m_grid->columnCount(); ++column) {
        m_grid->setColumnStretch(column, column <= columns ? 1 : 0);
    }
    updateGeometry();
}

} // namespace plumule::ui

#include "moc_layout_grid.cpp"
