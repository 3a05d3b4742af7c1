#include "ui/widget/style_sheet.h"

#include "ui/widget/theme.h"

namespace plumule::ui {
namespace {

// %page% and the like stand for colours, %8px% for scaled lengths, %1.4em% for scaled type.
const char* const kSheet = R"(
QMainWindow, QDialog, QWidget[role="page"] { background: %page%; }
QLabel { background: transparent; color: %ink%; }
QLabel[role="title"] { font-size: %1.75em%; font-weight: 600; }
QLabel[role="subtitle"] { color: %mutedInk%; }
QLabel[role="heading"] { font-weight: 600; }
QLabel[role="muted"] { color: %mutedInk%; }
QLabel[role="warning"] { color: %warning%; font-weight: 600; }
QLabel[role="good"] { color: %accent%; font-weight: 600; }
QLabel[role="code"] { font-size: %1.1em%; font-weight: 600; }
QLabel[role="done"] { color: %mutedInk%; }
QLabel[role="big"] { font-size: %3.2em%; font-weight: 700; }
QLabel[role="strong"] { font-weight: 600; }

QFrame[role="card"] { background: %card%; border: 1px solid %cardEdge%; border-radius: %10px%; }
QFrame[role="caution"] { background: %cautionCard%; border: 1px solid %cautionEdge%; border-radius: %10px%; }
QFrame[role="answer"] { background: %card%; border: 1px solid %cardEdge%; border-left: %5px% solid %accent%; border-radius: %10px%;
  border-top-left-radius: %3px%; border-bottom-left-radius: %3px%; }
QFrame[role="alarm"] { background: %card%; border: 1px solid %warning%; border-radius: %10px%; }
QFrame[role="hand"] { background: %card%; border: 1px solid %cardEdge%; border-radius: %10px%; }
QFrame[role="scanned"] { background: %card%; border: 2px solid %accent%; border-radius: %10px%; }
QFrame[role="panel"] { background: %page%; border: 1px solid %rule%; border-radius: %8px%; }
QFrame[role="rule"] { background: %rule%; border: none; max-height: 1px; min-height: 1px; }

QPushButton { background: %card%; color: %ink%; border: 1px solid %fieldEdge%; border-radius: %7px%;
  padding: %8px% %14px%; min-height: %20px%; outline: none; }
QPushButton:hover { border-color: %accent%; }
QPushButton:focus { border: 2px solid %accent%; padding: %7px% %13px%; }
QPushButton:pressed { background: %selection%; }
QPushButton:disabled { color: %mutedInk%; background: %page%; border-color: %rule%; }
QPushButton[role="primary"] { background: %accent%; color: %accentInk%; border-color: %accent%; font-weight: 600; }
QPushButton[role="primary"]:hover { border-color: %ink%; }
QPushButton[role="primary"]:focus { border: 2px solid %ink%; }
QPushButton[role="primary"]:disabled { background: %accentSoft%; border-color: %accentSoft%; }
QPushButton[role="quiet"] { background: transparent; border-color: transparent; color: %accent%; padding: %4px% %8px%; }
QPushButton[role="quiet"]:hover { background: %selection%; }
QPushButton[role="quiet"]:focus { border: 2px solid %accent%; }
QPushButton[role="toggle"]:checked { background: %accentSoft%; border-color: %accent%; font-weight: 600; }
QPushButton[role="danger"] { color: %warning%; }
QPushButton[role="segment"] { border-radius: 0; margin: 0; }
QPushButton[role="segment"][end="first"] { border-top-left-radius: %7px%; border-bottom-left-radius: %7px%; }
QPushButton[role="segment"][end="last"] { border-top-right-radius: %7px%; border-bottom-right-radius: %7px%; }
QPushButton[role="segment"][end="only"] { border-radius: %7px%; }
QPushButton[role="segment"]:focus { border: 2px solid %accent%; padding: %7px% %13px%; }
QPushButton[role="segment"]:checked { background: %accent%; color: %accentInk%; border-color: %accent%; font-weight: 600; }
QPushButton[role="segment"]:checked:focus { border-color: %ink%; }
QPushButton[role="nav"] { background: transparent; color: %sidebarInk%; border: 2px solid transparent; text-align: left;
  padding: 9px %12px%; min-height: %20px%; border-radius: %8px%; }
QPushButton[role="nav"]:hover { background: rgba(255, 255, 255, 22); }
QPushButton[role="nav"]:focus { border-color: %sidebarMuted%; }
QPushButton[role="nav"]:checked { background: %chosenPage%; color: %ink%; font-weight: 600; }

QLineEdit, QTextEdit, QPlainTextEdit, QSpinBox, QDoubleSpinBox, QComboBox {
  background: %field%; color: %ink%; border: 1px solid %fieldEdge%; border-radius: %7px%; padding: %6px% %9px%;
  min-height: %22px%; selection-background-color: %accent%; selection-color: %accentInk%; }
QLineEdit:focus, QTextEdit:focus, QPlainTextEdit:focus, QSpinBox:focus, QDoubleSpinBox:focus, QComboBox:focus { border: 2px solid %accent%; padding: %5px% %8px%; }
QLineEdit[wrong="true"] { border: 2px solid %warning%; }
QLineEdit:read-only { background: %page%; }
QComboBox { combobox-popup: 0; }
QComboBox::drop-down { border: none; width: %26px%; }
QComboBox::down-arrow { image: url(:/icons/chevron.svg); width: %14px%; height: %14px%; }
QPushButton::menu-indicator { image: url(:/icons/chevron.svg); width: %14px%; height: %14px%; subcontrol-position: right center; right: %8px%; }
QPushButton[role="menu"] { padding-right: %30px%; }
QComboBox QAbstractItemView { background: %card%; color: %ink%; border: 1px solid %fieldEdge%;
  selection-background-color: %selection%; selection-color: %ink%; outline: none; }
QSpinBox::up-button, QSpinBox::down-button, QDoubleSpinBox::up-button, QDoubleSpinBox::down-button { width: 0; border: none; }
QCheckBox, QRadioButton { spacing: %8px%; background: transparent; color: %ink%; }
QCheckBox::indicator, QListView::indicator, QTableView::indicator, QTreeView::indicator, QMenu::indicator {
  width: %20px%; height: %20px%; border: 2px solid %mutedInk%; border-radius: %5px%; background: %field%; }
QCheckBox::indicator:checked, QListView::indicator:checked, QTableView::indicator:checked, QTreeView::indicator:checked,
QMenu::indicator:checked { background: %accent%; border-color: %accent%; image: url(:/icons/tick.svg); }
QCheckBox:focus { color: %accent%; }
QCheckBox::indicator:focus { border-color: %accent%; background: %selection%; }
QCheckBox::indicator:checked:focus { border-color: %ink%; background: %accent%; }

QTableView, QTreeView, QListView { background: %card%; color: %ink%; border: 2px solid transparent; gridline-color: %rule%;
  selection-background-color: %selection%; selection-color: %ink%; outline: none; alternate-background-color: %page%; }
QTableView:focus, QTreeView:focus, QListView:focus { border-color: %accent%; border-radius: %5px%; }
QTableView::item, QListView::item, QTreeView::item { padding: %6px% %8px%; border: none; }
QTableView::item:selected, QListView::item:selected, QTreeView::item:selected { background: %selection%; color: %ink%; }
QListView::item { border-radius: %6px%; }
QHeaderView { background: %card%; }
QHeaderView::section { background: %card%; color: %mutedInk%; border: none; border-bottom: 1px solid %rule%;
  padding: %8px% %8px%; font-weight: 400; }
QTableCornerButton::section { background: %card%; border: none; }
QScrollArea, QScrollArea > QWidget > QWidget#scrolled { background: transparent; border: none; }
QAbstractScrollArea::corner { background: transparent; border: none; }
QScrollBar:vertical { background: transparent; width: %12px%; margin: 0; }
QScrollBar::handle:vertical { background: %fieldEdge%; border-radius: %5px%; min-height: %32px%; margin: 1px; }
QScrollBar:horizontal { background: transparent; height: %12px%; margin: 0; }
QScrollBar::handle:horizontal { background: %fieldEdge%; border-radius: %5px%; min-width: %32px%; margin: 1px; }
QScrollBar::add-line, QScrollBar::sub-line, QScrollBar::add-page, QScrollBar::sub-page { background: transparent; border: none; width: 0; height: 0; }
QProgressBar { background: %cardEdge%; border: none; border-radius: %4px%; max-height: %8px%; min-height: %8px%; text-align: center; color: transparent; }
QProgressBar::chunk { background: %accent%; border-radius: %4px%; }
QTabBar::tab { background: transparent; color: %mutedInk%; padding: %9px% %14px%; border: none; border-bottom: %3px% solid transparent; }
QTabBar::tab:selected { color: %ink%; font-weight: 600; border-bottom-color: %accent%; }
QTabBar::tab:focus { color: %accent%; }
QTabBar::tab:selected:focus { background: %selection%; }
QTabWidget::pane { border: none; }
QDialogButtonBox { dialogbuttonbox-buttons-have-icons: 0; }
QTabBar { outline: none; }
QTabBar::tear { width: 0; border: none; }
QTabBar::scroller { width: %72px%; }
QTabBar QToolButton { background: %card%; border: 1px solid %fieldEdge%; }
QTabBar QToolButton::left-arrow { image: url(:/icons/chevron-left.svg); width: %16px%; height: %16px%; }
QTabBar QToolButton::right-arrow { image: url(:/icons/chevron-right.svg); width: %16px%; height: %16px%; }
QToolTip { background: %card%; color: %ink%; border: 1px solid %fieldEdge%; padding: %6px%; }
QMenu { background: %card%; color: %ink%; border: 1px solid %fieldEdge%; padding: %4px%; }
QMenu::item { padding: %8px% %22px%; border-radius: %5px%; }
QMenu::item:selected { background: %selection%; }
QToolButton { background: transparent; color: %ink%; border: 1px solid transparent; border-radius: %5px%; padding: %3px%; }
QToolButton:hover { background: %selection%; }
QToolButton:focus { border: 2px solid %accent%; }
QWidget[role="sidebar"] { background: %sidebar%; }
QWidget[role="sidebar"] QLabel { color: %sidebarInk%; }
QWidget[role="sidebar"] QLabel[role="muted"] { color: %sidebarMuted%; }
QLabel[role="badge"] { background: %badge%; color: %badgeInk%; border-radius: %7px%; padding: %1px% %7px%; font-weight: 600; font-size: %0.85em%; }
QSplitter::handle { background: transparent; }
)";

QString valueOf(const QString& token, const Palette& colours)
{
    const QList<QPair<QString, QColor>> named = {
        {"page", colours.page},
        {"chosenPage", colours.ground == Ground::Dark ? colours.selection : colours.page},
        {"card", colours.card},
        {"cardEdge", colours.cardEdge},
        {"rule", colours.rule},
        {"ink", colours.ink},
        {"mutedInk", colours.mutedInk},
        {"sidebar", colours.sidebar},
        {"sidebarInk", colours.sidebarInk},
        {"sidebarMuted", colours.sidebarMuted},
        {"accent", colours.accent},
        {"accentInk", colours.accentInk},
        {"accentSoft", colours.accentSoft},
        {"field", colours.field},
        {"fieldEdge", colours.fieldEdge},
        {"badge", colours.badge},
        {"badgeInk", colours.badgeInk},
        {"warning", colours.warning},
        {"cautionCard", colours.cautionCard},
        {"cautionEdge", colours.cautionEdge},
        {"selection", colours.selection}};
    for (const auto& [name, colour] : named) {
        if (name == token) {
            return colour.name();
        }
    }
    if (token.endsWith("px")) {
        return QString::number(scaled(token.chopped(2).toInt())) + "px";
    }
    Q_ASSERT(token.endsWith("em"));
    return QString::number(uiFont(token.chopped(2).toDouble()).pointSizeF()) + "pt";
}

} // namespace

QString styleSheet(const Palette& colours)
{
    const QString source = QString::fromLatin1(kSheet);
    QString sheet;
    qsizetype from = 0;
    while (true) {
        const qsizetype open = source.indexOf('%', from);
        if (open < 0) {
            return sheet + source.mid(from);
        }
        const qsizetype close = source.indexOf('%', open + 1);
        sheet += source.mid(from, open - from);
        sheet += valueOf(source.mid(open + 1, close - open - 1), colours);
        from = close + 1;
    }
}

} // namespace plumule::ui
