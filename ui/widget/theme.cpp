#include "ui/widget/theme.h"

#include "ui/text/plural_text.h"
#include "ui/widget/house_style.h"
#include "ui/widget/one_line_fields.h"
#include "ui/widget/still_wheel.h"
#include "ui/widget/style_sheet.h"
#include "ui/widget/wide_drop_downs.h"

#include <QApplication>
#include <QFontDatabase>
#include <QPalette>

namespace plumule::ui {
namespace {

constexpr double kBodyPoints = 10.5;
constexpr double kPixelsPerPoint = 96.0 / 72.0;

struct Look
{
    const Palette* colours = nullptr;
    double scale = 1.0;
    QString family;
    bool isPaper = false;
};

Look& look()
{
    static Look current{&lightPalette(), 1.0, {}};
    return current;
}

QString loadInterfaceFont()
{
    QString family;
    for (const char* weight : {"Regular", "Medium", "SemiBold", "Bold"}) {
        const int id = QFontDatabase::addApplicationFont(
            QStringLiteral(":/fonts/Inter-%1.otf").arg(QLatin1String(weight)));
        const QStringList families = QFontDatabase::applicationFontFamilies(id);
        if (family.isEmpty() && !families.isEmpty()) {
            family = families.front();
        }
    }
    return family;
}

QPalette widgetPalette(const Palette& colours)
{
    QPalette widgets;
    widgets.setColor(QPalette::Window, colours.page);
    widgets.setColor(QPalette::WindowText, colours.ink);
    widgets.setColor(QPalette::Base, colours.field);
    widgets.setColor(QPalette::AlternateBase, colours.page);
    widgets.setColor(QPalette::Text, colours.ink);
    widgets.setColor(QPalette::PlaceholderText, colours.mutedInk);
    widgets.setColor(QPalette::Button, colours.card);
    widgets.setColor(QPalette::ButtonText, colours.ink);
    widgets.setColor(QPalette::Highlight, colours.accent);
    widgets.setColor(QPalette::HighlightedText, colours.accentInk);
    widgets.setColor(QPalette::ToolTipBase, colours.card);
    widgets.setColor(QPalette::ToolTipText, colours.ink);
    widgets.setColor(QPalette::Link, colours.accent);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        widgets.setColor(QPalette::Disabled, role, colours.mutedInk);
    }
    return widgets;
}

} // namespace

const Palette& lightPalette()
{
    static const Palette colours{Ground::Light, "#f5f3ec", "#fffefa", "#e3e0d3", "#ece9df",
                                 "#1c2b25",     "#5f6b65", "#22352f", "#e8ede9", "#9fb0a8",
                                 "#2e6b52",     "#ffffff", "#9bb8aa", "#ffffff", "#c9c8bd",
                                 "#a8600f",     "#ffffff", "#b3362a", "#fdf6e6", "#e6c988",
                                 "#e2ece6",     "#6f8fb8", "#8b6a47", "#3b4252", "#7fae5b"};
    return colours;
}

const Palette& darkPalette()
{
    static const Palette colours{Ground::Dark, "#151d1a", "#1e2925", "#33413b", "#2b3832",
                                 "#eaf0ec",    "#9fb0a8", "#0e1513", "#dfe8e3", "#7f9188",
                                 "#5cb28c",    "#0c1a14", "#3d6553", "#17211d", "#4a5a53",
                                 "#e09a45",    "#1b1206", "#ff8a7a", "#332b1a", "#7a6330",
                                 "#2c443a",    "#86a6d0", "#b08a62", "#7b86a0", "#93c56d"};
    return colours;
}

const Palette& palette()
{
    return *look().colours;
}

PaperLook::PaperLook()
    : m_colours(look().colours)
    , m_scale(look().scale)
    , m_wasPaper(look().isPaper)
{
    look().colours = &paperPalette();
    look().scale = 1.0;
    look().isPaper = true;
}

PaperLook::~PaperLook()
{
    look().colours = m_colours;
    look().scale = m_scale;
    look().isPaper = m_wasPaper;
}

int scaled(int pixels)
{
    return qRound(pixels * look().scale);
}

const Palette& paperPalette()
{
    static const Palette colours = [] {
        Palette paper = lightPalette();
        paper.page = Qt::white;
        paper.card = Qt::white;
        return paper;
    }();
    return colours;
}

bool isTypeLarge()
{
    constexpr double kLarge = 1.5;
    return look().scale >= kLarge;
}

QFont uiFont(double relativeSize, QFont::Weight weight)
{
    QFont font(look().family);
    if (look().isPaper) {
        font.setPixelSize(qRound(kBodyPoints * kPixelsPerPoint * relativeSize));
    } else {
        font.setPointSizeF(kBodyPoints * look().scale * relativeSize);
    }
    font.setWeight(weight);
    return font;
}

void applyTheme(QApplication& application, Ground ground, double fontScale)
{
    Look& current = look();
    current.colours = ground == Ground::Dark ? &darkPalette() : &lightPalette();
    current.scale = fontScale;
    if (current.family.isEmpty()) {
        current.family = loadInterfaceFont();
        application.setStyle(new HouseStyle);
        installEnglishPlurals(application);
        keepFieldsOnOneLine(application);
        showWholeRows(application);
        keepValuesFromTheWheel(application);
    }
    application.setFont(uiFont());
    application.setPalette(widgetPalette(*current.colours));
    application.setStyleSheet(styleSheet(*current.colours));
}

} // namespace plumule::ui
