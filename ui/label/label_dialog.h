#pragma once

#include "ui/label/label_sheet.h"
#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

#include <map>

class QBoxLayout;
class QComboBox;
class QDoubleSpinBox;
class QSpinBox;

namespace plumule::ui {

class LabelPreview;

// Labels for trays: the paper they are printed on, how they will look, a PDF or a printer. The
// paper is remembered, the labels skipped are not.
class LabelDialog : public FormDialog
{
    Q_OBJECT

public:
    LabelDialog(Journal& journal, Services services, const std::vector<TrayId>& trays,
                QWidget* parent = nullptr);

    [[nodiscard]] const std::vector<LabelTray>& labels() const { return m_labels; }
    // As the fields have it, sound or not.
    [[nodiscard]] LabelPaper paper() const;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* buildFields();
    QWidget* buildSheetFields();
    QWidget* buildRollFields();
    void buildButtons();
    QDoubleSpinBox* lengthField(const char* name, const QString& accessibleName);
    QSpinBox* countField(const char* name, const QString& accessibleName, int from, int to);
    void wireSignals();
    [[nodiscard]] LabelPaper rememberedPaper() const;
    void fill(const LabelPaper& paper);
    void showLength(QDoubleSpinBox& field, double mm);
    [[nodiscard]] double lengthIn(const QDoubleSpinBox& field) const; // mm
    [[nodiscard]] QString sizeText(QSizeF mm, int decimals) const;
    void showPaper();
    [[nodiscard]] QString summary(QSizeF label) const;
    void remember();
    void savePdf();
    void print();

    Services m_services;
    bool m_isMetric = true; // lengths are asked for in mm, else in inches
    std::map<const QDoubleSpinBox*, std::pair<double, double>> m_given; // mm, and as it is shown
    std::vector<LabelTray> m_labels;
    QComboBox* m_stock = nullptr;
    QWidget* m_sheetFields = nullptr;
    QWidget* m_rollFields = nullptr;
    QSpinBox* m_rows = nullptr;
    QSpinBox* m_columns = nullptr;
    QSpinBox* m_skip = nullptr;
    QDoubleSpinBox* m_left = nullptr;
    QDoubleSpinBox* m_top = nullptr;
    QDoubleSpinBox* m_right = nullptr;
    QDoubleSpinBox* m_bottom = nullptr;
    QDoubleSpinBox* m_across = nullptr;
    QDoubleSpinBox* m_down = nullptr;
    QDoubleSpinBox* m_wide = nullptr;
    QDoubleSpinBox* m_high = nullptr;
    QBoxLayout* m_beside = nullptr;
    QLabel* m_summary = nullptr;
    LabelPreview* m_preview = nullptr;
    QPushButton* m_save = nullptr;
    QPushButton* m_print = nullptr;
};

} // namespace plumule::ui
