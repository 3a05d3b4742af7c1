#pragma once

#include "ui/page/record_part.h"

class QCheckBox;
class QLineEdit;

namespace plumule::ui {

class NumberField;
class ProtocolEditor;

// Varieties and their protocols.
class VarietyPart : public RecordPart
{
    Q_OBJECT

public:
    VarietyPart(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;

private:
    void buildForm();
    void show(qint64 id) override;
    void forget() override { m_shown.reset(); }
    bool save() override;
    void remove() override;

    QLineEdit* m_name = nullptr;
    QLineEdit* m_prefix = nullptr;
    NumberField* m_seed = nullptr;
    QLineEdit* m_source = nullptr;
    QLineEdit* m_note = nullptr;
    QCheckBox* m_retired = nullptr;
    ProtocolEditor* m_protocol = nullptr;
    std::optional<Protocol> m_shown;           // as it is in the journal
    UnitSystem m_shownIn = UnitSystem::Metric; // the units the fields are shown in
};

} // namespace plumule::ui
