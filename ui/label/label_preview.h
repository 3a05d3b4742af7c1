#pragma once

#include "ui/label/label_sheet.h"

#include <QWidget>

namespace plumule::ui {

// The first page of labels, as large as there is room.
class LabelPreview : public QWidget
{
    Q_OBJECT

public:
    explicit LabelPreview(QWidget* parent = nullptr);

    // A paper that was refused shows nothing.
    void show(const std::vector<LabelTray>& trays, const LabelPaper& paper);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    std::vector<LabelTray> m_trays;
    LabelPaper m_paper;
    bool m_isSound = false;
};

} // namespace plumule::ui
