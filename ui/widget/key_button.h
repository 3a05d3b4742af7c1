#pragma once

#include <QPushButton>

class QPainter;

namespace plumule::ui {

// A button that shows the key which presses it, and is tall enough for a wet finger. A checkable
// one has a box that shows whether it is on.
class KeyButton : public QPushButton
{
    Q_OBJECT

public:
    // `role` as button()'s; `key` as written on it: "S", "Space".
    KeyButton(const QString& text, const QString& key, const char* role = "",
              QWidget* parent = nullptr);
    KeyButton(const QString& text, QChar key, const char* role = "", QWidget* parent = nullptr);

    // Where several buttons answer to one letter, only the one that would be pressed shows it.
    void setKeyShown(bool isShown);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] static int capSide();
    [[nodiscard]] int boxWidth() const; // 0 where it can't be checked
    void paintBox(QPainter& painter, const QRectF& box) const;

    QString m_key;
    int m_capWidth; // of the cap that the key is written on
    bool m_isKeyShown = true;
};

} // namespace plumule::ui
