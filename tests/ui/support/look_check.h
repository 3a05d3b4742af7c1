#pragma once

#include "ui/widget/theme.h"

#include <QAbstractItemView>
#include <QAbstractScrollArea>
#include <QAccessible>
#include <QApplication>
#include <QButtonGroup>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QRegularExpression>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <QSet>
#include <QStyleOptionComboBox>
#include <QTest>
#include <QTextDocument>
#include <QToolButton>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>

// What a look at a shown window finds wrong, each fault in words that name the widget. An empty
// list is a window that can be read and used.
namespace plumule::ui {

// How the program may be set when a window is opened.
struct Look
{
    double type = 1;
    Ground ground = Ground::Light;
    QSize size;
};

// The smallest window, and the screen of an old portable computer, at every size of type.
inline std::vector<Look> everyLook()
{
    const QSize smallest(900, 600);
    const QSize portable(1024, 768);
    return {{1.0, Ground::Light, smallest}, {1.0, Ground::Dark, portable},
            {1.5, Ground::Dark, smallest},  {1.5, Ground::Light, portable},
            {2.0, Ground::Light, smallest}, {2.0, Ground::Dark, portable}};
}

inline QString named(const QWidget& widget)
{
    QString name = widget.objectName();
    if (const auto* label = qobject_cast<const QLabel*>(&widget)) {
        name += " “" + label->text() + "”";
    } else if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) {
        name += " “" + button->text() + "”";
    }
    return QString::fromLatin1(widget.metaObject()->className()) + ' ' + name.simplified();
}

inline QString sizeWords(QSize size)
{
    return QStringLiteral("%1×%2").arg(size.width()).arg(size.height());
}

// Whether a label shows less than all of its words.
inline bool isCut(const QLabel& label)
{
    if (label.text().isEmpty()) {
        return false;
    }
    if (!label.wordWrap()) {
        return label.sizeHint().width() > label.width() + 1 ||
               label.sizeHint().height() > label.height() + 1;
    }
    int longest = 0;
    for (const QString& word : label.text().split(QRegularExpression("[\\s\\x{200B}]"))) {
        longest = std::max(longest, label.fontMetrics().horizontalAdvance(word));
    }
    return label.heightForWidth(label.width()) > label.height() + 1 ||
           longest > label.contentsRect().width() + 1;
}

inline bool isCut(const QAbstractButton& button)
{
    const bool hasOwnSize = qobject_cast<const QPushButton*>(&button) != nullptr ||
                            qobject_cast<const QCheckBox*>(&button) != nullptr ||
                            qobject_cast<const QRadioButton*>(&button) != nullptr ||
                            qobject_cast<const QToolButton*>(&button) != nullptr;
    return hasOwnSize && !button.text().isEmpty() &&
           (button.sizeHint().width() > button.width() + 1 ||
            button.sizeHint().height() > button.height() + 1);
}

inline bool isCut(const QComboBox& box)
{
    QStyleOptionComboBox option;
    option.initFrom(&box);
    const int room =
        box.style()
            ->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, &box)
            .width();
    const int icon = box.itemIcon(box.currentIndex()).isNull() ? 0 : box.iconSize().width();
    return box.fontMetrics().horizontalAdvance(box.currentText()) + icon > room + 1;
}

// What a field shows without being touched: its own text may be longer than any field.
inline bool isCut(const QLineEdit& field)
{
    return field.text().isEmpty() &&
           field.fontMetrics().horizontalAdvance(field.placeholderText()) > field.width();
}

inline QStringList cutTexts(const QWidget& window)
{
    QStringList cut;
    for (const QWidget* each : window.findChildren<QWidget*>()) {
        if (!each->isVisible()) {
            continue;
        }
        const auto* label = qobject_cast<const QLabel*>(each);
        const auto* button = qobject_cast<const QAbstractButton*>(each);
        const auto* box = qobject_cast<const QComboBox*>(each);
        const auto* field = qobject_cast<const QLineEdit*>(each);
        if ((label != nullptr && isCut(*label)) || (button != nullptr && isCut(*button)) ||
            (box != nullptr && isCut(*box)) || (field != nullptr && isCut(*field))) {
            cut << "cut: " + named(*each) + " has " + sizeWords(each->size()) + ", needs " +
                       sizeWords(each->sizeHint()) +
                       (box != nullptr ? " for " + box->currentText() : QString());
        }
    }
    return cut;
}

// What the widget juts out of, so that part of it can neither be seen nor be scrolled to; null
// where all of it can.
inline const QWidget* cutterOf(const QWidget& widget, const QWidget& window)
{
    QRect place = widget.rect();
    const QWidget* inner = &widget;
    while (inner != &window && inner->parentWidget() != nullptr) {
        const QWidget* outer = inner->parentWidget();
        place = QRect(inner->mapTo(outer, place.topLeft()), place.size());
        const auto* area = qobject_cast<const QAbstractScrollArea*>(outer->parentWidget());
        QRect room = outer->rect().adjusted(-1, -1, 1, 1);
        if (area != nullptr && area->viewport() == outer) {
            if (area->verticalScrollBar()->maximum() > 0) {
                place.moveTop(0);
                place.setHeight(1);
            }
            const bool goesSideways = area->horizontalScrollBarPolicy() != Qt::ScrollBarAlwaysOff;
            if (goesSideways && area->horizontalScrollBar()->maximum() > 0) {
                place.moveLeft(0);
                place.setWidth(1);
            }
        }
        if (!room.contains(place)) {
            return outer;
        }
        // What can be scrolled to is seen wherever its scroll area is.
        if (area != nullptr && area->viewport() == outer) {
            place = outer->rect();
        }
        inner = outer;
    }
    return nullptr;
}

inline int leastWidth(const QWidget& widget)
{
    return std::max(widget.minimumWidth(), widget.minimumSizeHint().width());
}

// The innermost part that asks for more than that width.
inline const QWidget& tooWidePart(const QWidget& whole, int room)
{
    for (const QWidget* part : whole.findChildren<QWidget*>(Qt::FindDirectChildrenOnly)) {
        if (part->isVisible() && leastWidth(*part) > room) {
            return tooWidePart(*part, room);
        }
    }
    return whole;
}

// What can be read only by scrolling sideways, with the widget that is too wide. Tables and lists,
// which have columns, may.
inline QStringList sidewaysWidgets(const QWidget& window)
{
    QStringList wide;
    for (const QScrollArea* area : window.findChildren<QScrollArea*>()) {
        if (!area->isVisible() || area->horizontalScrollBar()->maximum() == 0) {
            continue;
        }
        const int room = area->viewport()->width();
        const QWidget& part = tooWidePart(*area->widget(), room);
        wide << "sideways: " + named(*area) + ": " + named(part) + " wants " +
                    QString::number(leastWidth(part)) + " in " + QString::number(room);
    }
    return wide;
}

inline QStringList lostWidgets(const QWidget& window)
{
    QStringList lost;
    for (const QWidget* each : window.findChildren<QWidget*>()) {
        const auto* label = qobject_cast<const QLabel*>(each);
        const bool isSeen = (label != nullptr && !label->text().isEmpty()) ||
                            (each->focusPolicy() & Qt::TabFocus) != 0;
        const bool isOfAnother = each->window() != &window;
        const QWidget* cutter =
            each->isVisible() && isSeen && !isOfAnother ? cutterOf(*each, window) : nullptr;
        if (cutter != nullptr) {
            lost << "outside: " + named(*each) + " of " + sizeWords(each->size()) + " at " +
                        QString::number(each->mapTo(cutter, QPoint()).x()) + ',' +
                        QString::number(each->mapTo(cutter, QPoint()).y()) + " in " +
                        named(*cutter) + " of " + sizeWords(cutter->size());
        }
    }
    return lost;
}

// Opens each drop-down as a press does, and looks at its rows.
inline QStringList poorDropDowns(const QWidget& window)
{
    QStringList poor;
    for (QComboBox* box : window.findChildren<QComboBox*>()) {
        if (!box->isVisible() || !box->isEnabled() || box->count() == 0) {
            continue;
        }
        box->showPopup();
        const QAbstractItemView* view = box->view();
        const int rows = std::min(box->count(), 3);
        if (!view->isVisible()) {
            poor << "does not open: " + named(*box);
        } else if (view->viewport()->width() + 1 < view->sizeHintForColumn(0)) {
            poor << QString("rows cut: %1 has %2, needs %3")
                        .arg(named(*box))
                        .arg(view->viewport()->width())
                        .arg(view->sizeHintForColumn(0));
        } else if (view->viewport()->height() < rows * view->sizeHintForRow(0)) {
            poor << "rows hidden: " + named(*box);
        }
        box->hidePopup();
    }
    return poor;
}

// Whether Tab is meant to stop at it: of buttons that exclude each other it stops at one.
inline bool isTabStop(const QWidget& widget)
{
    const auto* button = qobject_cast<const QAbstractButton*>(&widget);
    const bool isOneOfMany =
        button != nullptr && !button->isChecked() && button->isCheckable() &&
        (button->autoExclusive() || (button->group() != nullptr && button->group()->exclusive()));
    return widget.isVisible() && widget.isEnabled() && widget.focusProxy() == nullptr &&
           (widget.focusPolicy() & Qt::TabFocus) == Qt::TabFocus && !isOneOfMany;
}

inline QStringList unnamedControls(const QWidget& window)
{
    QStringList unnamed;
    for (QWidget* each : window.findChildren<QWidget*>()) {
        if (!isTabStop(*each) || each->window() != &window) {
            continue;
        }
        QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(each);
        if (spoken == nullptr || spoken->text(QAccessible::Name).trimmed().isEmpty()) {
            unnamed << "has no spoken name: " + named(*each) + " in " +
                           each->parentWidget()->objectName();
        }
    }
    return unnamed;
}

// Goes round by Tab, as one without a mouse does.
inline QStringList unreachedByTab(QWidget& window)
{
    QSet<const QWidget*> wanted;
    for (const QWidget* each : window.findChildren<QWidget*>()) {
        if (isTabStop(*each) && each->window() == &window) {
            wanted << each;
        }
    }
    QStringList faults;
    const int most = 3 * static_cast<int>(wanted.size()) + 10;
    for (int i = 0; i < most && !wanted.isEmpty(); ++i) {
        QWidget* focus = QApplication::focusWidget();
        if (focus == nullptr && i > 0) {
            return {"nothing has the focus in " + named(window)};
        }
        focus = focus == nullptr ? &window : focus; // where nothing had it, it begins here
        wanted.remove(focus);
        QTest::keyClick(focus, Qt::Key_Tab);
        if (QApplication::focusWidget() == focus && wanted.size() > 0) {
            return {"Tab stays in " + named(*focus)};
        }
    }
    for (const QWidget* each : wanted) {
        faults << "not reached by Tab: " + named(*each);
    }
    return faults;
}

// WCAG 2.1, "relative luminance" and "contrast ratio".
inline double luminanceOf(QRgb pixel)
{
    const auto linear = [](int channel) {
        const double part = channel / 255.0;
        return part <= 0.03928 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(qRed(pixel)) + 0.7152 * linear(qGreen(pixel)) +
           0.0722 * linear(qBlue(pixel));
}

// Of a corner, which no letter reaches, to what differs most from it. Letters of one pixel's width
// are paler than their colour, so that less than the 4.5 of WCAG 1.4.3 is asked for.
inline double contrastIn(const QImage& drawn, const QRect& part)
{
    const QRgb ground = drawn.pixel(part.topLeft());
    const int grey = qGray(ground);
    QRgb farthest = ground;
    for (int y = part.top(); y <= part.bottom(); ++y) {
        const auto* line = reinterpret_cast<const QRgb*>(drawn.constScanLine(y));
        for (int x = part.left(); x <= part.right(); ++x) {
            if (std::abs(qGray(line[x]) - grey) > std::abs(qGray(farthest) - grey)) {
                farthest = line[x];
            }
        }
    }
    const double a = luminanceOf(ground);
    const double b = luminanceOf(farthest);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

inline QStringList paleWords(QWidget& window)
{
    QStringList pale;
    const QImage drawn = window.grab().toImage().convertToFormat(QImage::Format_RGB32);
    for (const QLabel* each : window.findChildren<QLabel*>()) {
        const QRegion seen = each->visibleRegion();
        if (!each->isVisible() || !each->isEnabled() || each->text().trimmed().isEmpty() ||
            seen.isEmpty() || each->window() != &window) {
            continue;
        }
        const QRect part = seen.boundingRect()
                               .translated(each->mapTo(&window, QPoint()))
                               .intersected(drawn.rect());
        // A strip of a line that is mostly scrolled away holds no whole letter.
        const bool isWhole = part.height() >= each->fontMetrics().height();
        if (const double ratio = isWhole ? contrastIn(drawn, part) : 21; ratio < 3) {
            pale << QString("pale: %1 at %2").arg(named(*each)).arg(ratio);
        }
    }
    return pale;
}

// Our own bold and broken lines; a name with marks has them as letters.
inline QString withoutOurMarks(QString text)
{
    for (const char* mark : {"<b>", "</b>", "<br>"}) {
        text.remove(QLatin1String(mark));
    }
    return text;
}

inline bool isDrawnWithMarks(const QLabel& label)
{
    switch (label.textFormat()) {
    case Qt::PlainText:
        return false;
    case Qt::RichText:
        return withoutOurMarks(label.text()).contains('<');
    default:
        return Qt::mightBeRichText(label.text());
    }
}

// Words of the grower's must never be taken for a text with marks.
inline QStringList textsWithMarks(const QWidget& window)
{
    QStringList found;
    for (const QWidget* each : window.findChildren<QWidget*>()) {
        const auto* label = qobject_cast<const QLabel*>(each);
        if (label != nullptr && isDrawnWithMarks(*label)) {
            found << "drawn with marks: " + named(*label);
        }
        // As Qt::convertFromPlainText() makes it: with the marks that stand for letters.
        const bool isMadePlain = each->toolTip().startsWith("<p>");
        if (Qt::mightBeRichText(each->toolTip()) && !isMadePlain) {
            found << "hint with marks: " + each->toolTip() + " of " + named(*each);
        }
    }
    return found;
}

// All that a look without a key finds.
inline QStringList lookFaults(QWidget& window)
{
    return cutTexts(window) + lostWidgets(window) + poorDropDowns(window) +
           unnamedControls(window) + paleWords(window) + textsWithMarks(window);
}

inline QStringList fitFaults(const QWidget& dialog)
{
    const QSize room = dialog.screen()->availableSize();
    const bool fits = dialog.width() <= room.width() && dialog.height() <= room.height();
    return fits ? QStringList()
                : QStringList("larger than the screen: " + sizeWords(dialog.size()) + " on " +
                              sizeWords(room));
}

// Opens what `make` makes at every look, has `look` look at it, and says what was found at which.
// Leaves the program as it was.
template <class Make, class See>
QStringList seenAtEveryLook(Make make, See see)
{
    QStringList faults;
    for (const Look& each : everyLook()) {
        applyTheme(*qApp, each.ground, each.type);
        auto shown = make(each.size);
        for (const QString& fault : see(*shown)) {
            faults << QString("%1 %2 %3: %4")
                          .arg(each.type)
                          .arg(each.ground == Ground::Dark ? "dark" : "light")
                          .arg(sizeWords(each.size), fault);
        }
    }
    applyTheme(*qApp, Ground::Light);
    return faults;
}

} // namespace plumule::ui
