#pragma once

#include <QColor>
#include <QFont>
#include <QString>

class QApplication;

namespace plumule::ui {

// What stands behind the words.
enum class Ground
{
    Light,
    Dark
};

// The colours of one of the two looks. Every widget and chart takes its colours from here.
struct Palette
{
    Ground ground = Ground::Light;
    QColor page; // behind the cards
    QColor card;
    QColor cardEdge;
    QColor rule; // between rows
    QColor ink;
    QColor mutedInk;
    QColor sidebar;
    QColor sidebarInk;
    QColor sidebarMuted;
    QColor accent;     // what to press
    QColor accentInk;  // on the accent
    QColor accentSoft; // done, disabled accent
    QColor field;      // of inputs
    QColor fieldEdge;
    QColor badge;
    QColor badgeInk;
    QColor warning; // missed, wrong
    QColor cautionCard;
    QColor cautionEdge;
    QColor selection;
    // The stages, in the strips of trays.
    QColor soak;
    QColor underWeight;
    QColor blackout;
    QColor light;
};

[[nodiscard]] const Palette& lightPalette();
[[nodiscard]] const Palette& darkPalette();
// The light one on white.
[[nodiscard]] const Palette& paperPalette();

// The palette the program shows itself in now.
[[nodiscard]] const Palette& palette();

// Sets the interface font from the resources, Fusion, palette and style sheet. `fontScale` 1
// is 10.5 pt. May be called again to change the look; widgets are told by PaletteChange.
void applyTheme(QApplication& application, Ground ground, double fontScale = 1.0);

// While it lives, palette() and scaled() are those of paper at scale 1, and uiFont() is sized in
// pixels (96 an inch), so that any device may scale it. No widget may be shown meanwhile. On the
// window's thread only.
class PaperLook
{
public:
    PaperLook();
    ~PaperLook();
    PaperLook(const PaperLook&) = delete;
    PaperLook& operator=(const PaperLook&) = delete;

private:
    const Palette* m_colours;
    double m_scale;
    bool m_wasPaper;
};

// A length times the scale in force: pixels for paddings and targets.
[[nodiscard]] int scaled(int pixels);

// Whether type is so large, from half as large again on, that what usually stands side by side has
// no room for it.
[[nodiscard]] bool isTypeLarge();

// The interface font at a size relative to the body text.
[[nodiscard]] QFont uiFont(double relativeSize = 1.0, QFont::Weight weight = QFont::Normal);

} // namespace plumule::ui
