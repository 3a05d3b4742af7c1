#pragma once

#include "core/medium/medium.h"
#include "core/tray/tray.h"
#include "core/variety/variety.h"
#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

class QBoxLayout;
class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace plumule::ui {

class CheckList;
class DateField;
class NumberField;
class TimeField;

// What a sowing is begun with.
struct SowProposal
{
    VarietyId variety;
    MediumId medium;
    int trays = 1;
    Date harvest; // to be cut on it
    bool beginsWithSoak = false;
};

// Sows one tray or many at once. It proposes free places and clean pieces; the sowing day may be
// set by the day the trays shall be cut.
class SowDialog : public FormDialog
{
    Q_OBJECT

public:
    SowDialog(Journal& journal, Services services, QWidget* parent = nullptr);

    // Fills the fields; the grower looks at them and sows.
    void propose(const SowProposal& proposal);

Q_SIGNALS:
    void sown(int trays);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void makeFields();
    QWidget* buildWhat();
    QWidget* buildWhere();
    void wireSignals();
    void fillChoices();
    void fillTrials();
    void showVariety();
    void showMedium();
    [[nodiscard]] static QString whyNoPiece(int dirty);
    void showPlaces();
    void showDates();
    void sowForHarvest();
    void sow();
    [[nodiscard]] Result<SowingDraft> draft() const;
    [[nodiscard]] std::optional<Medium> medium() const;
    [[nodiscard]] Moment at() const;

    Journal& m_journal;
    UnitSystem m_units = UnitSystem::Metric;
    std::optional<Protocol> m_protocol;
    std::vector<Medium> m_media;
    QBoxLayout* m_columns = nullptr;
    QComboBox* m_variety = nullptr;
    QComboBox* m_lot = nullptr;
    QComboBox* m_medium = nullptr;
    QSpinBox* m_count = nullptr;
    NumberField* m_seed = nullptr;
    DateField* m_day = nullptr;
    TimeField* m_time = nullptr;
    QCheckBox* m_soak = nullptr;
    DateField* m_harvest = nullptr;
    QLabel* m_dates = nullptr;
    QComboBox* m_trial = nullptr;
    QSpinBox* m_block = nullptr;
    QLineEdit* m_person = nullptr;
    QLineEdit* m_code = nullptr;
    CheckList* m_places = nullptr;
    CheckList* m_pieces = nullptr;
    QLabel* m_piecesWords = nullptr;
};

} // namespace plumule::ui
