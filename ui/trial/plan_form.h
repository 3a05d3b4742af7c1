#pragma once

#include "core/trial/trial_plan.h"
#include "core/variety/variety.h"
#include "ui/page/page.h"
#include "ui/widget/form_panel.h"
#include "ui/widget/widgets.h"

#include <optional>

class QCheckBox;
class QComboBox;
class QLineEdit;
class QMenu;
class QSpinBox;

namespace plumule::ui {

class DateField;
class NumberField;
class TimeField;

// What a trial asks and how it is grown: every field of a plan but the places. It holds the draft
// that its fields were filled from and gives it back changed.
class PlanForm : public FormPanel
{
    Q_OBJECT

public:
    PlanForm(Journal& journal, QWidget* parent = nullptr);

    // Fills the fields; emits nothing.
    void setDraft(const TrialDraft& draft);
    // The draft as typed, without its layout. Invalid where a field holds no number.
    [[nodiscard]] Result<TrialDraft> draft() const;
    [[nodiscard]] QString person() const;

    // Said below the spread: where it comes from when the field is empty.
    void setSpreadWords(const QString& words);
    void setMarginWords(const QString& words);
    // Reads varieties, lots and media again and keeps what is chosen.
    void fillChoices();

Q_SIGNALS:
    void changed();

private:
    void buildQuestion(QVBoxLayout& column);
    void buildSowing(QVBoxLayout& column);
    void buildSize(QVBoxLayout& column);
    void wireSignals();
    void fillLots();
    void addLots();
    void fillControls();
    void showProtocol(bool setsSeed);
    void showMedia();
    void showDesign();
    void chooseMedium(MediumId medium, bool isChosen);
    [[nodiscard]] std::vector<MediumId> media() const { return m_media; }
    [[nodiscard]] std::vector<Treatment> treatments() const;
    [[nodiscard]] Design design() const;

    Journal& m_journal;
    UnitSystem m_units = UnitSystem::Metric;
    TrialDraft m_base;
    std::vector<MediumId> m_media; // compared, in the order chosen
    QLineEdit* m_name = nullptr;
    QLineEdit* m_question = nullptr;
    QPushButton* m_compared = nullptr;
    QMenu* m_mediaMenu = nullptr;
    QWidget* m_mediaNames = nullptr;
    QComboBox* m_control = nullptr;
    QComboBox* m_feeding = nullptr;
    QComboBox* m_variety = nullptr;
    QComboBox* m_lot = nullptr;
    NumberField* m_seed = nullptr;
    DateField* m_day = nullptr;
    TimeField* m_time = nullptr;
    QCheckBox* m_soak = nullptr;
    QLineEdit* m_person = nullptr;
    NumberField* m_margin = nullptr;
    QLabel* m_marginWords = nullptr;
    NumberField* m_spread = nullptr;
    QLabel* m_spreadWords = nullptr;
    QComboBox* m_design = nullptr;
    QSpinBox* m_blocks = nullptr;
    QSpinBox* m_each = nullptr;
};

} // namespace plumule::ui
