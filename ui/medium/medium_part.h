#pragma once

#include "ui/page/record_part.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QSpinBox;

namespace plumule::ui {

class Card;
class NumberField;

// Media, and the pieces of reusable ones with their uses and washings.
class MediumPart : public RecordPart
{
    Q_OBJECT

public:
    MediumPart(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;

private:
    void buildForm();
    void buildFields();
    void buildPieces();
    QLayout* buildPieceActs();
    QLayout* buildSanitising();
    void show(qint64 id) override;
    void forget() override { m_shown.reset(); }
    void fillMarkers(const Medium& shown, const std::vector<int>& used);
    void showPieces();
    [[nodiscard]] QString groupOf(MediumId medium) const;
    bool save() override;
    void remove() override;
    void addPieces();
    void sanitise();
    void retire();
    [[nodiscard]] std::vector<PieceId> chosenPieces() const;
    [[nodiscard]] Result<Medium> typed() const;

    QLineEdit* m_name = nullptr;
    QComboBox* m_form = nullptr;
    QCheckBox* m_nutrient = nullptr;
    QCheckBox* m_asRun = nullptr;
    QCheckBox* m_reusable = nullptr;
    QSpinBox* m_uses = nullptr;
    NumberField* m_depth = nullptr;
    NumberField* m_amount = nullptr;
    QComboBox* m_marker = nullptr;
    QLineEdit* m_source = nullptr;
    QLineEdit* m_note = nullptr;
    QLineEdit* m_group = nullptr;
    QString m_shownGroup; // as stored
    QCheckBox* m_retired = nullptr;
    Card* m_piecesCard = nullptr;
    QListWidget* m_pieces = nullptr;
    QSpinBox* m_newPieces = nullptr;
    QLineEdit* m_method = nullptr;
    std::optional<Medium> m_shown;
    UnitSystem m_shownIn = UnitSystem::Metric; // the units the fields are shown in
};

} // namespace plumule::ui
