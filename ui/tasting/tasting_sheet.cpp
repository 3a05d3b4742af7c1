#include "ui/tasting/tasting_sheet.h"

#include "ui/medium/marker.h"
#include "ui/paper/paper.h"
#include "ui/tasting/tasting_text.h"

#include <QCoreApplication>
#include <QPainter>

namespace plumule::ui {
namespace {

constexpr double kCodeWide = 74; // points, as all lengths of the sheets
constexpr double kAnswerHigh = 36;
constexpr double kPlateHigh = 19;

class TastingSheetTr
{
    Q_DECLARE_TR_FUNCTIONS(TastingSheet)
};

QPageSize paperSize(UnitText units)
{
    return QPageSize(units.units() == UnitSystem::Metric ? QPageSize::A4 : QPageSize::Letter);
}

PaperBlock sheetWords(const PaperPen& pen, double wide, const QString& words, double points,
                      const QColor& ink = kPaperInk, QFont::Weight weight = QFont::Normal)
{
    PaperBlock block;
    block.high = pen.highOf(words, points, wide, weight) + 10;
    block.draw = [=](const PaperPen& on, QRectF at) {
        on.text(at, words, points, weight, ink, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
    };
    return block;
}

PaperBlock sheetTitle(const QString& title, const QString& under, bool beginsPage)
{
    PaperBlock block;
    block.high = 58;
    block.beginsPage = beginsPage;
    block.draw = [=](const PaperPen& pen, QRectF at) {
        pen.text({at.x(), at.y(), at.width(), 28}, title, 21, QFont::DemiBold);
        pen.text({at.x(), at.y() + 29, at.width(), 14}, under, 10, QFont::Normal, kPaperMuted);
    };
    return block;
}

QString howTo(TastingMethod method, std::size_t samples)
{
    switch (method) {
    case TastingMethod::Hedonic:
        return TastingSheetTr::tr(
            "Taste in this order, from the top. Drink water before each. Write one "
            "number of the scale into each box; two samples may have the same. Say "
            "nothing about them until all have finished.");
    case TastingMethod::Ranking:
        return TastingSheetTr::tr(
                   "Taste in this order, from the top. Drink water before each; you may taste "
                   "again. In each column write 1 for the one you like best, 2 for the next, "
                   "down to %1. Each number once a column. Say nothing about them until all "
                   "have finished.")
            .arg(samples);
    case TastingMethod::Triangle:
        return TastingSheetTr::tr(
            "Two of these three are the same, one is not. Taste in this order, from the "
            "top. Drink water before each; you may taste again. Tick the one that is "
            "different. If you can't tell, guess. Say nothing about them until all have "
            "finished.");
    }
    return {};
}

// The nine words of the scale in three columns.
PaperBlock scaleBlock()
{
    PaperBlock block;
    block.high = 66;
    block.draw = [](const PaperPen& pen, QRectF at) {
        const QStringList words = hedonicWords();
        const double wide = at.width() / 3;
        for (int score = 9; score >= 1; --score) {
            const int row = (9 - score) % 3;
            const int column = (9 - score) / 3;
            const QRectF cell(at.x() + column * wide, at.y() + 4 + row * 17, wide, 16);
            pen.text(cell, QString::number(score), 11, QFont::Bold);
            pen.text(cell.adjusted(16, 0, 0, 0), words[score - 1], 10.5);
        }
    };
    return block;
}

double answerWide(double wide, std::size_t columns)
{
    return qMin(96.0, (wide - kCodeWide) / double(qMax<std::size_t>(1, columns)));
}

PaperBlock answerHead(const QStringList& columns)
{
    PaperBlock block;
    block.high = 30;
    block.staysWithNext = true;
    block.draw = [columns](const PaperPen& pen, QRectF at) {
        const double wide = answerWide(at.width(), std::size_t(columns.size()));
        double x = at.x() + kCodeWide;
        for (const QString& column : columns) {
            pen.text({x + 2, at.y(), wide - 4, at.height() - 4}, column, 10, QFont::DemiBold,
                     kPaperInk, Qt::AlignHCenter | Qt::AlignBottom | Qt::TextWordWrap);
            x += wide;
        }
        pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperInk, 0.8);
    };
    return block;
}

PaperBlock answerRow(const QString& code, std::size_t columns)
{
    PaperBlock block;
    block.high = kAnswerHigh;
    block.draw = [=](const PaperPen& pen, QRectF at) {
        pen.text({at.x(), at.y(), kCodeWide, at.height()}, code, 19, QFont::Bold);
        const double wide = answerWide(at.width(), columns);
        for (std::size_t column = 0; column < columns; ++column) {
            const double centre = at.x() + kCodeWide + (double(column) + 0.5) * wide;
            pen.box({centre - 13, at.center().y() - 13, 26, 26}, Box::Empty);
        }
        pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperRule);
    };
    return block;
}

PaperBlock remarkBlock()
{
    PaperBlock block;
    block.high = 76;
    block.draw = [](const PaperPen& pen, QRectF at) {
        pen.text({at.x(), at.y() + 8, at.width(), 14}, TastingSheetTr::tr("Remarks"), 10,
                 QFont::Normal, kPaperMuted);
        for (const double y : {42.0, 64.0}) {
            pen.line({at.x(), at.y() + y}, {at.right(), at.y() + y}, kPaperRule);
        }
    };
    return block;
}

// The attribute's name as a column's head; of a triangle the question.
QStringList answerColumns(const PanelRecord& record)
{
    QStringList columns;
    for (const PanelAttribute& attribute : record.attributes) {
        columns << attributeName(attribute);
    }
    return columns;
}

void addTasterPage(std::vector<PaperBlock>& blocks, const PaperPen& pen, double wide,
                   const PanelRecord& record, const Taster& taster)
{
    const auto servings = servingsOf(record, taster.id);
    const QStringList columns = answerColumns(record);
    blocks.push_back(sheetTitle(
        QString::fromStdString(taster.name),
        QStringLiteral("%1  ·  %2")
            .arg(QString::fromStdString(record.panel.name), longDateText(record.panel.on)),
        !blocks.empty()));
    blocks.push_back(sheetWords(pen, wide, howTo(record.panel.method, record.samples.size()), 11));
    if (record.panel.method == TastingMethod::Hedonic) {
        blocks.push_back(scaleBlock());
    }
    blocks.push_back(answerHead(columns));
    for (const Serving& serving : servings) {
        blocks.push_back(
            answerRow(QString::fromStdString(serving.code), std::size_t(columns.size())));
    }
    blocks.push_back(remarkBlock());
    blocks.push_back(
        sheetWords(pen, wide,
                   TastingSheetTr::tr("If a food may harm you, an allergy for one, ask what it "
                                      "is and don't taste."),
                   9.5, kPaperMuted));
}

PaperBlock plateRow(const PlatedServing& plated)
{
    PaperBlock block;
    block.high = kPlateHigh;
    block.draw = [plated](const PaperPen& pen, QRectF at) {
        pen.box({at.x() + 1, at.center().y() - 5, 10, 10}, Box::Empty);
        pen.text({at.x() + 24, at.y(), 20, at.height()}, QString::number(plated.serving.turn), 10,
                 QFont::Normal, kPaperMuted);
        pen.text({at.x() + 48, at.y(), 50, at.height()},
                 QString::fromStdString(plated.serving.code), 12, QFont::Bold);
        pen.painter().save();
        pen.painter().translate(QPointF(at.x() + 112, at.center().y()) * pen.scale());
        pen.painter().fillPath(markerShape(plated.medium.marker, 8 * pen.scale()), kPaperInk);
        pen.painter().restore();
        pen.text({at.x() + 124, at.y(), at.width() - 124, at.height()},
                 QString::fromStdString(plated.medium.name), 11);
        pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperRule);
    };
    return block;
}

PaperBlock plateHead(const QString& taster)
{
    PaperBlock block;
    block.high = 30;
    block.staysWithNext = true;
    block.draw = [taster](const PaperPen& pen, QRectF at) {
        pen.text({at.x(), at.y() + 10, at.width(), 16}, taster, 11.5, QFont::DemiBold);
        pen.line({at.x(), at.bottom()}, {at.right(), at.bottom()}, kPaperInk, 0.8);
    };
    return block;
}

std::vector<PaperBlock> platingBlocks(const PaperPen& pen, double wide, const PanelRecord& record,
                                      const std::vector<PlatedServing>& plating)
{
    std::vector<PaperBlock> blocks;
    blocks.push_back(sheetTitle(
        TastingSheetTr::tr("Plating: not for tasters"),
        QStringLiteral("%1  ·  %2  ·  %3")
            .arg(QString::fromStdString(record.panel.name), longDateText(record.panel.on),
                 TastingSheetTr::tr("draw %1").arg(record.panel.drawNumber)),
        false));
    blocks.push_back(sheetWords(
        pen, wide,
        TastingSheetTr::tr(
            "Write each code on its plate, fill it with what stands beside it, and hand the "
            "plates out in this order. Alike in amount, cut and warmth; the same plates. Who "
            "plates does not taste and does not type the scores in. Put this sheet away until "
            "the tasting is closed."),
        10.5));
    blocks.push_back(sheetWords(
        pen, wide,
        TastingSheetTr::tr(
            "Ask everybody about allergies first. Clean hands and boards; serve nothing with "
            "mould or a foul smell. Local food rules come first."),
        9.5, kPaperMuted));
    for (const PlatedServing& each : plating) {
        if (each.serving.turn == 1) {
            blocks.push_back(plateHead(QString::fromStdString(each.taster)));
        }
        PaperBlock row = plateRow(each);
        row.staysWithNext = each.serving.turn == 1;
        blocks.push_back(std::move(row));
    }
    return blocks;
}

} // namespace

Done writeTasterSheets(const PanelRecord& record, UnitText units, const QString& pdfPath)
{
    PaperSheet sheet;
    sheet.blocks = [&](const PaperPen& pen, double wide) {
        std::vector<PaperBlock> blocks;
        for (const Taster& taster : record.tasters) {
            addTasterPage(blocks, pen, wide, record, taster);
        }
        return blocks;
    };
    sheet.foot = [&](std::size_t, std::size_t) {
        return PaperFoot{QString::fromStdString(record.panel.name), QString()};
    };
    return writePdf(pdfPath, QString::fromStdString(record.panel.name), paperSize(units),
                    [&](QPagedPaintDevice& paper) { return printSheet(paper, sheet); });
}

Done writePlatingSheet(const PanelRecord& record, const std::vector<PlatedServing>& plating,
                       UnitText units, const QString& pdfPath)
{
    PaperSheet sheet;
    sheet.blocks = [&](const PaperPen& pen, double wide) {
        return platingBlocks(pen, wide, record, plating);
    };
    sheet.foot = [&](std::size_t page, std::size_t pages) {
        return PaperFoot{TastingSheetTr::tr("Not for tasters"),
                         TastingSheetTr::tr("%1  ·  page %2 of %3")
                             .arg(QString::fromStdString(record.panel.name))
                             .arg(page)
                             .arg(pages)};
    };
    return writePdf(pdfPath, TastingSheetTr::tr("Plating"), paperSize(units),
                    [&](QPagedPaintDevice& paper) { return printSheet(paper, sheet); });
}

} // namespace plumule::ui
