#include "ui/widget/theme.h"

#include <QApplication>
#include <QFontInfo>
#include <QLabel>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace plumule::ui {
namespace {

// WCAG 2.1, "relative luminance" and "contrast ratio".
double luminance(const QColor& colour)
{
    const auto linear = [](double channel) {
        return channel <= 0.03928 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

double contrast(const QColor& a, const QColor& b)
{
    const double first = luminance(a);
    const double second = luminance(b);
    return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

// Puts the look back after a test that changes it.
class ThemeTest : public ::testing::Test
{
protected:
    static void apply(Ground ground, double scale) { applyTheme(*qApp, ground, scale); }
    void TearDown() override { apply(Ground::Light, 1.0); }
};

TEST(Contrast, IsThatOfThePublishedFormula)
{
    // The ends of the scale, as WCAG states them.
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
    EXPECT_NEAR(contrast(Qt::white, Qt::white), 1.0, 1e-9);
    // The lightest grey that passes on white at 4.5 (from memory: #767676).
    EXPECT_NEAR(contrast(QColor("#767676"), Qt::white), 4.54, 0.01);
}

TEST(Palettes, KeepWordsReadableInBothLooks)
{
    // WCAG 2.1, 1.4.3: 4.5 for text.
    for (const Palette* look : {&lightPalette(), &darkPalette()}) {
        const std::pair<const char*, std::pair<QColor, QColor>> pairs[] = {
            {"ink on card", {look->ink, look->card}},
            {"ink on page", {look->ink, look->page}},
            {"ink on field", {look->ink, look->field}},
            {"ink on caution", {look->ink, look->cautionCard}},
            {"ink on selection", {look->ink, look->selection}},
            {"muted ink on card", {look->mutedInk, look->card}},
            {"muted ink on page", {look->mutedInk, look->page}},
            {"warning on card", {look->warning, look->card}},
            {"accent ink on accent", {look->accentInk, look->accent}},
            {"sidebar ink on sidebar", {look->sidebarInk, look->sidebar}},
            {"muted ink on sidebar", {look->sidebarMuted, look->sidebar}},
            {"badge ink on badge", {look->badgeInk, look->badge}},
        };
        for (const auto& [name, colours] : pairs) {
            EXPECT_GE(contrast(colours.first, colours.second), 4.5)
                << name << (look->ground == Ground::Dark ? ", dark" : ", light");
        }
    }
}

TEST(Palettes, SetTheLooksApart)
{
    EXPECT_EQ(lightPalette().ground, Ground::Light);
    EXPECT_EQ(darkPalette().ground, Ground::Dark);
    EXPECT_GT(luminance(lightPalette().card), luminance(darkPalette().card));
}

TEST_F(ThemeTest, ShowsItselfInInter)
{
    EXPECT_EQ(uiFont().family(), "Inter");
    EXPECT_EQ(QApplication::font().family(), "Inter");
    // What is really drawn with, not only asked for.
    EXPECT_EQ(QFontInfo(uiFont()).family(), "Inter");
    for (const QFont::Weight weight :
         {QFont::Normal, QFont::Medium, QFont::DemiBold, QFont::Bold}) {
        EXPECT_EQ(QFontInfo(uiFont(1.0, weight)).weight(), weight);
    }
}

TEST_F(ThemeTest, ScalesTypeAndLengthsTogether)
{
    const double body = uiFont().pointSizeF();
    EXPECT_DOUBLE_EQ(uiFont(2.0).pointSizeF(), 2 * body);
    EXPECT_EQ(scaled(20), 20);
    apply(Ground::Light, 1.5);
    EXPECT_DOUBLE_EQ(uiFont().pointSizeF(), 1.5 * body);
    EXPECT_EQ(scaled(20), 30);
}

TEST_F(ThemeTest, ChangesTheColoursOfWhatIsShown)
{
    QLabel label("words");
    label.ensurePolished();
    EXPECT_EQ(palette().ground, Ground::Light);
    apply(Ground::Dark, 1.0);
    EXPECT_EQ(palette().ground, Ground::Dark);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), darkPalette().page);
    EXPECT_EQ(label.palette().color(QPalette::WindowText), darkPalette().ink);
    apply(Ground::Light, 1.0);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), lightPalette().page);
}

} // namespace
} // namespace plumule::ui
