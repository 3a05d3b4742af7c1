#pragma once

#include <QFrame>
#include <QLabel>
#include <QPushButton>

#include <initializer_list>

class QBoxLayout;
class QFormLayout;
class QButtonGroup;
class QHBoxLayout;
class QLineEdit;
class QScrollArea;
class QVBoxLayout;

namespace plumule::ui {

class FlowLayout;

// Small parts that every page is made of. `role` picks the look in the style sheet.

[[nodiscard]] QLabel* label(const QString& text, const char* role = "");
[[nodiscard]] QPushButton* button(const QString& text, const char* role = "");
// Sets the role of a widget that may be shown already.
void setRole(QWidget* widget, const char* role);
// Shows that what stands in a field can't be used, or that it can.
void markWrong(QLineEdit& field, bool isWrong);
[[nodiscard]] QFrame* rule();
// Labels beside their fields, with the house's spacing.
[[nodiscard]] QFormLayout* fieldForm();

// A rounded panel with a heading; add rows to body().
class Card : public QFrame
{
    Q_OBJECT

public:
    // `role`: card, caution, answer, or plain for one within another.
    explicit Card(const QString& heading = {}, const char* role = "card",
                  QWidget* parent = nullptr);

    [[nodiscard]] QVBoxLayout* body() const { return m_body; }
    // The row of the heading, for a button at its right end.
    [[nodiscard]] QHBoxLayout* headingRow() const { return m_headingRow; }
    void setHeading(const QString& heading);
    // A long heading goes on in a second line rather than widen the page.
    void wrapHeading();

private:
    QLabel* m_heading = nullptr;
    QHBoxLayout* m_headingRow = nullptr;
    QVBoxLayout* m_body = nullptr;
};

// A page's head: title, subtitle, and controls at the right.
class PageHead : public QWidget
{
    Q_OBJECT

public:
    explicit PageHead(const QString& title, QWidget* parent = nullptr);

    void setTitle(const QString& title);
    void setSubtitle(const QString& subtitle);
    [[nodiscard]] QString subtitle() const;
    void addControl(QWidget* control);
    // The wider of title and one control: beside each other they stand only where there is room.
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QBoxLayout* m_row = nullptr;
    QLabel* m_title = nullptr;
    QLabel* m_subtitle = nullptr;
    FlowLayout* m_controls = nullptr;
};

// Buttons side by side of which one is chosen.
class Segmented : public QWidget
{
    Q_OBJECT

public:
    explicit Segmented(const QStringList& names, QWidget* parent = nullptr);

    [[nodiscard]] int chosen() const;
    // Does not emit. −1 chooses none.
    void choose(int index);
    [[nodiscard]] QPushButton* segment(int index) const;

Q_SIGNALS:
    void chosenByHand(int index);

private:
    QButtonGroup* m_group = nullptr;
};

// A vertical scroll area whose inner widget takes the page's colour; returns the inner layout.
[[nodiscard]] QScrollArea* scrolling(QVBoxLayout*& inner);
// Scrolls all that it stands in so far that the part is seen, once the layout knows where it
// stands.
void bringIntoView(QWidget& part);

// Whether two parts stand beside each other in that width. Once below one another they go back only
// where there is room for a scroll bar too: else the bar, coming and going, would drive them to and
// fro for ever.
[[nodiscard]] bool standsBeside(int width, int needed, bool isBeside);

// Takes everything out of a layout and deletes the widgets later, so that one of them may be the
// sender.
void clearLayout(QLayout* layout);

} // namespace plumule::ui
