#pragma once

#include <QFrame>

#include <functional>

class QLabel;
class QPushButton;

namespace plumule::ui {

// One line at the foot of the window: what was just done, with its undo, or what was refused. It
// stays until the next one or until it is closed; it never takes the focus.
class MessageBar : public QFrame
{
    Q_OBJECT

public:
    explicit MessageBar(QWidget* parent = nullptr);

    void tell(const QString& sentence);
    // With a button that does `action`.
    void tell(const QString& sentence, const QString& actionName, std::function<void()> action);
    void refuse(const QString& sentence);
    void clear();

    [[nodiscard]] QString text() const;
    [[nodiscard]] bool isRefusal() const { return m_isRefusal; }

private:
    void show(const QString& sentence, bool isRefusal);

    QLabel* m_text = nullptr;
    QPushButton* m_action = nullptr;
    std::function<void()> m_run;
    bool m_isRefusal = false;
};

} // namespace plumule::ui
