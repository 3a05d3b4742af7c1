#pragma once

#include "core/base/result.h"

#include <QPageSize>
#include <QRectF>

namespace plumule::ui {

enum class LabelStock
{
    A4,
    Letter,
    Roll // each label is a page of its own
};

// What labels are printed on. All lengths are millimetres.
struct LabelPaper
{
    LabelStock stock = LabelStock::A4;
    int rows = 8; // of a sheet
    int columns = 3;
    double marginLeft = 0; // of a sheet, as the next five
    double marginTop = 0;
    double marginRight = 0;
    double marginBottom = 0;
    double gapAcross = 0;
    double gapDown = 0;
    double labelWide = 62; // of a roll
    double labelHigh = 29;
    int skip = 0; // labels of the first sheet that are used already
    bool operator==(const LabelPaper&) const = default;

    [[nodiscard]] QSizeF pageSize() const;
    [[nodiscard]] int labelsOnPage() const;
};

// Smaller ones hold no code that can be read.
inline constexpr double kLeastLabelWide = 24;
inline constexpr double kLeastLabelHigh = 15;

// The size of one label. Invalid "label.size" where it would be smaller than 24 × 15 mm or larger
// than its page, "label.margin" or "label.gap" below 0, "label.rows" or "label.columns" under 1,
// "label.skip" where the first sheet has no more.
[[nodiscard]] Result<QSizeF> labelSizeOf(const LabelPaper& paper);

// Where the label of that number stands on its page, in mm; numbers count the labels of one page,
// row by row. The paper must have passed labelSizeOf().
[[nodiscard]] QRectF labelPlace(const LabelPaper& paper, int number);
[[nodiscard]] int labelPages(const LabelPaper& paper, int labels);

// As one line to be remembered; what can't be read gives the standard paper.
[[nodiscard]] QString toLine(const LabelPaper& paper);
[[nodiscard]] LabelPaper labelPaperFrom(const QString& line);

} // namespace plumule::ui
