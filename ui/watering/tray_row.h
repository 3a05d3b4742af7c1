#pragma once

#include "ui/watering/round_text.h"

#include <QAbstractButton>

class QPushButton;

namespace plumule::ui {

// Whoever ticks by keys goes on to the next row.
enum class TickedBy
{
    Touch,
    Key
};

// How many rows on a key leads: arrows, ±1000 for the first and the last; 0 for any other key.
[[nodiscard]] int rowStep(int key);

// What all rows of a round share, so that their columns stand under each other.
struct RowFrame
{
    RoundKey round;
    UnitText units;
    int codeWidth = 0;

    bool operator==(const RowFrame& other) const
    {
        return round == other.round && units.units() == other.units.units() &&
               codeWidth == other.codeWidth;
    }
};

// One tray of the round. A press anywhere on it or Space asks for its tick to be set or taken off;
// whether it is ticked is the journal's to say. One that is watered as needed is asked about
// instead: Watered or Not needed, drawn in the row.
class TrayRow : public QAbstractButton
{
    Q_OBJECT

public:
    explicit TrayRow(const RoundTray& tray, const RowFrame& frame, QWidget* parent = nullptr);

    void setTray(const RoundTray& tray, const RowFrame& frame);
    // As it was just ticked or unticked.
    void setGiven(const std::optional<Watering>& given);
    void setLooked(const std::optional<WateringLook>& looked);
    [[nodiscard]] const RoundTray& tray() const { return m_tray; }
    // The last row of a shelf has no rule under it.
    void setLast(bool isLast);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] int heightForWidth(int wide) const override;

    // Whether it asks Watered or Not needed, and where a press answers which.
    [[nodiscard]] bool asksWhetherNeeded() const;
    [[nodiscard]] QRect wateredArea() const;
    [[nodiscard]] QRect notNeededArea() const;

    // The width that the code needs.
    [[nodiscard]] static int widthOfCode(const std::string& code);

Q_SIGNALS:
    void tickAsked(plumule::ui::TickedBy by);
    void notNeededAsked();
    void detailsAsked();
    void stepAsked(int step); // of rowStep
    void focused();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void nextCheckState() override {}
    [[nodiscard]] bool hitButton(const QPoint& at) const override;

private:
    enum class Form
    {
        OneLine,
        TwoLines,
        FourLines // water and medium have one of their own
    };
    [[nodiscard]] Form formAt(int wide) const;
    void word();
    void press();
    [[nodiscard]] int answersWidth() const;
    // Of the lines, without the answers below them.
    [[nodiscard]] int wordsHeight() const;

    // tray_row_paint.cpp
    void paintGround(QPainter& painter) const;
    void paintTick(QPainter& painter) const;
    void paintAnswer(QPainter& painter, QRect area, const QString& text, const QString& key) const;
    void paintOneLine(QPainter& painter) const;
    void paintTwoLines(QPainter& painter) const;
    void paintFourLines(QPainter& painter) const;
    // Code and variety, in all but what is kept free at the right.
    void paintName(QPainter& painter, QRect line, int kept) const;
    // Of two lines and more: without box and dots.
    [[nodiscard]] QRect firstLine(int lines) const;
    void paintMedium(QPainter& painter, QRect cell) const;
    void paintWater(QPainter& painter, QRect cell, Qt::Alignment alignment) const;
    void paintLast(QPainter& painter, QRect cell, Qt::Alignment alignment) const;
    [[nodiscard]] int waterWidth() const;
    [[nodiscard]] int lastWidth() const;

    RoundTray m_tray;
    RowFrame m_frame;
    WaterWords m_water;
    QString m_missed;
    QString m_last;
    bool m_isLast = false;
    bool m_isOnNotNeeded = false; // where it was pressed
    QPushButton* m_more = nullptr;
};

} // namespace plumule::ui
