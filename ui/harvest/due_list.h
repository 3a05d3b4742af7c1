#pragma once

#include "core/harvest/harvest.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {

// The trays still to weigh, in walking order; a press on one takes it to the scale.
class DueList : public Card
{
    Q_OBJECT

public:
    explicit DueList(QWidget* parent = nullptr);

    void show(const std::vector<DueRow>& rows, const QString& presentCode,
              const QString& whenEmpty);

Q_SIGNALS:
    void taken(const QString& code);

private:
    [[nodiscard]] QWidget* rowOf(const DueRow& row, bool isPresent);
};

} // namespace plumule::ui
