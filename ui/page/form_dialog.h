#pragma once

#include "ui/widget/form_panel.h"

#include <QDialog>

class QHBoxLayout;
class QLabel;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace plumule::ui {

class Ask;

// A dialog of fields under a title, with a row of buttons below. What doesn't fit the screen
// scrolls, the buttons stay in sight. Leaving it with something changed asks first.
class FormDialog : public QDialog
{
    Q_OBJECT

public:
    void reject() override;

protected:
    // `name` is the dialog's object name.
    FormDialog(Ask& ask, const char* name, const QString& title, QWidget* parent);

    // Where the fields go.
    [[nodiscard]] QVBoxLayout* body() const { return m_body; }
    [[nodiscard]] FormPanel* panel() const { return m_panel; }
    // A button of the row, at its left end or its right. The last primary one is what Enter
    // presses.
    QPushButton* addLeftButton(const QString& text, const char* name, const char* role = "");
    QPushButton* addButton(const QString& text, const char* name, const char* role = "");
    // Cancel, as in every dialog.
    void addCancel();
    // Says above the buttons why something can't be done; an empty text says nothing.
    void refuse(const QString& why);
    // The size it opens with where the screen has room for it.
    void wish(QSize size) { m_wish = size; }

    // For a dialog whose fields are no record: it is left without a question.
    void leaveFreely() { m_asks = false; }

    void showEvent(QShowEvent* event) override;
    // The page keys scroll also from a button of the row.
    void keyPressEvent(QKeyEvent* event) override;

private:
    QPushButton* made(const QString& text, const char* name, const char* role);

    Ask& m_ask;
    FormPanel* m_panel = nullptr;
    QVBoxLayout* m_body = nullptr;
    QLabel* m_refusal = nullptr;
    QHBoxLayout* m_left = nullptr;
    QHBoxLayout* m_right = nullptr;
    QScrollArea* m_area = nullptr;
    QSize m_wish;
    bool m_asks = true;
};

} // namespace plumule::ui
