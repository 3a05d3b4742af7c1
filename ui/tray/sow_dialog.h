#pragma once

#include "ui/page/page.h"

#include <QDialog>

class QCheckBox;
class QComboBox;
class QDateEdit;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QSpinBox;
class QTimeEdit;

namespace plumule::ui {

class CheckList;
class NumberField;

// Sows one tray or many at once. It proposes free places and clean pieces; the sowing day may be
// set by the day the trays shall be cut.
class SowDialog : public QDialog
{
    Q_OBJECT

public:
    SowDialog(Journal& journal, Services services, QWidget* parent = nullptr);

Q_SIGNALS:
    void sown(int trays);

private:
    QWidget* buildWhat();
    QWidget* buildWhere();
    QWidget* buildButtons();
    void wireSignals();
    void fillChoices();
    void fillTrials();
    void showVariety();
    void showMedium();
    void showPlaces();
    void showDates();
    void sowForHarvest();
    void refuse(const QString& words);
    void sow();
    [[nodiscard]] Result<SowingDraft> draft() const;
    [[nodiscard]] std::optional<Medium> medium() const;
    [[nodiscard]] Moment at() const;

    Journal& m_journal;
    Services m_services;
    UnitSystem m_units = UnitSystem::Metric;
    std::optional<Protocol> m_protocol;
    std::vector<Medium> m_media;
    QFormLayout* m_form = nullptr;
    QComboBox* m_variety = nullptr;
    QComboBox* m_lot = nullptr;
    QComboBox* m_medium = nullptr;
    QSpinBox* m_count = nullptr;
    NumberField* m_seed = nullptr;
    QDateEdit* m_day = nullptr;
    QTimeEdit* m_time = nullptr;
    QCheckBox* m_soak = nullptr;
    QDateEdit* m_harvest = nullptr;
    QLabel* m_dates = nullptr;
    QComboBox* m_trial = nullptr;
    QSpinBox* m_block = nullptr;
    QLineEdit* m_person = nullptr;
    QLineEdit* m_code = nullptr;
    CheckList* m_places = nullptr;
    CheckList* m_pieces = nullptr;
    QLabel* m_piecesWords = nullptr;
    QLabel* m_refusal = nullptr;
    QPushButton* m_sow = nullptr;
};

} // namespace plumule::ui
