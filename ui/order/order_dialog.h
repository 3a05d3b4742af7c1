#pragma once

#include "core/order/order.h"
#include "ui/page/record_dialog.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace plumule::ui {

class DateField;
class NumberField;

// An order: how much of what for which day, once or every week.
class OrderDialog : public RecordDialog
{
    Q_OBJECT

public:
    // A new one where its id is not stored.
    OrderDialog(Journal& journal, Services services, const Order& order, QWidget* parent = nullptr);

protected:
    [[nodiscard]] std::optional<QString> save() override;

private:
    void buildFields();
    void fillChoices();
    void fill();
    void addEnd();
    void showStanding();
    // Of the fields; refused, and said why, where one can't be read.
    [[nodiscard]] std::optional<Order> typed();

    Order m_order;
    UnitSystem m_units = UnitSystem::Metric;
    Services m_given;
    QLineEdit* m_customer = nullptr;
    QComboBox* m_variety = nullptr;
    NumberField* m_amount = nullptr;
    DateField* m_day = nullptr;
    QComboBox* m_recurs = nullptr;
    QLabel* m_endsName = nullptr;
    DateField* m_endsOn = nullptr;
    QComboBox* m_medium = nullptr;
    QLineEdit* m_note = nullptr;
};

} // namespace plumule::ui
