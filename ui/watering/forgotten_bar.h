#pragma once

#include "core/watering/round.h"

#include <QFrame>

class QBoxLayout;
class QLabel;

namespace plumule::ui {

// One line above the round: which trays stood without water too long, the worst first. Hidden where
// there are none.
class ForgottenBar : public QFrame
{
    Q_OBJECT

public:
    explicit ForgottenBar(QWidget* parent = nullptr);

    void showRound(const Round& round);

Q_SIGNALS:
    void handAsked(plumule::TrayId tray); // the worst

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QBoxLayout* m_row = nullptr;
    QLabel* m_words = nullptr;
    TrayId m_worst;
};

} // namespace plumule::ui
