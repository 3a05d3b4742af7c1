#include "ui/label/label_layout.h"

#include "tests/ui/support/ui_fixture.h"
#include "ui/paper/paper.h"

#include <QFontMetricsF>
#include <QImage>
#include <QPainter>

namespace plumule::ui {
namespace {

// Calls `check` with a pen as a printer has it.
template <class Check>
void withPaperPen(Check check)
{
    QImage one(1, 1, QImage::Format_RGB32);
    QPainter painter(&one);
    check(PaperPen(painter, 600 / 72.0));
}

struct LabelLayoutTest : UiTest
{};

TEST_F(LabelLayoutTest, TheTraysCodeIsReadAtArmsLength)
{
    withPaperPen([](const PaperPen& pen) {
        const LabelLayout layout = layOutLabel(pen, {62, 29}, "RD029");
        EXPECT_GE(layout.capHeight, 6);
        EXPECT_GE(layout.module, 0.4);
    });
}

TEST_F(LabelLayoutTest, CodeAndQrCodeStayWithinTheLabelAndApart)
{
    withPaperPen([](const PaperPen& pen) {
        for (const QSizeF size : {QSizeF(62, 29), QSizeF(24, 15), QSizeF(70, 37), QSizeF(30, 60),
                                  QSizeF(100, 50), QSizeF(38, 21)}) {
            for (const QString& code :
                 {QStringLiteral("RD029"), QStringLiteral("W"), QStringLiteral("WWWWWW999999")}) {
                const LabelLayout layout = layOutLabel(pen, size, code);
                const QRectF label(QPointF(), size);
                EXPECT_TRUE(label.contains(layout.code));
                EXPECT_TRUE(label.contains(layout.words));
                EXPECT_GE(layout.module, 0.4 - 1e-6) << size.width() << " " << code.toStdString();
                EXPECT_TRUE(label.contains(layout.qr));
                EXPECT_FALSE(layout.qr.adjusted(0.01, 0.01, 0, 0).intersects(layout.code));
                EXPECT_FALSE(layout.qr.adjusted(0.01, 0.01, 0, 0).intersects(layout.words));
                const double size100 = pen.wideOf(code, 100, QFont::Bold) / kPointsPerMillimetre;
                const QFontMetricsF metrics(pen.font(100, QFont::Bold));
                const double em = layout.capHeight * 100 * pen.scale() / metrics.capHeight();
                EXPECT_LE(em / 100 * size100 * kPointsPerMillimetre, layout.code.width() + 0.01)
                    << "the code would be cut short";
            }
        }
    });
}

TEST_F(LabelLayoutTest, ACodeTooLongForTheLabelIsPrintedWithoutAQrCode)
{
    withPaperPen([](const PaperPen& pen) {
        const QString code = QString("LONG-").repeated(30);
        EXPECT_EQ(layOutLabel(pen, {24, 15}, code).module, 0);
        EXPECT_GE(layOutLabel(pen, {100, 50}, code).module, 0.4);
    });
}

TEST_F(LabelLayoutTest, AnEmptyCodeHasNoQrCodeAndNoPlaceOutsideTheLabel)
{
    withPaperPen([](const PaperPen& pen) {
        const LabelLayout layout = layOutLabel(pen, {62, 29}, "");
        EXPECT_EQ(layout.module, 0);
        EXPECT_TRUE(layout.qr.isEmpty());
        EXPECT_TRUE(QRectF(0, 0, 62, 29).contains(layout.words));
    });
}

TEST_F(LabelLayoutTest, ModulesGrowWithTheLabelUpToABound)
{
    withPaperPen([](const PaperPen& pen) {
        const double small = layOutLabel(pen, {38, 21}, "RD029").module;
        const double large = layOutLabel(pen, {100, 60}, "RD029").module;
        EXPECT_GE(small, kLeastModule - 1e-9);
        EXPECT_GT(large, small);
        EXPECT_LE(layOutLabel(pen, {300, 200}, "RD029").module, 1.1 + 1e-9);
    });
}

} // namespace
} // namespace plumule::ui
