#pragma once

#include <QStringList>
#include <QWidget>

#include <optional>

namespace plumule::ui {

// Fields that are saved together. Enter saves them wherever the focus is, but on a button, which it
// presses; and the panel knows whether anything in it was changed since it was filled or saved.
class FormPanel : public QWidget
{
    Q_OBJECT

public:
    explicit FormPanel(QWidget* parent = nullptr);

    // What the fields hold counts as unchanged from now on.
    void settle();
    // Not before it was settled once.
    [[nodiscard]] bool isChanged() const;

Q_SIGNALS:
    void entered();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    std::optional<QStringList> m_settled;
};

} // namespace plumule::ui
