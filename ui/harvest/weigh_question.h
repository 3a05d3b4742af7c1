#pragma once

#include <QElapsedTimer>
#include <QFrame>

#include <vector>

class QLabel;

namespace plumule::ui {

class FlowLayout;
class KeyButton;
class LoneKey;

// A question that stands in the way of a weight. It has the focus while it stands, takes no key for
// a moment, so that no Enter on its way answers it, and none that comes as fast as a scanner types.
class WeighQuestion : public QFrame
{
    Q_OBJECT

public:
    struct Choice
    {
        QString text;
        int key = 0;     // Qt::Key_Return answers with the keypad's Enter too
        QString keyText; // as it is written on the button
    };

    explicit WeighQuestion(QWidget* parent = nullptr);

    // Shows it; the first choice is what Enter answers. answered() tells the number of the choice.
    void ask(const QString& title, const QString& words, const std::vector<Choice>& choices);
    void close();
    [[nodiscard]] bool isOpen() const { return !m_choices.empty(); }
    // Whether the moment is over in which it takes no key.
    [[nodiscard]] bool takesKeys() const;
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString words() const;

Q_SIGNALS:
    void answered(int choice);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void takeKey(QKeyEvent* event);
    void answer(int choice);
    [[nodiscard]] int choiceOf(int key) const;

    QLabel* m_title = nullptr;
    QLabel* m_words = nullptr;
    FlowLayout* m_row = nullptr;
    std::vector<Choice> m_choices;
    std::vector<KeyButton*> m_buttons;
    QElapsedTimer m_sinceAsked;
    LoneKey* m_letter = nullptr;
};

} // namespace plumule::ui
