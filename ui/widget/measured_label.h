#pragma once

#include <QHash>
#include <QLabel>

namespace plumule::ui {

// A label of plain words that remembers how high they are in a width. Layouts ask that many times
// over, and each time Qt would set the words anew: a third of the time to the first picture.
class MeasuredLabel : public QLabel
{
public:
    explicit MeasuredLabel(const QString& text, QWidget* parent = nullptr);

    [[nodiscard]] int heightForWidth(int width) const override;

private:
    // All that Qt works a height of plain words out from.
    struct Measured
    {
        QString text;
        QFont font;
        QMargins edges;
        int margin = 0;
        int indent = 0;
        int leastWidth = 0;
        bool isWrapped = false;
        bool operator==(const Measured&) const = default;
    };

    mutable Measured m_measured;
    mutable QHash<int, int> m_heights; // by width, of what was measured
};

} // namespace plumule::ui
