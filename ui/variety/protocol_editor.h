#pragma once

#include "core/room/room.h"
#include "core/variety/variety.h"

#include <QWidget>

#include <array>

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QLineEdit;

namespace plumule::ui {

class NumberField;

// The four stages of a protocol, each of which may be left out: length, waterings, cue.
class ProtocolEditor : public QWidget
{
    Q_OBJECT

public:
    explicit ProtocolEditor(QWidget* parent = nullptr);

    void show(const std::vector<ProtocolStage>& stages, UnitSystem units);
    // The stages as they are set; Invalid, with the stage, where an amount is no number.
    [[nodiscard]] Result<std::vector<ProtocolStage>> stages() const;

private:
    struct Row
    {
        Stage stage = Stage::Soak;
        QCheckBox* isUsed = nullptr;
        QWidget* fields = nullptr;     // shown while the stage is used
        NumberField* length = nullptr; // hours of soak, days of the others
        QComboBox* waterings = nullptr;
        QComboBox* method = nullptr;
        NumberField* amount = nullptr;
        QComboBox* water = nullptr;
        QComboBox* waterOnNutrient = nullptr;
        QLineEdit* cue = nullptr;
        ProtocolStageId id;
    };

    void makeFields(Row& row);
    QWidget* buildRow(Row& row);
    void showUsed(Row& row);

    std::array<Row, 4> m_rows;
    UnitSystem m_units = UnitSystem::Metric;
};

} // namespace plumule::ui
