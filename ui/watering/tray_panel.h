#pragma once

#include "core/watering/round.h"
#include "ui/widget/amount_field.h"

#include <QFrame>

class QBoxLayout;
class QLabel;
class QPushButton;

namespace plumule::ui {

class Segmented;

// The panel that opens under a tray's row. It holds what is typed until it is saved or closed.
class TrayPanel : public QFrame
{
    Q_OBJECT

public:
    enum class Part
    {
        Note,
        Height,
        Water
    };

    explicit TrayPanel(QWidget* parent = nullptr);

    // Empty, for this tray.
    void begin(const RoundTray& tray, UnitSystem units);
    void focusOn(Part part);
    [[nodiscard]] TrayId tray() const { return m_tray; }
    // As typed, of no round yet. None, with the fields at fault marked, where something is no
    // number or beyond its range.
    [[nodiscard]] std::optional<TrayRemark> remark();
    // Whether something was typed that isn't saved.
    [[nodiscard]] bool isChanged() const;

Q_SIGNALS:
    void saveAsked();
    void closeAsked();
    void photoAsked();
    void sheetAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void buildFields();
    void buildMeasures();
    void buildButtons();
    void wireSignals();

    TrayId m_tray;
    UnitSystem m_units = UnitSystem::Metric;
    QBoxLayout* m_measures = nullptr;
    QLabel* m_heading = nullptr;
    QLineEdit* m_note = nullptr;
    NumberField* m_height = nullptr;
    Segmented* m_from = nullptr;
    NumberField* m_given = nullptr;
    NumberField* m_ph = nullptr;
    NumberField* m_ec = nullptr;
    QPushButton* m_photo = nullptr;
    QPushButton* m_sheet = nullptr;
    QPushButton* m_close = nullptr;
    QPushButton* m_save = nullptr;
};

} // namespace plumule::ui
